using System.Text.Json;
using System.Text.RegularExpressions;
using FluentAssertions;
using TechLint.Model.Shape;
using TechLint.Syntax;
using Xunit;

namespace TechLint.Tests.Unit.Model;

public class ShapeSchemaTests
{
    public static TheoryData<FormatKind> Kinds => [.. Enum.GetValues<FormatKind>()];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Every_key_has_a_title_and_a_description_in_sentences(FormatKind kind)
    {
        var keys = AllKeys(FormatShapes.Of(kind), "").ToList();

        keys.Should().NotBeEmpty();
        keys.Should().OnlyContain(key => key.Key.Title.Length > 0 && char.IsAsciiLetterUpper(key.Key.Title[0]));
        keys.Should().OnlyContain(key => key.Key.Description.Length > 10 && key.Key.Description.EndsWith('.'));
        keys.Should().OnlyContain(key => Regex.IsMatch(key.Key.Name, "^[a-z]+(-[a-z]+)*$"));
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Every_definition_and_every_list_entry_that_is_a_group_has_a_title(FormatKind kind)
    {
        var root = Schema(kind);
        root.GetProperty("$defs").EnumerateObject().Should().OnlyContain(definition =>
            definition.Value.GetProperty("title").GetString()!.Length > 0 && definition.Value.GetProperty("description").GetString()!.EndsWith('.'));
        AllShapes(FormatShapes.Of(kind)).OfType<ListShape>().Where(list => list.Item is ObjectShape).Should().OnlyContain(list => list.Item.Title.Length > 0);
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Every_group_is_closed_and_every_reference_stays_inside_the_file(FormatKind kind)
    {
        foreach (var element in Elements(Schema(kind)))
        {
            if (element.TryGetProperty("$ref", out var reference)) reference.GetString().Should().StartWith("#/$defs/");
            if (element.TryGetProperty("title", out var title) && title.ValueKind == JsonValueKind.String && element.TryGetProperty("properties", out _))
                element.GetProperty("additionalProperties").ValueKind.Should().Be(JsonValueKind.False, title.GetString());
        }
    }

    [Fact]
    public void The_definitions_of_quantities_are_the_same_in_every_schema()
    {
        var first = Schema(FormatKind.Technique).GetProperty("$defs");
        foreach (var kind in Enum.GetValues<FormatKind>())
        {
            foreach (var definition in Schema(kind).GetProperty("$defs").EnumerateObject().Where(definition =>
                definition.Name is not ("limit-value" or "technique-id" or "imaging-path")))
            {
                first.GetProperty(definition.Name).GetRawText().Should().Be(definition.Value.GetRawText(), $"{kind} {definition.Name}");
            }

            ScalarDefinitions.Quantities.Keys.Where(name => name != "limit-value")
                .Should().OnlyContain(name => HasDefinition(kind, name));
        }
    }

    public static TheoryData<string> Texts =>
    [
        "0 mm", "1 mm", "19.05 mm", "3/4 in", "1 1/2 in", "-3 mm", "+3 mm", "0.0 mm", "0/4 in", "5", "5 furlong", "1.5.2 mm", "1,5 mm", " 5 mm", "5mm", "5  mm",
        "mm", "", "10^300 mm", "1e300", "1e3 mm", "NaN", ".inf", "3/0 in", "0 deg", "0.5 deg", "1/2 deg", "89.999 deg", "90 deg", "120 deg", "179.9 deg", "180 deg",
        "-10 deg", "1000 deg", "5 MHz", "0 MHz", "5 mhz", "6 kHz", "-6 dB", "6 dB", "20 degC", "-40 degF", "15 K", "-1 K", "0 %", "50 %", "100 %", "100.0 %",
        "100.5 %", "101 %", "-1 %", "120 %", "8 h", "10 years", "0 us", "-1 us", "7800 kg/m3", "12 steps/mm", "0 steps/mm", "30 MB/s", "3240 m/s", "0.128 in/us", "60 mm/s", "0 m/s",
        "5 mm s", "5\tmm", "٥ mm", "1 2 mm", "1 1.5/2 in", "5. mm", ".5 mm", "--5 mm", "1/2/3 in", "007 mm",
    ];

    [Theory]
    [MemberData(nameof(Texts))]
    public void A_pattern_for_editors_and_the_exact_reading_give_the_same_verdict(string text)
    {
        foreach (var (name, bounds) in ScalarDefinitions.Quantities)
        {
            var kind = name == "limit-value" ? FormatKind.Requirement : FormatKind.Technique;
            var definition = Schema(kind).GetProperty("$defs").GetProperty(name);
            var pattern = name == "limit-value" ? definition.GetProperty("anyOf")[0].GetProperty("pattern") : definition.GetProperty("pattern");
            var scalar = new ScalarNode(new TextSpan(0, text.Length), text, ScalarStyle.SingleQuoted, new TextSpan(0, text.Length), false);
            var shape = new QuantityShape("", name, "", bounds, allowsNumber: false);

            var read = ScalarJudge.Judge(scalar, shape, []) is null;

            Regex.IsMatch(text, pattern.GetString()!, RegexOptions.CultureInvariant, TimeSpan.FromSeconds(1)).Should().Be(read, $"'{text}' as {name}");
        }
    }

    [Theory]
    [InlineData("id", "pa-5-32", true)]
    [InlineData("id", "w.1", true)]
    [InlineData("id", "-a", false)]
    [InlineData("id", "Pa", false)]
    [InlineData("id", "a b", false)]
    [InlineData("id", "", false)]
    [InlineData("id", "é", false)]
    [InlineData("technique-id", "GM-UT-014", true)]
    [InlineData("technique-id", ".GM", false)]
    [InlineData("technique-id", "GM/1", false)]
    [InlineData("imaging-path", "TT-T", true)]
    [InlineData("imaging-path", "T-T", true)]
    [InlineData("imaging-path", "TTTT-T", false)]
    [InlineData("imaging-path", "T-", false)]
    [InlineData("imaging-path", "-T", false)]
    [InlineData("imaging-path", "TT", false)]
    [InlineData("imaging-path", "T-X", false)]
    [InlineData("imaging-path", "T-T-T", false)]
    public void A_word_is_judged_as_its_pattern_says(string name, string text, bool expected)
    {
        var definition = Schema(FormatKind.Technique).GetProperty("$defs").GetProperty(name);
        var pattern = definition.TryGetProperty("anyOf", out var any) ? any[0].GetProperty("pattern") : definition.GetProperty("pattern");

        Regex.IsMatch(text, pattern.GetString()!).Should().Be(expected);
        ScalarDefinitions.Words[name](text).Should().Be(expected);
    }

    [Fact]
    public void A_pattern_stays_quick_on_long_nonsense()
    {
        foreach (var element in Elements(Schema(FormatKind.Requirement)).Concat(Elements(Schema(FormatKind.Technique))))
        {
            if (!element.TryGetProperty("pattern", out var pattern) || pattern.ValueKind != JsonValueKind.String) continue;
            foreach (var text in new[] { new string('1', 20000), string.Concat(Enumerable.Repeat("1 ", 10000)), string.Concat(Enumerable.Repeat("1/", 10000)), "1" + new string(' ', 20000) + "x" })
            {
                var act = () => Regex.IsMatch(text, pattern.GetString()!, RegexOptions.CultureInvariant, TimeSpan.FromSeconds(1));
                act.Should().NotThrow();
            }
        }
    }

    [Fact]
    public void Every_plausible_band_leads_to_a_key_whose_quantity_it_fits()
    {
        var keys = Enum.GetValues<FormatKind>().SelectMany(kind => AllKeys(FormatShapes.Of(kind), FormatShapes.NameOf(kind))).ToLookup(key => key.Path, key => key.Key);
        foreach (var path in Plausibility.Paths)
        {
            keys[path].Should().NotBeEmpty(path);
            foreach (var key in keys[path])
            {
                foreach (var band in key.Plausible)
                {
                    band.Least.Should().BeLessThan(band.Most, path);
                    AllShapes(key.Value).OfType<QuantityShape>().Should().Contain(quantity => quantity.BoundsOf(band.Kind) != null, path);
                }
            }
        }
    }

    [Fact]
    public void A_shape_knows_order_requirement_default_and_identity()
    {
        var technique = FormatShapes.Of(FormatKind.Technique);
        technique.Keys.Select(key => key.Name).Take(5).Should().Equal("technique", "title", "revision", "date", "status");
        technique.Find("setups")!.IsRequired.Should().BeTrue();
        technique.Find("references")!.IsRequired.Should().BeFalse();
        var setup = (ObjectShape)((ListShape)technique.Find("setups")!.Value).Item;
        ((ListShape)setup.Find("probes")!.Value).IdentityKey.Should().Be("station");
        ((ListShape)setup.Find("beams")!.Value).IdentityKey.Should().Be("id");
        setup.Find("recording")!.Default.Should().Be("encoded");
        ((ObjectShape)((ListShape)setup.Find("beams")!.Value).Item).Find("angles")!.Value.Should().BeOfType<ObjectShape>().Which.IsRange.Should().BeTrue();
    }

    [Theory]
    [InlineData("a/b/gm.technique.yaml", FormatKind.Technique)]
    [InlineData("x.equipment.yaml", FormatKind.Equipment)]
    [InlineData("x.requirements.yaml", FormatKind.Requirement)]
    [InlineData("sub\\techlint.yaml", FormatKind.Settings)]
    [InlineData("my-techlint.yaml", null)]
    [InlineData("x.yaml", null)]
    public void A_file_is_told_by_its_name(string path, FormatKind? expected) => FormatKinds.Of(path).Should().Be(expected);

    internal static JsonElement Schema(FormatKind kind)
    {
        using var stream = FormatShapes.OpenSchema(kind);
        using var document = JsonDocument.Parse(stream);
        return document.RootElement.Clone();
    }

    private static bool HasDefinition(FormatKind kind, string name) => Schema(kind).GetProperty("$defs").TryGetProperty(name, out _);

    private static IEnumerable<JsonElement> Elements(JsonElement element)
    {
        if (element.ValueKind == JsonValueKind.Object)
        {
            yield return element;
            foreach (var below in element.EnumerateObject().SelectMany(property => Elements(property.Value))) yield return below;
        }
        else if (element.ValueKind == JsonValueKind.Array)
        {
            foreach (var below in element.EnumerateArray().SelectMany(Elements)) yield return below;
        }
    }

    private static IEnumerable<(string Path, KeyShape Key)> AllKeys(ValueShape shape, string path) => shape switch
    {
        ObjectShape group => group.Keys.SelectMany(key => AllKeys(key.Value, $"{path}/{key.Name}").Prepend(($"{path}/{key.Name}", key))),
        ListShape list => AllKeys(list.Item, path),
        MapShape map => AllKeys(map.Value, path),
        AnyOfShape any => any.Alternatives.SelectMany(alternative => AllKeys(alternative, path)),
        _ => [],
    };

    private static IEnumerable<ValueShape> AllShapes(ValueShape shape) => (shape switch
    {
        ObjectShape group => group.Keys.SelectMany(key => AllShapes(key.Value)),
        ListShape list => AllShapes(list.Item),
        MapShape map => AllShapes(map.Value),
        AnyOfShape any => any.Alternatives.SelectMany(AllShapes),
        _ => [],
    }).Prepend(shape);
}
