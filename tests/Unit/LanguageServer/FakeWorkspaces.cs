using System.Collections.Immutable;
using TechLint.Engine;
using TechLint.LanguageServer.Workspaces;
using TechLint.Model.Requirements;
using TechLint.Rules.Findings;
using TechLint.Syntax;

namespace TechLint.Tests.Unit.LanguageServer;

/// <summary>
/// An engine with one rule: every <c>BAD</c> in a text is a finding, and so is every <c>LIB</c> while the library beside the
/// document (its path up to the first dot, <c>lib.equipment.yaml</c>) holds <c>BROKEN</c>.
/// </summary>
internal sealed class FakeWorkspaces : IWorkspaces
{
    public const string Library = "lib.equipment.yaml";

    /// <summary>Folders that hold a settings file.</summary>
    public HashSet<string> Roots { get; } = [];

    /// <summary>Texts on the disk, by absolute path.</summary>
    public System.Collections.Concurrent.ConcurrentDictionary<string, string> Disk { get; } = new();

    public List<string?> Opened { get; } = [];

    /// <summary>The folders that were opened, each at its first time.</summary>
    public IReadOnlyList<string?> OpenedOnce()
    {
        lock (Opened) return [.. Opened.Distinct()];
    }

    /// <summary>Called at the start of every check; may block or throw.</summary>
    public Action<string, CancellationToken>? OnCheck { get; set; }

    public Action? OnHover { get; set; }

    /// <summary>The last text that was checked, by path.</summary>
    public System.Collections.Concurrent.ConcurrentDictionary<string, string> Checked { get; } = new();

    public string? FindRoot(string folder)
    {
        for (var at = folder; at is not null; at = Path.GetDirectoryName(at))
        {
            if (Roots.Contains(at)) return at;
        }

        return null;
    }

    public IWorkspace Open(string? root, DateOnly today)
    {
        lock (Opened) Opened.Add(root);
        return new Workspace(this, root, today, ImmutableDictionary<string, SourceText>.Empty);
    }

    private sealed class Workspace(FakeWorkspaces owner, string? root, DateOnly today, ImmutableDictionary<string, SourceText> texts) : IWorkspace
    {
        public IWorkspace With(string path, SourceText? text) =>
            new Workspace(owner, root, today, text is null ? texts.Remove(path) : texts.SetItem(path, text));

        public IWorkspace Refreshed(IReadOnlyCollection<string> paths) => this;

        public FileFindings Check(string path, CancellationToken cancellation)
        {
            owner.OnCheck?.Invoke(path, cancellation);
            cancellation.ThrowIfCancellationRequested();
            var source = SourceOf(path)!;
            owner.Checked[path] = source.Text;
            var library = SourceOf(Library);
            var broken = library?.Text.IndexOf("BROKEN", StringComparison.Ordinal) ?? -1;
            var found = Places(source.Text, "BAD").Select(at => Finding(path, new TextSpan(at, 3), "bad-word", "a bad word", []))
                .Concat(Places(source.Text, "unused").Select(at => Finding(path, new TextSpan(at, 6), "unused-definition", "not used", [])));
            if (broken >= 0)
            {
                found = found.Concat(Places(source.Text, "LIB").Select(at => Finding(
                    path, new TextSpan(at, 3), "bad-library", "the library is broken", [new RelatedPlace(Library, new TextSpan(broken, 6), "here")])));
            }

            var sources = new Dictionary<string, SourceText> { [path] = source };
            if (library is not null) sources[Library] = library;
            return new FileFindings([.. found], sources);
        }

        public TechLint.Engine.Snapshot? Snapshot => null;

        public IReadOnlyList<string> DependantsOf(string path) =>
            path == Library ? [.. texts.Keys.Where(other => other != path).Order()] : [];

        public HoverText? HoverAt(string path, int offset)
        {
            owner.OnHover?.Invoke();
            var text = texts[path].Text;
            var (start, end) = (offset, offset);
            while (start > 0 && !char.IsWhiteSpace(text[start - 1])) start--;
            while (end < text.Length && !char.IsWhiteSpace(text[end])) end++;
            return start == end ? null : new HoverText($"**{text[start..end]}**, {today:yyyy-MM-dd}", TextSpan.FromBounds(start, end));
        }

        public IReadOnlyList<string> Files =>
        [
            .. texts.Keys.Concat(root is null ? [] : owner.Disk.Keys.Where(file => file.StartsWith(root + "/", StringComparison.Ordinal))
                .Select(file => file[(root.Length + 1)..]).Where(file => owner.FindRoot(Path.GetDirectoryName(root + "/" + file)!) is not { } own || own.Length <= root.Length))
                .Distinct().Order(StringComparer.Ordinal),
        ];

        public bool IsKnown(string path) => false;

        public SourceText? SourceOf(string path) =>
            texts.TryGetValue(path, out var open) ? open
            : root is not null && owner.Disk.TryGetValue(root + "/" + path, out var text) ? new SourceText(path, text)
            : null;

        private static IEnumerable<int> Places(string text, string word)
        {
            for (var at = text.IndexOf(word, StringComparison.Ordinal); at >= 0; at = text.IndexOf(word, at + 1, StringComparison.Ordinal))
            {
                yield return at;
            }
        }

        private static Finding Finding(string path, TextSpan span, string rule, string message, ImmutableArray<RelatedPlace> related) => new(
            rule, rule == "unused-definition" ? Severity.Note : Severity.Error, path, span, "setups/seam", message, [],
            ["detail of it"], new Citation("a-set", "a source", Basis.Memory), related, []);
    }
}
