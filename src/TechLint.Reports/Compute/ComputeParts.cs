namespace TechLint.Reports.Compute;

/// <summary>What <c>compute</c> prints beside what it always prints.</summary>
public sealed record ComputeParts
{
    public static readonly ComputeParts Usual = new();

    /// <summary>The delay of every element of every law.</summary>
    public bool Delays { get; init; }

    /// <summary>The share of the volume within so many dB of the beams' axes, from the simulated field.</summary>
    public bool FieldCoverage { get; init; }
}
