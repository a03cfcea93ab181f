using System.Collections.Immutable;
using TechLint.Model.Binding;
using TechLint.Model.Equipment;
using TechLint.Model.Examinations;
using TechLint.Model.Requirements;
using TechLint.Model.Shape;

namespace TechLint.Model.Documents;

/// <summary>Finds what a technique names.</summary>
public static class TechniqueLinker
{
    public static LinkedTechnique Link(BoundDocument document, IDocumentSource source)
    {
        var technique = document.Technique;
        var links = technique.Equipment.Items.Select(name => LinkLibrary(technique.File, name, source)).ToImmutableArray();
        var shared = source.SharedLibraries.Where(lookup => lookup.Tree is not null).Select(lookup => BoundDocument.Of(lookup.Tree!).Library);
        var pool = new EquipmentPool(links, [.. shared]);
        var own = technique.Requirements.Items.Where(name => name.IsKnown).Select(name => name.Value!);
        ImmutableArray<string> names = [.. technique.Requirements.IsMissing ? source.DefaultRequirements : own, .. source.AddedRequirements];
        names = [.. names.Distinct(StringComparer.Ordinal)];
        var sets = RequirementSets.Resolve(names, id => FindSet(id, source));
        return new LinkedTechnique(
            technique, document.Problems, pool, names, sets, new ExaminationBuilder(technique, pool, sets).Build());
    }

    /// <summary>Built-in sets come first: a workspace cannot put its own in their place.</summary>
    public static RequirementSet? FindSet(string id, IDocumentSource source) =>
        BuiltInSets.Find(id) ?? (source.FindRequirementSet(id) is { Tree: { } tree } ? BoundDocument.Of(tree).RequirementSet : null);

    private static LibraryLink LinkLibrary(string file, Bound<string> name, IDocumentSource source)
    {
        var lookup = source.Find(file, name.Value ?? "");
        if (lookup.Tree is not null && FormatKinds.Of(lookup.Path) != FormatKind.Equipment) lookup = lookup with { Tree = null, Fault = LookupFault.NotALibrary };
        return new LibraryLink(name, lookup, lookup.Tree is { } tree ? BoundDocument.Of(tree).Library : null);
    }
}
