using TechLint.Model.Documents;
using TechLint.Model.Equipment;
using TechLint.Model.Requirements;
using TechLint.Rules.Findings;
using TechLint.Syntax;

namespace TechLint.Rules.Registry;

/// <summary>One thing that can be wrong. Stateless; does no I/O and reads no clock.</summary>
public abstract class Rule
{
    public abstract RuleDescription Description { get; }

    public string Name => Description.Name;
}

/// <summary>Gives a problem of the text or its shape its words. The problem's code is the rule's name.</summary>
public abstract class ProblemRule : Rule
{
    public abstract string Say(Problem problem);

    /// <summary>Changes that mend it; the file is that of the problem.</summary>
    public virtual IEnumerable<Fix> Mend(SourceText source, Problem problem) => [];
}

/// <summary>Judges one technique with all that it names.</summary>
public abstract class TechniqueRule : Rule
{
    public abstract void Check(TechniqueContext context);
}

/// <summary>Judges one equipment library.</summary>
public abstract class LibraryRule : Rule
{
    public abstract void Check(Library library, FindingSink sink);
}

/// <summary>Judges one requirement set of the workspace.</summary>
public abstract class RequirementSetRule : Rule
{
    /// <param name="find">Any set by its id, built-in first.</param>
    public abstract void Check(RequirementSet set, Func<string, RequirementSet?> find, FindingSink sink);
}

/// <summary>A rule that the engine itself reports by, from what happens while it runs.</summary>
public abstract class RunRule : Rule;
