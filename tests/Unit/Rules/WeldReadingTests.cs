using FluentAssertions;
using TechLint.Engine;
using TechLint.Model.Documents;
using TechLint.Ultrasonics.Examinations;
using Xunit;

namespace TechLint.Tests.Unit.Rules;

/// <summary>What a technique's keys become as inputs of the physics.</summary>
public sealed class WeldReadingTests
{
    private static Examination Read(TextStore store)
    {
        var snapshot = Snapshot.Open(store, WorkspaceOptions.For(FixtureRun.Day));
        var linked = TechniqueLinker.Link(BoundDocument.Of(snapshot.TreeOf(House.Floor)!), snapshot);
        return linked.Examinations[0].Examination!;
    }

    private static Preparation With(string preparation)
    {
        var text = House.Base.Files[House.Floor].Source!.Text;
        var start = text.IndexOf("  preparation:", StringComparison.Ordinal);
        var end = text.IndexOf("\n  ", text.IndexOf('}', start), StringComparison.Ordinal);
        return Read(House.Base.Edit(House.Floor, text[start..end], "  preparation: " + preparation)).Weld.Preparation;
    }

    [Fact]
    public void An_included_angle_is_halved_between_two_faces_alike_and_not_beside_an_upright_one()
    {
        With("{shape: single-v, included-angle: 60 deg}").Outer.FaceAngle.Degrees.Should().Be(30);
        With("{shape: single-bevel, included-angle: 45 deg, bevelled-side: left}").Outer.FaceAngle.Degrees.Should().Be(45);
        With("{shape: single-j, included-angle: 20 deg, radius: 6 mm, bevelled-side: right}").Outer.FaceAngle.Degrees.Should().Be(20);
        With("{shape: single-bevel, bevel-angle: 45 deg, bevelled-side: left}").Outer.FaceAngle.Degrees.Should().Be(45);
    }

    [Fact]
    public void A_group_on_the_inner_side_alone_is_the_preparation_and_opens_inside()
    {
        var preparation = With("{shape: single-v, inner: {included-angle: 70 deg}, root-face: 1 mm}");
        preparation.Opens.Should().Be(Surface.Inside);
        preparation.Outer.FaceAngle.Degrees.Should().Be(35);
    }

    [Fact]
    public void Encoder_and_instrument_come_from_the_library()
    {
        var acquisition = Read(House.Base).Passes[0].Acquisition!;
        acquisition.EncoderResolution!.Value.StepsPerMillimetre.Should().Be(12);
        acquisition.InstrumentPulseRateAtMost!.Value.Hertz.Should().Be(20_000);
        acquisition.InstrumentDataRateAtMost!.Value.MegabytesPerSecond.Should().Be(30);
        acquisition.Recovery.Microseconds.Should().Be(0);
        var pool = House.Base.Edit(House.Pool, "pulse-rate-at-most: 20 kHz", "pulse-rate-at-most: 20 kHz, recovery: 15 us");
        Read(pool).Passes[0].Acquisition!.Recovery.Microseconds.Should().Be(15);
        Read(House.Base.Edit(House.Floor, "      encoder: wheel-12\n", "")).Passes[0].Acquisition!.EncoderResolution!.Value.StepsPerMillimetre
            .Should().Be(12, "the frame has its own");
    }

    [Fact]
    public void The_incidence_on_fusion_faces_comes_from_the_sets()
    {
        Read(House.Base.Edit(House.Floor, "requirements: [", "requirements: [iso-13588-level-b, ")).FusionFaceIncidence.Degrees.Should().BeLessThanOrEqualTo(6);
        Read(House.Base).FusionFaceIncidence.Degrees.Should().BeGreaterThan(0);
    }
}
