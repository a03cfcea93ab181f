using FluentAssertions;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;
using Xunit;

namespace TechLint.Tests.Unit.Ultrasonics.Studies;

public sealed class StudyCoverageTests
{
    private static readonly Beam Left = Given.Sector with { Angles = new AngleSweep(Given.Deg(40), Given.Deg(72), Given.Deg(1)) };

    private static readonly Beam Right = Left with { Id = "right", From = 2 };

    [Fact]
    public void Equal_probes_on_both_sides_see_alike()
    {
        var coverage = At(Frame(Left, Right)).Coverage;
        coverage.NotComputed.Should().BeNull();
        coverage.Left.Percent.Should().BeApproximately(coverage.Right.Percent, 1e-9).And.BeInRange(50, 100);
        coverage.Volume.Percent.Should().BeGreaterThanOrEqualTo(coverage.Left.Percent);
        coverage.BothSides.Percent.Should().BeLessThanOrEqualTo(coverage.Left.Percent);
    }

    [Fact]
    public void One_beam_less_sees_less()
    {
        var (left, right) = (Left with { Legs = [1] }, Right with { Legs = [1] });
        var one = At(Frame(left)).Coverage;
        one.Right.Percent.Should().Be(0);
        one.Volume.Percent.Should().BeApproximately(one.Left.Percent, 1e-9).And.BeLessThan(At(Frame(left, right)).Coverage.Volume.Percent);
    }

    [Fact]
    public void The_worst_case_is_no_better_than_any_case()
    {
        var examination = Frame(Left, Right) with { Thickness = new Band<Length>(Given.Mm(16), Given.Mm(28)) };
        examination = examination with { Passes = [examination.Passes[0] with { Tolerance = new PositioningTolerance(Given.Mm(1), Given.Deg(2)) }] };
        var study = new Study(examination);
        study.Coverage.NotComputed.Should().BeNull();
        foreach (var place in study.Cases) study.Coverage.Result.Volume.Percent.Should().BeLessThanOrEqualTo(place.Coverage.Volume.Percent + 1e-9);
    }

    [Fact]
    public void A_diffraction_pair_adds_to_the_volume_and_to_no_side()
    {
        var direct = Left with { Legs = [1] };
        var without = At(Frame(direct)).Coverage;
        var with = At(Frame(direct, Given.Diffraction)).Coverage;
        with.Volume.Percent.Should().BeGreaterThan(without.Volume.Percent);
        with.Left.Percent.Should().Be(without.Left.Percent);
    }

    [Fact]
    public void Beams_that_are_not_computed_leave_no_false_verdict()
    {
        var image = Left with { Id = "image", Scan = ScanKind.TotalFocusing, Capture = "matrix" };
        var study = new Study(Frame(image));
        study.At(Given.Mm(20), null).Coverage.NotComputed.Should().Contain("total-focusing");
        study.Coverage.NotComputed.Should().Contain("total-focusing");
        study.Coverage.Result.IsComplete.Should().BeFalse();
    }

    [Fact]
    public void Offsets_in_the_window_cover_and_beyond_it_do_not()
    {
        var band = new Band<Length>(Given.Mm(20), Given.Mm(20));
        var window = new Study(Frame(Left, Right)).CoveringOffsets("setup", [], band, default);
        window.Should().NotBeNull();
        foreach (var shift in new[] { window!.From.Millimetres, (window.From.Millimetres + window.To.Millimetres) / 2, window.To.Millimetres })
        {
            At(Frame(shift, Left, Right)).Coverage.IsComplete.Should().BeTrue($"shifted by {shift} mm");
        }

        At(Frame(window.To.Millimetres + 0.2, Left, Right)).Coverage.IsComplete.Should().BeFalse();
        new Study(Frame(Left, Right)).CoveringOffsets("no such setup", [], band, default).Should().BeNull();
    }

    private static Examination Frame(params Beam[] beams) => Frame(0, beams);

    private static Examination Frame(double shift, params Beam[] beams) => Given.Examination(Given.Pass(
        new(Given.ArrayProbe(offset: 26 + shift), Given.ArrayProbe(Side.Right, 26 + shift), Given.TofdProbe(Side.Left), Given.TofdProbe(Side.Right)),
        beams));

    private static CaseStudy At(Examination examination) => new Study(examination).At(Given.Mm(20), null);
}
