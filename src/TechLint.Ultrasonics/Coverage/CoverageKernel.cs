using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Ultrasonics.Coverage;

/// <summary>
/// What share of the examined rectangle the beams see. The rectangle is cut into rows; in each row every law and leg gives the stretches
/// that it sees, exactly, and the stretches are united. Rows are summed from the top down by one thread, so that the same input gives the same
/// bits anywhere.
/// </summary>
/// <remarks>
/// Only the depth is sampled: in between rows, edges are straight to within a row step squared. A point is seen by a ray, straight from the law's exit
/// point, that meets it inside the beam's width, in an allowed leg, within the recorded window, every bounce on a mirror.
/// </remarks>
internal static class CoverageKernel
{
    /// <summary>No wall and wavelength of this trade need more.</summary>
    public const int MostRows = 20_000;

    /// <summary>One law in this many is asked first, then the one half-way to the next.</summary>
    private const int Stride = 8;

    /// <summary>Pairs and images have no closed form: they are looked at this often along a row (mm) ...</summary>
    private const double PairStep = 0.25;

    /// <summary>... and where that changes, halved down to this (mm).</summary>
    private const double PairEdge = 1e-4;

    [ThreadStatic]
    private static Workspace? kept;

    private enum Depth
    {
        CompleteOnly, Volume, Sides,
    }

    /// <summary>Everything; rings of what is unseen only where asked for.</summary>
    public static CoverageResult Compute(CoverageInput input, bool traceUnseen)
    {
        if (WhyNot(input) is { } reason) return NotComputed(reason);
        if (input.Misalignment != 0) return MisalignedCoverage.Compute(input, traceUnseen);
        var rings = traceUnseen ? new UnseenRings(input.Volume.FromZ, RowsOf(input).Step) : null;
        var sums = Run(input, Depth.Sides, rings, out var unseen);
        var largest = unseen.Largest();
        return new CoverageResult(
            sums.Volume, new Share(100 * sums.Left / sums.Area), new Share(100 * sums.Right / sums.Area),
            new Share(100 * sums.Both / sums.Area), rings?.Trace() ?? [],
            new Length(largest.Across), new Length(largest.Depth), !unseen.Exceeds, NotComputed: null);
    }

    /// <summary>The share seen and whether that is all of it; null where <see cref="Compute"/> would say why it cannot tell.</summary>
    public static VolumeSeen? Volume(CoverageInput input) => WhyNot(input) is not null ? null
        : input.Misalignment != 0 ? MisalignedCoverage.Volume(input)
        : new VolumeSeen(Run(input, Depth.Volume, rings: null, out var unseen).Volume, !unseen.Exceeds);

    /// <summary>Whether the volume is complete; stops at the first unseen part that is too large.</summary>
    public static bool IsComplete(CoverageInput input) => IsComplete(input, out _);

    /// <param name="input">The section.</param>
    /// <param name="unseenAt">Depths at which something too large goes unseen, from the outer surface; the whole volume where it cannot be computed.</param>
    public static bool IsComplete(CoverageInput input, out (double FromZ, double ToZ) unseenAt)
    {
        unseenAt = (input.Volume.FromZ, input.Volume.ToZ);
        if (WhyNot(input) is not null) return false;
        if (input.Misalignment != 0) return MisalignedCoverage.IsComplete(input);
        Run(input, Depth.CompleteOnly, rings: null, out var unseen);
        if (unseen.Exceeds) unseenAt = unseen.Exceeding;
        return !unseen.Exceeds;
    }

