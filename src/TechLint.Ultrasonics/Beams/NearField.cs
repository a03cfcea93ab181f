using System.Collections.Immutable;

namespace TechLint.Ultrasonics.Beams;

/// <summary>Near-field lengths, in mm, from the aperture in one medium.</summary>
internal static class NearField
{
    /// <summary>
    /// k of <c>N = k L²/(4λ)</c> by short/long side, from 0.3 (and below) to 1.0 in tenths. Phased-array course notes, Table 2-1
    /// (published: 1.0, 0.9, 0.7, 0.6, 0.4, 0.3); 0.8 and 0.5 from the on-axis Fresnel integral, which the table follows to
    /// 0.01 (checked in tests/Validation).
    /// </summary>
    private static readonly ImmutableArray<double> Factors = [0.99, 1.00, 1.014, 1.04, 1.09, 1.153, 1.25, 1.37];

    private const double FirstRatio = 0.3;
    private const double RatioStep = 0.1;

    /// <summary>(D² − λ²)/(4λ); 0 for an element smaller than the wavelength.</summary>
    public static double OfRound(double diameter, double wavelength) =>
        Math.Max(0, ((diameter * diameter) - (wavelength * wavelength)) / (4 * wavelength));

    /// <summary>k L²/(4λ), L the longer side.</summary>
    public static double OfRectangle(double side, double otherSide, double wavelength)
    {
        var longer = Math.Max(side, otherSide);
        return Factor(Math.Min(side, otherSide) / longer) * longer * longer / (4 * wavelength);
    }

    /// <summary>k by linear interpolation between the tenths.</summary>
    public static double Factor(double shortToLong)
    {
        if (double.IsNaN(shortToLong)) return double.NaN;
        var place = (shortToLong - FirstRatio) / RatioStep;
        if (place <= 0) return Factors[0];
        if (place >= Factors.Length - 1) return Factors[^1];
        var index = (int)place;
        return Factors[index] + ((place - index) * (Factors[index + 1] - Factors[index]));
    }
}
