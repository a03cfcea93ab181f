using System.Runtime.CompilerServices;

namespace TechLint.Ultrasonics.Coverage;

/// <summary>
/// The launches whose bounces all fall on mirrors, as stretches of whatever measures the launch (tan φ flat, sin φ curved). Every
/// bounce takes at most one stretch out. None at all (<see cref="Count"/> 0) means that nothing was taken out.
/// </summary>
internal struct LaunchSegments
{
    /// <summary>Bounces that are looked at: legs beyond the ninth are no practice.</summary>
    public const int GreatestLeg = Room;

    private const int Room = 9;

    private Buffer segments;

    public static LaunchSegments All => default;

    public int Count { get; private set; }

    public readonly (double From, double To) this[int index] => segments[index];

    public void Remove(double from, double to)
    {
        if (Count == 0)
        {
            segments[0] = (double.NegativeInfinity, double.PositiveInfinity);
            Count = 1;
        }

        Buffer kept = default;
        var count = 0;
        for (var index = 0; index < Count; index++)
        {
            var (start, end) = segments[index];
            // The outermost two reach to infinity, so that something is always left: 0 must never come to mean "all" by removing.
            if (start < from) kept[count++] = (start, Math.Min(end, from));
            if (end > to) kept[count++] = (Math.Max(start, to), end);
        }

        segments = kept;
        Count = count;
    }

    [InlineArray(Room)]
    private struct Buffer
    {
        private (double From, double To) first;
    }
}
