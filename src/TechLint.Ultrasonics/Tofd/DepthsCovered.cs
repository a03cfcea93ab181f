using System.Collections.Immutable;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Ultrasonics.Tofd;

/// <summary>
/// Several diffraction pairs together: the depth, from the outer surface, that they cover on their mid-planes in their own zones, and what of the wall they
/// leave in between. Each pair speaks of its own mid-plane: pairs at different offsets do not cover one another beside it.
/// </summary>
/// <param name="Covered">United, from the outer surface down.</param>
/// <param name="Unseen">The rest of the wall, dead zones included.</param>
public sealed record DepthsCovered(ImmutableArray<CoveredDepth> Covered, ImmutableArray<CoveredDepth> Unseen)
{
    /// <summary>Null where the case has no pair that could be worked out.</summary>
    public static DepthsCovered? Of(CaseStudy study)
    {
        var wall = study.Thickness.Millimetres;
        var stretches = new List<(double From, double To)>();
        var any = false;
        foreach (var pass in study.Passes)
        {
            foreach (var beam in pass.Beams)
            {
                if (beam.Tofd?.Detail is not { } detail) continue;
                any = true;
                var (from, to) = (detail.CoveredInZone.From.Millimetres, detail.CoveredInZone.To.Millimetres);
                if (!(to > from)) continue;
                stretches.Add(pass.Pass.ScanningSurface == Surface.Inside ? (wall - to, wall - from) : (from, to));
            }
        }

        return any ? Of(stretches, wall) : null;
    }

    internal static DepthsCovered Of(List<(double From, double To)> stretches, double wall)
    {
        var covered = ImmutableArray.CreateBuilder<CoveredDepth>();
        var unseen = ImmutableArray.CreateBuilder<CoveredDepth>();
        var reached = 0.0;
        stretches.Sort();
        for (var index = 0; index < stretches.Count;)
        {
            var (from, to) = stretches[index++];
            while (index < stretches.Count && stretches[index].From <= to) to = Math.Max(to, stretches[index++].To);
            if (from > reached) unseen.Add(new CoveredDepth(new Length(reached), new Length(from)));
            covered.Add(new CoveredDepth(new Length(from), new Length(to)));
            reached = to;
        }

        if (reached < wall) unseen.Add(new CoveredDepth(new Length(reached), new Length(wall)));
        return new DepthsCovered(covered.ToImmutable(), unseen.ToImmutable());
    }
}
