using System.Collections.Immutable;
using System.Runtime.InteropServices;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Ultrasonics.Coverage;

/// <summary>
/// Traces what the rows leave unseen as rings. Between two rows, a stretch that meets exactly one of the other row slants
/// to it; where stretches begin, end, part or join, the edge is level, halfway between the rows. So the rings enclose
/// exactly the area that the rows sum. Outer rings run counter-clockwise in (y, z), rings of holes the other way, each outer ring before
/// the holes of its part.
/// </summary>
internal sealed class UnseenRings(double fromZ, double rowStep)
{
    /// <summary>Points nearer than this (mm) to the line through their neighbours say nothing.</summary>
    private const double Straight = 1e-6;

    private readonly List<List<(double From, double To)>> rows = [];
    private readonly List<(Corner From, Corner To)> edges = [];

    public void AddRow(UnseenParts unseen)
    {
        var row = new List<(double, double)>(unseen.GapCount);
        for (var index = 0; index < unseen.GapCount; index++) row.Add(unseen[index]);
        rows.Add(row);
    }

    public ImmutableArray<ImmutableArray<SectionPlace>> Trace()
    {
        var upper = new List<(double From, double To)>[rows.Count];
        var lower = new List<(double From, double To)>[rows.Count];
        for (var index = 0; index < rows.Count; index++)
        {
            upper[index] = [.. rows[index]];
            lower[index] = [.. rows[index]];
        }

        for (var index = 0; index + 1 < rows.Count; index++) Match(rows[index], rows[index + 1], lower[index], upper[index + 1]);
        for (var index = 0; index < rows.Count; index++)
        {
            var line = 2 * index;
            if (index > 0) AddSides(upper[index], line - 1, rows[index], line);
            if (index + 1 < rows.Count) AddSides(rows[index], line, lower[index], line + 1);
            if (index == 0) AddLevel([], rows[index], line);
            if (index + 1 < rows.Count) AddLevel(lower[index], upper[index + 1], line + 1);
            else AddLevel(rows[index], [], line);
        }

        return Order(Link());
    }

    /// <summary>Pairs that meet only each other end at the mean of their edges on the line between the rows.</summary>
    private static void Match(
        List<(double From, double To)> one, List<(double From, double To)> other,
        List<(double From, double To)> oneEnd, List<(double From, double To)> otherEnd)
    {
        var oneMeets = new int[one.Count];
        var otherMeets = new int[other.Count];
        var partner = new int[one.Count];
        for (int i = 0, j = 0; i < one.Count && j < other.Count;)
        {
            if (Math.Min(one[i].To, other[j].To) > Math.Max(one[i].From, other[j].From))
            {
                oneMeets[i]++;
                otherMeets[j]++;
                partner[i] = j;
            }

            if (one[i].To < other[j].To) i++;
            else j++;
        }

        for (var i = 0; i < one.Count; i++)
        {
            if (oneMeets[i] != 1 || otherMeets[partner[i]] != 1) continue;
            var mate = other[partner[i]];
            oneEnd[i] = otherEnd[partner[i]] = ((one[i].From + mate.From) / 2, (one[i].To + mate.To) / 2);
        }
    }

    private void AddSides(List<(double From, double To)> top, int topLine, List<(double From, double To)> bottom, int bottomLine)
    {
        for (var index = 0; index < top.Count; index++)
        {
            edges.Add((new Corner(bottom[index].From, bottomLine), new Corner(top[index].From, topLine)));
            edges.Add((new Corner(top[index].To, topLine), new Corner(bottom[index].To, bottomLine)));
        }
    }

    /// <summary>Level edges where only one side of a line is unseen.</summary>
    private void AddLevel(List<(double From, double To)> before, List<(double From, double To)> after, int line)
    {
        var places = before.Concat(after).SelectMany(gap => new[] { gap.From, gap.To }).Distinct().Order().ToList();
        for (var index = 0; index + 1 < places.Count; index++)
        {
            var middle = (places[index] + places[index + 1]) / 2;
            var isBefore = before.Exists(gap => gap.From < middle && middle < gap.To);
            var isAfter = after.Exists(gap => gap.From < middle && middle < gap.To);
            if (isBefore == isAfter) continue;
            var (low, high) = (new Corner(places[index], line), new Corner(places[index + 1], line));
            edges.Add(isAfter ? (low, high) : (high, low));
        }
    }

