using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Ultrasonics.Beams;

/// <summary>A law as worked out, with what other kernels need of it beside what is shown.</summary>
/// <param name="Study">What is shown.</param>
/// <param name="Sight">What coverage takes; null where the law has a fault.</param>
/// <param name="Width">Its width along the section.</param>
/// <param name="Ray">Its way through the sole.</param>
/// <param name="Size">Of the aperture along the array or element, mm.</param>
/// <param name="Steering">From the element's normal, rad.</param>
internal sealed record Law(LawStudy Study, SightLine? Sight, BeamWidth Width, SoleRay Ray, double Size, double Steering)
{
    /// <summary>A law that does not exist: its angle is known, its other numbers are NaN.</summary>
    public static Law Broken(LawFault fault, Angle angle, int firstElement = 1)
    {
        var none = new Length(double.NaN);
        var nowhere = new Angle(double.NaN);
        return new Law(
            new LawStudy(fault, angle, nowhere, nowhere, firstElement, none, none, none, none, none, none, null, []),
            null, default, default, double.NaN, double.NaN);
    }
}
