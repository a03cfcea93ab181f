using System.Collections.Immutable;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Rays;

namespace TechLint.Ultrasonics.Referencing;

/// <summary>A reference block as far as sound paths in it go. Its faces are taken as wide enough for every bounce.</summary>
/// <param name="OutsideDiameter">Null for a flat section: a plate, or a pipe block sounded along its axis.</param>
public sealed record BlockSection(Length Thickness, Length? OutsideDiameter);

/// <summary>Where a reflector of a block is met.</summary>
/// <param name="Depth">Of what reflects, below the scanning surface; a notch's corner lies in a surface.</param>
/// <param name="OddLegs">It is met while the beam goes down.</param>
/// <param name="EvenLegs">It is met while the beam comes back up.</param>
public sealed record ReflectorPlace(Length Depth, bool OddLegs, bool EvenLegs)
{
    public static ReflectorPlace Hole(Length depth) => new(depth, OddLegs: true, EvenLegs: true);

    /// <summary>The corner of a notch in the opposite surface.</summary>
    public static ReflectorPlace OppositeNotch(Length thickness) => new(thickness, OddLegs: true, EvenLegs: false);

    /// <summary>The corner of a notch in the scanning surface.</summary>
    public static readonly ReflectorPlace NearNotch = new(default, OddLegs: false, EvenLegs: true);
}

/// <summary>Sound paths at which a beam meets a block's reflectors, by the same rays as in the part.</summary>
public static class ReflectorPaths
{
    /// <param name="angle">In the block, from the local normal at the exit point.</param>
    /// <param name="legs">Legs that count.</param>
    public static ImmutableArray<Length> Of(
        BlockSection block, IReadOnlyList<ReflectorPlace> reflectors, Angle angle, int legs)
    {
        var rays = block.OutsideDiameter is { } diameter
            ? SectionRays.FromOutside(block.Thickness.Millimetres, diameter.Millimetres)
            : SectionRays.Flat(block.Thickness.Millimetres);
        var paths = ImmutableArray.CreateBuilder<Length>();
        foreach (var reflector in reflectors)
        {
            for (var leg = 1; leg <= legs; leg++)
            {
                if (!((leg & 1) == 1 ? reflector.OddLegs : reflector.EvenLegs)) continue;
                if (!rays.TryReach(angle.Radians, reflector.Depth.Millimetres, leg, out _, out var path)) continue;
                paths.Add(new Length(path));
            }
        }

        paths.Sort();
        return paths.ToImmutable();
    }
}
