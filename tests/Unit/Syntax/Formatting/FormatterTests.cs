using CsCheck;
using FluentAssertions;
using TechLint.Syntax;
using TechLint.Syntax.Formatting;
using TechLint.Tests.Unit.Architecture;
using Xunit;

namespace TechLint.Tests.Unit.Syntax.Formatting;

public sealed class FormatterTests
{
    public static TheoryData<string, string> Examples => new()
    {
        { "a:   b\n", "a: b\n" },
        { "a :b\n", "a :b\n" },
        { "a : b\n", "a: b\n" },
        { "a: b", "a: b\n" },
        { "\n\na: b   \n\n\n", "a: b\n" },
        { "a:\n    b: c\n\n\n    d: e\n", "a:\n  b: c\n\n\n  d: e\n" },
        { "a:\n- b\n-   c\n", "a:\n  - b\n  - c\n" },
        { "a:\n      -   b: c\n          d: e\n", "a:\n  - b: c\n    d: e\n" },
        { "a: { b: c ,d: [ e,f ] }\n", "a: {b: c, d: [e, f]}\n" },
        { "a: {b: c,\n  d: e}\n", "a: {b: c,\n    d: e}\n" },
        { "a: {\n      b: c,\n  d: e\n    }\n", "a: {\n  b: c,\n  d: e\n}\n" },
        { "- {a: b,\n      c: d}\n", "- {a: b,\n   c: d}\n" },
        { "a:   b  # why\n", "a: b  # why\n" },
        { "a:\n    # about b\n    b: c\n# about d\nd: e\n", "a:\n  # about b\n  b: c\n# about d\nd: e\n" },
        { "a:\n    b: c\n    # the end of a\nd: e\n", "a:\n  b: c\n  # the end of a\nd: e\n" },
        { "a:\r\n    b:  c\r\n", "a:\r\n  b: c\r\n" },
        { "\uFEFFa:  b\n", "\uFEFFa: b\n" },
        { "a:\n    b: |\n      one\n        two\n    c: d\n", "a:\n  b: |\n    one\n      two\n  c: d\n" },
        { "a:\n    b: >-\n     folded\n     text\n", "a:\n  b: >-\n   folded\n   text\n" },
        { "a: {e: , f: g}\n", "a: {e: , f: g}\n" },
        { "speed:     {of: x}\nincrement: {of: y}\n", "speed:     {of: x}\nincrement: {of: y}\n" },
        { "speed:       {of: x}\nincrement: {of: y}\n", "speed: {of: x}\nincrement: {of: y}\n" },
        { "- {a: 1,  b: c}\n- {a: 10, b: c}\n", "- {a: 1,  b: c}\n- {a: 10, b: c}\n" },
        { "a:\tb\n", "a: b\n" },
        { "a: 5  MHz\n", "a: 5  MHz\n" },
        { "a: 'x  y'\n", "a: 'x  y'\n" },
    };

    public static TheoryData<string> Sound => [.. Texts.Sound, Texts.Technique, Texts.Equipment];

    public static TheoryData<string> Samples => [.. Directory.EnumerateFiles(Path.Combine(Repository.Root, "samples"), "*.yaml", SearchOption.AllDirectories)
        .Select(path => Path.GetRelativePath(Repository.Root, path)).Order(StringComparer.Ordinal)];

    [Theory, MemberData(nameof(Examples))]
    public void Spacing_is_put_in_order(string text, string expected)
    {
        Formatter.Format(Reading.Of(text)).Should().Be(expected);
        Formatter.Format(Reading.Of(expected)).Should().Be(expected, "formatting again changes nothing");
    }

    [Theory, MemberData(nameof(Sound))]
    public void A_sound_text_keeps_its_meaning_and_settles_at_once(string text) => Holds(text).Should().BeNull();

    [Theory, MemberData(nameof(Samples))]
    public void The_samples_are_formatted(string path)
    {
        var tree = YamlReader.Read(new SourceText(path, File.ReadAllText(Path.Combine(Repository.Root, path))));
        if (Formatter.CanFormat(tree)) Formatter.Format(tree).Should().Be(tree.Source.Text, "the samples show the format at its best");
    }

    [Theory]
    [InlineData("a: {b: c\n"), InlineData("a: b: c\n"), InlineData("a: \"b\n"), InlineData("a:\n  b: c\n d: e\n")]
    public void A_broken_text_is_left_alone(string text) => Formatter.Edits(Reading.Of(text)).Should().BeNull();

    [Fact]
    public void Random_white_space_never_changes_the_meaning()
    {
        // Mostly where white space stands already, so that most texts stay sound.
        var spaced =
            from text in Gen.OneOf([Texts.Technique, Texts.Equipment, .. Texts.Sound])
            from places in Gen.Select(Gen.Bool, Gen.Double[0, 1], Gen.OneOf(" ", "  ", "\t", "\n", "\n\n", "    ", " # c\n")).Array[1, 6]
            select places.Aggregate(text, (so, place) => so.Insert(PlaceIn(so, (int)(place.Item2 * so.Length), place.Item1), place.Item3));
        spaced.Sample(text => Holds(text).Should().BeNull(), iter: 3_000);

        static int PlaceIn(string text, int at, bool anywhere)
        {
            // A byte order mark is one only in front.
            if (text.StartsWith('\uFEFF')) at = Math.Max(at, 1);
            var space = text.AsSpan(at).IndexOfAny(' ', ',', '{');
            return anywhere || space < 0 ? at : at + space + 1;
        }
    }

    [Theory]
    [InlineData(1), InlineData(3), InlineData(6)]
    public void What_is_indented_deeper_comes_back(int more)
    {
        foreach (var text in new[] { Texts.Technique, Texts.Equipment })
        {
            var formatted = Formatter.Format(Reading.Of(text))!;
            var deeper = string.Join('\n', formatted.Split('\n').Select(line => line.StartsWith(' ') ? new string(' ', more) + line : line));
            Formatter.Format(Reading.Of(deeper)).Should().Be(formatted);
        }
    }

    /// <summary>What does not hold of a text's formatting; null where all does.</summary>
    private static string? Holds(string text)
    {
        var tree = Reading.Of(text);
        if (!Formatter.CanFormat(tree)) return null;
        if (Formatter.Edits(tree) is not { } edits) return $"not formatted: {text}";
        var once = TextEdit.Apply(text, edits);
        var again = Reading.Of(once);
        if (!SameMeaning.Holds(tree, again, keepsOrder: true)) return $"another meaning: {once}";
        return Formatter.Edits(again) is { IsEmpty: true } ? null : $"not settled: {once}";
    }
}
