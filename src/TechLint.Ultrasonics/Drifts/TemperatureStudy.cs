using TechLint.Ultrasonics.Quantities;

namespace TechLint.Ultrasonics.Drifts;

/// <summary>
/// How far a beam's angle in the part may lie from its law when wedge and part are not at the temperature of the block that it was set on. Worked out when asked for.
/// </summary>
/// <remarks>
/// A law is a set of fixed delays: warmed, an array keeps <c>sin β / vw</c> (the delays' slope), a single element keeps its direction in the wedge, and the surface refracts
/// with the speeds of the moment, <c>sin θ' = (v'/vw') sin α'</c>, <c>v' = v + drift ΔT</c>. Tried are ±ΔT in wedge and part together, and in the wedge alone; the
/// worst over the laws is told, signed (positive: the beam has flattened). A law that is no longer refracted at all makes it infinite. Range: one temperature all through the
/// wedge (a warm pipe heats it from its sole up: then it also bends), drifts as in <see cref="Materials.MaterialDrifts"/>; the couplant's own drift is left out.
/// Source: Snell's law.
/// </remarks>
public sealed class TemperatureStudy
{
    private readonly Lazy<(Shift Permitted, Shift Surface)> work;

    internal TemperatureStudy(Func<(Shift Permitted, Shift Surface)> work) => this.work = new(work);

    /// <summary>For the difference between block and part that the requirements permit; null where not computed.</summary>
    public AngleShift? Permitted => work.Value.Permitted.Worst;

    /// <summary>For the surface temperatures that the technique claims against the block's; null where not computed.</summary>
    public AngleShift? OverSurface => work.Value.Surface.Worst;

    /// <summary>Why <see cref="Permitted"/> is null.</summary>
    public string? NotComputed => work.Value.Permitted.NotComputed;

    /// <summary>Why <see cref="OverSurface"/> is null.</summary>
    public string? SurfaceNotComputed => work.Value.Surface.NotComputed;

    internal readonly record struct Shift(AngleShift? Worst, string? NotComputed);
}

/// <summary>A law's shift.</summary>
/// <param name="Law">The law's angle as stated.</param>
/// <param name="Shift">Of the angle in the part; positive flattens the beam. Infinite where the law is no longer refracted.</param>
/// <param name="Drift">Of temperature, that of the wedge.</param>
/// <param name="PartDrifts">The part drifts alike; else it stays at the block's temperature.</param>
public readonly record struct AngleShift(Angle Law, Angle Shift, TemperatureDifference Drift, bool PartDrifts);
