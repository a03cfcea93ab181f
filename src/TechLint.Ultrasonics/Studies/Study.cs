using System.Collections.Immutable;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Ultrasonics.Studies;

/// <summary>
/// All that follows from an examination, worked out when asked and kept. Thread-safe; the same examination gives the same
/// digits on any machine. What cannot be computed is null beside a reason, never a guess.
/// </summary>
public sealed class Study
{
    /// <summary>Raised whenever a verdict kernel changes, so that kept results are not mixed.</summary>
    public const int KernelVersion = 1;

    public Study(Examination examination) => Examination = examination;

    public Examination Examination { get; }

    /// <summary>The section at one thickness and diameter, probes at their stated places.</summary>
    /// <param name="thickness">Wall.</param>
    /// <param name="outsideDiameter">Null for a flat part.</param>
    public CaseStudy At(Length thickness, Length? outsideDiameter) => throw new NotSupportedException();

    /// <summary>The cases that stand for the band: both ends of thickness and diameter, and where an extreme was found.</summary>
    public ImmutableArray<CaseStudy> Cases => throw new NotSupportedException();

    /// <summary>The least coverage over thickness, diameter and positioning tolerance.</summary>
    public WorstCoverage Coverage => throw new NotSupportedException();

    /// <summary>
    /// The index offsets that cover: moves the probes named (all sound-beam probes of a pass where empty) together by the same amount away from or towards
    /// the weld, over the given thickness band, tolerance included. Null where none within reach covers.
    /// </summary>
    public OffsetWindow? CoveringOffsets(string passId, ImmutableArray<int> stations, Band<Length> thickness) => throw new NotSupportedException();
}
