using System.Collections.Immutable;
using TechLint.Model.Binding;
using TechLint.Model.Techniques;
using TechLint.Syntax;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Model.Requirements;

/// <summary>Limits as data. What it inherits is not in it: see <see cref="RequirementSets"/>.</summary>
public sealed record RequirementSet(
    SyntaxTree Tree, bool IsBuiltIn, Bound<string> Id, Bound<string> Title, Bound<string> Standard, Bound<string> Edition, Bound<string> From,
    Bound<string> Why, SetScope Scope, ImmutableArray<string> NeverWaivable, ImmutableArray<string> NotCovered, ImmutableArray<LimitEntry> Limits)
{
    public string File => Tree.Source.Path;

    /// <summary>The standard with its edition, as a citation starts.</summary>
    public string StandardText => Standard.TryGet(out var standard) ? Edition.TryGet(out var edition) ? $"{standard}:{edition}" : standard : Id.Or("") ?? "";
}

/// <summary>What a set speaks of. Missing means anything.</summary>
public sealed record SetScope(
    MapReader Map, Bound<QuantityBand> Thickness, Bound<QuantityBand> OutsideDiameter, BoundList<Bound<string>> Materials,
    BoundList<Bound<string>> Joints, BoundList<Bound<string>> Scans);

/// <summary>One stated limit.</summary>
/// <param name="Name">As written; perhaps no known one.</param>
/// <param name="Value">As a quantity; null where the limit is no quantity.</param>
/// <param name="Place">The entry's place in its file.</param>
public sealed record LimitEntry(
    Bound<string> Name, LimitCondition When, LimitSense Sense, Quantity? Value, Bound<string> Source, Basis Basis, Bound<string> Why, TextSpan Place);

/// <summary>When a limit holds. An empty list or a band that is null means always.</summary>
public sealed record LimitCondition(
    ImmutableArray<string> Scans, ImmutableArray<string> Methods, ImmutableArray<string> Orientations, ImmutableArray<string> Forms,
    ImmutableArray<string> Materials, ImmutableArray<string> Waves, QuantityBand? Thickness, QuantityBand? OutsideDiameter)
{
    /// <summary>True when the limit holds somewhere in what is asked for; bands that only touch count, since where bands meet the
    /// tightest limit wins.</summary>
    public bool Meets(LimitQuery query) =>
        Meets(Scans, query.Scan is { } scan ? Words.Spell(scan) : null)
        && Meets(Methods, query.Method is { } method ? Words.Spell(method) : null)
        && Meets(Orientations, query.Orientation is { } orientation ? Words.Spell(orientation) : null)
        && Meets(Forms, query.Form is { } form ? Words.Spell(form) : null)
        && Meets(Materials, query.Material) && Meets(Waves, query.Wave is { } wave ? Words.Spell(wave) : null)
        && Meets(Thickness, query.Thickness) && Meets(OutsideDiameter, query.OutsideDiameter);

    private static bool Meets(ImmutableArray<string> wanted, string? asked) =>
        wanted.IsEmpty || asked is null || wanted.Contains(asked, StringComparer.Ordinal);

    private static bool Meets(QuantityBand? wanted, QuantityBand? asked) =>
        wanted is not { } band || asked is not { } other || (other.FromExact <= band.ToExact && other.ToExact >= band.FromExact);
}

/// <summary>What a rule asks about; null means that it does not matter.</summary>
public sealed record LimitQuery(
    ScanKind? Scan = null, ReferenceMethod? Method = null, WeldOrientation? Orientation = null, ComponentForm? Form = null,
    string? Material = null, Wave? Wave = null, QuantityBand? Thickness = null, QuantityBand? OutsideDiameter = null);

/// <summary>The limit that governs, with its source.</summary>
public sealed record Limit(Quantity Value, Citation Citation);
