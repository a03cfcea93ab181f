using CsCheck;
using FluentAssertions;
using TechLint.Engine.Formatting;
using TechLint.Syntax;
using TechLint.Syntax.Formatting;
using TechLint.Tests.Unit.Architecture;
using TechLint.Tests.Unit.Syntax;
using Xunit;

namespace TechLint.Tests.Unit.Engine.Formatting;

public sealed class KeyOrderTests
{
    public static TheoryData<string, string> Examples => new()
    {
        { "revision: B\ntechnique: X-1\n", "technique: X-1\nrevision: B\n" },

        // Comments go with their key, blank lines with theirs; the file's own comment stays in front.
        {
            "# of the file\n\n# why B\nrevision: B # its last word\n\n# the name\ntechnique: X-1\ntitle: a title\n",
            "# of the file\n\n# why B\n# the name\ntechnique: X-1\ntitle: a title\n\nrevision: B # its last word\n"
        },
        { "weld:\n  orientation: longitudinal\n  joint: butt\n", "weld:\n  joint: butt\n  orientation: longitudinal\n" },
        { "weld:\n  cap: {height: 2 mm, width: 22 mm}\n", "weld:\n  cap: {width: 22 mm, height: 2 mm}\n" },
        {
            "setups:\n  - frame: f\n    id: seam\n    # below the id\n    probes: []\n",
            "setups:\n  - frame: f\n    id: seam\n    # below the id\n    probes: []\n"
        },
        { "setups:\n  - frame: f\n    id: seam\n", "setups:\n  - id: seam\n    frame: f\n" },

        // An unknown key stays behind the one it followed.
        { "title: t\nmystery: 1\ntechnique: X-1\n", "technique: X-1\ntitle: t\nmystery: 1\n" },

        // What must not move.
        { "revision: &r B\ntechnique: *r\n", "revision: &r B\ntechnique: *r\n" },
        { "revision: B\ntechnique: X-1\nrevision: C\n", "revision: B\ntechnique: X-1\nrevision: C\n" },
        { "weld:\n  cap: {height: 2 mm, # h\n        width: 22 mm}\n", "weld:\n  cap: {height: 2 mm, # h\n        width: 22 mm}\n" },
    };

    public static TheoryData<string> Samples => [.. Directory.EnumerateFiles(Path.Combine(Repository.Root, "samples", "techniques"), "*.yaml")
        .Select(path => Path.GetRelativePath(Repository.Root, path)).Order(StringComparer.Ordinal)];

    [Theory, MemberData(nameof(Examples))]
    public void Keys_come_into_order(string text, string expected)
    {
        Ordered(text).Should().Be(expected);
        Ordered(expected).Should().Be(expected, "ordering again changes nothing");
    }

    [Theory, MemberData(nameof(Samples))]
    public void A_sample_with_its_keys_shuffled_says_the_same_in_order(string path)
    {
        var text = File.ReadAllText(Path.Combine(Repository.Root, path));
        var ordered = Ordered(text);
        Gen.Int[0, 1000].Sample(
            seed =>
            {
                // Top-level blocks in another order: lines from one unindented key to the next.
                var blocks = new List<string>();
                foreach (var line in text.TrimEnd('\n').Split('\n'))
                {
                    if (line.Length > 0 && char.IsAsciiLetterLower(line[0])) blocks.Add(line);
                    else if (line.Length > 0) blocks[^1] += "\n" + line;
                }

                var random = new Random(seed);
                var shuffled = string.Join("\n", blocks.OrderBy(_ => random.Next())) + "\n";
                var result = Ordered(shuffled);
                Formatter.SaysTheSame(Reading.Of(text), Reading.Of(result)).Should().BeTrue();
                result.Replace("\n\n", "\n", StringComparison.Ordinal).Should().Be(ordered.Replace("\n\n", "\n", StringComparison.Ordinal));
            },
            iter: 20);
    }

    [Fact]
    public void Whatever_is_ordered_says_the_same_and_settles()
    {
        foreach (var text in (string[])[Texts.Technique, Texts.Equipment, .. Texts.Sound])
        {
            if (TextFormat.Of(new SourceText("a.technique.yaml", text), reorder: true) is not { } once) continue;
            Formatter.SaysTheSame(Reading.Of(text), Reading.Of(once)).Should().BeTrue();
            Ordered(once).Should().Be(once);
        }
    }

    private static string Ordered(string text) => TextFormat.Of(new SourceText("a.technique.yaml", text), reorder: true) ?? "not formatted";
}
