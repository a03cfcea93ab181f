using System.Collections.Immutable;
using TechLint.Model.Documents;
using TechLint.Model.Shape;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Engine;

/// <summary>What follows from a technique, by setup in the author's order.</summary>
/// <param name="Id">The technique's id.</param>
public sealed record ComputedTechnique(string Id, ImmutableArray<ComputedSetup> Setups);

/// <param name="Id">The setup's id.</param>
/// <param name="Pass">Its pass number, where several setups make one examination.</param>
/// <param name="Cases">Each holds all passes of the examination; this setup's is the one with its id.</param>
/// <param name="NotComputed">Why there are no cases, or null.</param>
public sealed record ComputedSetup(string Id, int? Pass, ImmutableArray<CaseStudy> Cases, string? NotComputed)
{
    /// <summary>How far the setup's sound probes may move together, over the whole range; null where there is no study.</summary>
    public OffsetMargin? Margin { get; init; }

    /// <summary>The least coverage of its examination when speeds drift and edges are misaligned too, over the whole range; null where there is no study.</summary>
    public WorstCoverage? WithDrifts { get; init; }
}

/// <summary>The derived quantities of a technique, over its ranges or for one component.</summary>
public static class Computing
{
    /// <summary>Null where the file holds no technique that can be read that far. With a thickness or diameter given: only the setups
    /// that serve it, none where none does.</summary>
    public static ComputedTechnique? Setups(Snapshot snapshot, string path, Length? thickness, Length? outsideDiameter)
    {
        if (snapshot.TreeOf(path) is not { } tree || FormatKinds.Of(path) != FormatKind.Technique || tree.Root is null) return null;
        var linked = TechniqueLinker.Link(BoundDocument.Of(tree), snapshot);
        var setups = new List<(int Order, ComputedSetup Setup)>();
        foreach (var link in linked.Examinations)
        {
            var study = link.Examination is { } examination ? snapshot.StudyOf(examination) : null;
            if (study is not null && !(Serves(study.Examination.Thickness, thickness) && Serves(study.Examination.OutsideDiameter, outsideDiameter))) continue;
            ImmutableArray<CaseStudy> cases = study is null ? [] : thickness is null && outsideDiameter is null ? study.Cases : Asked(study, thickness, outsideDiameter);
            foreach (var setup in link.Setups)
            {
                setups.Add((
                    linked.Technique.Setups.Items.IndexOf(setup),
                    new ComputedSetup(
                        setup.Name, setup.Pass.IsKnown ? setup.Pass.Value : null, cases,
                        study is null ? link.Obstacle?.Sentence ?? "something that it rests on is missing or broken: see check" : null)
                    {
                        Margin = study?.MarginOf(setup.Name),
                        WithDrifts = study?.CoverageWithDrifts,
                    }));
            }
        }

        return new ComputedTechnique(linked.Technique.Id.Or("") ?? "", [.. setups.OrderBy(pair => pair.Order).Select(pair => pair.Setup)]);
    }

    private static bool Serves(Band<Length>? band, Length? asked) =>
        asked is not { } value || (band is { } held && (held.From is null || value >= held.From) && (held.To is null || value <= held.To));

    /// <summary>What was not asked for keeps the ends of its band.</summary>
    private static ImmutableArray<CaseStudy> Asked(Study study, Length? thickness, Length? outsideDiameter)
    {
        var examination = study.Examination;
        Length?[] walls = thickness is not null ? [thickness] : [examination.Thickness.From, examination.Thickness.To];
        Length?[] diameters = examination.OutsideDiameter is not { } band ? [null] : outsideDiameter is not null ? [outsideDiameter] : [band.From, band.To];
        return
        [
            .. from diameter in diameters.Distinct()
               from wall in walls.Distinct()
               where wall is not null
               select study.At(wall.Value, diameter),
        ];
    }
}
