using TechLint.Model.Documents;
using TechLint.Rules.Findings;
using TechLint.Rules.Registry;

namespace TechLint.Rules.References;

public sealed class LibraryNotFound : TechniqueRule
{
    public override RuleDescription Description { get; } = new(
        "library-not-found", RuleFamily.References, Severity.Error,
        "An equipment library that the technique names cannot be read.",
        "Without it, nothing is known of the probes, wedges and blocks: beams, fit and references cannot be checked.",
        "Correct the path (it is relative to the technique's own folder), or put the library there.");

    public override void Check(TechniqueContext context)
    {
        foreach (var link in context.Equipment.Links)
        {
            if (!link.Name.TryGet(out var name) || Reason(link.Lookup.Fault) is not { } reason) continue;
            context.Sink.Report(this, link.Name, $"the equipment library {name} {reason}").With("path", link.Lookup.Path);
        }
    }

    private static string? Reason(LookupFault fault) => fault switch
    {
        LookupFault.NotFound => "does not exist",
        LookupFault.NotAFile => "is a folder, not a file",
        LookupFault.Unreadable => "cannot be read",
        LookupFault.TooLarge => "is too large to be read",
        LookupFault.NotALibrary => "is no equipment library: its name does not end in .equipment.yaml",
        LookupFault.NotText => "is not a text in UTF-8 or UTF-16",
        _ => null,
    };
}
