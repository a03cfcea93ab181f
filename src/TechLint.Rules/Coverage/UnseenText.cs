using TechLint.Rules.Findings;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Rules.Coverage;

/// <summary>Says where and how much of the volume goes unseen, alike in both rules that need it.</summary>
internal static class UnseenText
{
    private const int ThicknessDigits = 2;

    public static string Share(CoverageVerdict verdict)
    {
        var unseen = 100 - verdict.Worst!.Result.Volume.Percent;
        return $"{Digits.Text(Digits.Apart(unseen, 0, 1) ?? 0)} %";
    }

    /// <summary>The thickness, and the diameter where there is one, in the author's way of writing.</summary>
    public static string Case(WorstCoverage worst) => worst.OutsideDiameter is { } diameter
        ? $"{Millimetres(worst.Thickness, ThicknessDigits)} and outside diameter {Millimetres(diameter, 1)}"
        : Millimetres(worst.Thickness, ThicknessDigits);

    public static string Millimetres(Length length, int digits) => $"{Digits.Text(Digits.Rounded(length.Millimetres, digits) ?? 0)} mm";

    public static FindingDraft WithCoverage(this FindingDraft draft, CoverageVerdict verdict)
    {
        var worst = verdict.Worst!;
        var seen = worst.Result.Volume.Percent;
        var shown = Digits.Apart(seen, verdict.Required.Percent, 1) ?? 0;
        draft.With("covered", shown, "%").With("limit", verdict.Required.Percent, "%").With("thickness", worst.Thickness.Millimetres, "mm", ThicknessDigits);
        if (worst.OutsideDiameter is { } diameter) draft.With("outside-diameter", diameter.Millimetres, "mm");
        WithError(draft, "left", worst.LeftError);
        WithError(draft, "right", worst.RightError);
        if (worst.SkewError.Degrees != 0) draft.With("skew-error", worst.SkewError.Degrees, "deg", ThicknessDigits);
        if (Errors(worst) is { } errors) draft.Detail(errors);
        var place = worst.Result.Unseen.IsEmpty ? "" : ", " + Extent(worst.Result);
        return draft
            .Detail($"seen {Digits.Text(shown)} %, required {Digits.Text(Digits.Rounded(verdict.Required.Percent, 3) ?? 0)} %: worst at thickness {Case(worst)}{place}")
            .Under(verdict.Source);
    }

    private static void WithError(FindingDraft draft, string side, Length error)
    {
        if (error.Millimetres != 0) draft.With($"{side}-probes-{(error.Millimetres > 0 ? "farther" : "nearer")}", Math.Abs(error.Millimetres), "mm");
    }

    /// <summary>Where within the positioning tolerance it is worst, in words.</summary>
    private static string? Errors(WorstCoverage worst)
    {
        string[] places = [.. new[] { Error("left", worst.LeftError), Error("right", worst.RightError), Skew(worst.SkewError) }.OfType<string>()];
        return places.Length == 0 ? null : $"worst within the positioning tolerance: {string.Join(", ", places)}";
    }

    private static string? Skew(Angle error) => error.Degrees == 0 ? null
        : $"probes turned {Digits.Text(Digits.Rounded(Math.Abs(error.Degrees), 2) ?? 0)} deg {(error.Degrees > 0 ? "towards +x" : "towards -x")}";

    private static string? Error(string side, Length error) => error.Millimetres == 0 ? null
        : $"{side} probes {Millimetres(new Length(Math.Abs(error.Millimetres)), 2)} {(error.Millimetres > 0 ? "farther from" : "nearer to")} the weld than stated";

    /// <summary>The rectangle around the largest unseen ring.</summary>
    private static string Extent(CoverageResult result)
    {
        var largest = result.Unseen.MaxBy(ring =>
            (ring.Max(place => place.Y.Millimetres) - ring.Min(place => place.Y.Millimetres))
            * (ring.Max(place => place.Z.Millimetres) - ring.Min(place => place.Z.Millimetres)));
        return $"y {Range(largest.Select(place => place.Y.Millimetres))} mm, z {Range(largest.Select(place => place.Z.Millimetres))} mm";
    }

    private static string Range(IEnumerable<double> values)
    {
        var all = values.ToArray();
        return $"{Fixed(all.Min())}..{Fixed(all.Max())}";
    }

    private static string Fixed(double value) => (Digits.Rounded(value, 1) ?? 0).ToString("0.0", System.Globalization.CultureInfo.InvariantCulture);
}
