using TechLint.Rules.Findings;
using TechLint.Rules.Registry;
using TechLint.Ultrasonics.Materials;

namespace TechLint.Rules.Run;

/// <summary>Says once what could not be judged, with the severity of coverage, the rule that it stands in for.</summary>
public sealed class NotChecked : TechniqueRule
{
    public override RuleDescription Description { get; } = new(
        "not-checked", RuleFamily.Run, Severity.Error,
        "Something that should be judged could not be computed, and was not.",
        "A check that did not run must never look like one that passed.",
        "Give what is missing where the reason names it; else have a Level III judge this point by hand and record it.");

    public override void Check(TechniqueContext context)
    {
        TellOfGrains(context);
        var told = new HashSet<string>(StringComparer.Ordinal);
        foreach (var link in context.Linked.Examinations)
        {
            if (link.Obstacle is { Sentence: { } sentence } obstacle)
            {
                if (told.Add(sentence)) context.Sink.Report(this, obstacle.Span, obstacle.Path, sentence);
                continue;
            }

            if (link.Examination is null || context.VerdictOf(link).NotComputed is not { } reason) continue;
            var setup = link.Setups[0];
            var place = setup.Id.IsKnown ? setup.Id.Span : setup.Map.Span;
            context.Sink.Report(this, place, setup.Path, $"coverage of {setup.Name} is not checked: {reason}");
        }
    }

    /// <summary>Once for the technique: what is computed holds for straight rays, and in the metal of such a weld they are not straight.</summary>
    private void TellOfGrains(TechniqueContext context)
    {
        if (context.Linked.Examinations.All(link => link.Examination is null)) return;
        var sides = context.Technique.Component.Material;
        foreach (var side in new[] { sides.Left, sides.Right })
        {
            if (!side.TryGet(out var material) || !BuiltInMaterials.BendsBeamsInWelds(material)) continue;
            context.Sink.Report(
                this, side, $"how the grains of a weld in {material} bend the beams is not checked: coverage and crossing depths are those of straight rays")
                .As(Severity.Warning);
            return;
        }
    }
}
