namespace TechLint.Tests.Tools.Waves;

/// <summary>An isotropic elastic solid: speeds in mm/us, density in g/cm³ (stresses then come out in GPa).</summary>
internal readonly record struct Solid(double Longitudinal, double Transverse, double Density)
{
    public double Rigidity => Density * Transverse * Transverse;

    public double Lame => (Density * Longitudinal * Longitudinal) - (2 * Rigidity);
}
