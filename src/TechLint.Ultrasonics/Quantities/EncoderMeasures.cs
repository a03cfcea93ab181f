namespace TechLint.Ultrasonics.Quantities;

/// <summary>How finely an encoder tells its way, in steps/mm.</summary>
public readonly record struct EncoderResolution(double StepsPerMillimetre);

/// <summary>A count of encoder steps; whole where a way ends on one.</summary>
public readonly record struct Steps(double Count);