    private static string? WhyNot(CoverageInput input)
    {
        var volume = input.Volume;
        if (!(input.Thickness > 0 && double.IsFinite(input.Thickness))) return "The wall has no thickness.";
        if (input.OutsideDiameter is { } diameter && !(diameter > 2 * input.Thickness && double.IsFinite(diameter)))
            return "The wall leaves no bore.";
        if (!(volume.ToY > volume.FromY && volume.ToZ > volume.FromZ && volume.FromZ >= 0 && volume.ToZ <= input.Thickness
            && double.IsFinite(volume.ToY - volume.FromY))) return "The examined volume is empty or lies outside the wall.";
        if (!(input.RowStep > 0) || (volume.ToZ - volume.FromZ) / input.RowStep > MostRows)
            return "The wavelength is too short for this wall.";
        foreach (var pass in input.Passes)
        {
            foreach (var line in pass.Lines)
            {
                if (!(double.IsFinite(line.ExitY) && line.Angle >= 0 && line.Angle < Math.PI / 2 && line.Direction is 1 or -1
                    && double.IsFinite(line.Width.At(1)) && line.PathFrom <= line.PathTo)) return "A law's geometry is not known.";
            }
        }

        return null;
    }

    private static CoverageResult NotComputed(string reason) => new(
        new Share(double.NaN), new Share(double.NaN), new Share(double.NaN), new Share(double.NaN), [], default, default,
        IsComplete: false, reason);

    /// <summary>How many rows a run takes, the volume's own edges included, and how far they lie apart.</summary>
    public static (int Count, double Step) RowsOf(CoverageInput input)
    {
        var height = input.Volume.ToZ - input.Volume.FromZ;

        // The division's last digit must not add a row.
        var steps = Math.Max(2, (int)Math.Ceiling((height / input.RowStep) - 1e-9));
        return (steps + 1, height / steps);
    }

    private static Sums Run(CoverageInput input, Depth depth, UnseenRings? rings, out UnseenParts unseen)
    {
        // Taken for the time of the run: whatever calls back from inside it gets one of its own.
        var work = kept ?? new Workspace();
        kept = null;
        work.Prepare(input);
        var sums = Sum(input, depth, rings, work);
        unseen = work.Unseen;
        kept = work;
        return sums;
    }

    private static Sums Sum(CoverageInput input, Depth depth, UnseenRings? rings, Workspace work)
    {
        var volume = input.Volume;
        var (count, step) = RowsOf(input);
        var sums = default(Sums);
        var missing = 0.0;
        work.Unseen.Restart();
        for (var row = 0; row < count; row++)
        {
            var isFirst = row == 0;
            var isLast = row == count - 1;
            var z = isLast ? volume.ToZ : volume.FromZ + (row * step);
            var (padLeft, padRight) = (Math.Abs(input.LeftInset), Math.Abs(input.RightInset));
            work.Left.Restart(volume.FromY - padLeft, volume.ToY + padLeft);
            work.Right.Restart(volume.FromY - padRight, volume.ToY + padRight);
            work.All.Restart(volume.FromY, volume.ToY);
            if (depth == Depth.Sides)
            {
                work.AddSound(z, 0, 1);
                work.AddImages(z);
                work.Left.Unite();
                work.Right.Unite();
                work.UniteSides();
            }
            else
            {
                work.AddSoundUntilWhole(z);
            }

            if (work.HasPairs && !work.All.IsWhole) work.AddPairs(z);

            var weight = (isFirst || isLast ? 0.5 : 1) * step;
            missing += weight * work.Unseen.AddRow(
                work.All, volume.FromY, volume.ToY, isFirst ? z : z - (step / 2), isLast ? z : z + (step / 2));
            sums.Area += weight * (volume.ToY - volume.FromY);
            if (depth == Depth.Sides)
            {
                sums.Left += weight * work.Left.Sum();
                sums.Right += weight * work.Right.Sum();
                sums.Both += weight * RowIntervals.Common(work.Left, work.Right);
            }
            else if (depth == Depth.CompleteOnly && work.Unseen.Exceeds)
            {
                break;
            }

            rings?.AddRow(work.Unseen);
        }

        // From what is missing, so that nothing missing gives 100 exactly.
        sums.Volume = new Share(Math.Max(0, 100 - (100 * missing / sums.Area)));
        return sums;
    }

    /// <summary>A run's results, all of one area unit: mm².</summary>
    private struct Sums
    {
        public double Area;
        public double Left;
        public double Right;
        public double Both;
        public Share Volume;
    }

