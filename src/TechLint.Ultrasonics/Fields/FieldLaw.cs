using TechLint.Ultrasonics.Beams;

namespace TechLint.Ultrasonics.Fields;

/// <summary>A law's strips, and for each strip and line of the spectrum the turn of phase that its delay makes.</summary>
internal sealed class FieldLaw
{
    /// <param name="law">The law.</param>
    /// <param name="first">Its first strip.</param>
    /// <param name="delays">What each strip of it is ahead, s.</param>
    /// <param name="spectrum">Of the probe.</param>
    public FieldLaw(Law law, int first, double[] delays, in Spectrum spectrum)
    {
        (Law, First, Count) = (law, first, delays.Length);
        var lines = spectrum.Powers.Length;
        (Cosines, Sines) = (new double[Count * lines], new double[Count * lines]);
        for (var strip = 0; strip < Count; strip++)
        {
            for (var line = 0; line < lines; line++)
            {
                (Sines[(strip * lines) + line], Cosines[(strip * lines) + line]) = Math.SinCos(-2 * Math.PI * (spectrum.First + (line * spectrum.Step)) * delays[strip]);
            }
        }
    }

    public Law Law { get; }

    public int First { get; }

    public int Count { get; }

    public int Middle => First + (Count / 2);

    public double[] Cosines { get; }

    public double[] Sines { get; }
}
