using CsCheck;
using FluentAssertions;
using TechLint.Reports;
using TechLint.Syntax;
using Xunit;

namespace TechLint.Tests.Unit.Reports;

public sealed class PositionTests
{
    private static readonly string[] Pieces = ["a", "ü", "🔧", "\n", "\r\n", "\r", " "];

    [Fact]
    public void Columns_count_code_points_from_one_and_a_byte_order_mark_takes_none()
    {
        Position.Of(Runs.Source, Runs.SpanOf("technique")).Should().Be(new Position(new Place(1, 1), new Place(1, 10)));
        Position.Of(Runs.Source, Runs.SpanOf("26 mm")).Should().Be(new Position(new Place(2, 25), new Place(2, 30)));
    }

    [Fact]
    public void An_end_is_exclusive_and_may_lie_on_a_later_line()
    {
        var source = new SourceText("x", "a\nb\n");
        Position.Of(source, new TextSpan(0, 4)).Should().Be(new Position(new Place(1, 1), new Place(3, 1)));
        Position.Of(source, new TextSpan(1, 0)).Should().Be(new Position(new Place(1, 2), new Place(1, 2)));
    }

    [Fact]
    public void A_text_that_is_not_at_hand_has_its_start_only() =>
        Position.Of(null, new TextSpan(40, 2)).Should().Be(Position.FileStart);

    [Fact]
    public void Places_agree_with_a_count_by_runes() =>
        Gen.Select(Gen.Int[0, 6].Select(i => Pieces[i]).Array[0, 30], Gen.Int[0, 30]).Sample((parts, count) =>
        {
            count = Math.Min(count, parts.Length);
            // A CR before an LF would be one line end: the count below takes whole parts only.
            if (count > 0 && count < parts.Length && parts[count - 1] == "\r" && parts[count] == "\n") return;
            var before = string.Concat(parts[..count]);
            var text = before + string.Concat(parts[count..]);
            var lines = before.Replace("\r\n", "\n").Replace('\r', '\n').Split('\n');
            Position.Of(new SourceText("x", text), new TextSpan(before.Length, 0)).Start
                .Should().Be(new Place(lines.Length, lines[^1].EnumerateRunes().Count() + 1));
        });
}
