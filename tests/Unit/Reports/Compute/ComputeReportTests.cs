using System.Text.Json;
using FluentAssertions;
using TechLint.Engine;
using TechLint.Reports.Compute;
using TechLint.Ultrasonics.Quantities;
using Xunit;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Tests.Unit.Reports.Compute;

public sealed class ComputeReportTests
{
    [Fact]
    public void Json_has_the_promised_keys_in_order_at_most_four_decimals_and_null_beside_a_reason() =>
        Compact(Json(Studies.Technique)).Should().Be("""
            {"format":1,"technique":"GM-UT-014","setups":[{"id":"seam","pass":1,"cases":[{"thickness":20,"outside-diameter":1400,
            "probes":[{"station":1,"side":"left","index-offset":26,"front-y":-26,"body":{"from-y":-60,"to-y":-26},"contact-gap":0,"rocking-angle":0}],
            "beams":[{"id":"sector","scan":"sectorial","wavelength":0.648,"laws":[{"angle":45,"wedge-angle":30.2765,"steering":-5.7,
            "exit-behind-front":12.5,"exit-y":-38.5,"active-aperture":7.95,"effective-aperture":6.789,"near-field":17.78,"beam-width":[3.21,5.43],
            "legs":[{"end-y":-18.5,"end-z":20,"path":28.2843,"incidence":45,"converted":null},{"end-y":1.5,"end-z":0,"path":56.5685,"incidence":45,"converted":null}],
            "grating-lobe-angle":null,"grating-lobe-level":null,"divergence":null,"angle-shift":null,"exit-shift":null,"squint":null,"mode-converted":[]},{"angle":72,"wedge-angle":null,"steering":null,"exit-behind-front":null,"exit-y":null,"active-aperture":7.95,
            "effective-aperture":null,"near-field":null,"beam-width":[],"legs":[],"grating-lobe-angle":null,"grating-lobe-level":null,"divergence":null,"angle-shift":null,"exit-shift":null,"squint":null,"mode-converted":[],
            "not-computed":"the beam leaves the wedge beside its sole"}],
            "temperature-shift":{"shift":null,"at-angle":null,"drift":null,"drifts":null,"not-computed":"the beam has no law"},
            "surface-temperature-shift":{"shift":null,"at-angle":null,"drift":null,"drifts":null,"not-computed":"the beam has no law"}},
            {"id":"diffraction","scan":"tofd","wavelength":1.184,"probe-centre-separation":50,"intersection-depth":16.7,"lateral-wave-time":8.4459,
            "back-wall-time":10.81,"near-surface-dead-zone":4.7,"back-wall-dead-zone":0.9,"covered-depth":{"from":4.7,"to":19.1}},
            {"id":"contact","scan":"coupling-monitor","wavelength":0.648,"laws":null,"temperature-shift":null,"surface-temperature-shift":null,"not-computed":"a coupling monitor is no sound beam"}],
            "coverage":{"volume":99.99999,"left":80,"right":85.5,"both-sides":70.25,
            "faces":[{"face":"left","side":"right","served":75,"from-either":99.99999,"by":"beam","best-incidence":11.5,"worst-y":-8.5,"worst-z":1.25,
            "ways":[{"by":"beam","served":60},{"by":"corner-echo","served":15}],"legs":[{"leg":2,"served":60}],
            "pieces":[{"from-z":0,"to-z":18,"slope":24,"served":80,"by":"beam","best-incidence":null,"worst-y":-9,"worst-z":0,
            "not-computed":"no ray is seen there"}]}],
            "unseen":[[[-1,20],[1,20],[0,18.1235]]],"within-6-db":null,"within-6-db-of-own-laws":null,"within-6-db-not-computed":"asked for with --field-coverage"},
            "acquisition":{"pulses-per-position":66,"speed-at-most":90.9091,"scan-length":6170,"scan-time":null,"data-rate":null,"data-size":null,
            "pulse-rate-at-most":0.008765,"ambiguity-path":271.25,"segments":2,"lines":6172,"steps-per-increment":9.6,"position-error-at-most":0.0667,
            "speed-at-most-for-data":43.5,"not-computed":"not stated: speed, digitising-rate"}}]},
            {"id":"nozzle","pass":null,"cases":null,"not-computed":"a nozzle's section is not computed"}]}
            """.Replace("\n", ""));

