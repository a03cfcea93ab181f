using TechLint.Rules.Findings;
using TechLint.Rules.Registry;

namespace TechLint.Rules.References;

public sealed class UnusedDefinition : TechniqueRule
{
    public override RuleDescription Description { get; } = new(
        "unused-definition", RuleFamily.References, Severity.Warning,
        "A reference setting that no beam uses.",
        "It may be the one that a beam was meant to name; or it is left over from another revision and misleads whoever calibrates.",
        "Name it at the beam that it belongs to, or delete it.");

    public override void Check(TechniqueContext context)
    {
        var setups = context.Technique.Setups;
        var beams = setups.Items.SelectMany(setup => setup.Beams.Items).ToArray();
        if (setups.IsBroken || setups.Items.Any(setup => setup.Beams.IsBroken) || beams.Any(beam => beam.Reference.IsBroken)) return;
        foreach (var reference in context.Technique.References.Items)
        {
            if (!reference.Id.TryGet(out var id) || beams.Any(beam => beam.Reference.Value == id)) continue;
            context.Sink.Report(this, reference.Id, $"no beam uses the reference {id}").With("name", id);
        }
    }
}
