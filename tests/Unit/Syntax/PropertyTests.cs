using CsCheck;
using FluentAssertions;
using TechLint.Syntax;
using Xunit;

namespace TechLint.Tests.Unit.Syntax;

/// <summary>What holds of every text, however damaged.</summary>
public class PropertyTests
{
    private static readonly string[] Fragments =
        ["{", "}", "[", "]", ":", ": ", "- ", "-", "\"", "'", "\n", "\n  ", "\t", "#", " #", "&a ", "*a", "<<: *a", "|", ">-", "\n---\n", "? ", ",", "\r", "\\",
         "%", "!x ", "  ", "\0", "é", "\U0001F600", "\uFEFF", "\u2028", "x", "a: b"];

    private static readonly string[] Bases = [Texts.Technique, Texts.Equipment, .. Texts.Sound];

    private static readonly Gen<string> Edited =
        from text in Gen.Frequency((1, Gen.OneOf(Bases)), (2, Gen.OneOf(Texts.Technique, Texts.Equipment)))
        from edits in Gen.Select(Gen.Int[0, 3], Gen.Double[0, 1], Gen.OneOf(Fragments), Gen.Int[0, 40]).Array[1, 5]
        select edits.Aggregate(text, Edit);

    private static string Edit(string text, (int Kind, double Place, string Fragment, int Length) edit)
    {
        var at = (int)(edit.Place * text.Length);
        var length = Math.Min(edit.Length, text.Length - at);
        return edit.Kind switch
        {
            0 => text.Insert(at, edit.Fragment),
            1 => text.Remove(at, length),
            2 => text.Remove(at, Math.Min(1, length)).Insert(at, edit.Fragment),
            _ => text.Insert((at * 7) % (text.Length + 1), text.Substring(at, length)),
        };
    }

    [Fact]
    public void Every_prefix_of_a_technique_reads_into_a_sound_tree()
    {
        for (var length = 0; length <= Texts.Technique.Length; length++)
        {
            if (Reading.Flaw(Reading.Of(Texts.Technique[..length])) is { } flaw) flaw.Should().BeNull(because: $"the first {length} characters are a text too");
        }
    }

    [Fact]
    public void A_prefix_keeps_every_key_of_its_whole_lines()
    {
        var whole = Reading.Of(Texts.Technique);
        var keys = ((MappingNode)whole.Root!).Entries;
        for (var length = 0; length <= Texts.Technique.Length; length += 7)
        {
            var kept = Reading.Of(Texts.Technique[..length]).Root as MappingNode;
            var expected = keys.Where(e => e.Span.End < length && Texts.Technique[e.Span.End..length].Contains('\n')).Select(e => e.Key.Value);
            (kept?.Entries ?? []).Select(e => e.Key.Value).Should().StartWith(expected, because: $"the text ends at {length}");
        }
    }

    [Fact]
    public void Random_edits_never_throw_and_leave_spans_nested() =>
        Edited.Sample(text => (Reading.Flaw(Reading.Of(text)) ?? Reading.Flaw(Reading.Of(text, YamlReader.Way.Unaided))) is null, iter: 2_000);

    [Fact]
    public void Any_soup_of_marks_reads() =>
        Gen.OneOf(Fragments).Array[0, 30].Select(string.Concat)
            .Sample(text => (Reading.Flaw(Reading.Of(text)) ?? Reading.Flaw(Reading.Of(text, YamlReader.Way.Recovering))) is null, iter: 5_000);

    [Fact]
    public void What_the_parser_refuses_is_never_passed_in_silence() =>
        Edited.Sample(text =>
        {
            if (Reading.Of(text).Problems.Length > 0) return true;
            var parser = new YamlDotNet.Core.Parser(new YamlDotNet.Core.Scanner(new StringReader(text.TrimStart('\uFEFF')), skipComments: true));
            try
            {
                while (parser.MoveNext())
                {
                    // Only whether it gets to the end matters.
                }

                return true;
            }
            catch (YamlDotNet.Core.YamlException)
            {
                return Reading.Of(text).Root is null;
            }
        }, iter: 1_000);

    [Fact]
    public void Line_ends_of_two_characters_move_spans_and_change_nothing_else() =>
        Edited.Where(text => !text.Contains('\r')).Sample(text =>
        {
            var one = Reading.Of(text);
            var two = Reading.Of(text.Replace("\n", "\r\n"));
            TreeDump.Of(two, withSpans: false).Should().Be(TreeDump.Of(one, withSpans: false));

            // Where each offset of the one text lies in the other.
            var moved = new int[text.Length + 1];
            for (var i = 0; i < text.Length; i++) moved[i + 1] = moved[i] + (text[i] == '\n' ? 2 : 1);
            TextSpan Move(TextSpan span) => TextSpan.FromBounds(moved[span.Start], moved[span.End]);
            Reading.All(two).Select(n => n.Node.Span).Should().Equal(Reading.All(one).Select(n => Move(n.Node.Span)));
            two.Problems.Select(p => (p.Code, p.Argument(0), p.Span)).Should().Equal(one.Problems.Select(p => (p.Code, p.Argument(0), Move(p.Span))));
        }, iter: 400);

    [Fact]
    public void The_same_text_gives_the_same_tree() =>
        Edited.Sample(text => TreeDump.Of(Reading.Of(text)) == TreeDump.Of(Reading.Of(text)), iter: 100);
}
