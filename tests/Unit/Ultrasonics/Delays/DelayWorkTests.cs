using FluentAssertions;
using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Delays;
using TechLint.Ultrasonics.Examinations;
using Xunit;

namespace TechLint.Tests.Unit.Ultrasonics.Delays;

public sealed class DelayWorkTests
{
    [Fact]
    public void Elements_are_numbered_over_the_whole_probe()
    {
        var law = Of(Given.ArraySection(), Fixed(60) with { Scan = ScanKind.Linear, Aperture = new Aperture(5, 8, 32, 4) }, 2);
        law.Elements.Select(element => element.Element).Should().Equal(Enumerable.Range(13, 8));
    }

    [Fact]
    public void Counting_from_the_front_turns_the_row_round()
    {
        // The same places in the wedge, numbered the other way: element 16 from the rear is element 17 from the front of a row of 32.
        var rear = Of(Given.ArraySection(), Fixed(60) with { Aperture = null }).Elements;
        var (sine, cosine) = Math.SinCos(36 * Math.PI / 180);
        var probe = Given.ArrayProbe() with
        {
            Wedge = Given.ArrayWedge with
            {
                ElementOneAtFront = true, FirstElement = new ElementPlace(Given.Mm(5 + (15.5 * sine)), Given.Mm(28 - (15.5 * cosine))),
            },
        };
        var front = Of(Given.ArraySection(probe: probe), Fixed(60) with { Aperture = null }).Elements;
        for (var index = 0; index < 32; index++) front[31 - index].Delay.Microseconds.Should().BeApproximately(rear[index].Delay.Microseconds, 1e-9);
    }

    [Fact]
    public void A_turned_beam_on_a_plate_keeps_its_delays()
    {
        var focused = Fixed(60) with { Focus = new Focus(FocusKind.Path, Given.Mm(30)) };
        var straight = Of(Given.ArraySection(), focused).Elements;
        var turned = Of(Given.ArraySection(probe: Given.ArrayProbe() with { Skew = Given.Deg(20) }), focused).Elements;
        for (var index = 0; index < 16; index++) turned[index].Delay.Microseconds.Should().BeApproximately(straight[index].Delay.Microseconds, 1e-9);
    }

    [Fact]
    public void Path_depth_and_line_to_one_place_give_one_law()
    {
        var section = Given.ArraySection();
        var exit = Given.LawAt(section, 60).Study.ExitY.Millimetres;
        var path = Of(section, Fixed(60) with { Focus = new Focus(FocusKind.Path, Given.Mm(30)) }).Elements;
        var depth = Of(section, Fixed(60) with { Focus = new Focus(FocusKind.Depth, Given.Mm(15)) }).Elements;
        var across = Of(section, Fixed(60) with { Focus = new Focus(FocusKind.Across, Given.Mm(exit + (30 * Math.Sin(Math.PI / 3)))) }).Elements;
        for (var index = 0; index < 16; index++)
        {
            depth[index].Delay.Microseconds.Should().BeApproximately(path[index].Delay.Microseconds, 1e-9);
            across[index].Delay.Microseconds.Should().BeApproximately(path[index].Delay.Microseconds, 1e-9);
        }
    }

    [Fact]
    public void What_has_no_delays_says_why()
    {
        Of(Given.ArraySection(), Fixed(20)).NotComputed.Should().Contain("critical");
        Of(Given.ArraySection(), Fixed(60) with { Focus = new Focus(FocusKind.Across, Given.Mm(-200)) }).NotComputed.Should().Contain("focus");
        Of(Given.ArraySection(12, 500, probe: Given.ArrayProbe() with { Skew = Given.Deg(5) }), Fixed(60)).NotComputed.Should().Contain("turned");
        Of(Given.ArraySection(), Fixed(60) with { Aperture = new Aperture(30, 16, 45, 1) }).NotComputed.Should().Contain("array");
    }

    [Fact]
    public void A_single_element_fires_at_once()
    {
        var section = Given.TofdSection(20);
        var probe = section.Pass.Probes[0];
        DelayWork.Of(section, probe, Given.Diffraction, LawGeometry.Of(section, probe, Given.Diffraction)[0]).Elements.Should().Equal(new ElementDelay(1, default));
    }

    private static Beam Fixed(double angle) => Given.Sector with { Scan = ScanKind.Fixed, Angles = new AngleSweep(Given.Deg(angle), Given.Deg(angle), Given.Deg(1)) };

    private static FocalLaw Of(TechLint.Ultrasonics.Studies.PassSection section, Beam beam, int law = 0) =>
        DelayWork.Of(section, section.Pass.Probes[0], beam, LawGeometry.Of(section, section.Pass.Probes[0], beam)[law]);
}
