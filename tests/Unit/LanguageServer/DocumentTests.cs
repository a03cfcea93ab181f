using System.Text;
using CsCheck;
using FluentAssertions;
using TechLint.LanguageServer.Documents;
using TechLint.LanguageServer.Protocol;
using TechLint.Syntax;
using Xunit;
using Range = TechLint.LanguageServer.Protocol.Range;

namespace TechLint.Tests.Unit.LanguageServer;

public sealed class DocumentTests
{
    /// <summary>Texts with every kind of line end, characters of one to four bytes, marks and halves of pairs.</summary>
    private static readonly Gen<string> Texts =
        Gen.OneOf("a", "b: ", "\n", "\r\n", "\r", "é", "µm", "語", "😀", "👩‍🔧", "\t", "\uFEFF", "\u2028", "\uD83D", " ").Array[0, 30].Select(string.Concat);

    internal static PositionEncoding[] Encodings { get; } = [PositionEncoding.Utf16, PositionEncoding.Utf8, PositionEncoding.Utf32];

    [Fact]
    public void Incremental_text_equals_full_text()
    {
        Gen.Select(Texts, Gen.Select(Gen.Int[0, 1000], Gen.Int[0, 1000], Texts).Array[1, 6], Gen.OneOf(Encodings)).Sample((text, edits, encoding) =>
        {
            var source = new SourceText("a", text);
            var changes = new List<ContentChange>();
            var expected = text;
            foreach (var (from, to, inserted) in edits)
            {
                var places = Places(expected);
                var (start, end) = (places[from % places.Count], places[to % places.Count]);
                if (end < start) (start, end) = (end, start);
                changes.Add(new ContentChange(new Range(Reference(expected, start, encoding), Reference(expected, end, encoding)), inserted));
                expected = expected[..start] + inserted + expected[end..];
            }

            TextEdits.Apply(source, changes, encoding).Text.Should().Be(expected);
        }, iter: 3000);
    }

    [Fact]
    public void Positions_lead_back_to_their_offsets_and_are_counted_as_an_independent_count_has_them()
    {
        Gen.Select(Texts, Gen.OneOf(Encodings)).Sample((text, encoding) =>
        {
            var map = new PositionMap(new SourceText("a", text), encoding, markCounts: true);
            foreach (var offset in Places(text))
            {
                map.ToPosition(offset).Should().Be(Reference(text, offset, encoding));
                map.ToOffset(map.ToPosition(offset)).Should().Be(offset);
            }
        }, iter: 2000);
    }

    [Fact]
    public void Any_position_lands_in_the_text_and_never_inside_a_line_end()
    {
        Gen.Select(Texts, Gen.Long[-3, 40], Gen.OneOf(Gen.Long[-3, 40], Gen.OneOf(long.MaxValue, long.MinValue, uint.MaxValue)), Gen.OneOf(Encodings))
            .Sample((text, line, character, encoding) =>
            {
                var offset = new PositionMap(new SourceText("a", text), encoding, markCounts: true).ToOffset(new Position(line, character));
                offset.Should().BeInRange(0, text.Length);
                if (offset > 0 && offset < text.Length) (text[offset - 1] == '\r' && text[offset] == '\n').Should().BeFalse();
            }, iter: 3000);
    }

    [Theory]
    [InlineData("utf-16", 5)]
    [InlineData("utf-8", 8)]
    [InlineData("utf-32", 4)]
    public void An_emoji_counts_what_its_encoding_makes_of_it(string encoding, int column)
    {
        var map = new PositionMap(new SourceText("a", "x: é😀|"), PositionEncodings.Negotiate([encoding]), markCounts: true);
        // "x: " is three, é one or two, the emoji two, four or one.
        map.ToPosition(6).Character.Should().Be(column + 1);
        map.ToPosition(4).Character.Should().Be(encoding == "utf-8" ? 5 : 4);
    }

    [Fact]
    public void A_byte_order_mark_counts_only_where_the_client_sent_it()
    {
        var source = new SourceText("a", "\uFEFFkey: 1");
        new PositionMap(source, PositionEncoding.Utf16, markCounts: true).ToPosition(1).Character.Should().Be(1);
        new PositionMap(source, PositionEncoding.Utf8, markCounts: true).ToPosition(1).Character.Should().Be(3);
        new PositionMap(source, PositionEncoding.Utf16, markCounts: false).ToPosition(1).Character.Should().Be(0);
        new PositionMap(source, PositionEncoding.Utf16, markCounts: false).ToOffset(new Position(0, 0)).Should().Be(1);
    }

    [Fact]
    public void Changes_of_one_message_speak_each_of_what_the_one_before_left()
    {
        var changed = TextEdits.Apply(
            new SourceText("a", "one\r\ntwo"),
            [Change(0, 0, 0, 3, "1\n2"), Change(1, 0, 1, 1, "😀"), Change(1, 2, 2, 0, "-"), new ContentChange(null, "whole\n"), Change(1, 0, 1, 0, "end")],
            PositionEncoding.Utf16);
        changed.Text.Should().Be("whole\nend");
        TextEdits.Apply(new SourceText("a", "abc"), [Change(0, 2, 0, 1, "-")], PositionEncoding.Utf16).Text.Should().Be("a-c", "a range may be turned round");
    }

