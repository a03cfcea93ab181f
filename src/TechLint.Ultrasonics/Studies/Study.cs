using System.Collections.Concurrent;
using System.Collections.Immutable;
using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Faces;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Ultrasonics.Studies;

/// <summary>
/// All that follows from an examination, worked out when asked and kept. Thread-safe; the same examination gives the same
/// digits on any machine. What cannot be computed is null beside a reason, never a guess.
/// </summary>
public sealed class Study
{
    private readonly ConcurrentDictionary<(Length Thickness, Length? OutsideDiameter), Lazy<CaseStudy>> cases = new();
    private readonly ConcurrentDictionary<(string Pass, string Beam), Lazy<ImmutableArray<PathUse>>> paths = new();

    private readonly ConcurrentDictionary<(string Pass, EquatableArray<int> Stations, Band<Length> Thickness, Band<Length> Reach), Lazy<OffsetWindow?>> windows = new();
    private readonly ConcurrentDictionary<string, Lazy<OffsetMargin>> margins = new(StringComparer.Ordinal);
    private readonly Lazy<WorstCoverage> coverage;
    private readonly Lazy<WorstCoverage> withDrifts;
    private readonly Lazy<OffsetMemory> offsets;
    private readonly Lazy<WorstFaces> faces;

    public Study(Examination examination)
    {
        Examination = examination;
        coverage = new Lazy<WorstCoverage>(() => ExaminationCoverage.Worst(Examination));
        withDrifts = new Lazy<WorstCoverage>(() => ExaminationCoverage.WorstWithDrifts(Examination, Coverage));
        offsets = new Lazy<OffsetMemory>(() => new OffsetMemory(Examination));
        faces = new Lazy<WorstFaces>(() => FaceSearch.Worst(Examination));
    }

    public Examination Examination { get; }

    /// <summary>The section at one thickness and diameter, probes at their stated places.</summary>
    /// <param name="thickness">Wall.</param>
    /// <param name="outsideDiameter">Null for a flat part.</param>
    public CaseStudy At(Length thickness, Length? outsideDiameter) =>
        cases.GetOrAdd((thickness, outsideDiameter), key => new Lazy<CaseStudy>(() => WorkOut(key.Thickness, key.OutsideDiameter))).Value;

    /// <summary>The cases that stand for the band: both ends of thickness and diameter, and where an extreme was found.</summary>
    public ImmutableArray<CaseStudy> Cases => [.. BandEnds().Append((Coverage.Thickness, Coverage.OutsideDiameter)).Distinct().Select(ends => At(ends.Thickness, ends.OutsideDiameter))];

    /// <summary>The least coverage over thickness, diameter and positioning tolerance.</summary>
    public WorstCoverage Coverage => coverage.Value;

    /// <summary>
    /// The least coverage when also the speeds of sound err (what the check of velocity lets pass, and the drift by the permitted difference in temperature
    /// between block and part) and the edges are misaligned as far as the preparation allows. What references and their checks are there to catch: no verdict, a study (worked
    /// out when asked for).
    /// </summary>
    public WorstCoverage CoverageWithDrifts => withDrifts.Value;

    /// <summary>The fusion faces where they are met worst over thickness, diameter, positioning tolerance and misalignment (grade study).</summary>
    public WorstFaces Faces => faces.Value;

    /// <summary>
    /// The index offsets that cover: moves the probes named (all sound-beam probes of a pass where empty) together by the same amount away from or towards
    /// the weld, over the given thickness band, tolerance included. Null where none within reach covers.
    /// </summary>
    /// <param name="reach">The index offsets that cap and frame allow; an open end allows any.</param>
    public OffsetWindow? CoveringOffsets(string passId, ImmutableArray<int> stations, Band<Length> thickness, Band<Length> reach) =>
        windows.GetOrAdd(
            (passId, new EquatableArray<int>(stations), thickness, reach),
            _ => new Lazy<OffsetWindow?>(() =>
            {
                // One search at a time: they share what is known of the offsets that do not cover.
                lock (offsets.Value) return ExaminationCoverage.CoveringOffsets(Examination, offsets.Value, passId, stations, thickness, reach);
            })).Value;

