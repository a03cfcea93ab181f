using TechLint.Ultrasonics.Quantities;

namespace TechLint.Ultrasonics.Fields;

/// <summary>
/// The strips of a probe added up at one place after another. One-way amplitude at a frequency f: <c>|H(f)|</c>. Echo of a small reflector that scatters all ways alike, by
/// reciprocity: <c>|H(f)|²</c>. Averaged over the pulse: the root of the mean square over the power spectrum S² (echo: <c>√(Σ S² |H|⁴ / Σ S²)</c>), that is the energy
/// received, whenever it arrives. On any scale; only ratios of one probe mean something. Not thread-safe: the place is kept.
/// </summary>
internal sealed class FieldSum(FieldSource source)
{
    private readonly FieldSource.Term[] terms = new FieldSource.Term[source.Count];
    private readonly double[] guess = NoGuess(source.Count);
    private readonly int lines = source.Spectrum.Powers.Length;
    private readonly double[] real = new double[source.Count * source.Spectrum.Powers.Length];
    private readonly double[] imaginary = new double[source.Count * source.Spectrum.Powers.Length];
    private readonly double[] sumReal = new double[source.Spectrum.Powers.Length];
    private readonly double[] sumImaginary = new double[source.Spectrum.Powers.Length];

    public FieldSource Source => source;

    /// <summary>The ray of one strip to the place.</summary>
    public ref readonly FieldSource.Term Term(int strip) => ref terms[strip];

    /// <summary>Goes to a place; false where no sound gets there.</summary>
    public bool TryMove(double forward, double depth, int leg)
    {
        if (!source.TryTerms(forward, depth, leg, terms, guess)) return false;
        var spectrum = source.Spectrum;
        for (var strip = 0; strip < terms.Length; strip++)
        {
            var term = terms[strip];
            var at = strip * lines;
            if (!(term.PartPath > 0))
            {
                real.AsSpan(at, lines).Clear();
                imaginary.AsSpan(at, lines).Clear();
                continue;
            }

            var (sine, cosine) = Math.SinCos(2 * Math.PI * spectrum.First * term.Time);
            var (stepSine, stepCosine) = Math.SinCos(2 * Math.PI * spectrum.Step * term.Time);
            var (re, im) = ((term.Amplitude.Real * cosine) - (term.Amplitude.Imaginary * sine), (term.Amplitude.Real * sine) + (term.Amplitude.Imaginary * cosine));
            for (var line = 0; line < lines; line++)
            {
                var x = term.Sinc * (spectrum.First + (line * spectrum.Step));
                var pattern = Math.Abs(x) < SmallSinc ? 1 - (x * x / 6) : Math.Sin(x) / x;
                real[at + line] = re * pattern;
                imaginary[at + line] = im * pattern;
                (re, im) = ((re * stepCosine) - (im * stepSine), (re * stepSine) + (im * stepCosine));
            }
        }

        return true;
    }

    /// <summary>Forgets where the last rays went, so that what comes next does not depend on it.</summary>
    public void Forget() => guess.AsSpan().Fill(double.NaN);

    /// <summary>Sound pressure one-way and echo amplitude of a law at the place, both linear.</summary>
    public (double OneWay, double Echo) Of(FieldLaw law)
    {
        Array.Clear(sumReal);
        Array.Clear(sumImaginary);
        for (var strip = 0; strip < law.Count; strip++)
        {
            var re = real.AsSpan((law.First + strip) * lines, lines);
            var im = imaginary.AsSpan((law.First + strip) * lines, lines);
            var cosines = law.Cosines.AsSpan(strip * lines, lines);
            var sines = law.Sines.AsSpan(strip * lines, lines);
            for (var line = 0; line < re.Length; line++)
            {
                sumReal[line] += (re[line] * cosines[line]) - (im[line] * sines[line]);
                sumImaginary[line] += (re[line] * sines[line]) + (im[line] * cosines[line]);
            }
        }

        var (once, twice) = (0.0, 0.0);
        for (var line = 0; line < lines; line++)
        {
            var power = (sumReal[line] * sumReal[line]) + (sumImaginary[line] * sumImaginary[line]);
            once += source.Spectrum.Powers[line] * power;
            twice += source.Spectrum.Powers[line] * power * power;
        }

        return (Math.Sqrt(once), Math.Sqrt(twice));
    }

    /// <summary>20 log10 of a ratio; silence is far below any level.</summary>
    public static Level Decibels(double amplitude, double reference) =>
        new(amplitude > 0 && reference > 0 ? Math.Max(Silence, 20 * Math.Log10(amplitude / reference)) : Silence);

    /// <summary>dB; below it nothing is told apart.</summary>
    public const double Silence = -200;

    private const double SmallSinc = 1e-3;

    private static double[] NoGuess(int count)
    {
        var none = new double[count];
        none.AsSpan().Fill(double.NaN);
        return none;
    }
}
