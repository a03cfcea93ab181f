using CsCheck;
using FluentAssertions;
using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;
using TechLint.Ultrasonics.Tofd;
using Xunit;

namespace TechLint.Tests.Unit.Ultrasonics.Properties;

/// <summary>All lengths times k and all frequencies over k: angles and shares stay, lengths and times grow by k.</summary>
public sealed class ScalingTests
{
    private static readonly Gen<double> Factors = Gen.Double[0.4, 2.5];

    [Fact]
    public void Laws_keep_their_angles_and_grow_with_the_scale() => Gen.Select(Sections.Examinations, Factors).Sample(
        (examination, k) =>
        {
            var (laws, others) = (LawsOf(examination), LawsOf(Scaled(examination, k)));
            others.Length.Should().Be(laws.Length);
            foreach (var (law, large) in laws.Zip(others))
            {
                large.Fault.Should().Be(law.Fault);
                if (law.Fault != LawFault.None) continue;
                large.WedgeAngle.Degrees.Should().BeApproximately(law.WedgeAngle.Degrees, 1e-7);
                large.Steering.Degrees.Should().BeApproximately(law.Steering.Degrees, 1e-7);
                large.ExitY.Millimetres.Should().BeApproximately(k * law.ExitY.Millimetres, 1e-6);
                large.NearField.Millimetres.Should().BeApproximately(k * law.NearField.Millimetres, 1e-5);
                large.Legs.Length.Should().Be(law.Legs.Length);
                foreach (var (leg, largeLeg) in law.Legs.Zip(large.Legs))
                {
                    largeLeg.Path.Millimetres.Should().BeApproximately(k * leg.Path.Millimetres, 1e-4);
                    largeLeg.BeamWidth.Millimetres.Should().BeApproximately(k * leg.BeamWidth.Millimetres, 1e-4);
                    largeLeg.Incidence.Degrees.Should().BeApproximately(leg.Incidence.Degrees, 1e-4);
                }
            }
        },
        iter: 1000);

    [Fact]
    public void Coverage_keeps_its_shares() => Gen.Select(Sections.Examinations, Factors).SampleSeeded(
        (examination, k) =>
        {
            var (one, large) = (Coverage(examination), Coverage(Scaled(examination, k)));
            large.NotComputed.Should().Be(one.NotComputed);
            if (one.NotComputed is not null) return;

            // Rows grow with the wavelength; what is left is the steps by which a pair's edge is looked for, which have a size of their own.
            large.Volume.Percent.Should().BeApproximately(one.Volume.Percent, 0.05);
            large.Left.Percent.Should().BeApproximately(one.Left.Percent, 0.02);
            large.BothSides.Percent.Should().BeApproximately(one.BothSides.Percent, 0.02);
        },
        iter: 150);

    [Fact]
    public void Times_of_a_pair_grow_with_the_scale() => Gen.Select(Gen.Double[10, 40], Gen.Double[10, 40], Factors).Sample(
        (thickness, offset, k) =>
        {
            var one = PairOf(1);
            var large = PairOf(k);
            large.LateralWaveTime.Microseconds.Should().BeApproximately(k * one.LateralWaveTime.Microseconds, 1e-9 * k * 100);
            large.BackWallTime.Microseconds.Should().BeApproximately(k * one.BackWallTime.Microseconds, 1e-7);
            large.NearSurfaceDeadZone.Millimetres.Should().BeApproximately(k * one.NearSurfaceDeadZone.Millimetres, 1e-6);
            large.BackWallDeadZone.Millimetres.Should().BeApproximately(k * one.BackWallDeadZone.Millimetres, 1e-6);
            large.IntersectionDepth.Millimetres.Should().BeApproximately(k * one.IntersectionDepth.Millimetres, 1e-6);

            TofdStudy PairOf(double scale)
            {
                var pass = Given.Pass(new(Given.TofdProbe(Side.Left, offset), Given.TofdProbe(Side.Right, offset)), Given.Diffraction);
                var examination = Given.Examination(pass) with { Thickness = new(Given.Mm(thickness), Given.Mm(thickness)) };
                var section = SectionOf(Scaled(examination, scale));
                return TofdPair.Of(section, section.Pass.Beams[0]).Pair!.Study;
            }
        },
        iter: 1000);

    private static CoverageResult Coverage(Examination examination) =>
        new Study(examination).At(examination.Thickness.From!.Value, examination.OutsideDiameter?.From).Coverage;

    private static PassSection SectionOf(Examination examination) =>
        PassSection.Of(examination, examination.Passes[0], examination.Thickness.From!.Value, examination.OutsideDiameter?.From)!;

    private static LawStudy[] LawsOf(Examination examination)
    {
        var section = SectionOf(examination);
        return [.. LawGeometry.Of(section, section.Pass.Probes.First(probe => probe.Station == 1), section.Pass.Beams[0]).Select(law => law.Study)];
    }

    private static Examination Scaled(Examination examination, double k)
    {
        var pass = examination.Passes[0];
        return examination with
        {
            Weld = examination.Weld with { Cap = Scaled(examination.Weld.Cap, k), Root = Scaled(examination.Weld.Root, k) },
            Volume = examination.Volume with { BesideWeld = Times(examination.Volume.BesideWeld, k) },
            Thickness = Times(examination.Thickness, k),
            OutsideDiameter = examination.OutsideDiameter is { } band ? Times(band, k) : null,
            Passes =
            [
                pass with
                {
                    Probes = [.. pass.Probes.Select(probe => Scaled(probe, k))],
                    Beams =
                    [
                        .. pass.Beams.Select(beam => beam with
                        {
                            PathWindow = beam.PathWindow is { } window ? Times(window, k) : null,
                            TimeWindow = beam.TimeWindow is { } time
                                ? new TimeWindow(new Duration(k * time.BeforeLateralWave.Microseconds), new Duration(k * time.AfterBackWall.Microseconds))
                                : null,
                        }),
                    ],
                },
            ],
        };
    }

    private static MountedProbe Scaled(MountedProbe probe, double k) => probe with
    {
        IndexOffset = Times(probe.IndexOffset, k),
        Transducer = probe.Transducer with
        {
            Frequency = new Frequency(probe.Transducer.Frequency.Megahertz / k), Pitch = Times(probe.Transducer.Pitch, k), Gap = Times(probe.Transducer.Gap, k),
            Elevation = Times(probe.Transducer.Elevation, k), ElementSize = Times(probe.Transducer.ElementSize, k),
            PulseLength = probe.Transducer.PulseLength is { } pulse ? new Duration(pulse.Microseconds * k) : null,
        },
        Wedge = probe.Wedge with
        {
            FirstElement = probe.Wedge.FirstElement is { } first ? new ElementPlace(Times(first.Height, k), Times(first.BehindFront, k)) : null,
            IndexPointBehindFront = Times(probe.Wedge.IndexPointBehindFront, k), Path = Times(probe.Wedge.Path, k),
            Length = Times(probe.Wedge.Length, k), Width = Times(probe.Wedge.Width, k),
        },
    };

    private static Reinforcement? Scaled(Reinforcement? metal, double k) =>
        metal is null ? null : new Reinforcement(Times(metal.Width, k), Times(metal.Height, k), Times(metal.Centre, k));

    private static Length Times(Length length, double k) => new(length.Millimetres * k);

    private static Length? Times(Length? length, double k) => length is { } known ? Times(known, k) : null;

    private static Band<Length> Times(Band<Length> band, double k) => new(Times(band.From, k), Times(band.To, k));
}
