using System.Collections.Immutable;
using System.Globalization;
using TechLint.Model.Requirements;
using TechLint.Model.Techniques;
using TechLint.Rules.Coverage;
using TechLint.Rules.Findings;
using TechLint.Rules.Registry;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Rules.Fit;

public sealed class IndexOffsetAgainstThickness : TechniqueRule
{
    /// <summary>Windows are shown to this many digits of the author's unit, rounded inwards.</summary>
    private const int MillimetreDigits = 1;
    private const int InchDigits = 2;

    public override RuleDescription Description { get; } = new(
        "index-offset-against-thickness", RuleFamily.Fit, Severity.Error,
        "The stated index offset cannot serve this thickness: part of the volume goes unseen, and another offset would see it.",
        "The index offset decides where each angle meets the weld. Carried over from another wall, the same sweep passes beside the root "
        + "or over the cap, and the record shows nothing wrong. The index offset is reset when the thickness changes.",
        "Take an offset from the window that the finding gives, or split the thickness into bands, each with its own offset.",
        LimitNames.VolumeCovered.Name);

    public override void Check(TechniqueContext context)
    {
        foreach (var link in context.Linked.Examinations)
        {
            var verdict = context.VerdictOf(link);
            if (verdict.Holds || verdict.Advice is not { } advice) continue;
            var setup = link.Setups.FirstOrDefault(member => member.Name == advice.PassId) ?? link.Setups[0];
            var probes = setup.Probes.Items
                .Where(probe => probe.IndexOffset.IsKnown && probe.Station.IsKnown && advice.Stations.Contains(probe.Station.Value)).ToImmutableArray();
            if (probes.IsEmpty) continue;
            Report(context, verdict, advice, setup, probes);
        }
    }

    private void Report(TechniqueContext context, CoverageVerdict verdict, OffsetAdvice advice, Setup setup, ImmutableArray<ProbeUse> probes)
    {
        var first = probes[0];
        var draft = context.Sink
            .Report(
                this, first.IndexOffset,
                $"index offset {first.IndexOffset.Value.Display()} leaves {UnseenText.Share(verdict)} of the weld volume unseen at {UnseenText.Case(verdict.Worst!)}")
            .WithCoverage(verdict);
        var window = Window(first.IndexOffset.Value, advice);
        var which = probes.Length == 1 ? $"station {first.Station.Value}" : $"stations {string.Join(", ", probes.Select(probe => probe.Station.Value))}, moved together";
        var serves = advice.WholeBand
            ? $"serve all of {setup.Name}"
            : $"serve {UnseenText.Millimetres(verdict.Worst!.Thickness, 2)}, but none serves the whole range: split it into bands";
        draft.Detail($"offsets from {window.From} to {window.To} {serves} ({which})")
            .With("window-from", window.FromValue, first.IndexOffset.Value.Unit.Symbol).With("window-to", window.ToValue, first.IndexOffset.Value.Unit.Symbol);
        foreach (var other in probes.Skip(1))
        {
            draft.Related(context.Technique.File, other.IndexOffset.Span, "moves with it");
        }

        if (!advice.WholeBand) return;
        var edits = probes.Select(probe => new TextEdit(context.Technique.File, probe.IndexOffset.Span, Middle(probe.IndexOffset.Value, advice)));
        draft.Fix($"Set the index offset to {Middle(first.IndexOffset.Value, advice)}", safe: false, [.. edits]);
    }

    private static (string From, string To, decimal FromValue, decimal ToValue) Window(Quantity offset, OffsetAdvice advice)
    {
        var from = Round(offset, advice.Move.From, decimal.Ceiling);
        var to = Round(offset, advice.Move.To, decimal.Floor);
        return (Write(from, offset.Unit), Write(to, offset.Unit), from, to);
    }

    private static string Middle(Quantity offset, OffsetAdvice advice)
    {
        var middle = new Length((advice.Move.From.Millimetres + advice.Move.To.Millimetres) / 2);
        var whole = Round(offset, middle, decimal.Round, 0);
        var (_, _, from, to) = Window(offset, advice);
        return Write(whole >= from && whole <= to ? whole : Round(offset, middle, decimal.Round), offset.Unit);
    }

    private static decimal Round(Quantity offset, Length move, Func<decimal, decimal> round, int? digits = null)
    {
        var scale = (decimal)Math.Pow(10, digits ?? (offset.Unit.Symbol == "in" ? InchDigits : MillimetreDigits));
        return round(offset.Unit.FromBase(offset.Exact + (decimal)move.Millimetres) * scale) / scale;
    }

    private static string Write(decimal value, Unit unit) => $"{value.ToString("0.###", CultureInfo.InvariantCulture)} {unit.Symbol}";
}