    /// <summary>The buffers of a run, kept by each thread for the next one.</summary>
    private sealed class Workspace
    {
        public readonly RowIntervals Left = new();
        public readonly RowIntervals Right = new();
        public readonly RowIntervals All = new();
        public readonly UnseenParts Unseen = new();
        private readonly RowIntervals gaps = new();
        private readonly List<PassLanes> passes = [];
        private FlatLane[] flat = new FlatLane[256];
        private CurvedLane[] curved = new CurvedLane[256];
        private LaneSource[] sources = new LaneSource[256];
        private double leftInset;
        private double rightInset;
        private double fromY;
        private double toY;
        private bool isCurved;

        public bool HasPairs { get; private set; }

        public void Prepare(CoverageInput input)
        {
            passes.Clear();
            HasPairs = false;
            isCurved = input.OutsideDiameter is not null;
            (leftInset, rightInset) = (input.LeftInset, input.RightInset);
            var pad = Math.Max(Math.Abs(leftInset), Math.Abs(rightInset));
            (fromY, toY) = (input.Volume.FromY - pad, input.Volume.ToY + pad);
            var count = 0;
            foreach (var pass in input.Passes)
            {
                var frame = new PassFrame(input.Thickness, input.OutsideDiameter, pass.ScanningSurface);
                var lanes = new PassLanes
                {
                    Frame = frame, First = count, Pass = pass, Near = frame.NearGap(input.Cap, input.Root), Far = frame.FarGap(input.Cap, input.Root),
                };
                AddLanes(pass, frame, isFromLeft: true, ref count);
                lanes.FirstRight = count;
                AddLanes(pass, frame, isFromLeft: false, ref count);
                lanes.End = count;
                passes.Add(lanes);
                HasPairs |= pass.PairsWhenAsked is not null || !pass.Pairs.IsDefaultOrEmpty;
            }
        }

        /// <summary>
        /// Neighbouring laws overlap, so a few of them mostly see a whole row already; only where they do not, the others are asked. The union is the
        /// same: what is whole cannot grow.
        /// </summary>
        public void AddSoundUntilWhole(double z)
        {
            for (var offset = 0; offset < Stride; offset += Stride / 2)
            {
                AddSound(z, offset, Stride);
                UniteSides();
                if (All.IsWhole) return;
            }

            AddImages(z);
            for (var offset = 1; offset < Stride; offset++)
            {
                if (offset != Stride / 2) AddSound(z, offset, Stride);
            }

            UniteSides();
        }

        public void UniteSides()
        {
            AddSide(Left, leftInset);
            AddSide(Right, rightInset);
            All.Unite();
        }

        private void AddSide(RowIntervals side, double inset)
        {
            if (inset == 0)
            {
                All.AddAll(side);
                return;
            }

            side.Unite();
            All.AddInset(side, inset);
        }

        /// <summary>Every <paramref name="step"/>th lane of each pass, from the given one on; a lane is made when first asked.</summary>
        public void AddSound(double z, int offset, int step)
        {
            foreach (var pass in passes)
            {
                var depth = pass.Frame.DepthAt(z);
                for (var index = pass.First + offset; index < pass.End; index += step)
                {
                    ref var source = ref sources[index];
                    if (!source.IsMade) Make(ref source, pass, index);
                    var side = index < pass.FirstRight ? Left : Right;
                    if (isCurved) curved[index].AddRow(depth, side);
                    else flat[index].AddRow(pass.Frame.Rays.Thickness, depth, side);
                }
            }
        }

        private void Make(ref LaneSource source, in PassLanes pass, int index)
        {
            source.IsMade = true;
            if (isCurved) curved[index] = new CurvedLane(source.Line, source.Leg, pass.Frame, pass.Near, pass.Far, fromY, toY);
            else flat[index] = new FlatLane(source.Line, source.Leg, pass.Frame, pass.Near, pass.Far);
        }

        /// <summary>Images count for the side of their probe: the whole row is looked at.</summary>
        public void AddImages(double z)
        {
            foreach (var pass in passes)
            {
                var toOuter = pass.Frame.ToOuter;
                var depth = pass.Frame.DepthAt(z);
                foreach (var (image, ownSide) in pass.Pass.Images)
                {
                    if (depth < image.FromZ || depth > image.ToZ) continue;
                    var (one, other) = (image.FromY * toOuter, image.ToY * toOuter);
                    var side = ownSide == Side.Left ^ toOuter < 0 ? Left : Right;
                    AddPoints(image, depth, toOuter, Math.Max(side.LimitFrom, Math.Min(one, other)), Math.Min(side.LimitTo, Math.Max(one, other)), side);
                }
            }
        }

