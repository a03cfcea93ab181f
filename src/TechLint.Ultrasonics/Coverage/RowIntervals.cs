namespace TechLint.Ultrasonics.Coverage;

/// <summary>The stretches of one row that something sees; a buffer that is filled anew for every row.</summary>
internal sealed class RowIntervals
{
    /// <summary>Gaps below this (mm) are rounding: pieces of one beam that meet must not leave a crack.</summary>
    public const double Crack = 1e-6;

    private double[] from = new double[64];
    private double[] to = new double[64];

    public int Count { get; private set; }

    /// <summary>The volume's edges: nothing beyond is kept.</summary>
    public double LimitFrom { get; private set; }

    public double LimitTo { get; private set; }

    public double From(int index) => from[index];

    public double To(int index) => to[index];

    public void Restart(double fromY, double toY)
    {
        LimitFrom = fromY;
        LimitTo = toY;
        Count = 0;
    }

    /// <summary>Adds a stretch, in either order of its ends. Neighbouring laws overlap, so most melt into the one before.</summary>
    public void Add(double a, double b)
    {
        var low = Math.Max(Math.Min(a, b), LimitFrom);
        var high = Math.Min(Math.Max(a, b), LimitTo);

        // Not "high <= low": NaN must fall out here too.
        if (!(high > low)) return;
        if (Count > 0 && low <= to[Count - 1] + Crack && high >= from[Count - 1] - Crack)
        {
            from[Count - 1] = Math.Min(from[Count - 1], low);
            to[Count - 1] = Math.Max(to[Count - 1], high);
            return;
        }

        Append(low, high);
    }

    public void AddAll(RowIntervals other)
    {
        for (var index = 0; index < other.Count; index++) Append(other.from[index], other.to[index]);
    }

    /// <summary>Adds another row's stretches, drawn in at both ends (let out where negative) and held to this row's limits. The other must be united.</summary>
    public void AddInset(RowIntervals other, double inset)
    {
        for (var index = 0; index < other.Count; index++)
        {
            var low = other.from[index] + inset;
            var high = other.to[index] - inset;
            if (low < high) Add(low, high);
        }
    }

    /// <summary>Sorts and unites; afterwards the stretches rise and do not touch.</summary>
    public void Unite()
    {
        // Insertion: the lists are short and nearly sorted.
        for (var index = 1; index < Count; index++)
        {
            var low = from[index];
            var high = to[index];
            var place = index - 1;
            while (place >= 0 && from[place] > low)
            {
                from[place + 1] = from[place];
                to[place + 1] = to[place];
                place--;
            }

            from[place + 1] = low;
            to[place + 1] = high;
        }

        var kept = 0;
        for (var index = 0; index < Count; index++)
        {
            if (kept > 0 && from[index] <= to[kept - 1] + Crack)
            {
                to[kept - 1] = Math.Max(to[kept - 1], to[index]);
                continue;
            }

            from[kept] = from[index];
            to[kept++] = to[index];
        }

        Count = kept;
    }

    /// <summary>True when the row is seen from end to end.</summary>
    public bool IsWhole => Count == 1 && from[0] <= LimitFrom + Crack && to[0] >= LimitTo - Crack;

    public double Sum()
    {
        var sum = 0.0;
        for (var index = 0; index < Count; index++) sum += to[index] - from[index];
        return sum;
    }

    /// <summary>Length seen by both; each must be united.</summary>
    public static double Common(RowIntervals one, RowIntervals other)
    {
        var sum = 0.0;
        for (int i = 0, j = 0; i < one.Count && j < other.Count;)
        {
            sum += Math.Max(0, Math.Min(one.to[i], other.to[j]) - Math.Max(one.from[i], other.from[j]));
            if (one.to[i] < other.to[j]) i++;
            else j++;
        }

        return sum;
    }

    private void Append(double low, double high)
    {
        if (Count == from.Length)
        {
            Array.Resize(ref from, Count * 2);
            Array.Resize(ref to, Count * 2);
        }

        from[Count] = low;
        to[Count++] = high;
    }
}
