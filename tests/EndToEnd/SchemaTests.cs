using System.Text.Json.Nodes;
using FluentAssertions;
using TechLint.Tests.EndToEnd.Support;
using Xunit;

namespace TechLint.Tests.EndToEnd;

/// <summary>The schemas as a validator from outside reads them, in its strict mode.</summary>
public sealed class SchemaTests(SchemaTests.Verdicts verdicts) : IClassFixture<SchemaTests.Verdicts>
{
    /// <summary>The findings that say what a schema says too.</summary>
    private static readonly string[] ShapeRules =
        ["unknown-key", "missing-key", "wrong-value", "unit-missing", "unit-wrong-kind", "duplicate-key", "yaml-syntax"];

    public static TheoryData<string> SoundFiles => [.. Repository.FilesOf(Repository.Samples)];

    public static TheoryData<string> FlawedFiles => [.. Repository.FilesOf(Repository.Flawed)];

    [Theory]
    [InlineData("technique.schema.json")]
    [InlineData("equipment.schema.json")]
    [InlineData("requirement.schema.json")]
    [InlineData("settings.schema.json")]
    public void A_schema_is_valid_2020_12(string schema) => ((JsonObject)verdicts.Outside["schemas"]!).Faults(schema).Should().BeEmpty();

    [Theory]
    [MemberData(nameof(SoundFiles))]
    public void A_sound_sample_is_valid(string file) => verdicts.Of(Repository.Samples, file).Should().BeEmpty();

    [Theory]
    [MemberData(nameof(FlawedFiles))]
    public void The_validator_refuses_a_flawed_sample_exactly_where_techlint_finds_fault_with_its_shape(string file)
    {
        var refused = verdicts.Of(Repository.Flawed, file);
        var found = verdicts.Own.Where(finding => (string)finding["file"]! == file).Select(finding => (string)finding["rule"]!).ToArray();
        (refused.Length > 0).Should().Be(found.Any(ShapeRules.Contains), "the validator said {0} and TechLint {1}", refused, found);
    }

    /// <summary>One run of the validator, and one of TechLint over the flawed samples, for all the files.</summary>
    public sealed class Verdicts
    {
        private readonly Lazy<JsonObject> outside = new(() => Node.Run(
            "check-schemas.mjs",
            [
                Repository.Schemas,
                .. Repository.FilesOf(Repository.Samples).Select(file => Path.Combine(Repository.Samples, file)),
                .. Repository.FilesOf(Repository.Flawed).Select(file => Path.Combine(Repository.Flawed, file)),
            ]));

        private readonly Lazy<JsonObject[]> own = new(() => Outcome.Of("ordinary", Repository.Flawed, "check", "--format", "json").Findings());

        public JsonObject Outside => outside.Value;

        public IReadOnlyList<JsonObject> Own => own.Value;

        public string[] Of(string workspace, string file) => ((JsonObject)Outside["files"]!).Faults(Path.Combine(workspace, file));
    }
}
