using FluentAssertions;
using SharpYaml;
using SharpYaml.Events;
using TechLint.Syntax;
using Xunit;

namespace TechLint.Tests.Unit.Syntax;

/// <summary>Values and structure against another reader, SharpYaml.</summary>
public class OracleTests
{
    public static TheoryData<string> Texts => [.. Syntax.Texts.Sound, Syntax.Texts.Technique, Syntax.Texts.Equipment];

    [Theory]
    [MemberData(nameof(Texts))]
    public void Another_reader_finds_the_same_values(string text)
    {
        var theirs = new List<string>();
        var parser = Parser.CreateParser(new StringReader(text.TrimStart('\uFEFF')));
        while (parser.MoveNext())
        {
            var line = parser.Current switch
            {
                SharpYaml.Events.Scalar scalar => "scalar " + scalar.Value,
                SharpYaml.Events.AnchorAlias alias => "alias " + alias.Value,
                MappingStart => "{",
                MappingEnd => "}",
                SequenceStart => "[",
                SequenceEnd => "]",
                _ => null,
            };
            if (line is not null) theirs.Add(line);
        }

        foreach (var way in Enum.GetValues<YamlReader.Way>())
        {
            var ours = new List<string>();
            Flatten(Reading.Of(text, way).Root, ours);
            // A document of dashes alone is an empty scalar there and no root here.
            ours.Should().Equal(ours.Count == 0 && theirs is ["scalar "] ? [] : theirs);
        }
    }

    private static void Flatten(Node? node, List<string> into)
    {
        switch (node)
        {
            case ScalarNode scalar:
                into.Add("scalar " + scalar.Value);
                break;
            case AliasNode alias:
                into.Add("alias " + alias.Name);
                break;
            case MappingNode mapping:
                into.Add("{");
                foreach (var entry in mapping.Entries)
                {
                    Flatten(entry.Key, into);
                    Flatten(entry.Value, into);
                }

                into.Add("}");
                break;
            case SequenceNode sequence:
                into.Add("[");
                foreach (var item in sequence.Items) Flatten(item, into);
                into.Add("]");
                break;
        }
    }
}