    [Theory]
    [InlineData("file:///a/b.yaml", "/a/b.yaml")]
    [InlineData("FILE:///a/b.yaml", "/a/b.yaml")]
    [InlineData("file://localhost/a/b.yaml", "/a/b.yaml")]
    [InlineData("file:/a/b.yaml", "/a/b.yaml")]
    [InlineData("file:///a/my%20weld%20%C3%A9%20%E8%AA%9E.yaml", "/a/my weld é 語.yaml")]
    [InlineData("file:///a/my weld é 語.yaml", "/a/my weld é 語.yaml")]
    [InlineData("file:///a/./b/../c//d.yaml", "/a/c/d.yaml")]
    [InlineData("file:///../../etc/d.yaml", "/etc/d.yaml")]
    [InlineData("file:///a/100%.yaml", "/a/100%.yaml")]
    [InlineData("file:///a/b%23c%3Fd.yaml", "/a/b#c?d.yaml")]
    [InlineData("file:///c%3A/a.yaml", "/c:/a.yaml")]
    [InlineData("file://server/share/a.yaml", null)]
    [InlineData("file:///a/%00.yaml", null)]
    [InlineData("untitled:Untitled-1", null)]
    public void Addresses_of_files_lead_to_paths_where_paths_have_slashes(string uri, string? path) =>
        DocumentUri.Parse(uri, windows: false)!.Path.Should().Be(path);

    [Theory]
    [InlineData("file:///c%3A/My%20Welds/a.yaml", @"c:\My Welds\a.yaml")]
    [InlineData("file:///C:/a.yaml", @"c:\a.yaml")]
    [InlineData("file:///C:/../a.yaml", @"c:\a.yaml")]
    [InlineData("file:///c:", @"c:\")]
    [InlineData("file://server/share/a.yaml", @"\\server\share\a.yaml")]
    [InlineData("file:///a/b.yaml", null)]
    public void Addresses_of_files_lead_to_paths_where_drives_have_letters(string uri, string? path) =>
        DocumentUri.Parse(uri, windows: true)!.Path.Should().Be(path);

    [Fact]
    public void Every_spelling_of_one_file_is_one_document()
    {
        string[] spellings =
            ["file:///c%3A/a%20b/%c3%a9.technique.yaml", "file:///C:/a b/é.technique.yaml", "file:///C%3a/x/../a%20b/%C3%A9.technique.yaml", @"file:///c:\a b\é.technique.yaml"];
        var uris = spellings.Select(spelling => DocumentUri.Parse(spelling)!).ToList();
        uris.Distinct().Should().ContainSingle();
        uris[0].Normal.Should().Be("file:///c:/a%20b/%C3%A9.technique.yaml");
        uris.Select(uri => uri.Spelling).Should().Equal(spellings);
        uris[0].FileName.Should().Be("é.technique.yaml");
    }

    [Fact]
    public void A_path_and_its_address_lead_to_each_other()
    {
        Gen.OneOf("a", "B", " ", "é", "語", "😀", "%", "#", "?", "+", "&", "a.b", "%41").Array[1, 5].Select(string.Concat).Array[1, 4].Sample(parts =>
        {
            var path = "/" + string.Join('/', parts);
            var uri = DocumentUri.FromPath(path)!;
            uri.Path.Should().Be(path);
            uri.Normal.Should().MatchRegex("^[\\x21-\\x7e]+$");
            DocumentUri.Parse(uri.Normal)!.Should().Be(uri);
        }, iter: 500);
    }

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("   ")]
    [InlineData("/a/b")]
    [InlineData("c:/a")]
    [InlineData("::")]
    [InlineData("1a:b")]
    public void What_is_no_address_is_none(string? text) => DocumentUri.Parse(text).Should().BeNull();

    private static ContentChange Change(int fromLine, int fromCharacter, int toLine, int toCharacter, string text) =>
        new(new Range(new Position(fromLine, fromCharacter), new Position(toLine, toCharacter)), text);

    /// <summary>Offsets that an editor's caret can stand at: not inside a line end, not inside a pair.</summary>
    private static List<int> Places(string text)
    {
        var places = new List<int>();
        for (var i = 0; i <= text.Length; i++)
        {
            var inside = i > 0 && i < text.Length
                && ((text[i - 1] == '\r' && text[i] == '\n') || (char.IsHighSurrogate(text[i - 1]) && char.IsLowSurrogate(text[i])));
            if (!inside) places.Add(i);
        }

        return places;
    }

    /// <summary>The position of an offset, counted the slow way.</summary>
    private static Position Reference(string text, int offset, PositionEncoding encoding)
    {
        var before = text[..offset].Replace("\r\n", "\n", StringComparison.Ordinal).Replace('\r', '\n');
        var lines = before.Split('\n');
        return new Position(lines.Length - 1, encoding switch
        {
            PositionEncoding.Utf8 => Encoding.UTF8.GetByteCount(lines[^1]),
            PositionEncoding.Utf32 => lines[^1].EnumerateRunes().Count(),
            _ => lines[^1].Length,
        });
    }
}
