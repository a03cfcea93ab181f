using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Welds;

namespace TechLint.Ultrasonics.Coverage;

/// <summary>The examined rectangle in the frame of the outer surface: y along that surface, z from it, mm.</summary>
internal readonly record struct VolumeRectangle(double FromY, double ToY, double FromZ, double ToZ)
{
    /// <param name="weld">The weld.</param>
    /// <param name="volume">What is stated to be examined.</param>
    /// <param name="thickness">Wall, mm.</param>
    /// <param name="outsideDiameter">Of a section curved across the weld; null for a flat one.</param>
    /// <param name="besideIsInside"><paramref name="volume"/>'s distance beside the weld counts along the inner surface: every pass scans from there.</param>
    public static VolumeRectangle Of(
        WeldSection weld, ExaminedVolume volume, double thickness, double? outsideDiameter, bool besideIsInside)
    {
        var outerRadius = outsideDiameter / 2 ?? double.PositiveInfinity;
        var (left, right) = Toes(weld, thickness, outerRadius);
        var beside = volume.BesideWeld.Millimetres * (besideIsInside ? ToOuter(thickness, outerRadius) : 1);
        return new VolumeRectangle(left - beside, right + beside, volume.From.At(thickness), volume.To.At(thickness));
    }

    private static (double Left, double Right) Toes(WeldSection weld, double thickness, double outerRadius)
    {
        var left = double.PositiveInfinity;
        var right = double.NegativeInfinity;
        void Reach(double from, double to, double z)
        {
            left = Math.Min(left, from * ToOuter(z, outerRadius));
            right = Math.Max(right, to * ToOuter(z, outerRadius));
        }

        void ReachToes(Reinforcement? added, double z)
        {
            if (added is null) return;
            var half = added.Width.Millimetres / 2;
            Reach(added.Centre.Millimetres - half, added.Centre.Millimetres + half, z);
        }

        var hasCap = weld.Cap is not null && weld.Preparation.Shape != PreparationShape.PressureWeld;
        var hasRoot = weld.Root is not null && weld.Preparation.Shape != PreparationShape.PressureWeld;
        if (hasCap) ReachToes(weld.Cap, 0);
        if (hasRoot) ReachToes(weld.Root, thickness);

        // A surface without reinforcement has its toes where the preparation opens to it. Faces are straight or bulge to one side only: their corners
        // reach farthest.
        foreach (var (y, z) in WeldOutline.At(weld.Preparation, thickness).Corners)
        {
            var isOuter = z <= thickness / 2;
            if (!(isOuter ? hasCap : hasRoot)) Reach(y, y, z);
        }

        return (left, right);
    }

    /// <summary>Arc on the outer surface over arc at a depth.</summary>
    private static double ToOuter(double z, double outerRadius) =>
        double.IsInfinity(outerRadius) ? 1 : outerRadius / (outerRadius - z);
}
