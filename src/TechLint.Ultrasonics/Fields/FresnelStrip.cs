using System.Numerics;

namespace TechLint.Ultrasonics.Fields;

/// <summary>
/// What the size of a source across the plane of incidence does to its sound in that plane: <c>√2 e^(−iπ/4) (C(a) + iS(a))</c>, C and S the Fresnel integrals,
/// <c>a = e/√(2 λw D)</c>; e the size, D the path counted in the wedge (a part's path × v/vw). Near the source it is 1 (a line source, cylindrical spreading), far from it e/√(λw D)
/// (spreading both ways). Paraxial across the plane (e small against D); classical diffraction theory (Fresnel).
/// </summary>
internal static class FresnelStrip
{
    private const double Greatest = 12;
    private const int Steps = 6000;
    private static readonly Complex Turn = Math.Sqrt(2) * Complex.FromPolarCoordinates(1, -Math.PI / 4);
    private static readonly Complex[] Table = Integrals();

    public static Complex At(double size, double wedgeWavelength, double distance)
    {
        var a = size / Math.Sqrt(2 * wedgeWavelength * distance);
        if (!(a < Greatest))
        {
            // First term of the asymptotic series.
            var (sine, cosine) = Math.SinCos(Math.PI * a * a / 2);
            return Turn * new Complex(0.5 + (sine / (Math.PI * a)), 0.5 - (cosine / (Math.PI * a)));
        }

        var place = a / Greatest * Steps;
        var index = Math.Min((int)place, Steps - 1);
        return Turn * (Table[index] + ((place - index) * (Table[index + 1] - Table[index])));
    }

    private static Complex[] Integrals()
    {
        var table = new Complex[Steps + 1];
        const double step = Greatest / Steps;
        for (var index = 1; index <= Steps; index++)
        {
            // Simpson over one step.
            var from = (index - 1) * step;
            table[index] = table[index - 1] + (step / 6 * (Wave(from) + (4 * Wave(from + (step / 2))) + Wave(from + step)));
        }

        return table;

        static Complex Wave(double t) => Complex.FromPolarCoordinates(1, Math.PI * t * t / 2);
    }
}
