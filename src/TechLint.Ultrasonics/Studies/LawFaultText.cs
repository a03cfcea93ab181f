namespace TechLint.Ultrasonics.Studies;

/// <summary>Why a law does not exist, as a reason beside a null.</summary>
internal static class LawFaultText
{
    public static string Of(LawFault fault) => fault switch
    {
        LawFault.NotRefracted => "the angle is not refracted into the part",
        LawFault.BelowFirstCritical => "the transverse beam lies below the first critical angle",
        LawFault.OutsideWedge => "the exit point does not lie under the wedge",
        LawFault.OutsideArray => "the aperture reaches outside the array",
        LawFault.UnknownSpeed => "a speed of sound is unknown",
        LawFault.Geometry => "the beam's geometry is incomplete or impossible",
        _ => "",
    };
}
