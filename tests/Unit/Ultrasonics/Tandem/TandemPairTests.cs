using FluentAssertions;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;
using TechLint.Ultrasonics.Tandem;
using Xunit;

namespace TechLint.Tests.Unit.Ultrasonics.Tandem;

public sealed class TandemPairTests
{
    private static readonly Beam Pair = Given.Sector with
    {
        Id = "tandem", Scan = ScanKind.Tandem, From = null, Transmit = 5, Receive = 1, Angles = new AngleSweep(Given.Deg(45), Given.Deg(45), default),
        PathWindow = null, ZoneFrom = new Depth(8, IsShare: false), ZoneTo = new Depth(16, IsShare: false),
    };

    [Fact]
    public void Which_probe_transmits_makes_no_difference()
    {
        var one = TandemPair.Of(Section(Pair), Pair).Pair!.Study;
        TandemPair.Of(Section(Pair), Pair with { Transmit = 1, Receive = 5 }).Pair!.Study.Should().Be(one);
        one.Spacing.Millimetres.Should().BeApproximately(40, 1e-9);
        one.CrossingDepth.Millimetres.Should().BeApproximately(10, 1e-8);
    }

    [Fact]
    public void The_zone_and_the_window_bound_what_is_seen()
    {
        var narrow = Pair with { ZoneFrom = new Depth(9.8, IsShare: false) };
        var sight = TandemPair.Of(Section(narrow), narrow).Pair!.Sight;
        var study = TandemPair.Of(Section(narrow), narrow).Pair!.Study;
        var y = study.CrossingY.Millimetres;
        sight.Sees(y, 10).Should().BeTrue();
        sight.Sees(y, 9.7).Should().BeFalse();
        sight.Serves(y, 9.7).Should().BeTrue("only the zone keeps it out");
        var late = Pair with { PathWindow = new Band<Length>(Given.Mm(50), Given.Mm(90)) };
        TandemPair.Of(Section(late), late).Pair!.Sight.Sees(y, 10).Should().BeFalse("half of the whole way is 30 / cos 45 deg");
    }

    [Fact]
    public void What_cannot_be_says_why()
    {
        Reason(Pair with { Receive = 9 }).Should().Contain("missing");
        Reason(Pair with { Receive = 2 }).Should().Contain("different sides");
        Reason(Pair with { Receive = 5 }).Should().Contain("one probe");
        Reason(Pair with { Angles = null }).Should().Contain("no angle");
        Reason(Pair with { Angles = new AngleSweep(Given.Deg(95), Given.Deg(95), default) }).Should().NotBeNull();

        static string? Reason(Beam beam) => TandemPair.Of(Section(beam), beam).NotComputed;
    }

    [Fact]
    public void Too_far_apart_the_axes_do_not_cross_and_no_number_is_made_up()
    {
        var study = TandemPair.Of(Section(Pair, 75), Pair).Pair!.Study;
        study.CrossingDepth.Millimetres.Should().Be(double.NaN);
        study.ServedFrom.Millimetres.Should().Be(double.NaN);
        study.Spacing.Millimetres.Should().BeApproximately(75, 1e-9);
    }

    [Fact]
    public void A_root_under_the_bounce_hides_the_place()
    {
        var section = Section(Pair);
        var study = TandemPair.Of(section, Pair).Pair!.Study;
        var bounce = study.CrossingY.Millimetres - 20;
        var root = new Reinforcement(Given.Mm(6), Given.Mm(1), Given.Mm(bounce));
        var hidden = Given.Section(section.Examination with { Weld = section.Examination.Weld with { Root = root } }, 30);
        TandemPair.Of(hidden, Pair).Pair!.Sight.Sees(study.CrossingY.Millimetres, 10).Should().BeFalse();
        double.IsNaN(TandemPair.Of(hidden, Pair).Pair!.Study.ServedFrom.Millimetres).Should().BeTrue();
    }

    private static PassSection Section(Beam beam, double apart = 40)
    {
        var near = Given.ArrayProbe(offset: 14);
        return Given.Section(
            Given.Examination(Given.Pass(new(near, Given.ArrayProbe(Side.Right), near with { Station = 5, IndexOffset = Given.Mm(14 + apart) }), beam)), 30);
    }
}