        /// <summary>Pairs count for the volume alone, so only what sound leaves unseen is looked at.</summary>
        public void AddPairs(double z)
        {
            gaps.Restart(double.NegativeInfinity, double.PositiveInfinity);
            var start = All.LimitFrom;
            for (var index = 0; index <= All.Count; index++)
            {
                gaps.Add(start, index < All.Count ? All.From(index) : All.LimitTo);
                if (index < All.Count) start = All.To(index);
            }

            foreach (var pass in passes)
            {
                var depth = pass.Frame.DepthAt(z);
                foreach (var pair in pass.Pass.PairsWhenAsked?.Value ?? pass.Pass.Pairs)
                {
                    if (depth < pair.FromZ || depth > pair.ToZ) continue;
                    var (one, other) = (pair.FromY * pass.Frame.ToOuter, pair.ToY * pass.Frame.ToOuter);
                    for (var index = 0; index < gaps.Count; index++)
                    {
                        AddPoints(
                            pair, depth, pass.Frame.ToOuter, Math.Max(gaps.From(index), Math.Min(one, other)),
                            Math.Min(gaps.To(index), Math.Max(one, other)), All);
                    }
                }
            }

            All.Unite();
        }

        private static void AddPoints(IPointSight sight, double depth, double toOuter, double from, double to, RowIntervals seen)
        {
            if (!(to > from)) return;
            var steps = (int)Math.Ceiling((to - from) / PairStep);
            var place = from;
            var start = from;
            var wasSeen = sight.Sees(from / toOuter, depth);
            for (var step = 1; step <= steps; step++)
            {
                var next = step == steps ? to : from + (step * (to - from) / steps);
                var isSeen = sight.Sees(next / toOuter, depth);
                if (isSeen != wasSeen)
                {
                    var (low, high) = (place, next);
                    while (high - low > PairEdge)
                    {
                        var middle = (low + high) / 2;
                        if (sight.Sees(middle / toOuter, depth) == wasSeen) low = middle;
                        else high = middle;
                    }

                    // The edge is placed on the seen side: never more than was found to be seen.
                    if (wasSeen) seen.Add(start, low);
                    else start = high;
                }

                place = next;
                wasSeen = isSeen;
            }

            if (wasSeen) seen.Add(start, to);
        }

        private void AddLanes(CoveragePass pass, PassFrame frame, bool isFromLeft, ref int count)
        {
            for (var leg = 1; leg <= LaunchSegments.GreatestLeg; leg++)
            {
                // Law after law in one leg: neighbours overlap and melt together as they are added.
                foreach (var line in pass.Lines)
                {
                    // Left and right are those of the common frame; from inside a pass sees them the other way round.
                    if (!line.Allows(leg) || (line.Direction * frame.ToOuter > 0) != isFromLeft) continue;
                    if (count == sources.Length)
                    {
                        Array.Resize(ref sources, count * 2);
                        Array.Resize(ref flat, count * 2);
                        Array.Resize(ref curved, count * 2);
                    }

                    sources[count++] = new LaneSource { Line = line, Leg = leg };
                }
            }
        }

        private struct PassLanes
        {
            public PassFrame Frame;
            public CoveragePass Pass;
            public MirrorGap? Near;
            public MirrorGap? Far;
            public int First;
            public int FirstRight;
            public int End;
        }

        /// <summary>What a lane is made of: most rows are whole before most lanes have been asked.</summary>
        private struct LaneSource
        {
            public SightLine Line;
            public int Leg;
            public bool IsMade;
        }
    }
}

/// <param name="Volume">Share seen.</param>
/// <param name="IsComplete">No unseen part exceeds the tolerance.</param>
internal readonly record struct VolumeSeen(Share Volume, bool IsComplete);
