using FluentAssertions;
using MathNet.Numerics.Integration;
using MathNet.Numerics.Optimization;
using MathNet.Numerics.RootFinding;
using TechLint.Tests.Unit.Ultrasonics;
using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Tofd;
using Xunit;

namespace TechLint.Tests.Validation;

public sealed class BeamTests
{
    private const double Degree = Math.PI / 180;

    public static TheoryData<string> Factors => CheckValue.Ids("near-field-factor");

    public static TheoryData<string> FresnelFactors => CheckValue.Ids("near-field-fresnel");

    public static TheoryData<string> RoundNearFields => CheckValue.Ids("near-field-round");

    public static TheoryData<string> ArrayNearFields => CheckValue.Ids("near-field-array");

    public static TheoryData<string> Divergences => CheckValue.Ids("divergence");

    public static TheoryData<string> ElementSteerings => CheckValue.Ids("element-steering");

    public static TheoryData<string> Apertures => CheckValue.Ids("aperture");

    public static TheoryData<string> GratingPitches => CheckValue.Ids("grating-pitch");

    public static TheoryData<string> GratingLobes => CheckValue.Ids("grating-lobe");

    public static TheoryData<string> LawCounts => CheckValue.Ids("law-count");

    [Theory, MemberData(nameof(Factors)), MemberData(nameof(FresnelFactors))]
    public void A_near_field_factor_agrees(string id)
    {
        var row = CheckValue.Of(id);
        row.Holds(NearField.Factor(row["ratio"]));
    }

    [Theory]
    [InlineData(1.0), InlineData(0.9), InlineData(0.8), InlineData(0.7), InlineData(0.6), InlineData(0.5), InlineData(0.4), InlineData(0.3), InlineData(0.1)]
    public void The_factor_is_the_last_maximum_on_the_axis_of_a_rectangle(double ratio)
    {
        // On the axis |F(u) F(ratio u)|, F the Fresnel integral, u = sqrt(2/k): the table follows it within a hundredth.
        double Loudness(double k) => -Fresnel(Math.Sqrt(2 / k)) * Fresnel(ratio * Math.Sqrt(2 / k));
        var k = GoldenSectionMinimizer.Minimum(ObjectiveFunction.ScalarValue(Loudness), 0.85, 1.6, 1e-7, 1000).MinimizingPoint;
        Checks.Record(
            "near field factor", FormattableString.Invariant($"last maximum on the axis, ratio {ratio}"), k, NearField.Factor(ratio), 0.01, "-",
            "on-axis Fresnel integral, MathNet.Numerics quadrature and minimiser", Checks.Computed);
    }

    [Theory, MemberData(nameof(RoundNearFields))]
    public void A_round_near_field_agrees(string id)
    {
        var row = CheckValue.Of(id);
        var wavelength = row["v"] / 1000 / row["f"];
        var shortForm = row.Inputs.ContainsKey("form") ? wavelength / 4 : 0;
        row.Holds(NearField.OfRound(row["d"], wavelength) + shortForm);
    }

    [Theory, MemberData(nameof(ArrayNearFields))]
    public void An_array_s_near_field_agrees(string id)
    {
        var row = CheckValue.Of(id);
        row.Holds(NearField.OfRectangle(row["active"], row["passive"], row["v"] / 1000 / row["f"]));
    }

    [Theory, MemberData(nameof(Divergences))]
    public void A_beam_spread_constant_agrees(string id)
    {
        // sin γ = k λ/D, so k = x/π at the drop; an echo passes the pattern twice.
        var row = CheckValue.Of(id);
        var isRound = row.Inputs["shape"] == "round";
        var level = row.Inputs["drop"] switch { "zero" => 0, "-6" => 0.5, _ => 0.1 };
        if (row.Inputs["way"] == "echo") level = Math.Sqrt(level);
        row.Holds(Bisection.FindRoot(x => Directivity.Pattern(x, isRound) - Math.Max(level, 1e-9), 0.01, 5) / Math.PI);
    }

