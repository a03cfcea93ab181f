using System.Collections.Immutable;
using System.Text;
using TechLint.Engine.Files;
using TechLint.Model.Documents;
using TechLint.Syntax;

namespace TechLint.Tests.Unit.Rules;

/// <summary>A workspace in memory: texts, bytes, and what can go wrong with a file.</summary>
internal sealed record TextStore(ImmutableSortedDictionary<string, FileText> Files) : IFileStore
{
    public static readonly TextStore Empty = new(ImmutableSortedDictionary.Create<string, FileText>(StringComparer.Ordinal));

    public TextStore With(string path, string text) => new(Files.SetItem(path, new FileText(new SourceText(path, text), LookupFault.None)));

    /// <summary>Read as a file on the disk would be.</summary>
    public TextStore With(string path, byte[] bytes) =>
        TextDecoding.Decode(bytes) is { } text ? With(path, text) : With(path, LookupFault.NotText);

    public TextStore With(string path, LookupFault fault) => new(Files.SetItem(path, new FileText(null, fault)));

    /// <summary>One place of a text exchanged for another, which must stand there once.</summary>
    public TextStore Edit(string path, string old, string text)
    {
        var whole = Files[path].Source!.Text;
        if (whole.Split(old).Length != 2) throw new ArgumentException($"'{old}' stands {whole.Split(old).Length - 1} times in {path}", nameof(old));
        return With(path, whole.Replace(old, text, StringComparison.Ordinal));
    }

    public FileText Read(string path) => Files.GetValueOrDefault(path) ?? new FileText(null, LookupFault.NotFound);

    public IReadOnlyList<string> List() => [.. Files.Keys];

    public static byte[] Utf8(string text) => Encoding.UTF8.GetBytes(text);
}
