using CsCheck;
using FluentAssertions;
using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Studies;
using TechLint.Ultrasonics.Tofd;
using Xunit;

namespace TechLint.Tests.Unit.Ultrasonics.Properties;

/// <summary>What stands on the right sees as what stands on the left does, mirrored.</summary>
public sealed class SymmetryTests
{
    [Fact]
    public void An_examination_in_the_mirror_is_covered_alike_with_its_sides_exchanged() => Sections.Examinations.Sample(
        examination =>
        {
            var one = Coverage(examination);
            var other = Coverage(Mirrored(examination));
            other.NotComputed.Should().Be(one.NotComputed);
            if (one.NotComputed is not null) return;
            other.Volume.Percent.Should().BeApproximately(one.Volume.Percent, 1e-4);
            other.Left.Percent.Should().BeApproximately(one.Right.Percent, 1e-4);
            other.Right.Percent.Should().BeApproximately(one.Left.Percent, 1e-4);
            other.BothSides.Percent.Should().BeApproximately(one.BothSides.Percent, 1e-4);
        },
        iter: 150);

    [Fact]
    public void Laws_in_the_mirror_are_the_same_laws_at_the_other_place() => Sections.Examinations.Sample(
        examination =>
        {
            var mirrored = Mirrored(examination);
            var (one, other) = (SectionOf(examination), SectionOf(mirrored));
            var beam = examination.Passes[0].Beams[0];
            var laws = LawGeometry.Of(one, one.Pass.Probes.First(probe => probe.Station == 1), beam);
            var others = LawGeometry.Of(other, other.Pass.Probes.First(probe => probe.Station == 1), beam);
            laws.Length.Should().Be(others.Length);
            foreach (var (law, image) in laws.Zip(others))
            {
                image.Study.Fault.Should().Be(law.Study.Fault);
                image.Study.WedgeAngle.Should().Be(law.Study.WedgeAngle);
                image.Study.NearField.Should().Be(law.Study.NearField);
                if (law.Study.Fault != LawFault.None) continue;
                image.Study.ExitY.Millimetres.Should().Be(-law.Study.ExitY.Millimetres);
                foreach (var (leg, imageLeg) in law.Study.Legs.Zip(image.Study.Legs))
                {
                    imageLeg.EndY.Millimetres.Should().BeApproximately(-leg.EndY.Millimetres, 1e-9);
                    imageLeg.Path.Millimetres.Should().BeApproximately(leg.Path.Millimetres, 1e-9);
                    imageLeg.EndsOnReinforcement.Should().Be(leg.EndsOnReinforcement);
                }
            }
        },
        iter: 1000);

    [Fact]
    public void A_pair_in_the_mirror_has_the_same_times_and_dead_zones() => Gen.Select(
        Gen.Double[10, 40], Gen.Double[10, 40], Gen.Double[10, 40], Gen.Bool, Gen.Double[300, 2000]).Sample(
        (thickness, left, right, isPipe, diameter) =>
        {
            TofdStudy? Pair(double leftOffset, double rightOffset, bool fromRight)
            {
                var beam = fromRight ? Given.Diffraction with { Transmit = 4, Receive = 3 } : Given.Diffraction;
                var pass = Given.Pass(new(Given.TofdProbe(Side.Left, leftOffset), Given.TofdProbe(Side.Right, rightOffset)), beam);
                var section = Given.Section(
                    Given.Examination(pass, isPipe ? Curvature.AcrossWeld : Curvature.Flat), thickness, isPipe ? diameter : null);
                return TofdPair.Of(section, beam).Pair?.Study;
            }

            var (one, other) = (Pair(left, right, fromRight: false), Pair(right, left, fromRight: true));
            (one is null).Should().Be(other is null);
            if (one is null) return;
            other!.ProbeCentreSeparation.Millimetres.Should().BeApproximately(one.ProbeCentreSeparation.Millimetres, 1e-9);
            other.LateralWaveTime.Microseconds.Should().BeApproximately(one.LateralWaveTime.Microseconds, 1e-9);
            other.BackWallTime.Microseconds.Should().BeApproximately(one.BackWallTime.Microseconds, 1e-9);
            other.NearSurfaceDeadZone.Millimetres.Should().BeApproximately(one.NearSurfaceDeadZone.Millimetres, 1e-9);
            other.CoveredFrom.Millimetres.Should().BeApproximately(one.CoveredFrom.Millimetres, 1e-3);
            other.CoveredTo.Millimetres.Should().BeApproximately(one.CoveredTo.Millimetres, 1e-3);
        },
        iter: 1000);

    private static CoverageResult Coverage(Examination examination) =>
        new Study(examination).At(examination.Thickness.From!.Value, examination.OutsideDiameter?.From).Coverage;

    private static PassSection SectionOf(Examination examination) =>
        PassSection.Of(examination, examination.Passes[0], examination.Thickness.From!.Value, examination.OutsideDiameter?.From)!;

    private static Examination Mirrored(Examination examination)
    {
        var pass = examination.Passes[0];
        var weld = examination.Weld;
        return examination with
        {
            Weld = weld with { Cap = Mirrored(weld.Cap), Root = Mirrored(weld.Root) },
            Passes = [pass with { Probes = [.. pass.Probes.Select(probe => probe with { Side = probe.Side == Side.Left ? Side.Right : Side.Left })] }],
        };
    }

    private static Reinforcement? Mirrored(Reinforcement? metal) =>
        metal is null ? null : metal with { Centre = Given.Mm(-metal.Centre.Millimetres) };
}
