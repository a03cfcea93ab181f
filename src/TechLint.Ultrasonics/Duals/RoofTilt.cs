namespace TechLint.Ultrasonics.Duals;

/// <summary>
/// How far the beam of one half of a dual probe leans out of the plane of incidence, towards the other half: rad, in the wedge and in the part.
/// </summary>
/// <remarks>
/// The roof tilts each half by ρ about the array's own axis, so that a beam steered by β from the half's normal has the direction
/// <c>cos β (cos ρ n + sin ρ x) + sin β e</c>: n the array's normal and e its axis, both in the plane of incidence, x across it. Its share across,
/// <c>sin γw = cos β sin ρ</c>, over the speed is kept by refraction (Snell's law in three dimensions; the section does not bend across), hence
/// <c>sin γ = (v/vw) sin γw</c>. What is left for the plane of incidence is refraction between the speeds <c>vw / cos γw</c> and <c>v / cos γ</c>: exact for flat
/// surfaces and for cylinders along x, over any number of mirrors.
/// </remarks>
/// <param name="InWedge">γw.</param>
/// <param name="InPart">γ; NaN where such a beam does not enter the part.</param>
internal readonly record struct RoofTilt(double InWedge, double InPart)
{
    /// <param name="roof">ρ.</param>
    /// <param name="steering">β.</param>
    /// <param name="wedgeSpeed">vw.</param>
    /// <param name="partSpeed">v.</param>
    public static RoofTilt Of(double roof, double steering, double wedgeSpeed, double partSpeed)
    {
        var sine = Math.Cos(steering) * Math.Sin(roof);
        return new RoofTilt(Math.Asin(sine), Math.Asin(sine * partSpeed / wedgeSpeed));
    }

    /// <summary>β from the angle between beam and array's normal as the plane of incidence shows it: <c>tan β = cos ρ tan β'</c>.</summary>
    public static double SteeringFrom(double inPlane, double roof) => Math.Atan(Math.Cos(roof) * Math.Tan(inPlane));

    /// <summary>A speed as the plane of incidence sees it, in a medium where the beam leans by as much as Snell's law says.</summary>
    public double InPlane(double speed, double wedgeSpeed)
    {
        var sine = Math.Sin(InWedge) * speed / wedgeSpeed;
        return speed / Math.Sqrt(1 - (sine * sine));
    }
}
