namespace TechLint.Ultrasonics.Fields;

/// <summary>
/// How loud the echo of a small reflector in a grating lobe is beside the same reflector in the main lobe at equal path in the far field:
/// <c>L = 20 lg [ (g(lobe)/g(main))² P ]</c>, <c>g = T(θ) (cos θ/cos α) sinc(π w sin β/λw)</c>: transmission, the ray tube's opening through the interface, the element's pattern.
/// P is what the pulse leaves of the lobe.
/// </summary>
/// <remarks>
/// In the lobe of order m the pulses of neighbouring elements arrive m periods apart. Of n elements sending and n receiving, <c>n − |j|</c> pairs come j m periods late, so that with a Gaussian
/// pulse of the stated echo bandwidth (envelope <c>exp(−2π²σ²t²)</c>, <c>σ = B f0/(2√(2 ln 2))</c>) the peak falls to <c>P = Σ (n − |j|) exp(−2π²σ²(j m/f0)²) / n²</c>. Without a
/// bandwidth P = 1: the lobe of a continuous wave, never too quiet. Derived from array theory (sum of delayed pulses); tests/Validation adds the pulses up one by one. The nearest lobe is judged:
/// farther orders are smeared more and stand where an element is quieter.
/// </remarks>
internal static class GratingLevel
{
    /// <param name="main">g of the main lobe.</param>
    /// <param name="lobe">g of the grating lobe.</param>
    /// <param name="elements">n.</param>
    /// <param name="order">m.</param>
    /// <param name="bandwidth">B, as a fraction; null where unknown.</param>
    public static double Decibels(double main, double lobe, int elements, int order, double? bandwidth)
    {
        var echo = lobe / main * (lobe / main) * Smear(elements, order, bandwidth);
        return echo > 0 ? Math.Max(FieldSum.Silence, 20 * Math.Log10(echo)) : double.IsNaN(echo) ? double.NaN : FieldSum.Silence;
    }

    /// <summary>P.</summary>
    public static double Smear(int elements, int order, double? bandwidth)
    {
        if (!(bandwidth > 0)) return 1;
        var sigma = Spectrum.Sigma(1, bandwidth.Value);
        var sum = (double)elements;
        for (var late = 1; late < elements; late++)
        {
            var exponent = 2 * Math.Pow(Math.PI * sigma * late * order, 2);
            if (exponent > NoMore) break;
            sum += 2 * (elements - late) * Math.Exp(-exponent);
        }

        return sum / ((double)elements * elements);
    }

    /// <summary>g at a direction.</summary>
    /// <param name="transmission">|T(θ)|.</param>
    /// <param name="partAngle">θ, rad.</param>
    /// <param name="wedgeAngle">α, rad.</param>
    /// <param name="offNormal">β, rad.</param>
    /// <param name="widthPerWavelength">w/λw.</param>
    public static double Pattern(double transmission, double partAngle, double wedgeAngle, double offNormal, double widthPerWavelength)
    {
        var x = Math.PI * widthPerWavelength * Math.Sin(offNormal);
        return transmission * Math.Cos(partAngle) / Math.Cos(wedgeAngle) * (x == 0 ? 1 : Math.Sin(x) / x);
    }

    /// <summary>exp of less is nothing.</summary>
    private const double NoMore = 50;
}
