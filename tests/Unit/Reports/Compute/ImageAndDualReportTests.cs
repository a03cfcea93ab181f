using FluentAssertions;
using TechLint.Reports.Compute;
using TechLint.Ultrasonics.Duals;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Imaging;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;
using Xunit;

namespace TechLint.Tests.Unit.Reports.Compute;

public sealed class ImageAndDualReportTests
{
    private static readonly ImageStudy Image = new(
        32, new Share(81.25), Studies.Mm(0.651),
        [
            new ImageCorner(Place(-10, 5), new Angle(30.5), new Angle(20.25), false), new ImageCorner(Place(10, 5), null, new Angle(4), false),
            new ImageCorner(Place(-10, 20), new Angle(18), new Angle(17), false), new ImageCorner(Place(10, 20), new Angle(9), new Angle(8), true),
        ],
        Place(-8, 6.5));

    [Fact]
    public void Json_of_an_image_has_its_keys()
    {
        Json(Technique(Image)).Should().Contain("""
            "imaging-path":"TT-T","transmissions":32,"reach":81.25,"grid-per-wavelength":5,"opening-angles":[
            {"y":-10,"z":5,"transmit":30.5,"receive":20.25,"far":false},
            {"y":10,"z":5,"transmit":null,"receive":4,"far":false,"not-computed":"fewer than two elements have a path to this corner"},
            {"y":-10,"z":20,"transmit":18,"receive":17,"far":false},{"y":10,"z":20,"transmit":9,"receive":8,"far":true}],
            "best-sensitivity-at":{"y":-8,"z":6.5}}
            """.Replace("\n", ""));
        Json(Technique(Image with { BestAt = null })).Should().Contain("\"best-sensitivity-at\":null,\"not-computed\":\"no element pair");
    }

    [Fact]
    public void Text_of_an_image_tells_path_reach_and_corners() => Text(Technique(Image)).Should()
        .Contain("      imaging path TT-T, 32 transmissions, reach 81.3 % of the region, 5 points a wavelength\n")
        .And.Contain("      opening at y 10, z 5 mm: transmit - deg, receive 4 deg\n")
        .And.Contain("      opening at y 10, z 20 mm: transmit 9 deg, receive 8 deg (far corner)\n")
        .And.Contain("      best sensitivity at y -8, z 6.5 mm\n");

    [Fact]
    public void A_dual_law_tells_where_its_halves_cross()
    {
        var dual = new DualStudy(Studies.Mm(14.25), Studies.Mm(6), Studies.Mm(20), null);
        Json(Technique(dual)).Should().Contain("""
            "crossing-depth":14.25,"overlap":{"from":6,"to":20}
            """.Trim());
        Text(Technique(dual)).Should().Contain("      45.0 deg: halves cross at depth 14.3 mm, both beams hold 6 mm to 20 mm\n");
        var apart = new DualStudy(null, null, null, "the halves' beams do not meet");
        Json(Technique(apart)).Should().Contain("\"crossing-depth\":null,\"overlap\":null,")
            .And.Contain("\"mode-converted\":[],\"not-computed\":\"the halves' beams do not meet\"}");
        Text(Technique(apart)).Should().Contain("both beams hold - to - (the halves' beams do not meet)");
    }

    private static TechLint.Engine.ComputedTechnique Technique(ImageStudy image) => With(beam => new BeamStudy(
        beam.Beam with { Scan = ScanKind.TotalFocusing, ImagingPath = ImagingPath.TryParse("TT-T"), Grid = Studies.Mm(0.1302) }, beam.Wavelength, [], null, null)
    {
        Image = image,
    });

    private static TechLint.Engine.ComputedTechnique Technique(DualStudy dual) => With(beam => beam with { Laws = [Studies.Law with { Dual = dual }] });

    private static TechLint.Engine.ComputedTechnique With(Func<BeamStudy, BeamStudy> change)
    {
        var setup = Studies.Technique.Setups[0];
        var (study, pass) = (setup.Cases[0], setup.Cases[0].Passes[0]);
        return Studies.Technique with
        {
            Setups = [setup with { Cases = [new CaseStudy(study.Thickness, study.OutsideDiameter, [pass with { Beams = [change(pass.Beams[0])] }], Studies.Coverage)] }],
        };
    }

    private static ImagePlace Place(double y, double z) => new(Studies.Mm(y), Studies.Mm(z));

    private static string Json(TechLint.Engine.ComputedTechnique technique)
    {
        using var writer = new StringWriter();
        ComputeJsonReport.Write(writer, technique);
        return string.Concat(writer.ToString().Split('\n').Select(line => line.Trim())).Replace("\": ", "\":");
    }

    private static string Text(TechLint.Engine.ComputedTechnique technique)
    {
        using var writer = new StringWriter();
        new ComputeTextReport(writer).Write(technique);
        return writer.ToString();
    }
}
