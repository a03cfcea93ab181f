using TechLint.Model.Binding;
using TechLint.Model.Techniques;
using TechLint.Rules.Registry;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Rules.Fit;

/// <summary>Finds what the bands of the setups leave out of the component's range; alike for thickness and diameter.</summary>
internal static class BandGap
{
    public static void Report(
        TechniqueRule rule, TechniqueContext context, string quantity, Bound<QuantityBand> claimed, Func<Setup, Bound<QuantityBand>> bandOf)
    {
        var setups = context.Technique.Setups;
        if (!claimed.TryGet(out var whole) || setups.Presence != Presence.Known || setups.Items.IsEmpty) return;
        var bands = setups.Items.Select(bandOf).ToArray();
        if (bands.Any(band => band.IsBroken)) return;

        // A setup without a band of its own serves the whole range.
        if (bands.Any(band => band.IsMissing)) return;
        if (Bands.FirstGap(whole, bands.Select(band => band.Value)) is not { } gap) return;
        var unit = (whole.From ?? whole.To)!.Value.Unit;
        var stretch = gap.From == gap.To ? $"at {Write(gap.From, unit)}"
            : gap.To == decimal.MaxValue ? $"above {Write(gap.From, unit)}"
            : $"between {Write(gap.From, unit)} and {Write(gap.To, unit)}";
        var message = whole.IsSingle ? $"no setup serves {quantity} {whole}" : $"no setup serves {quantity} {stretch}, which the component's {whole} includes";
        var draft = context.Sink.Report(rule, claimed, message);
        draft.With("gap-from", unit.FromBase(gap.From), unit.Symbol);
        if (gap.To != decimal.MaxValue) draft.With("gap-to", unit.FromBase(gap.To), unit.Symbol);
        for (var i = 0; i < bands.Length; i++)
        {
            draft.Related(context.Technique.File, bands[i].Span, $"{setups.Items[i].Name} serves {bands[i].Value}");
        }
    }

    private static string Write(decimal exact, Unit unit) => $"{Digits.Text(Digits.Rounded(unit.FromBase(exact), 3))} {unit.Symbol}";
}
