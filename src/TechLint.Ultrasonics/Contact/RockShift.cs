using TechLint.Ultrasonics.Quantities;

namespace TechLint.Ultrasonics.Contact;

/// <summary>
/// The most that a law's angle and exit point move while its wedge rocks from edge to edge (<see cref="Rocking"/>), or because its sole is cut for another diameter.
/// Worked out when asked for.
/// </summary>
/// <remarks>
/// The law's ray keeps its direction in the wedge; the gap is filled with couplant, and Snell's law holds at the sole and at the surface as they then stand. Where the surface bends
/// across the beam (girth welds) the wedge tips sideways: the angle from the surface's normal hardly moves, the beam squints. Range: the ray picture of <c>Beams/Sole</c>, whose limits in
/// thin films it shares. Source: Snell's law in vectors.
/// </remarks>
public sealed class RockShift
{
    private readonly Lazy<(Angle? Angle, Length? Exit, Angle? Squint, string? NotComputed)> work;

    internal RockShift(Func<(Angle? Angle, Length? Exit, Angle? Squint, string? NotComputed)> work) => this.work = new(work);

    /// <summary>Of the angle in the part against the law's, the greatest either way; positive flattens the beam.</summary>
    public Angle? AngleShift => work.Value.Angle;

    /// <summary>Of the exit point along the surface, the greatest either way; positive towards the front.</summary>
    public Length? ExitShift => work.Value.Exit;

    /// <summary>Out of the plane of incidence, either way.</summary>
    public Angle? Squint => work.Value.Squint;

    /// <summary>Why the others are null.</summary>
    public string? NotComputed => work.Value.NotComputed;
}
