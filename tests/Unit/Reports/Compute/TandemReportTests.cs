using FluentAssertions;
using TechLint.Engine;
using TechLint.Reports.Compute;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Studies;
using TechLint.Ultrasonics.Tandem;
using Xunit;

namespace TechLint.Tests.Unit.Reports.Compute;

public sealed class TandemReportTests
{
    private static readonly TandemStudy Pair = new(
        Studies.Mm(60.12344), Studies.Mm(30.25), Studies.Mm(-1.5), Studies.Mm(25.4), Studies.Mm(35.3), Studies.Mm(59), Studies.Mm(1.12344));

    private static readonly TandemStudy Apart = Pair with
    {
        CrossingDepth = Studies.Mm(double.NaN), CrossingY = Studies.Mm(double.NaN), ServedFrom = Studies.Mm(double.NaN), ServedTo = Studies.Mm(double.NaN),
    };

    [Fact]
    public void Json_of_a_pair_has_its_keys_and_null_beside_a_reason()
    {
        Json(Pair).Should().Contain("""
            "tandem":{"spacing":60.1234,"crossing-depth":30.25,"crossing-y":-1.5,"zone":{"from":25.4,"to":35.3},"spacing-for-zone":59,"spacing-error":1.1234}
            """.Trim());
        Json(Apart).Should().Contain("""
            "crossing-depth":null,"crossing-y":null,"zone":{"from":null,"to":null},"spacing-for-zone":59,"spacing-error":1.1234,"not-computed":"the axes do not cross within the wall"}
            """.Trim());
        Json(Pair with { ServedFrom = Studies.Mm(double.NaN) }).Should().Contain("\"not-computed\":\"the pair does not serve the place where its axes cross\"");
    }

    [Fact]
    public void Text_of_a_pair_tells_spacing_crossing_and_zone()
    {
        Text(Pair).Should().Contain("spacing 60.1 mm, for the middle of the zone 59.0 mm").And.Contain("axes cross at depth 30.3 mm, y -1.5 mm; serves 25.4..35.3 mm");
        Text(Apart).Should().Contain("zone not computed: the axes do not cross within the wall");
    }

    private static ComputedTechnique Technique(TandemStudy pair)
    {
        var setup = Studies.Technique.Setups[0];
        var (study, pass) = (setup.Cases[0], setup.Cases[0].Passes[0]);
        var beam = pass.Beams[0] with { Beam = pass.Beams[0].Beam with { Scan = ScanKind.Tandem }, Tandem = pair };
        return Studies.Technique with
        {
            Setups = [setup with { Cases = [new CaseStudy(study.Thickness, study.OutsideDiameter, [pass with { Beams = [beam] }], Studies.Coverage)] }],
        };
    }

    private static string Json(TandemStudy pair)
    {
        var text = Runs.Written(output => ComputeJsonReport.Write(output, Technique(pair)));
        return string.Concat(text.Split('\n').Select(line => line.Trim())).Replace("\": ", "\":");
    }

    private static string Text(TandemStudy pair) => Runs.Written(output => new ComputeTextReport(output).Write(Technique(pair)));
}
