using System.Collections.Immutable;
using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Examinations;

namespace TechLint.Ultrasonics.Coverage;

/// <summary>One case of coverage: one thickness, one diameter, one set of probe places. Lengths in mm.</summary>
/// <param name="Thickness">Wall.</param>
/// <param name="OutsideDiameter">Of a section that is curved across the weld; null for a flat section.</param>
/// <param name="Volume">The examined rectangle, in the frame of the outer surface.</param>
/// <param name="Cap">Where the outer surface is no mirror, along that surface; null where all of it is.</param>
/// <param name="Root">Where the inner surface is no mirror, along the inner surface.</param>
/// <param name="Passes">United.</param>
/// <param name="RowStep">Rows are at most this far apart; a quarter of the shortest wavelength.</param>
internal sealed record CoverageInput(
    double Thickness, double? OutsideDiameter, VolumeRectangle Volume, MirrorGap? Cap, MirrorGap? Root,
    ImmutableArray<CoveragePass> Passes, double RowStep)
{
    /// <summary>
    /// What sound sees from the left is drawn in by this at both ends of every stretch (mm along the outer surface; negative lets it out). Where the probes
    /// of a side move together, their stretches move with them: a row that is whole though drawn in by e is whole for every move up to e, and one that is not
    /// though let out by e is not for any. Pairs are left as they are.
    /// </summary>
    public double LeftInset { get; init; }

    /// <summary>Likewise from the right.</summary>
    public double RightInset { get; init; }

    /// <summary>Hi-lo, mm: how much deeper the right edge lies than the left one, from the outer surface; 0 where the edges meet.</summary>
    public double Misalignment { get; init; }
}

/// <param name="ScanningSurface">What the pass rides on; its lines and pairs are in its own frame.</param>
/// <param name="Lines">Sound beams, law by law.</param>
/// <param name="Pairs">Diffraction and tandem pairs.</param>
internal sealed record CoveragePass(Surface ScanningSurface, ImmutableArray<SightLine> Lines, ImmutableArray<IPointSight> Pairs)
{
    /// <summary>Works the pairs out when sound has left something unseen, and only then; takes the place of <see cref="Pairs"/>.</summary>
    public Lazy<ImmutableArray<IPointSight>>? PairsWhenAsked { get; init; }

    /// <summary>Total-focusing images: they count for the volume and for the side that their probe stands on.</summary>
    public ImmutableArray<SidedSight> Images { get; init; } = [];
}

/// <summary>A stretch of a surface, along it, that does not mirror: reinforcement stands there.</summary>
internal readonly record struct MirrorGap(double From, double To)
{
    public static MirrorGap? Of(Reinforcement? reinforcement) => reinforcement is null || reinforcement.IsFlush
        ? null
        : new MirrorGap(
            reinforcement.Centre.Millimetres - (reinforcement.Width.Millimetres / 2),
            reinforcement.Centre.Millimetres + (reinforcement.Width.Millimetres / 2));
}
