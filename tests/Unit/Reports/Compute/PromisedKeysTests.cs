using System.Text.Json.Nodes;
using FluentAssertions;
using TechLint.Engine;
using TechLint.Engine.Files;
using TechLint.Reports.Compute;
using TechLint.Tests.Unit.Architecture;
using TechLint.Tests.Unit.Rules;
using Xunit;

namespace TechLint.Tests.Unit.Reports.Compute;

/// <summary>Every key that <c>compute --format json --delays</c> promises, on every sample: sectorial, diffraction, tandem and total-focusing beams are all among them.</summary>
public sealed class PromisedKeysTests
{
    private static readonly string[] Law =
    [
        "angle", "wedge-angle", "steering", "exit-behind-front", "exit-y", "active-aperture", "effective-aperture", "near-field", "beam-width", "legs", "grating-lobe-angle", "delays",
    ];

    private static readonly string[] Tofd =
    [
        "probe-centre-separation", "intersection-depth", "lateral-wave-time", "back-wall-time", "near-surface-dead-zone", "back-wall-dead-zone", "covered-depth",
    ];

    private static string Samples => Path.Combine(Repository.Root, "samples");

    public static TheoryData<string> Techniques => [.. Directory.EnumerateFiles(Path.Combine(Samples, "techniques"), "*.yaml")
        .Select(path => Path.GetRelativePath(Samples, path).Replace('\\', '/')).Order(StringComparer.Ordinal)];

    [Theory, MemberData(nameof(Techniques))]
    public void Are_there_for_every_sample(string path)
    {
        var json = Of(path);
        Has(json, "format", "technique", "setups");
        foreach (var setup in Each(json["setups"]))
        {
            Has(setup, "id", "pass", "cases");
            Each(setup["cases"]).Should().NotBeEmpty();
            foreach (var one in Each(setup["cases"])) HoldsCase(one);
        }
    }

    [Theory]
    [InlineData("sectorial", "laws"), InlineData("tofd", "covered-depth"), InlineData("tandem", "tandem"), InlineData("total-focusing", "reach")]
    public void Each_kind_of_beam_is_among_the_samples(string scan, string key) =>
        Techniques.Select(row => Of(row.Data)).SelectMany(json => Each(json["setups"])).SelectMany(setup => Each(setup["cases"])).SelectMany(one => Each(one["beams"]))
            .Should().Contain(beam => (string)beam["scan"]! == scan && beam[key] != null);

    private static void HoldsCase(JsonObject one)
    {
        Has(one, "thickness", "outside-diameter", "probes", "beams", "coverage", "acquisition");
        foreach (var probe in Each(one["probes"]))
        {
            Has(probe, "station", "side", "index-offset", "front-y", "body", "contact-gap");
            Has(probe["body"], "from-y", "to-y");
        }

        foreach (var beam in Each(one["beams"]))
        {
            Has(beam, "id", "scan", "wavelength");
            switch ((string)beam["scan"]!)
            {
                case "tofd":
                    Has(beam, Tofd);
                    Has(beam["covered-depth"], "from", "to");
                    break;
                case "total-focusing":
                    Has(beam, "imaging-path", "transmissions", "reach", "grid-per-wavelength");
                    break;
                case "tandem":
                    Has(beam, "laws", "tandem");
                    Has(beam["tandem"], "spacing", "crossing-depth", "zone");
                    goto default;
                default:
                    foreach (var law in Each(beam["laws"]))
                    {
                        Has(law, Law);
                        ((JsonArray)law["delays"]!).Count.Should().BeGreaterThan(0).And.BeLessThanOrEqualTo(32);
                        foreach (var leg in Each(law["legs"])) Has(leg, "end-y", "end-z", "path", "incidence");
                    }

                    break;
            }
        }

        Has(one["coverage"], "volume", "left", "right", "both-sides", "faces", "unseen", "within-6-db", "within-6-db-of-own-laws");
        foreach (var face in Each(one["coverage"]!["faces"])) Has(face, "face", "side", "served");
        Has(one["acquisition"], "pulses-per-position", "speed-at-most", "scan-length", "scan-time", "data-rate", "data-size");
    }

    /// <summary>The parser takes no NaN and no infinity: a figure that slipped through fails here.</summary>
    private static JsonNode Of(string path)
    {
        var store = new DiskStore(Samples);
        var computed = Computing.Setups(Snapshot.Open(store, WorkspaceOptions.For(FixtureRun.Day)), path, null, null)!;
        return JsonNode.Parse(Runs.Written(output => ComputeJsonReport.Write(output, computed, new ComputeParts { Delays = true })))!;
    }

    private static void Has(JsonNode? node, params string[] keys) => ((JsonObject)node!).Select(pair => pair.Key).Should().Contain(keys, node!.ToJsonString());

    private static JsonObject[] Each(JsonNode? array) => array is JsonArray items ? [.. items.Select(item => (JsonObject)item!)] : [];
}
