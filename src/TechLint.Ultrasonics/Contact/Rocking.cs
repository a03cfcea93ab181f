using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Ultrasonics.Contact;

/// <summary>
/// How far a wedge can rock on a curved surface, either way, until an edge of its sole touches. The frame holds the middle of the sole over one place of the surface.
/// </summary>
/// <remarks>
/// A flat sole of length a on a convex surface of radius R: <c>tan ψ = a / 2R</c>. A sole cut to Rc, φ the half-angle of its arc, <c>sin φ = a / 2Rc</c>: on a convex surface,
/// Rc above R, <c>tan ψ = (Rc − R) sin φ / (Rc − (Rc − R) cos φ)</c>; on a hollow one, Rc below R, <c>tan ψ = (R − Rc) sin φ / (Rc + (R − Rc) cos φ)</c>. A sole that fits, or that rests on both
/// its edges, does not rock. The film of couplant does not hold it: a film of any thickness lets it tilt as far. Range: stiff sole and surface; either direction by
/// itself. Source: geometry, two circles that touch (held to a search over placed circles in tests/Validation).
/// </remarks>
public static class Rocking
{
    /// <param name="curvature">How the part bends under the frame.</param>
    /// <param name="diameter">Of the scanning surface; null where it is flat.</param>
    /// <param name="isHollow">Scanned from inside.</param>
    /// <param name="wedge">The wedge.</param>
    /// <returns>0 where it stands fast; NaN where the sole is wider than its circle.</returns>
    public static Angle Of(Curvature curvature, Length? diameter, bool isHollow, Wedge wedge) =>
        SoleOnCurve.Of(curvature, diameter, isHollow, wedge) is { } contact ? Angle.FromRadians(contact.FullRock) : new Angle(0);
}
