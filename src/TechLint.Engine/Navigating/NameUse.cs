using TechLint.Syntax;

namespace TechLint.Engine.Navigating;

public enum NameKind
{
    Technique, Setup, Station, Beam, Reference, Library, Probe, Wedge, Frame, Instrument, Encoder, Couplant, Material, Block, Reflector,
    RequirementSet, Rule, LibraryPath,
}

/// <summary>A name where it stands in a text.</summary>
/// <param name="Scope">What it is unique in: a station's or beam's setup, a reflector's block; else empty.</param>
/// <param name="Span">The name's own characters, quotes left out where nothing in them is escaped.</param>
/// <param name="IsDefinition">Here the name is given; elsewhere it is used.</param>
/// <param name="Whole">What is defined, where it is: the entry of the list, or the file.</param>
public sealed record NameUse(NameKind Kind, string Name, string Scope, TextSpan Span, bool IsDefinition, TextSpan Whole);

/// <summary>A name in a file of the workspace.</summary>
public sealed record NamePlace(string File, NameUse Use);
