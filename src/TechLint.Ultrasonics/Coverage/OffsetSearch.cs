using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Ultrasonics.Coverage;

/// <summary>Builds the section of one case with a set of probes moved: away from the weld positive, mm. Null where it cannot be built.</summary>
internal delegate CoverageInput? ShiftedBuilder(CoverageCase place, double shift);

/// <summary>How far a set of probes may move together, and the volume stays complete over the whole range, tolerance included.</summary>
/// <remarks>
/// Shifts are tried every <see cref="Coarse"/> mm outwards from the stated place (every half of it where none of them covers); the run of covering ones nearest
/// to it is followed and its ends are halved down to <see cref="Fine"/>. A window narrower than half a coarse step can be missed. Each shift is judged at both
/// ends and the middle of the thickness band, at every diameter, with the offset's tolerance at its corners and the skew's both ways;
/// the first incomplete case rejects it, and the case that rejected the last shift is tried first.
/// </remarks>
internal static class OffsetSearch
{
    public const double Coarse = 2;

    public const double Fine = 0.1;

    /// <summary>No frame moves its probes farther to mend a coverage.</summary>
    public const double Reach = 60;

    /// <param name="range">What must be covered.</param>
    /// <param name="build">Builds a case.</param>
    /// <param name="limitFrom">Least shift that cap and frame allow, mm.</param>
    /// <param name="limitTo">Greatest.</param>
    /// <returns>Null where no shift within reach covers.</returns>
    public static OffsetWindow? Find(SearchRange range, ShiftedBuilder build, double limitFrom, double limitTo)
    {
        var from = Math.Max(-Reach, limitFrom);
        var to = Math.Min(Reach, limitTo);
        if (!(from <= to)) return null;
        var trial = new Trial(range, build);
        var home = Math.Clamp(0, from, to);
        if ((Nearest(trial, home, from, to, Coarse) ?? Nearest(trial, home, from, to, Coarse / 2)) is not { } covered) return null;
        return new OffsetWindow(new Length(Follow(trial, covered, from, -1)), new Length(Follow(trial, covered, to, 1)));
    }

    private static double? Nearest(Trial trial, double home, double from, double to, double step)
    {
        if (trial.Covers(home)) return home;
        for (var index = 1; home - (index * step) >= from || home + (index * step) <= to; index++)
        {
            var (nearer, farther) = (home - (index * step), home + (index * step));
            if (farther <= to && trial.Covers(farther)) return farther;
            if (nearer >= from && trial.Covers(nearer)) return nearer;
        }

        return null;
    }

    private static double Follow(Trial trial, double covered, double limit, int direction)
    {
        var good = covered;
        double bad;
        do
        {
            if (good == limit) return limit;
            bad = direction > 0 ? Math.Min(good + Coarse, limit) : Math.Max(good - Coarse, limit);
            if (!trial.Covers(bad)) break;
            good = bad;
        }
        while (true);

        while (Math.Abs(bad - good) > Fine)
        {
            var middle = (good + bad) / 2;
            if (trial.Covers(middle)) good = middle;
            else bad = middle;
        }

        return good;
    }

    private sealed class Trial
    {
        private readonly ShiftedBuilder build;
        private readonly List<CoverageCase> cases = [];

        public Trial(SearchRange range, ShiftedBuilder build)
        {
            this.build = build;
            double[] thicknesses = range.ToThickness > range.FromThickness
                ? [range.FromThickness, range.ToThickness, (range.FromThickness + range.ToThickness) / 2]
                : [range.FromThickness];
            foreach (var diameter in range.Diameters)
            {
                foreach (var thickness in thicknesses)
                {
                    var place = new CoverageCase(thickness, diameter);
                    cases.Add(place);
                    foreach (var (left, right) in range.Corners()) cases.Add(place with { LeftError = left, RightError = right });
                    if (!(range.SkewTolerance > 0)) continue;
                    cases.Add(place with { SkewError = range.SkewTolerance });
                    cases.Add(place with { SkewError = -range.SkewTolerance });
                }
            }
        }

        public bool Covers(double shift)
        {
            for (var index = 0; index < cases.Count; index++)
            {
                if (build(cases[index], shift) is { } input && CoverageKernel.IsComplete(input)) continue;

                // Neighbouring shifts mostly fail for the same reason.
                (cases[0], cases[index]) = (cases[index], cases[0]);
                return false;
            }

            return true;
        }
    }
}
