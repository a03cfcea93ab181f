using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Ultrasonics.Tofd;

/// <summary>How long a probe rings.</summary>
public static class Pulse
{
    /// <summary>
    /// Length (at -20 dB) times bandwidth (at -6 dB) of a pulse with a Gaussian spectrum. Amplitude spectrum
    /// <c>exp(−Δf²/2σ²)</c>: B = 2σ sqrt(2 ln 2); its envelope <c>exp(−2π²σ²t²)</c> falls to one tenth at
    /// <c>t = sqrt(ln 10 / 2)/(πσ)</c>; so <c>T B = 4 sqrt(ln 2 ln 10)/π = 1.609</c>.
    /// </summary>
    internal const double LengthTimesBandwidth = 1.6085;

    /// <summary>As stated, else that of a Gaussian pulse of the stated bandwidth; null where neither is stated.</summary>
    public static Duration? LengthOf(Transducer transducer)
    {
        if (transducer.PulseLength is { } stated) return stated;
        var width = transducer.Bandwidth?.Fraction * transducer.Frequency.Megahertz;
        return width > 0 ? new Duration(LengthTimesBandwidth / width.Value) : null;
    }
}
