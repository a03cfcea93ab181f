namespace TechLint.Tests.Tools.Waves;

/// <summary>A cosine under a Gaussian envelope; frequency in MHz, times in us. Its amplitude falls to 1/e at <c>Width</c> from the middle.</summary>
internal readonly record struct ToneBurst(double Frequency, double Width)
{
    /// <summary>Middle of the pulse: early enough to be whole, late enough to start from nothing (e^-9).</summary>
    public double Middle => 3 * Width;

    public double At(double time)
    {
        var since = (time - Middle) / Width;
        return Math.Abs(since) > 4 ? 0 : Math.Exp(-since * since) * Math.Cos(2 * Math.PI * Frequency * (time - Middle));
    }
}