    [Fact]
    public void Coverage_that_was_not_computed_is_null_with_its_reason()
    {
        var setup = Studies.Technique.Setups[0];
        var coverage = Studies.Coverage with { NotComputed = "a speed of sound is not known" };
        var technique = Studies.Technique with { Setups = [setup with { Cases = [new CaseStudy(setup.Cases[0].Thickness, null, setup.Cases[0].Passes, coverage)] }] };
        Compact(Json(technique)).Should().Contain("\"outside-diameter\":null").And.Contain("""
            "coverage":{"volume":null,"left":null,"right":null,"both-sides":null,"faces":null,"unseen":null,"not-computed":"a speed of sound is not known","within-6-db":null,"within-6-db-of-own-laws":null,"within-6-db-not-computed":"asked for with --field-coverage"}
            """);
        Text(technique).Should().Contain("coverage not computed: a speed of sound is not known");
    }

    [Fact]
    public void A_case_shows_only_the_pass_of_its_setup()
    {
        var setup = Studies.Technique.Setups[0];
        var other = setup.Cases[0].Passes[0] with { Pass = setup.Cases[0].Passes[0].Pass with { Id = "second" }, Probes = [] };
        var technique = Studies.Technique with { Setups = [setup with { Id = "second", Cases = [new CaseStudy(setup.Cases[0].Thickness, setup.Cases[0].OutsideDiameter, [setup.Cases[0].Passes[0], other], Studies.Coverage)] }] };
        Compact(Json(technique)).Should().Contain("\"probes\":[],");
    }

    [Fact]
    public void Text_is_one_block_a_case_with_a_table_a_beam() => Text(Studies.Technique).Should().Be("""
        technique GM-UT-014

        setup seam, pass 1

          thickness 20.0 mm, outside diameter 1400.0 mm
            station  side  index offset mm  front y mm     body y mm  contact gap mm  rocks deg
                  1  left             26.0       -26.0  -60.0..-26.0            0.00       0.00
            beam sector: sectorial, wavelength 0.648 mm
              angle deg  in wedge deg  steering deg  exit behind front mm  exit y mm  aperture mm  effective mm  near field mm  grating lobe deg  leg 1 ends y, z mm  path mm  width mm  leg 2 ends y, z mm  path mm  width mm
                   45.0          30.3          -5.7                  12.5      -38.5          8.0           6.8           17.8                 -         -18.5, 20.0     28.3       3.2            1.5, 0.0     56.6       5.4
                   72.0             -             -                     -          -          8.0             -              -                 -                   -        -         -                   -        -         -
              72.0 deg not computed: the beam leaves the wedge beside its sole
            beam diffraction: tofd, wavelength 1.184 mm
              probe centre separation 50.0 mm, intersection depth 16.7 mm
              lateral wave 8.446 us, back wall 10.810 us
              dead zones: near surface 4.7 mm, back wall 0.9 mm
              covered depth 4.7..19.1 mm
            beam contact: coupling-monitor, wavelength 0.648 mm
              not computed: a coupling monitor is no sound beam
            coverage 99.99999 %, from the left 80.0 %, from the right 85.5 %, from both sides 70.3 %
              unseen: y -1.0..1.0 mm, z 18.1..20.0 mm
            left fusion face from the right: 75 % served (beam 60 %, corner-echo 15 %), worst at y -8.5, z 1.3 mm: 11.5 deg from the normal
            acquisition: 66 pulses a position, speed at most 90.9 mm/s, scan length 6170.0 mm
            acquisition not fully computed: not stated: speed, digitising-rate
            pulses: pulse rate at most 8.8 kHz, echoes ambiguous from 271.3 mm, speed at most for the data 43.5 mm/s
            lines: 6172 in 2 segments, encoder steps an increment 9.6, position error at most 0.067 mm

        setup nozzle
          not computed: a nozzle's section is not computed

        """);

    private static string Text(ComputedTechnique technique) => Runs.Written(output => new ComputeTextReport(output).Write(technique));

    private static string Json(ComputedTechnique technique) => Runs.Written(output => ComputeJsonReport.Write(output, technique));

    private static string Compact(string json)
    {
        using var document = JsonDocument.Parse(json);
        using var buffer = new MemoryStream();
        using (var writer = new Utf8JsonWriter(buffer, new JsonWriterOptions { Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
        {
            document.WriteTo(writer);
        }

        return System.Text.Encoding.UTF8.GetString(buffer.ToArray());
    }
}
