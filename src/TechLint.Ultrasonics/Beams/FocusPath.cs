using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Rays;

namespace TechLint.Ultrasonics.Beams;

/// <summary>How far along a ray its focus lies, as a path in the section (mm); 0 for no focus, or one behind the beam.</summary>
internal static class FocusPath
{
    /// <param name="section">The section.</param>
    /// <param name="focus">As stated.</param>
    /// <param name="angle">In the section, from the local normal, not negative.</param>
    /// <param name="exitY">Exit point.</param>
    /// <param name="direction">+1 towards +y, −1 towards −y.</param>
    /// <param name="shrink">Path in the section for one of the beam's own.</param>
    public static double InSection(SectionRays section, Focus focus, double angle, double exitY, int direction, double shrink)
    {
        var distance = focus.Distance.Millimetres;
        return focus.Kind switch
        {
            FocusKind.Path => distance * shrink,
            FocusKind.Depth => ToDepth(section, angle, distance),
            FocusKind.Across => ToPlace(section, angle, direction * (distance - exitY)),
            _ => 0,
        };
    }

    /// <summary>A depth below the wall lies in the next legs, unfolded.</summary>
    private static double ToDepth(SectionRays section, double angle, double depth)
    {
        if (!(depth > 0)) return 0;
        var before = Math.Ceiling(depth / section.Thickness) - 1;
        if (!(before < MostLegs)) return 0;
        var leg = (int)before + 1;
        var rest = depth - (before * section.Thickness);
        return section.TryReach(angle, (leg & 1) == 1 ? rest : section.Thickness - rest, leg, out _, out var path) ? path : 0;
    }

    private static double ToPlace(SectionRays section, double angle, double advance)
    {
        if (!(advance > 0) || !(angle > 0)) return 0;
        if (!section.IsCurved) return advance / Math.Sin(angle);
        if (!section.TryReach(angle, section.Thickness, 1, out var legAdvance, out var legPath)) return WithinLeg(section, angle, advance);
        var whole = Math.Floor(advance / legAdvance);
        var rest = advance - (whole * legAdvance);
        return whole % 2 == 0
            ? (whole * legPath) + WithinLeg(section, angle, rest)
            : ((whole + 1) * legPath) - WithinLeg(section, angle, legAdvance - rest);
    }

    /// <summary>Triangle of axis, exit point and focus: <c>path / sin φ = R / sin(θ ± φ)</c>.</summary>
    private static double WithinLeg(SectionRays section, double angle, double advance)
    {
        var polar = advance / section.ScanRadius;
        var opposite = Math.Sin(angle + (section.Bend * polar));
        return opposite > 0 ? section.ScanRadius * Math.Sin(polar) / opposite : 0;
    }

    private const double MostLegs = 30;
}
