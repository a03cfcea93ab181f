namespace TechLint.Model.Binding;

/// <summary>Unions of bands, exact: 6 in and 152.4 mm are one line.</summary>
public static class Bands
{
    /// <summary>The first stretch of <paramref name="whole"/> that no part holds, or null. Ends that touch leave no gap; a stretch may be a single point.</summary>
    public static (decimal From, decimal To)? FirstGap(QuantityBand whole, IEnumerable<QuantityBand> parts)
    {
        var end = whole.ToExact;
        var reached = whole.FromExact;
        var started = false;
        foreach (var part in parts.OrderBy(part => part.FromExact))
        {
            if (part.ToExact < reached || (started && part.ToExact == reached)) continue;
            if (part.FromExact > reached) break;
            reached = part.ToExact;
            started = true;
            if (reached >= end) return null;
        }

        if (started && reached >= end) return null;
        var next = parts.Where(part => part.FromExact > reached).Select(part => part.FromExact).DefaultIfEmpty(end).Min();
        return (reached, Math.Min(next, end));
    }
}