    /// <summary>How far a setup's sound probes may move together, each way, before the volume is no longer complete. Worked out when asked for.</summary>
    public OffsetMargin MarginOf(string passId) => margins.GetOrAdd(passId, id => new Lazy<OffsetMargin>(() =>
    {
        lock (offsets.Value) return ExaminationCoverage.Margin(Examination, offsets.Value, id, Coverage);
    })).Value;

    /// <summary>The paths that each law of a beam uses inside the examined volume, over the cases; laws that never enter it are left out.</summary>
    public ImmutableArray<PathUse> PathsUsed(string passId, string beamId) =>
        paths.GetOrAdd((passId, beamId), _ => new Lazy<ImmutableArray<PathUse>>(() => FindPaths(passId, beamId))).Value;

    private ImmutableArray<PathUse> FindPaths(string passId, string beamId)
    {
        var uses = new SortedDictionary<double, (double From, double To)>();
        foreach (var (thickness, diameter) in BandEnds().Distinct())
        {
            foreach (var pass in Examination.Passes.Where(pass => string.Equals(pass.Id, passId, StringComparison.Ordinal)))
            {
                if (PassSection.Of(Examination, pass, thickness, diameter) is not { } section) continue;
                foreach (var (angle, line) in PassSights.LinesOf(section, beamId))
                {
                    if (UsedPaths.Of(section, line) is not { } used) continue;
                    uses[angle] = uses.TryGetValue(angle, out var known) ? (Math.Min(known.From, used.From), Math.Max(known.To, used.To)) : used;
                }
            }
        }

        return [.. uses.Select(use => new PathUse(new Angle(use.Key), new Length(use.Value.From), new Length(use.Value.To)))];
    }

    /// <summary>The simulated field of one beam at one case. Not kept: who asks for a map prints it.</summary>
    /// <param name="passId">The setup.</param>
    /// <param name="beamId">The beam.</param>
    /// <param name="thickness">Wall.</param>
    /// <param name="outsideDiameter">Null for a flat part.</param>
    /// <param name="law">Which law.</param>
    public Fields.FieldMap FieldOf(string passId, string beamId, Length thickness, Length? outsideDiameter, Fields.LawChoice law)
    {
        foreach (var pass in Examination.Passes)
        {
            if (!string.Equals(pass.Id, passId, StringComparison.Ordinal)) continue;
            return PassSection.Of(Examination, pass, thickness, outsideDiameter) is { } section
                ? Fields.FieldMap.Of(section, beamId, law)
                : Fields.FieldMap.None(beamId, PassWork.ImpossibleWall);
        }

        return Fields.FieldMap.None(beamId, "there is no such setup");
    }

    /// <summary>An open upper diameter is judged to the flat limit.</summary>
    private IEnumerable<(Length Thickness, Length? OutsideDiameter)> BandEnds()
    {
        var band = Examination.OutsideDiameter;
        Length?[] diameters = band is { } known ? [known.From ?? known.To, known.To] : [null];
        Length?[] walls = [Examination.Thickness.From ?? Examination.Thickness.To, Examination.Thickness.To ?? Examination.Thickness.From];
        foreach (var wall in walls)
        {
            if (wall is not { } thickness) continue;
            foreach (var diameter in diameters) yield return (thickness, diameter);
        }
    }

    private CaseStudy WorkOut(Length thickness, Length? outsideDiameter)
    {
        var passes = ImmutableArray.CreateBuilder<PassStudy>(Examination.Passes.Count);
        foreach (var pass in Examination.Passes)
        {
            var section = PassSection.Of(Examination, pass, thickness, outsideDiameter);
            passes.Add(section is null ? PassWork.Impossible(pass) : PassWork.Of(section));
        }

        return new CaseStudy(
            thickness, outsideDiameter, passes.MoveToImmutable(),
            () => ExaminationCoverage.At(Examination, thickness.Millimetres, outsideDiameter?.Millimetres),
            () => FaceSearch.At(Examination, thickness.Millimetres, outsideDiameter?.Millimetres))
        {
            FieldCoverageWork = new(() => Fields.FieldCoverage.Of(Examination, thickness, outsideDiameter)),
        };
    }
}
