using System.Numerics;
using TechLint.Ultrasonics.Examinations;

namespace TechLint.Ultrasonics.Fields;

/// <summary>
/// A plane longitudinal wave of a solid wedge that passes a film of couplant into a solid part: displacement amplitude of the transmitted wave over that of the incident one.
/// Slip contact: normal displacement and normal stress go on, shear stress is none on either side (the film, thin against the wavelength, carries pressure alone).
/// </summary>
/// <remarks>
/// With the normal impedance of a half-space without shear stress <c>Z = ρcL cos²2γ/cos θL + ρcT sin²2γ/cos γ</c> (γ of the transverse wave) for the
/// wedge (w) and the part (p), both from one sine by Snell: <c>T = 2 ρw cw cos 2γw/(Zw + Zp) × (2 sin γp for the transverse wave, cos 2γp/cos θp
/// for the longitudinal one)</c>. Beyond a critical angle the cosine is imaginary, and so is its share. Derived from the conditions above; with
/// a liquid wedge it is the liquid-solid formula of Brekhovskikh, Waves in Layered Media (from memory). tests/Validation solves the four boundary equations instead.
/// Valid for plane waves and welded nowhere: dry spots, thick films and resonances in the film are left out.
/// </remarks>
internal sealed class SlipContact
{
    /// <summary>Steps of the table over the sine in the part: read between them by a straight line, within 0.1 % away from a critical angle.</summary>
    private const int Steps = 4096;

    /// <summary>A wave along the surface has no normal impedance: its cosine is kept from nothing.</summary>
    private const double LeastCosine = 1e-9;

    private readonly Complex[] table = new Complex[Steps + 1];

    /// <param name="wedgeDensity">Any unit, the same for both.</param>
    /// <param name="wedgeLongitudinal">Speeds in mm/s.</param>
    /// <param name="wedgeTransverse">0 for a liquid.</param>
    /// <param name="partDensity">As the wedge's.</param>
    /// <param name="partLongitudinal">Of the part.</param>
    /// <param name="partTransverse">Of the part.</param>
    /// <param name="wave">The wave looked for in the part.</param>
    public SlipContact(
        double wedgeDensity, double wedgeLongitudinal, double wedgeTransverse, double partDensity, double partLongitudinal, double partTransverse, Wave wave)
    {
        for (var step = 0; step <= Steps; step++)
        {
            table[step] = Transmission(
                (double)step / Steps, wedgeDensity, wedgeLongitudinal, wedgeTransverse, partDensity, partLongitudinal, partTransverse, wave);
        }
    }

    /// <summary>At one sine in the part, not negative, without a table. Arguments as those of the table.</summary>
    public static Complex Transmission(
        double sine, double wedgeDensity, double wedgeLongitudinal, double wedgeTransverse, double partDensity, double partLongitudinal, double partTransverse, Wave wave)
    {
        var slowness = sine / (wave == Wave.Transverse ? partTransverse : partLongitudinal);
        var (cosineWedge, sineWedgeShear) = (Cosine(slowness * wedgeLongitudinal), slowness * wedgeTransverse);
        var (cosinePart, sinePartShear) = (Cosine(slowness * partLongitudinal), slowness * partTransverse);
        var wedge = Impedance(wedgeDensity, wedgeLongitudinal, wedgeTransverse, cosineWedge, sineWedgeShear);
        var part = Impedance(partDensity, partLongitudinal, partTransverse, cosinePart, sinePartShear);
        var normal = 2 * wedgeDensity * wedgeLongitudinal * (1 - (2 * sineWedgeShear * sineWedgeShear)) / (wedge + part);
        return wave == Wave.Transverse
            ? normal * 2 * sinePartShear
            : normal * (1 - (2 * sinePartShear * sinePartShear)) / cosinePart;
    }

    /// <summary>At a sine in the part; odd for the transverse wave, whose displacement points along +z on the +y side.</summary>
    public Complex At(double sine, Wave wave)
    {
        var place = Math.Min(Math.Abs(sine), 1) * Steps;
        var index = Math.Min((int)place, Steps - 1);
        var value = table[index] + ((place - index) * (table[index + 1] - table[index]));
        return wave == Wave.Transverse && sine < 0 ? -value : value;
    }

    private static Complex Impedance(double density, double longitudinal, double transverse, Complex cosine, double shearSine)
    {
        var doubled = 1 - (2 * shearSine * shearSine);
        var shear = Cosine(shearSine);
        return (density * longitudinal * doubled * doubled / cosine) + (density * transverse * 4 * shearSine * shearSine * shear);
    }

    private static Complex Cosine(double sine)
    {
        var square = 1 - (sine * sine);
        return square >= 0 ? Math.Max(Math.Sqrt(square), LeastCosine) : new Complex(0, Math.Max(Math.Sqrt(-square), LeastCosine));
    }
}
