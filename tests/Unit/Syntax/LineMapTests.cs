using System.Text;
using CsCheck;
using FluentAssertions;
using TechLint.Syntax;
using Xunit;

namespace TechLint.Tests.Unit.Syntax;

public class LineMapTests
{
    [Fact]
    public void A_byte_order_mark_takes_no_column()
    {
        var map = new LineMap("\uFEFFab\n\uFEFFc");
        foreach (var column in new Func<int, int>[] { map.CodePointColumn, map.Utf16Column, map.Utf8Column })
        {
            column(0).Should().Be(0);
            column(1).Should().Be(0);
            column(2).Should().Be(1);
        }

        map.OffsetOfUtf16(0, 0).Should().Be(1);
        map.OffsetOfUtf8(0, 1).Should().Be(2);
        map.Utf16Column(5).Should().Be(1, because: "only at the start of a file is it a mark");
    }

    [Fact]
    public void Columns_are_counted_in_three_units()
    {
        var map = new LineMap("a\r\né\U0001F600b\rc");
        map.LineCount.Should().Be(3);
        var b = 3 + 1 + 2;
        (map.LineOf(b), map.CodePointColumn(b), map.Utf16Column(b), map.Utf8Column(b)).Should().Be((1, 2, 3, 6));
        map.OffsetOfUtf8(1, 6).Should().Be(b);
        map.OffsetOfUtf8(1, 4).Should().Be(4, because: "a position inside a character is clamped to its start");
        map.OffsetOfUtf16(1, 99).Should().Be(map.EndOf(1));
        map.OffsetOfUtf16(9, 0).Should().Be(9);
    }

    [Fact]
    public void Positions_lead_back_to_their_offsets() =>
        Gen.String[Gen.OneOf('a', 'é', '\n', '\r', '\uFEFF', ' ', '語'), 0, 40].Sample(text =>
        {
            var map = new LineMap(text);
            for (var offset = 0; offset <= text.Length; offset++)
            {
                var line = map.LineOf(offset);
                if (offset > map.EndOf(line) || (offset == 0 && text.StartsWith('\uFEFF'))) continue;
                map.OffsetOfUtf16(line, map.Utf16Column(offset)).Should().Be(offset);
                map.OffsetOfUtf8(line, map.Utf8Column(offset)).Should().Be(offset);
                map.Utf8Column(offset).Should().Be(Encoding.UTF8.GetByteCount(text.AsSpan()[(map.OffsetOfUtf16(line, 0))..offset]));
            }
        });
}