    [Fact]
    public void The_width_model_spreads_by_the_echo_constant_of_a_strip()
    {
        var k = Bisection.FindRoot(x => Directivity.Pattern(x, isRound: false) - Math.Sqrt(0.5), 0.01, 3) / Math.PI;
        BeamWidth.FullEchoWidthFactor.Should().BeApproximately(2 * k, 1e-4);
        var round = Bisection.FindRoot(x => Directivity.Pattern(x, isRound: true) - Math.Sqrt(0.5), 0.01, 3) / Math.PI;
        LawGeometry.StripForRound.Should().BeApproximately(k / round, 1e-3);
    }

    [Theory, MemberData(nameof(ElementSteerings))]
    public void An_element_s_steering_limit_agrees(string id)
    {
        var row = CheckValue.Of(id);
        var pattern = new Directivity(row["element"], isRound: false, row["v"] / 1000 / row["f"], 1, 0, 0);
        row.Holds(Bisection.FindRoot(angle => pattern.At(angle) - 0.5, 0.001, 0.8) / Degree);
    }

    [Theory, MemberData(nameof(Apertures))]
    public void An_aperture_agrees(string id)
    {
        var row = CheckValue.Of(id);
        var (count, angle, wedgeSpeed, speed) = ((int)row["n"], row.Or("angle", 55), row.Or("vw", Given.Polystyrene), row.Or("v", Given.Transverse));

        // The array stands square to its beam, so that steering takes nothing off.
        var wedge = Given.ArrayWedge with
        {
            Longitudinal = new Speed(wedgeSpeed),
            ArraySlope = Refraction.Through(new Angle(angle), new Speed(speed), new Speed(wedgeSpeed)),
        };
        var array = Given.Array with { Elements = count, Pitch = new Length(row["p"]), Gap = new Length(row["gap"]) };
        var metal = Given.Steel with { Transverse = new Speed(speed) };
        var section = Given.ArraySection(probe: Given.ArrayProbe() with { Wedge = wedge, Transducer = array });
        var examination = section.Examination with { Part = new Part(Curvature.Flat, metal, metal) };
        var law = Given.LawAt(Given.Section(examination, 20), angle, aperture: new Aperture(1, count, count, 1)).Study;

        row.Holds(row.Inputs["what"] == "active" ? law.ActiveAperture.Millimetres : law.EffectiveAperture.Millimetres);
    }

    [Theory, MemberData(nameof(GratingPitches))]
    public void The_largest_pitch_without_a_lobe_agrees(string id)
    {
        var row = CheckValue.Of(id);
        var (clear, lobed) = (0.3, 2.0);
        for (var step = 0; step < 40; step++)
        {
            var middle = (clear + lobed) / 2;
            if (double.IsNaN(GratingLobe.Nearest(row["steering"] * Degree, 1 / middle, _ => true))) clear = middle;
            else lobed = middle;
        }

        row.Holds(clear);
    }

    [Theory, MemberData(nameof(GratingLobes))]
    public void A_grating_lobe_agrees(string id)
    {
        var row = CheckValue.Of(id);
        var lobe = GratingLobe.Nearest(row["steering"] * Degree, row["v"] / 1000 / row["f"] / row["p"], _ => true) / Degree;
        row.Holds(lobe);
    }

    [Theory, MemberData(nameof(LawCounts))]
    public void The_number_of_laws_agrees(string id)
    {
        var row = CheckValue.Of(id);
        row.Holds(LawCount.OfSweep(new AngleSweep(new Angle(row["from"]), new Angle(row["to"]), new Angle(row["step"])))!.Value);
    }

    private static double Fresnel(double limit)
    {
        var cosine = GaussLegendreRule.Integrate(x => Math.Cos(Math.PI * x * x / 2), 0, limit, 64);
        var sine = GaussLegendreRule.Integrate(x => Math.Sin(Math.PI * x * x / 2), 0, limit, 64);
        return Math.Sqrt((cosine * cosine) + (sine * sine));
    }
}
