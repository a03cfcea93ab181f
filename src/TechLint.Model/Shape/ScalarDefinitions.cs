using System.Collections.Frozen;
using System.Collections.Immutable;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Model.Shape;

/// <summary>
/// What the names in the schemas' <c>$defs</c> mean here. A schema tells a kind of quantity by the name of a definition, whose pattern
/// serves editors; the reading itself is exact arithmetic and needs bounds instead of patterns. A test holds the two to the same verdicts.
/// </summary>
internal static class ScalarDefinitions
{
    public static readonly FrozenDictionary<string, ImmutableArray<QuantityBounds>> Quantities = new Dictionary<string, ImmutableArray<QuantityBounds>>(StringComparer.Ordinal)
    {
        ["length"] = [new(QuantityKind.Length, 0)],
        ["signed-length"] = [new(QuantityKind.Length)],
        ["positive-length"] = [new(QuantityKind.Length, 0, LeastIncluded: false)],
        ["angle"] = [new(QuantityKind.Angle)],
        ["acute-angle"] = [new(QuantityKind.Angle, 0, Most: 90, MostIncluded: false)],
        ["angle-step"] = [new(QuantityKind.Angle, 0, LeastIncluded: false, Most: 90, MostIncluded: false)],
        ["included-angle"] = [new(QuantityKind.Angle, 0, Most: 180, MostIncluded: false)],
        ["speed"] = [new(QuantityKind.Speed, 0, LeastIncluded: false)],
        ["frequency"] = [new(QuantityKind.Frequency, 0, LeastIncluded: false)],
        ["level"] = [new(QuantityKind.Level)],
        ["temperature"] = [new(QuantityKind.Temperature)],
        ["temperature-difference"] = [new(QuantityKind.TemperatureDifference, 0)],
        ["share"] = [new(QuantityKind.Share, 0)],
        ["time"] = [new(QuantityKind.Time, 0)],
        ["density"] = [new(QuantityKind.Density, 0, LeastIncluded: false)],
        ["encoder-resolution"] = [new(QuantityKind.EncoderResolution, 0, LeastIncluded: false)],
        ["data-rate"] = [new(QuantityKind.DataRate, 0, LeastIncluded: false)],
        ["length-or-share"] = [new(QuantityKind.Length, 0), new(QuantityKind.Share, 0, Most: 100)],
        ["share-or-level"] = [new(QuantityKind.Share, 0), new(QuantityKind.Level)],
        [AnyQuantity] = [.. Enum.GetValues<QuantityKind>().Select(kind => new QuantityBounds(kind))],
    }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>The value of a limit: a quantity of any kind, or a bare number where the limit is a count.</summary>
    public const string AnyQuantity = "limit-value";

    public static readonly FrozenDictionary<string, Func<string, bool>> Words = new Dictionary<string, Func<string, bool>>(StringComparer.Ordinal)
    {
        ["id"] = text => IsWord(text, char.IsAsciiLetterLower),
        ["technique-id"] = text => IsWord(text, char.IsAsciiLetter),
        ["imaging-path"] = IsImagingPath,
    }.ToFrozenDictionary(StringComparer.Ordinal);

    private static bool IsWord(string text, Func<char, bool> isLetter) =>
        text.Length > 0 && text[0] is not ('.' or '-') && text.All(c => isLetter(c) || char.IsAsciiDigit(c) || c is '.' or '-');

    private static bool IsImagingPath(string text)
    {
        var hyphen = text.IndexOf('-', StringComparison.Ordinal);
        return hyphen is >= 1 and <= 3 && text.Length - hyphen - 1 is >= 1 and <= 3
            && text.AsSpan(0, hyphen).IndexOfAnyExcept('L', 'T') < 0 && text.AsSpan(hyphen + 1).IndexOfAnyExcept('L', 'T') < 0;
    }
}
