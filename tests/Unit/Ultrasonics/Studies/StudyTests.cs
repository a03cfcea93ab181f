using FluentAssertions;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;
using Xunit;

namespace TechLint.Tests.Unit.Ultrasonics.Studies;

public sealed class StudyTests
{
    private static readonly Pass Frame = Given.Pass(
        new(Given.ArrayProbe(), Given.ArrayProbe(Side.Right), Given.TofdProbe(Side.Left), Given.TofdProbe(Side.Right)),
        Given.Sector, Given.Sector with { Id = "right", From = 2 }, Given.Diffraction);

    [Fact]
    public void A_case_holds_every_probe_and_beam_of_its_pass()
    {
        var pass = new Study(Given.Examination(Frame)).At(Given.Mm(20), null).Passes.Should().ContainSingle().Subject;
        pass.Probes.Select(probe => probe.Station).Should().Equal(1, 2, 3, 4);
        pass.Beams.Select(beam => beam.Laws.Length).Should().Equal(31, 31, 2);
        pass.Beams[2].Tofd.Should().NotBeNull();
        pass.Beams.Should().OnlyContain(beam => beam.NotComputed == null);
        pass.Beams[0].Wavelength!.Value.Millimetres.Should().BeApproximately(0.651, 1e-9);
    }

    [Fact]
    public void A_body_reaches_from_its_front_away_from_the_weld()
    {
        var probes = new Study(Given.Examination(Frame)).At(Given.Mm(20), null).Passes[0].Probes;
        (probes[0].FrontY, probes[0].BodyFromY, probes[0].BodyToY).Should().Be((Given.Mm(-26), Given.Mm(-60), Given.Mm(-26)));
        (probes[1].FrontY, probes[1].BodyFromY, probes[1].BodyToY).Should().Be((Given.Mm(26), Given.Mm(26), Given.Mm(60)));
    }

    [Fact]
    public async Task Asking_from_many_threads_works_a_case_out_once()
    {
        var study = new Study(Given.Examination(Frame));
        var answers = await Task.WhenAll(Enumerable.Range(0, 16).Select(_ => Task.Run(() => study.At(Given.Mm(20), null))));
        answers.Should().OnlyContain(answer => ReferenceEquals(answer, answers[0]));
        study.At(Given.Mm(21), null).Should().NotBeSameAs(answers[0]);
    }

    [Theory]
    [InlineData(0.0, null), InlineData(-1.0, null), InlineData(double.NaN, null), InlineData(double.PositiveInfinity, null)]
    [InlineData(20.0, 40.0), InlineData(20.0, 0.0), InlineData(20.0, double.NaN)]
    public void A_wall_that_is_none_is_not_computed_and_says_so(double thickness, double? diameter)
    {
        var study = new Study(Given.Examination(Frame, Curvature.AcrossWeld)).At(Given.Mm(thickness), diameter is { } d ? Given.Mm(d) : null);
        study.Passes[0].Beams.Should().OnlyContain(beam => beam.NotComputed == "thickness and diameter make no wall");
        study.Coverage.NotComputed.Should().NotBeNull();
        study.Coverage.IsComplete.Should().BeFalse();
    }

    [Fact]
    public void The_cases_are_the_ends_of_the_bands()
    {
        var examination = Given.Examination(Frame, Curvature.AcrossWeld) with
        {
            Thickness = new Band<Length>(Given.Mm(18), Given.Mm(25)), OutsideDiameter = new Band<Length>(Given.Mm(406.4), null),
        };
        var study = new Study(examination);
        var cases = study.Cases.Select(c => (c.Thickness.Millimetres, c.OutsideDiameter?.Millimetres)).ToArray();
        cases.Take(4).Should().Equal((18, 406.4), (18, null), (25, 406.4), (25, null));
        cases.Should().OnlyHaveUniqueItems();
        cases.Select(c => c.Item1).Should().Contain(study.Coverage.Thickness.Millimetres, "the worst place is a case of its own");
        new Study(Given.Examination(Frame)).Cases.Should().ContainSingle();
    }

    [Fact]
    public void What_is_not_computed_yet_says_so()
    {
        var image = Given.Sector with { Id = "image", Scan = ScanKind.TotalFocusing, Capture = "matrix" };
        var tandem = Given.Sector with { Id = "across", Scan = ScanKind.Tandem, From = null, Transmit = 1, Receive = 2 };
        var silent = Given.Sector with { Id = "silent", Angles = null };
        var lost = Given.Sector with { Id = "lost", From = 7 };
        var monitor = Given.Sector with { Id = "monitor", Scan = ScanKind.CouplingMonitor, Angles = null };
        var pass = Given.Pass(new(Given.ArrayProbe(), Given.ArrayProbe(Side.Right)), image, tandem, silent, lost, monitor);
        var beams = new Study(Given.Examination(pass)).At(Given.Mm(20), null).Passes[0].Beams;
        beams.Take(4).Should().OnlyContain(beam => beam.NotComputed != null);
        beams[4].NotComputed.Should().BeNull("a coupling monitor has no law to work out");
    }
}
