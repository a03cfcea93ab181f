using TechLint.Rules.Findings;
using TechLint.Rules.Registry;

namespace TechLint.Rules.Run;

public sealed class EncodingUnreadable : RunRule
{
    public override RuleDescription Description { get; } = new(
        "encoding-unreadable", RuleFamily.Run, Severity.Error,
        "A file is there but cannot be read as text: another encoding, a folder, no permission, or too large.",
        "Nothing of it was checked.",
        "Save it as UTF-8, and see that it can be read.");
}
