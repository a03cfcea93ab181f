using TechLint.Engine;
using TechLint.Engine.Files;
using TechLint.Syntax;

namespace TechLint.Tests.Unit.Engine.Editing;

/// <summary>A file of the samples with its text changed, in the workspace of the samples.</summary>
internal sealed record SampleText(Snapshot Snapshot, string Path, string Text)
{
    public const string Technique = "techniques/gm-ut-014.technique.yaml";
    public const string Library = "equipment/workshop.equipment.yaml";
    public const string Owner = "requirements/glenmarrow-owner.requirements.yaml";

    public static readonly DateOnly Day = new(2026, 11, 24);

    private static readonly Snapshot OnDisk =
        TechLint.Engine.Snapshot.Open(new DiskStore(System.IO.Path.Combine(Tools.Repository.Root, "samples")), WorkspaceOptions.For(Day));

    public static SampleText Of(string path, Func<string, string>? edit = null)
    {
        var text = OnDisk.TreeOf(path)!.Source.Text;
        if (edit is not null) text = edit(text);
        return new SampleText(OnDisk.With(path, new SourceText(path, text)), path, text);
    }

    /// <summary>Behind a stretch of the text, or inside it where a beginning of it is named.</summary>
    public int At(string place, string upTo = "")
    {
        var found = Text.IndexOf(place, StringComparison.Ordinal);
        return found < 0 ? throw new ArgumentException("not in the text: " + place) : found + (upTo.Length > 0 ? upTo.Length : place.Length);
    }
}
