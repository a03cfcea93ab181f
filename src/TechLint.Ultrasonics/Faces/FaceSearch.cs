using TechLint.Ultrasonics.Coverage;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Ultrasonics.Faces;

/// <summary>
/// The worst case of the fusion faces: both ends of the thickness and the middle at each end of the diameters; there the corners of the positioning
/// tolerance, both ends of the skew's and of the misalignment, each where what was found before is worst; then the thicknesses again with those errors.
/// No finer: a worse case that it misses is worse by no more than 5 % of a face (held to all corners of a finer grid in tests/Validation).
/// </summary>
internal static class FaceSearch
{
    public static FaceStudy At(Examination examination, double thickness, double? outsideDiameter) =>
        FaceKernel.Of(examination, new FacePlaceInRange(thickness, outsideDiameter));

    public static WorstFaces Worst(Examination examination)
    {
        var range = SearchRange.Of(examination);
        double[] thicknesses = range.ToThickness > range.FromThickness
            ? [range.FromThickness, (range.FromThickness + range.ToThickness) / 2, range.ToThickness]
            : [range.FromThickness];
        var search = new Search(examination);
        foreach (var diameter in range.Diameters)
        {
            foreach (var thickness in thicknesses) search.Look(new FacePlaceInRange(thickness, diameter));
        }

        var worst = search.Worst;
        foreach (var (left, right) in range.Corners()) search.Look(worst with { LeftError = left, RightError = right });
        worst = search.Worst;
        if (range.SkewTolerance > 0)
        {
            search.Look(worst with { SkewError = range.SkewTolerance });
            search.Look(worst with { SkewError = -range.SkewTolerance });
        }

        worst = search.Worst;
        if (examination.Weld.Preparation.Misalignment.Millimetres is > 0 and var step)
        {
            search.Look(worst with { Misalignment = step });
            search.Look(worst with { Misalignment = -step });
        }

        worst = search.Worst;
        foreach (var thickness in thicknesses) search.Look(worst with { Thickness = thickness });
        return search.Result();
    }

    private sealed class Search(Examination examination)
    {
        private readonly Dictionary<FacePlaceInRange, FaceStudy> seen = [];
        private FaceStudy? study;
        private (double Least, double Sum) score = (double.PositiveInfinity, double.PositiveInfinity);

        public FacePlaceInRange Worst { get; private set; }

        public void Look(FacePlaceInRange place)
        {
            if (seen.ContainsKey(place)) return;
            var found = FaceKernel.Of(examination, place);
            seen.Add(place, found);
            var own = ScoreOf(found);
            if (study is not null && own.CompareTo(score) >= 0) return;
            (study, score, Worst) = (found, own, place);
        }

        public WorstFaces Result() => new(
            study ?? FaceStudy.None("no case is at hand"), new Length(Worst.Thickness), Worst.OutsideDiameter is { } diameter ? new Length(diameter) : null,
            new Length(Worst.LeftError), new Length(Worst.RightError), Angle.FromRadians(Worst.SkewError), new Length(Worst.Misalignment));

        /// <summary>What cannot be computed must not pass for a good case.</summary>
        private static (double Least, double Sum) ScoreOf(FaceStudy study)
        {
            if (study.Faces.IsEmpty) return (double.NegativeInfinity, 0);
            var (least, sum) = (double.PositiveInfinity, 0.0);
            foreach (var service in study.Faces)
            {
                least = Math.Min(least, service.FromEither.Percent);
                sum += service.Served.Percent;
            }

            return (least, sum);
        }
    }
}
