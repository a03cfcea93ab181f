using TechLint.Rules.Findings;
using TechLint.Rules.Registry;
using TechLint.Ultrasonics.Examinations;

namespace TechLint.Rules.Calibration;

public sealed class ReferenceMissing : TechniqueRule
{
    public override RuleDescription Description { get; } = new(
        "reference-missing", RuleFamily.Calibration, Severity.Error,
        "A beam has no reference: nothing says against which reflector its sensitivity is set.",
        "Amplitudes without a reference mean nothing. Whether an indication exceeds the recording level is then decided by whatever gain happened to be set.",
        "Name one of the technique's references at the beam, and add it under references where there is none.");

    public override void Check(TechniqueContext context)
    {
        foreach (var beam in context.Technique.Setups.Items.SelectMany(setup => setup.Beams.Items))
        {
            if (!beam.Reference.IsMissing || !beam.Scan.TryGet(out var scan) || scan is ScanKind.CouplingMonitor or ScanKind.Lamination) continue;
            var place = beam.Id.IsKnown ? beam.Id.Span : beam.Map.Span;
            context.Sink.Report(this, place, beam.Map.Path, $"{beam.Name} has no reference: its sensitivity is set against nothing").With("beam", beam.Name);
        }
    }
}
