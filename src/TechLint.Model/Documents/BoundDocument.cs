using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using TechLint.Model.Equipment;
using TechLint.Model.Requirements;
using TechLint.Model.Shape;
using TechLint.Model.Techniques;
using TechLint.Syntax;

namespace TechLint.Model.Documents;

/// <summary>
/// A tree held against its shape and bound. Made once for each tree and kept as long as the tree lives, so that an edit to one file
/// binds no other anew.
/// </summary>
public sealed class BoundDocument
{
    private static readonly ConditionalWeakTable<SyntaxTree, BoundDocument> Made = [];

    private readonly ShapeCheck? check;
    private readonly Lazy<Technique> technique;
    private readonly Lazy<Library> library;
    private readonly Lazy<RequirementSet> requirementSet;
    private readonly Lazy<WorkspaceSettings> settings;

    private BoundDocument(SyntaxTree tree)
    {
        Tree = tree;
        Kind = FormatKinds.Of(tree.Source.Path);
        check = Kind is { } kind ? ShapeChecker.Check(tree, kind) : null;
        Problems = check is null ? tree.Problems : [.. tree.Problems.Concat(check.Problems).OrderBy(problem => problem.Span)];
        technique = new(() => TechniqueBinder.Bind(Tree, check));
        library = new(() => LibraryBinder.Bind(Tree, check));
        requirementSet = new(() => RequirementSetBinder.Bind(Tree, check, isBuiltIn: false));
        settings = new(() => WorkspaceSettings.Bind(Tree, check));
    }

    public SyntaxTree Tree { get; }

    /// <summary>By the file's name; null for a name that says nothing.</summary>
    public FormatKind? Kind { get; }

    /// <summary>Of text and shape, in order of their place.</summary>
    public ImmutableArray<Problem> Problems { get; }

    public Technique Technique => technique.Value;

    public Library Library => library.Value;

    public RequirementSet RequirementSet => requirementSet.Value;

    public WorkspaceSettings Settings => settings.Value;

    public static BoundDocument Of(SyntaxTree tree) => Made.GetValue(tree, static made => new BoundDocument(made));
}
