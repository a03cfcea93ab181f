using System.Text.Json.Nodes;
using FluentAssertions;
using TechLint.Tests.EndToEnd.Support;
using Xunit;

namespace TechLint.Tests.EndToEnd;

/// <summary>The keys of <c>compute --format json</c> are a promise to whoever reads them.</summary>
public sealed class ComputeTests
{
    private const string NotComputed = "not-computed";

    public static TheoryData<string> All => Executables.All;

    public static TheoryData<string, string> Techniques =>
        Executables.With(Repository.FilesOf(Repository.Samples).Where(file => file.EndsWith(".technique.yaml", StringComparison.Ordinal)));

    [Theory]
    [MemberData(nameof(Techniques))]
    public void The_keys_are_those_promised(string executable, string technique)
    {
        var outcome = Outcome.Of(executable, Repository.Samples, "compute", technique, "--format", "json");
        outcome.Status.Should().Be(0, outcome.Error);
        HasKeys(outcome.Json, "format", "technique", "setups");
        Each(outcome.Json["setups"]).Should().NotBeEmpty();
        foreach (var setup in Each(outcome.Json["setups"]))
        {
            HasKeys(setup, "id", "pass", "cases");
            Each(setup["cases"]).Should().NotBeEmpty();
            foreach (var one in Each(setup["cases"])) CaseHasKeys(one);
        }
    }

    [Theory]
    [MemberData(nameof(All))]
    public void The_wall_asked_for_is_the_wall_computed(string executable)
    {
        var call = new[] { "compute", TemporaryWorkspace.Technique, "--format", "json", "--thickness" };
        var metric = Outcome.Of(executable, Repository.Samples, [.. call, "12.7 mm"]);
        metric.Status.Should().Be(0, metric.Error);
        Each(metric.Json["setups"]![0]!["cases"]).Should().ContainSingle().Which["thickness"]!.GetValue<double>().Should().Be(12.7);
        Outcome.Of(executable, Repository.Samples, [.. call, "1/2 in"]).Bytes.Should().Equal(metric.Bytes);
        Outcome.Of(executable, Repository.Samples, [.. call, "80 mm"]).Status.Should().Be(2, "no setup serves that wall");
    }

    private static void CaseHasKeys(JsonObject one)
    {
        var hasPair = Each(one["beams"]).Any(beam => (string)beam["scan"]! == "tofd");
        HasKeys(one, ["thickness", "outside-diameter", "probes", "beams", .. hasPair ? new[] { "tofd-depths" } : [], "coverage", "acquisition"]);
        foreach (var probe in Each(one["probes"]))
        {
            HasKeys(probe, "station", "side", "index-offset", "front-y", "body", "contact-gap", "rocking-angle");
            HasKeys(probe["body"], "from-y", "to-y");
        }

        foreach (var beam in Each(one["beams"])) BeamHasKeys(beam);
        CoverageHasKeys(one["coverage"]!.AsObject());
        string[] totals = one["acquisition"]!["total-scan-time"] is null ? [] : ["total-scan-time", "total-data-size"];
        HasKeys(
            one["acquisition"],
            [
                "pulses-per-position", "speed-at-most", "scan-length", "scan-time", "data-rate", "data-size", "pulse-rate-at-most", "ambiguity-path",
                "segments", "lines", "steps-per-increment", "position-error-at-most", "speed-at-most-for-data", .. totals,
            ]);
    }

    private static void BeamHasKeys(JsonObject beam)
    {
        switch ((string)beam["scan"]!)
        {
            case "tofd":
                HasKeys(
                    beam, "id", "scan", "wavelength", "probe-centre-separation", "intersection-depth", "lateral-wave-time", "back-wall-time",
                    "near-surface-dead-zone", "back-wall-dead-zone", "covered-depth", "converted-back-wall-time", "transverse-back-wall-time", "mid-plane-y",
                    "stated-separation", "separation-difference", "covered-depth-6-db", "covered-depth-12-db", "covered-depth-20-db",
                    "covered-depth-in-zone", "back-wall-dead-zone-counted-back", "dead-zones-off-centre", "spatial-resolution", "centreline-depth-error");
                HasKeys(beam["covered-depth"], "from", "to");
                return;
            case "total-focusing":
                HasKeys(
                    beam, "id", "scan", "wavelength", "imaging-path", "transmissions", "reach", "grid-per-wavelength", "opening-angles",
                    "best-sensitivity-at");
                return;
        }

        var tandem = beam["tandem"] is JsonObject pair ? pair : null;
        HasKeys(beam, ["id", "scan", "wavelength", "laws", .. tandem is null ? [] : new[] { "tandem" }, "temperature-shift", "surface-temperature-shift"]);
        if (tandem is not null) HasKeys(tandem, "spacing", "crossing-depth", "crossing-y", "zone", "spacing-for-zone", "spacing-error");
        foreach (var law in Each(beam["laws"]))
        {
            string[] dual = law.ContainsKey("crossing-depth") ? ["crossing-depth", "overlap"] : [];
            HasKeys(
                law,
                [
                    "angle", "wedge-angle", "steering", "exit-behind-front", "exit-y", "active-aperture", "effective-aperture", "near-field", "beam-width",
                    "legs", "grating-lobe-angle", .. dual, "grating-lobe-level", "divergence", "angle-shift", "exit-shift", "squint", "mode-converted",
                ]);
            foreach (var leg in Each(law["legs"])) HasKeys(leg, "end-y", "end-z", "path", "incidence", "converted");
        }
    }

    private static void CoverageHasKeys(JsonObject coverage)
    {
        // What was not asked for, or has its own reason to be missing, carries that reason in a key of its own.
        foreach (var key in (string[])["margin", "with-drifts", "within-6-db"])
        {
            coverage.Should().ContainKey(key);
            var reason = coverage[key + "-" + NotComputed];
            (coverage[key] is null).Should().Be(reason is not null, coverage.ToJsonString());
            coverage.Remove(key);
            coverage.Remove(key + "-" + NotComputed);
        }

        coverage.Remove("within-6-db-of-own-laws").Should().BeTrue();

        HasKeys(coverage, "volume", "left", "right", "both-sides", "faces", "unseen");
        foreach (var face in Each(coverage["faces"]))
        {
            HasKeys(face, "face", "side", "served", "from-either", "by", "best-incidence", "worst-y", "worst-z", "ways", "legs", "pieces");
        }
    }

    // A reason stands exactly where something is null that could have been computed; nothing else may be there.
    private static void HasKeys(JsonNode? node, params string[] keys)
    {
        var actual = ((JsonObject)node!).Select(pair => pair.Key).Where(key => key != NotComputed);
        actual.Should().Equal(keys, node!.ToJsonString());
        if (node![NotComputed] is { } reason)
        {
            reason.GetValue<string>().Should().NotBeEmpty();
            keys.Should().Contain(key => node[key] == null, "a reason is given for {0}", node.ToJsonString());
        }
    }

    private static JsonObject[] Each(JsonNode? array) => array is JsonArray items ? [.. items.Select(item => (JsonObject)item!)] : [];
}
