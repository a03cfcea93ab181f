namespace TechLint.Ultrasonics.Coverage;

/// <summary>
/// What rows leave unseen, joined from row to row into parts. A row stands for the strip between the middles to its neighbours, so a
/// part's extent in depth is that of its strips.
/// </summary>
internal sealed class UnseenParts
{
    /// <summary>100 % is met while no unseen part exceeds this in both directions, mm.</summary>
    public const double Tolerated = 0.5;

    /// <summary>Strips are summed: what is 0.5 mm by intent must not fail by its last digit.</summary>
    private const double Rounding = 1e-9;

    private Part[] parts = new Part[64];
    private Gap[] above = new Gap[64];
    private Gap[] gaps = new Gap[64];
    private int aboveCount;
    private int gapCount;
    private int partCount;

    /// <summary>Some part exceeds the tolerance; once true, more rows cannot mend it.</summary>
    public bool Exceeds { get; private set; }

    /// <summary>The depths of the part that was the first to exceed it.</summary>
    public (double FromZ, double ToZ) Exceeding { get; private set; }

    public int GapCount => gapCount;

    public (double From, double To) this[int gap] => (gaps[gap].From, gaps[gap].To);

    public void Restart()
    {
        aboveCount = gapCount = partCount = 0;
        Exceeds = false;
    }

    /// <summary>Takes the next row in.</summary>
    /// <param name="seen">United.</param>
    /// <param name="fromY">The volume's edges.</param>
    /// <param name="toY">The volume's edges.</param>
    /// <param name="fromZ">Upper end of the row's strip.</param>
    /// <param name="toZ">Lower end of the row's strip.</param>
    /// <returns>Length unseen in this row.</returns>
    public double AddRow(RowIntervals seen, double fromY, double toY, double fromZ, double toZ)
    {
        (above, gaps) = (gaps, above);
        aboveCount = gapCount;
        gapCount = 0;
        var unseen = 0.0;
        var start = fromY;
        for (var index = 0; index <= seen.Count; index++)
        {
            var end = index < seen.Count ? seen.From(index) : toY;
            if (end - start > RowIntervals.Crack)
            {
                unseen += end - start;
                if (gapCount == gaps.Length) Array.Resize(ref gaps, gapCount * 2);
                gaps[gapCount++] = new Gap { From = start, To = end, Part = -1 };
            }

            if (index < seen.Count) start = seen.To(index);
        }

        Join();
        for (var index = 0; index < gapCount; index++)
        {
            ref var gap = ref gaps[index];
            if (gap.Part < 0) gap.Part = NewPart();
            ref var part = ref parts[Find(gap.Part)];
            part.FromY = Math.Min(part.FromY, gap.From);
            part.ToY = Math.Max(part.ToY, gap.To);
            part.FromZ = Math.Min(part.FromZ, fromZ);
            part.ToZ = Math.Max(part.ToZ, toZ);
            part.Area += (gap.To - gap.From) * (toZ - fromZ);
            Note(part);
        }

        return unseen;
    }

    /// <summary>The part that exceeds the tolerance most, by the smaller of its extents, then by area.</summary>
    public (double Across, double Depth) Largest()
    {
        var best = -1;
        for (var index = 0; index < partCount; index++)
        {
            if (parts[index].Parent != index) continue;
            if (best < 0 || parts[index].IsWorseThan(parts[best])) best = index;
        }

        return best < 0 ? (0, 0) : (parts[best].Across, parts[best].Depth);
    }

    private void Join()
    {
        for (int i = 0, j = 0; i < aboveCount && j < gapCount;)
        {
            if (Math.Min(above[i].To, gaps[j].To) > Math.Max(above[i].From, gaps[j].From))
            {
                if (gaps[j].Part < 0) gaps[j].Part = Find(above[i].Part);
                else Merge(gaps[j].Part, above[i].Part);
            }

            if (above[i].To < gaps[j].To) i++;
            else j++;
        }
    }

    private int NewPart()
    {
        if (partCount == parts.Length) Array.Resize(ref parts, partCount * 2);
        parts[partCount] = new Part
        {
            Parent = partCount, FromY = double.PositiveInfinity, ToY = double.NegativeInfinity,
            FromZ = double.PositiveInfinity, ToZ = double.NegativeInfinity,
        };
        return partCount++;
    }

    private int Find(int part)
    {
        while (parts[part].Parent != part) part = parts[part].Parent = parts[parts[part].Parent].Parent;
        return part;
    }

    private void Merge(int one, int other)
    {
        one = Find(one);
        other = Find(other);
        if (one == other) return;

        // The elder takes the younger in, whichever way they met: the same rows give the same sums.
        var (elder, younger) = one < other ? (one, other) : (other, one);
        parts[younger].Parent = elder;
        ref var into = ref parts[elder];
        ref readonly var from = ref parts[younger];
        into.FromY = Math.Min(into.FromY, from.FromY);
        into.ToY = Math.Max(into.ToY, from.ToY);
        into.FromZ = Math.Min(into.FromZ, from.FromZ);
        into.ToZ = Math.Max(into.ToZ, from.ToZ);
        into.Area += from.Area;
        Note(into);
    }

    private void Note(in Part part)
    {
        if (Exceeds || !part.IsTooLarge) return;
        Exceeds = true;
        Exceeding = (part.FromZ, part.ToZ);
    }

    private struct Gap
    {
        public double From;
        public double To;
        public int Part;
    }

    private struct Part
    {
        public int Parent;
        public double FromY;
        public double ToY;
        public double FromZ;
        public double ToZ;
        public double Area;

        public readonly double Across => ToY - FromY;

        public readonly double Depth => ToZ - FromZ;

        public readonly bool IsTooLarge => Math.Min(Across, Depth) > Tolerated + Rounding;

        public readonly bool IsWorseThan(in Part other)
        {
            var least = Math.Min(Across, Depth);
            var otherLeast = Math.Min(other.Across, other.Depth);
            return least != otherLeast ? least > otherLeast : Area > other.Area;
        }
    }
}