    private List<List<(double Y, double Z)>> Link()
    {
        var from = new Dictionary<Corner, List<int>>();
        for (var index = 0; index < edges.Count; index++)
        {
            ref var starting = ref CollectionsMarshal.GetValueRefOrAddDefault(from, edges[index].From, out _);
            (starting ??= []).Add(index);
        }

        var isUsed = new bool[edges.Count];
        var rings = new List<List<(double Y, double Z)>>();
        for (var first = 0; first < edges.Count; first++)
        {
            if (isUsed[first]) continue;
            var ring = new List<(double Y, double Z)>();
            for (var edge = first; !isUsed[edge];)
            {
                isUsed[edge] = true;
                ring.Add(Place(edges[edge].From));
                if (edges[edge].To == edges[first].From) break;
                edge = Next(edge, from[edges[edge].To], isUsed);
            }

            ring = Simplify(ring);
            if (ring.Count >= 3) rings.Add(ring);
        }

        return rings;
    }

    /// <summary>Where corners touch, the sharpest turn to the left keeps rings from crossing themselves.</summary>
    private int Next(int edge, List<int> leaving, bool[] isUsed)
    {
        var best = leaving[0];
        var bestTurn = double.NegativeInfinity;
        var (back, here) = (Place(edges[edge].From), Place(edges[edge].To));
        foreach (var candidate in leaving)
        {
            if (isUsed[candidate] && leaving.Count > 1) continue;
            var ahead = Place(edges[candidate].To);
            var (dy, dz) = (here.Y - back.Y, here.Z - back.Z);
            var (ey, ez) = (ahead.Y - here.Y, ahead.Z - here.Z);
            var turn = Math.Atan2((dy * ez) - (dz * ey), (dy * ey) + (dz * ez));
            if (turn > bestTurn) (best, bestTurn) = (candidate, turn);
        }

        return best;
    }

    private (double Y, double Z) Place(Corner corner) => (corner.Y, fromZ + (corner.Line * rowStep / 2));

    private static List<(double Y, double Z)> Simplify(List<(double Y, double Z)> ring)
    {
        var kept = new List<(double Y, double Z)>(ring.Count);
        for (var index = 0; index < ring.Count; index++)
        {
            var before = kept.Count > 0 ? kept[^1] : ring[^1];
            if (!IsStraight(before, ring[index], ring[(index + 1) % ring.Count])) kept.Add(ring[index]);
        }

        return kept;
    }

    private static bool IsStraight((double Y, double Z) before, (double Y, double Z) here, (double Y, double Z) after)
    {
        var (dy, dz) = (after.Y - before.Y, after.Z - before.Z);
        var length = Math.Sqrt((dy * dy) + (dz * dz));
        if (length < 1e-12) return true;
        return Math.Abs((dy * (here.Z - before.Z)) - (dz * (here.Y - before.Y))) < Straight * length
            && (dy * (here.Y - before.Y)) + (dz * (here.Z - before.Z)) >= 0;
    }

    private static ImmutableArray<ImmutableArray<SectionPlace>> Order(List<List<(double Y, double Z)>> rings)
    {
        var outer = rings.Where(ring => Area(ring) > 0).ToList();
        var holes = rings.Where(ring => Area(ring) < 0).ToList();
        var result = ImmutableArray.CreateBuilder<ImmutableArray<SectionPlace>>(rings.Count);
        foreach (var ring in outer)
        {
            result.Add(Published(ring));
            foreach (var hole in holes.Where(hole => Holds(ring, hole[0]) && outer.TrueForAll(
                other => ReferenceEquals(other, ring) || !Holds(other, hole[0]) || Area(other) > Area(ring))))
            {
                result.Add(Published(hole));
            }
        }

        return result.ToImmutable();
    }

    private static ImmutableArray<SectionPlace> Published(List<(double Y, double Z)> ring) =>
        [.. ring.Select(place => new SectionPlace(new Length(place.Y), new Length(place.Z)))];

    private static double Area(List<(double Y, double Z)> ring)
    {
        var twice = 0.0;
        for (var index = 0; index < ring.Count; index++)
        {
            var next = ring[(index + 1) % ring.Count];
            twice += (ring[index].Y * next.Z) - (next.Y * ring[index].Z);
        }

        return twice / 2;
    }

    private static bool Holds(List<(double Y, double Z)> ring, (double Y, double Z) place)
    {
        var isIn = false;
        for (int index = 0, last = ring.Count - 1; index < ring.Count; last = index++)
        {
            var (a, b) = (ring[index], ring[last]);
            if (a.Z > place.Z != b.Z > place.Z && place.Y < ((b.Y - a.Y) * (place.Z - a.Z) / (b.Z - a.Z)) + a.Y) isIn = !isIn;
        }

        return isIn;
    }

    /// <summary>Lines are counted by half rows: corners meet exactly, whatever the rounding of depths.</summary>
    private readonly record struct Corner(double Y, int Line);
}
