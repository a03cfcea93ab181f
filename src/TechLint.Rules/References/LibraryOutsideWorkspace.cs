using TechLint.Model.Documents;
using TechLint.Rules.Findings;
using TechLint.Rules.Registry;

namespace TechLint.Rules.References;

public sealed class LibraryOutsideWorkspace : TechniqueRule
{
    public override RuleDescription Description { get; } = new(
        "library-outside-workspace", RuleFamily.References, Severity.Error,
        "An equipment library lies outside the workspace, and was not read.",
        "A technique from a stranger must not make the program read files of the machine it is checked on; and a technique that rests on "
        + "files elsewhere cannot be checked by its reviewer.",
        "Move the library into the workspace, or name its folder in a settings file given by --settings.");

    public override void Check(TechniqueContext context)
    {
        foreach (var link in context.Equipment.Links)
        {
            if (link.Lookup.Fault != LookupFault.OutsideWorkspace || !link.Name.TryGet(out var name)) continue;
            context.Sink.Report(this, link.Name, $"the equipment library {name} lies outside the workspace and was not read").With("path", name);
        }
    }
}
