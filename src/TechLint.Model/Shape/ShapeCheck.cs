using System.Collections.Immutable;
using TechLint.Syntax;

namespace TechLint.Model.Shape;

/// <summary>What a check of a tree against its shape found, and which parts of the tree are not to be read.</summary>
public sealed class ShapeCheck
{
    private readonly Dictionary<Node, Problem?> broken;
    private readonly Dictionary<(MappingNode Owner, string Key), Problem?> brokenKeys;

    internal ShapeCheck(ImmutableArray<Problem> problems, Dictionary<Node, Problem?> broken,
        Dictionary<(MappingNode Owner, string Key), Problem?> brokenKeys)
    {
        Problems = problems;
        this.broken = broken;
        this.brokenKeys = brokenKeys;
    }

    /// <summary>In order of their place.</summary>
    public ImmutableArray<Problem> Problems { get; }

    /// <summary>True where a node as a whole is not what belongs there. Ask before an alias is followed: it may be broken where its target is not.</summary>
    public bool IsBroken(Node node) => broken.ContainsKey(node);

    /// <summary>The problem of a broken node; null for a sound one, and where the problem is one of the YAML itself.</summary>
    public Problem? ProblemOf(Node node) => broken.GetValueOrDefault(node);

    /// <summary>True where a key does not stand but a problem already says so: it is missing and required, mistyped, or lost in damage.</summary>
    public bool IsKeyBroken(MappingNode owner, string key) => brokenKeys.ContainsKey((owner, key));

    public Problem? ProblemOf(MappingNode owner, string key) => brokenKeys.GetValueOrDefault((owner, key));
}
