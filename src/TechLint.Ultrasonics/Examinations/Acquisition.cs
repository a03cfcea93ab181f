using TechLint.Ultrasonics.Quantities;

namespace TechLint.Ultrasonics.Examinations;

/// <summary>How the data are taken; what is null was not stated.</summary>
/// <param name="Increment">Distance along the weld between recorded lines.</param>
/// <param name="Speed">Scanning speed.</param>
/// <param name="PulseRate">Pulses a second of the instrument over all laws and beams together.</param>
/// <param name="Averaging">Pulses averaged for one line, where a beam does not say its own.</param>
/// <param name="DigitisingRate">Samples a second of one line.</param>
/// <param name="BytesPerSample">As the instrument stores them.</param>
/// <param name="WeldLength">Length of an open seam; null for a girth weld, whose length is its circumference.</param>
/// <param name="RunOn">Before the seam's start.</param>
/// <param name="RunOff">Beyond its end.</param>
/// <param name="Overlap">Beyond the start of a girth weld, and between segments.</param>
/// <param name="SegmentAtMost">Longest piece scanned in one go.</param>
public sealed record Acquisition(
    Length? Increment, Speed? Speed, Frequency? PulseRate, int Averaging, Frequency? DigitisingRate, int BytesPerSample,
    Length? WeldLength, Length RunOn, Length RunOff, Length Overlap, Length? SegmentAtMost)
{
    /// <summary>Steps that the encoder gives along its way; null where no encoder is named or its library does not say.</summary>
    public EncoderResolution? EncoderResolution { get; init; }

    /// <summary>Pulses a second that the instrument can give at most, over all laws and beams together; null where unknown.</summary>
    public Frequency? InstrumentPulseRateAtMost { get; init; }

    /// <summary>Data that the instrument can store at most; null where unknown.</summary>
    public DataRate? InstrumentDataRateAtMost { get; init; }

    /// <summary>What the instrument needs between the end of one recorded signal and the next pulse; zero where its library does not say.</summary>
    public Duration Recovery { get; init; }
}
