using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Ultrasonics.Coverage;

/// <summary>Builds the section of one case with a set of probes moved: away from the weld positive, mm. Null where it cannot be built.</summary>
internal delegate CoverageInput? ShiftedBuilder(CoverageCase place, double shift);

/// <summary>How far a set of probes may move together, and the volume stays complete over the whole range, tolerance included.</summary>
/// <remarks>
/// Shifts are tried every <see cref="Coarse"/> mm outwards from the stated place; the run of covering ones nearest to it is followed in steps of
/// <see cref="Stride"/> and its ends are halved down to <see cref="Fine"/>. A window narrower than a coarse step can be missed, and so can a gap narrower
/// than a stride. Each shift is judged at both ends and the middle of the thickness band, at every diameter, with every combination of the shared
/// errors' ends and the corners of the offset's tolerance, by rows <see cref="WorstCaseSearch.ScreeningStep"/> apart; the first incomplete case rejects it, and what is found is confirmed by all rows. Two short cuts spare most of the work and change no answer: what
/// goes unseen though every stretch of sound is let out by r mm rejects all shifts within r at once, and what is whole though drawn in by the tolerance needs no
/// corners (<see cref="InsetRule"/>).
/// </remarks>
internal static class OffsetSearch
{
    public const double Coarse = 1;

    public const double Stride = 2;

    public const double Fine = 0.1;

    /// <summary>No frame moves its probes farther to mend a coverage.</summary>
    public const double Reach = 60;

    /// <param name="range">What must be covered.</param>
    /// <param name="build">Builds a case.</param>
    /// <param name="rule">What short cuts its sections allow.</param>
    /// <param name="limitFrom">Least shift that cap and frame allow, mm.</param>
    /// <param name="limitTo">Greatest.</param>
    /// <param name="ruledOut">What is known already of this set of probes; what is learnt is added.</param>
    /// <returns>Null where no shift within reach covers.</returns>
    public static OffsetWindow? Find(
        SearchRange range, ShiftedBuilder build, InsetRule rule, double limitFrom, double limitTo, RuledOutMoves ruledOut)
    {
        var from = Math.Max(-Reach, limitFrom);
        var to = Math.Min(Reach, limitTo);
        if (!(from <= to)) return null;
        var trial = new Trial(range, build, rule, ruledOut);
        return Nearest(trial, Math.Clamp(0, from, to), from, to) is { } covered ? Window(trial, covered, from, to) : null;
    }

    /// <summary>The window about the stated place itself; null where that does not cover.</summary>
    public static OffsetWindow? Around(
        SearchRange range, ShiftedBuilder build, InsetRule rule, double limitFrom, double limitTo, RuledOutMoves ruledOut)
    {
        var trial = new Trial(range, build, rule, ruledOut);
        return trial.Covers(0) ? Window(trial, 0, Math.Min(0, Math.Max(-Reach, limitFrom)), Math.Max(0, Math.Min(Reach, limitTo))) : null;
    }

    private static OffsetWindow Window(Trial trial, double covered, double from, double to) =>
        new(new Length(Held(trial, covered, Follow(trial, covered, from, -1))), new Length(Held(trial, covered, Follow(trial, covered, to, 1))));

    /// <summary>The end of a window, drawn back to where all rows agree; where they do not even at the place it started from, screening rows stand.</summary>
    private static double Held(Trial trial, double covered, double end)
    {
        if (end == covered || trial.Holds(end) || !trial.Holds(covered)) return end;
        while (Math.Abs(end - covered) > Fine)
        {
            var middle = (covered + end) / 2;
            if (trial.Holds(middle)) covered = middle;
            else end = middle;
        }

        return covered;
    }

    private static double? Nearest(Trial trial, double home, double from, double to)
    {
        if (CoversByAllRows(home)) return home;
        for (var index = 1; home - (index * Coarse) >= from || home + (index * Coarse) <= to; index++)
        {
            var (nearer, farther) = (home - (index * Coarse), home + (index * Coarse));
            if (farther <= to && CoversByAllRows(farther)) return farther;
            if (nearer >= from && CoversByAllRows(nearer)) return nearer;
        }

        return null;

        bool CoversByAllRows(double shift) => trial.Covers(shift) && trial.Holds(shift);
    }

