using System.Collections.Immutable;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Ultrasonics.Tofd;

/// <summary>One zone of a recommended set-up, as shares of the wall.</summary>
/// <param name="From">Its upper end.</param>
/// <param name="To">Its lower end.</param>
/// <param name="Crossing">Where the axes of its pair should cross.</param>
public sealed record TofdZone(Share From, Share To, Share Crossing);

/// <summary>
/// How many pairs a wall wants, and where their axes cross. ISO 10863:2020, Table 2 (from memory, confidence medium): 1 zone to 50 mm (crossing 2/3),
/// 2 to 100 mm (1/3, 5/6), 3 to 200 mm (2/9, 5/9, 8/9), 4 to 300 mm (2/12, 5/12, 8/12, 11/12; the first may be printed as 1/12).
/// That is: equal zones, each crossed at two thirds of its own height.
/// </summary>
public static class TofdZones
{
    private static readonly double[] UpperEnds = [50, 100, 200, 300];

    /// <summary>Where the axes cross in each zone, as a share of its height.</summary>
    private const double CrossingInZone = 2.0 / 3;

    /// <summary>The table starts here: 6 mm.</summary>
    private const double LeastWall = 6;

    /// <summary>Empty outside the table, 6 to 300 mm.</summary>
    public static ImmutableArray<TofdZone> Recommended(Length thickness)
    {
        if (!(thickness.Millimetres >= LeastWall)) return [];
        var row = Array.FindIndex(UpperEnds, end => thickness.Millimetres <= end);
        if (row < 0) return [];
        var count = row + 1;
        return
        [
            .. Enumerable.Range(0, count).Select(index => new TofdZone(
                new Share(100.0 * index / count), new Share(100.0 * (index + 1) / count), new Share(100 * (index + CrossingInZone) / count))),
        ];
    }
}
