using System.Collections.Immutable;
using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Coverage;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Ultrasonics.Studies;

/// <summary>From an examination to what the coverage kernel takes.</summary>
internal static class CoverageInputs
{
    /// <summary>Rows are at most a quarter of the shortest wavelength apart (physics.md of the design: the grade of a check).</summary>
    private const double RowsPerWavelength = 4;

    /// <summary>Row step where no beam has a wavelength, mm: nothing is seen then, and any step says so.</summary>
    private const double StepWithoutWavelength = 0.25;

    /// <summary>Null where thickness and diameter make no wall.</summary>
    public static CoverageInput? Of(Examination examination, CoverageCase place)
    {
        var passes = ImmutableArray.CreateBuilder<CoveragePass>(examination.Passes.Count);
        var shortest = double.PositiveInfinity;
        double? curved = null;
        foreach (var pass in examination.Passes)
        {
            if (PassSection.Of(examination, pass, new Length(place.Thickness), place.OutsideDiameter is { } d ? new Length(d) : null) is not { } section) return null;
            if (section.Rays.IsCurved) curved = section.OutsideDiameter;
            var tolerance = pass.Tolerance;
            var sights = PassSights.Of(
                section, Clamp(place.LeftError, tolerance.IndexOffset.Millimetres), Clamp(place.RightError, tolerance.IndexOffset.Millimetres),
                Clamp(place.SkewError, tolerance.Skew.Radians));
            passes.Add(new CoveragePass(pass.ScanningSurface, sights.Lines, sights.Pairs));
            foreach (var beam in pass.Beams)
            {
                if (PassWork.CountedWavelength(section, beam) is { } wavelength) shortest = Math.Min(shortest, wavelength.Millimetres);
            }
        }

        var inside = examination.Passes.All(pass => pass.ScanningSurface == Surface.Inside);
        return new CoverageInput(
            place.Thickness, curved, VolumeRectangle.Of(examination.Weld, examination.Volume, place.Thickness, curved, inside),
            MirrorGap.Of(examination.Weld.Cap), MirrorGap.Of(examination.Weld.Root), passes.MoveToImmutable(),
            double.IsFinite(shortest) ? shortest / RowsPerWavelength : StepWithoutWavelength);
    }

    /// <summary>The examination with some probes of one pass moved, away from the weld positive.</summary>
    public static Examination Moved(Examination examination, string passId, ImmutableArray<int> stations, double shift)
    {
        if (shift == 0) return examination;
        return examination with
        {
            Passes =
            [
                .. examination.Passes.Select(pass => pass.Id != passId ? pass : pass with
                {
                    Probes =
                    [
                        .. pass.Probes.Select(probe => stations.IsEmpty || stations.Contains(probe.Station)
                            ? probe with { IndexOffset = new Length(probe.IndexOffset.Millimetres + shift) }
                            : probe),
                    ],
                }),
            ],
        };
    }

    private static double Clamp(double error, double tolerance) => Math.Clamp(error, -tolerance, tolerance);
}
