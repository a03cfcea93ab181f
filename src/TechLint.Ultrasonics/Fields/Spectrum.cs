using System.Collections.Immutable;
using TechLint.Ultrasonics.Examinations;

namespace TechLint.Ultrasonics.Fields;

/// <summary>
/// The Gaussian amplitude spectrum of a pulse, <c>exp(−Δf²/2σ²)</c>, <c>σ = B f0/(2 √(2 ln 2))</c>, B the stated -6 dB bandwidth over the frequency f0, as evenly spaced lines. A probe whose
/// bandwidth is not stated sends one frequency: its side and grating lobes are then as strong as they can be.
/// </summary>
internal readonly struct Spectrum
{
    /// <summary>Lines and span: ±2.5 σ (level 0.04 at the ends); the spacing of σ/4 repeats the pulse in time only after 4/σ: 2.7 µs at 5 MHz and 70 %.</summary>
    private const int Count = 21;
    private const double Span = 2.5;

    /// <summary>Lines below a twentieth of the frequency carry no sound of this probe.</summary>
    private const double Lowest = 0.05;

    private Spectrum(double first, double step, ImmutableArray<double> powers)
    {
        First = first;
        Step = step;
        Powers = powers;
    }

    /// <summary>Hz.</summary>
    public double First { get; }

    /// <summary>Hz.</summary>
    public double Step { get; }

    /// <summary>Power of each line; they add up to 1.</summary>
    public ImmutableArray<double> Powers { get; }

    public static Spectrum Of(Transducer transducer) => Of(transducer.Frequency.Hertz, transducer.Bandwidth?.Fraction);

    public static Spectrum Single(double frequency) => new(frequency, 0, [1]);

    public static Spectrum Of(double frequency, double? bandwidth)
    {
        if (!(bandwidth > 0)) return Single(frequency);
        var sigma = Sigma(frequency, bandwidth.Value);
        var step = 2 * Span * sigma / (Count - 1);
        var first = frequency - (Span * sigma);
        while (first < Lowest * frequency) first += step;
        var powers = ImmutableArray.CreateBuilder<double>(Count);
        var sum = 0.0;
        for (var line = first; line < frequency + (Span * sigma) + (step / 2); line += step)
        {
            var offset = (line - frequency) / sigma;
            powers.Add(Math.Exp(-offset * offset));
            sum += powers[^1];
        }

        return new Spectrum(first, step, [.. powers.Select(power => power / sum)]);
    }

    public static double Sigma(double frequency, double bandwidth) => bandwidth * frequency / (2 * Math.Sqrt(2 * Math.Log(2)));
}
