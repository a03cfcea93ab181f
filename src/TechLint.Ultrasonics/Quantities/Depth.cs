namespace TechLint.Ultrasonics.Quantities;

/// <summary>A depth below a surface: a length, or a share of the wall.</summary>
public readonly record struct Depth(double Value, bool IsShare)
{
    /// <summary>In mm, for a wall of the given thickness in mm.</summary>
    public double At(double thickness) => IsShare ? Value / 100 * thickness : Value;
}
