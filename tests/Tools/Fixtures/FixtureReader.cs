using System.Collections.Immutable;

namespace TechLint.Tests.Tools.Fixtures;

/// <summary>Reads the fixtures of <c>tests/Rules</c>.</summary>
internal static class FixtureReader
{
    public const string Folder = "tests/Rules";

    private static readonly string[] SectionTitles = ["Wrong", "Right", "Boundary"];

    /// <summary>The workspace that every case starts from, by path.</summary>
    public static ImmutableSortedDictionary<string, string> Base { get; } = ReadBase();

    /// <summary>Every fixture, by its rule.</summary>
    public static ImmutableSortedDictionary<string, Fixture> All { get; } = Directory
        .EnumerateFiles(Repository.At(Folder), "*.md")
        .Where(path => Path.GetFileName(path) != "README.md")
        .Select(path => Read(Path.GetFileNameWithoutExtension(path), Lf(File.ReadAllText(path))))
        .ToImmutableSortedDictionary(fixture => fixture.Rule, fixture => fixture, StringComparer.Ordinal);

    public static Fixture Read(string rule, string markdown)
    {
        var lines = markdown.Split('\n');
        if (lines[0] != "# " + rule) throw new FixtureException($"{rule}: the first line must be '# {rule}'");
        var starts = Enumerable.Range(0, lines.Length).Where(i => lines[i].StartsWith("## ", StringComparison.Ordinal)).ToArray();
        var sections = ImmutableArray.CreateBuilder<FixtureSection>();
        for (var i = 0; i < starts.Length; i++)
        {
            var title = lines[starts[i]][3..];
            if (!SectionTitles.Contains(title, StringComparer.Ordinal)) throw new FixtureException($"{rule}: there is no section '{title}'");
            string[] body = lines[(starts[i] + 1)..(i + 1 < starts.Length ? starts[i + 1] : lines.Length)];
            sections.Add(new FixtureSection(title, string.Join('\n', body).Trim(), ReadCases(rule, title, body)));
        }

        return new Fixture(rule, string.Join('\n', lines[1..(starts.Length > 0 ? starts[0] : lines.Length)]).Trim(), sections.ToImmutable());
    }

    private static ImmutableArray<FixtureCase> ReadCases(string rule, string section, string[] lines)
    {
        var cases = ImmutableArray.CreateBuilder<FixtureCase>();
        var files = ImmutableArray.CreateBuilder<FixtureFile>();
        var title = section;
        string? throwing = null;
        for (var i = 0; i < lines.Length; i++)
        {
            if (lines[i].StartsWith("### ", StringComparison.Ordinal))
            {
                Finish();
                title = $"{section}: {lines[i][4..]}";
            }
            else if (lines[i].StartsWith("```", StringComparison.Ordinal))
            {
                var head = BlockHead.Read(rule, lines[i][3..]);
                var end = Array.IndexOf(lines, "```", i + 1);
                if (end < 0) throw new FixtureException($"{rule}: a block is never closed");
                files.Add(FixtureBlock.Read(head, lines[(i + 1)..end], Base.GetValueOrDefault(head.File)));
                throwing ??= head.Throwing;
                i = end;
            }
        }

        Finish();
        return cases.ToImmutable();

        void Finish()
        {
            if (files.Count > 0) cases.Add(new FixtureCase(section, title, files.ToImmutable(), throwing));
            files.Clear();
            throwing = null;
        }
    }

    private static ImmutableSortedDictionary<string, string> ReadBase()
    {
        var root = Repository.At(Folder, "base");
        return Directory.EnumerateFiles(root, "*", SearchOption.AllDirectories).ToImmutableSortedDictionary(
            path => Path.GetRelativePath(root, path).Replace('\\', '/'), path => Lf(File.ReadAllText(path)), StringComparer.Ordinal);
    }

    private static string Lf(string text) => text.Replace("\r\n", "\n", StringComparison.Ordinal);
}
