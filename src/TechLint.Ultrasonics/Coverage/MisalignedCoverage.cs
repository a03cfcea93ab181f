using System.Collections.Immutable;
using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;
using TechLint.Ultrasonics.Welds;

namespace TechLint.Ultrasonics.Coverage;

/// <summary>
/// Coverage over a step between misaligned edges: each half of the examined rectangle in the frame of its own surfaces, the beams from the other side as
/// they come over the step (see <see cref="Misalignment"/>). Shares are those of both halves together, by area.
/// </summary>
/// <remarks>An unseen part that lies across the step must not be halved below what counts: whether all is seen is judged with each half extended past the
/// step by what an unseen part may measure.</remarks>
internal static class MisalignedCoverage
{
    /// <summary>How far a half reaches beyond the step when completeness is judged, mm.</summary>
    private const double Past = UnseenParts.Tolerated;

    public static CoverageResult Compute(CoverageInput input, bool traceUnseen)
    {
        var (volume, left, right, both, area) = (0.0, 0.0, 0.0, 0.0, 0.0);
        var unseen = ImmutableArray.CreateBuilder<ImmutableArray<SectionPlace>>();
        foreach (var side in (ReadOnlySpan<Side>)[Side.Left, Side.Right])
        {
            if (Half(input, side, 0) is not { } half) continue;
            var result = CoverageKernel.Compute(half, traceUnseen);
            if (result.NotComputed is not null) return result;
            var size = half.Volume.ToY - half.Volume.FromY;
            volume += size * (100 - result.Volume.Percent);
            left += size * result.Left.Percent;
            right += size * result.Right.Percent;
            both += size * result.BothSides.Percent;
            area += size;
            foreach (var ring in result.Unseen) unseen.Add(side == Side.Left ? ring : [.. ring.Select(place => Lowered(place, input.Misalignment))]);
        }

        var (across, depth) = (0.0, 0.0);
        var isComplete = true;
        foreach (var side in (ReadOnlySpan<Side>)[Side.Left, Side.Right])
        {
            if (Half(input, side, Past) is not { } half) continue;
            var result = CoverageKernel.Compute(half, traceUnseen: false);
            isComplete &= result.IsComplete;
            if (result.LargestUnseenAcross.Millimetres * result.LargestUnseenDepth.Millimetres <= across * depth) continue;
            (across, depth) = (result.LargestUnseenAcross.Millimetres, result.LargestUnseenDepth.Millimetres);
        }

        return new CoverageResult(
            new Share(100 - (volume / area)), new Share(left / area), new Share(right / area), new Share(both / area), unseen.ToImmutable(),
            new Length(across), new Length(depth), isComplete, NotComputed: null);
    }

    public static VolumeSeen? Volume(CoverageInput input)
    {
        var (missing, area) = (0.0, 0.0);
        foreach (var side in (ReadOnlySpan<Side>)[Side.Left, Side.Right])
        {
            if (Half(input, side, 0) is not { } half) continue;
            if (CoverageKernel.Volume(half) is not { } seen) return null;
            var size = half.Volume.ToY - half.Volume.FromY;
            missing += size * (100 - seen.Volume.Percent);
            area += size;
        }

        return new VolumeSeen(new Share(100 - (missing / area)), IsComplete(input));
    }

    public static bool IsComplete(CoverageInput input) =>
        (Half(input, Side.Left, Past) is not { } left || CoverageKernel.IsComplete(left))
        && (Half(input, Side.Right, Past) is not { } right || CoverageKernel.IsComplete(right));

    /// <summary>One side of the step in its own frame; null where the examined rectangle has none of it.</summary>
    private static CoverageInput? Half(CoverageInput input, Side side, double past)
    {
        var volume = side == Side.Left
            ? input.Volume with { ToY = Math.Min(input.Volume.ToY, past) }
            : input.Volume with { FromY = Math.Max(input.Volume.FromY, -past) };
        if (!(volume.ToY > volume.FromY)) return null;
        return input with
        {
            Misalignment = 0,
            Volume = volume,
            Passes = [.. input.Passes.Select(pass => Seen(input, pass, side))],
        };
    }

    private static CoveragePass Seen(CoverageInput input, CoveragePass pass, Side side)
    {
        var isInside = pass.ScanningSurface == Surface.Inside;
        var rays = new PassFrame(input.Thickness, input.OutsideDiameter, pass.ScanningSurface).Rays;
        return pass with
        {
            Lines =
            [
                .. pass.Lines.Select(line => line.Direction > 0 != isInside == (side == Side.Left) ? line : Misalignment.Beyond(line, rays, input.Misalignment))
                    .OfType<SightLine>(),
            ],
        };
    }

    private static SectionPlace Lowered(SectionPlace place, double error) => place with { Z = new Length(place.Z.Millimetres + error) };
}