    private static double Follow(Trial trial, double covered, double limit, int direction)
    {
        var good = covered;
        double bad;
        do
        {
            if (good == limit) return limit;
            bad = direction > 0 ? Math.Min(good + Stride, limit) : Math.Max(good - Stride, limit);
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
        /// <summary>What is looked at about the depth at which the last shift failed, beyond the part's own ends (mm): a few times what is tolerated.</summary>
        private const double About = 1.5;

        /// <summary>How far a failing section is let out at most, mm, and how far at least to be worth the trouble.</summary>
        private const double GreatestReach = 16;
        private const double LeastReach = 0.5;

        private readonly ShiftedBuilder build;
        private readonly ShiftedBuilder buildInFull;
        private readonly InsetRule rule;
        private readonly RuledOutMoves ruledOut;
        private readonly double tolerance;
        private readonly List<CoverageCase> nodes = [];
        private readonly List<(double Left, double Right)> corners;
        private readonly HashSet<CoverageCase> cases = [];
        private (CoverageCase Place, double FromZ, double ToZ)? failure;
        private double lastReach = GreatestReach;

        public Trial(SearchRange range, ShiftedBuilder build, InsetRule rule, RuledOutMoves ruledOut)
        {
            this.build = (place, shift) => build(place, shift) is { } input ? Coarser(input) : null;
            buildInFull = build;
            this.rule = rule;
            this.ruledOut = ruledOut;
            tolerance = range.OffsetTolerance;
            corners = [(0, 0), .. range.Corners()];
            foreach (var thickness in Thicknesses(range))
            {
                foreach (var diameter in range.Diameters)
                {
                    foreach (var error in range.SharedErrors())
                    {
                        var node = error.On(new CoverageCase(thickness, diameter));
                        nodes.Add(node);
                        foreach (var (left, right) in corners) cases.Add(node with { LeftError = left, RightError = right });
                    }
                }
            }
        }

        public bool Covers(double shift)
        {
            if (ruledOut.Holds(shift, cases)) return false;

            // Neighbouring shifts mostly fail for the same reason, at the same depth.
            if (failure is { } last && build(last.Place, shift) is { } input && RuleOut(last.Place, Slice(input, last.FromZ, last.ToZ), shift)) return false;
            for (var index = 0; index < nodes.Count; index++)
            {
                if (NodeCovers(nodes[index], shift)) continue;
                (nodes[0], nodes[index]) = (nodes[index], nodes[0]);
                return false;
            }

            return true;
        }

        /// <summary>Whether it is complete by all rows, too.</summary>
        public bool Holds(double shift)
        {
            foreach (var place in nodes)
            {
                if (corners.Count > 1 && rule.MovesAsOne && buildInFull(place, shift) is { } stated && CoverageKernel.IsComplete(InsetRule.DrawnIn(stated, tolerance))) continue;
                foreach (var (left, right) in corners)
                {
                    if (buildInFull(place with { LeftError = left, RightError = right }, shift) is not { } input || !CoverageKernel.IsComplete(input)) return false;
                }
            }

            return true;
        }

        private bool NodeCovers(CoverageCase node, double shift)
        {
            if (rule.MovesAsOne && corners.Count > 1)
            {
                if (build(node, shift) is not { } stated) return false;
                if (CoverageKernel.IsComplete(InsetRule.DrawnIn(stated, tolerance))) return true;
            }

            foreach (var (left, right) in corners)
            {
                var place = node with { LeftError = left, RightError = right };
                if (build(place, shift) is not { } input) return false;
                if (CoverageKernel.IsComplete(input, out var unseen)) continue;
                failure = (place, unseen.FromZ, unseen.ToZ);
                RuleOut(place, Slice(input, unseen.FromZ, unseen.ToZ), shift);
                return false;
            }

            return true;
        }

        /// <summary>True where the slice is incomplete; then as many neighbouring shifts as can be told are ruled out with this one.</summary>
        private bool RuleOut(CoverageCase place, CoverageInput slice, double shift)
        {
            if (CoverageKernel.IsComplete(slice)) return false;
            if (!rule.CanRuleOut) return true;
            for (var reach = Math.Min(GreatestReach, 2 * lastReach); reach >= LeastReach; reach /= 2)
            {
                if (CoverageKernel.IsComplete(rule.LetOut(slice, reach))) continue;
                ruledOut.Add(place, shift - reach, shift + reach);
                lastReach = reach;
                return true;
            }

            lastReach = LeastReach;
            return true;
        }

        /// <summary>Cut along rows of the whole, so that a slice's rows are the whole's: what is too large in the slice is too large in the whole.</summary>
        private static CoverageInput Slice(CoverageInput input, double fromZ, double toZ)
        {
            var (count, step) = CoverageKernel.RowsOf(input);
            var first = Math.Clamp((int)Math.Floor((fromZ - About - input.Volume.FromZ) / step), 0, count - 1);
            var last = Math.Clamp((int)Math.Ceiling((toZ + About - input.Volume.FromZ) / step), 0, count - 1);

            // Fewer rows than the kernel takes would not be the whole's.
            if (last - first < 2) return input;
            return input with
            {
                RowStep = step,
                Volume = input.Volume with
                {
                    FromZ = first == 0 ? input.Volume.FromZ : input.Volume.FromZ + (first * step),
                    ToZ = last == count - 1 ? input.Volume.ToZ : input.Volume.FromZ + (last * step),
                },
            };
        }

        private static CoverageInput Coarser(CoverageInput input) =>
            input with { RowStep = Math.Max(input.RowStep, WorstCaseSearch.ScreeningStep) };

        /// <summary>The ends first: they fail first.</summary>
        private static double[] Thicknesses(SearchRange range)
        {
            var (from, to) = (range.FromThickness, range.ToThickness);
            return to > from ? [from, to, (from + to) / 2] : [from];
        }
    }
}
