using FluentAssertions;
using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Studies;
using Xunit;

namespace TechLint.Tests.Unit.Ultrasonics.Beams;

public sealed class PassSightsTests
{
    private static readonly PassSection Section = Given.Section(
        Given.Examination(Given.Pass(
            new(Given.ArrayProbe(), Given.ArrayProbe(Side.Right), Given.TofdProbe(Side.Left), Given.TofdProbe(Side.Right)),
            Given.Sector,
            Given.Sector with { Id = "right", From = 2 },
            Given.Diffraction,
            Given.Sector with { Id = "monitor", Scan = ScanKind.CouplingMonitor },
            Given.Sector with { Id = "lamination", Scan = ScanKind.Lamination },
            Given.Sector with { Id = "image", Scan = ScanKind.TotalFocusing })),
        20);

    [Fact]
    public void Sound_beams_and_pairs_count_and_monitors_never_do()
    {
        var sights = PassSights.Of(Section);
        sights.Lines.Should().HaveCount(62);
        sights.Pairs.Should().ContainSingle();
    }

    [Fact]
    public void An_error_moves_a_probe_away_from_the_weld()
    {
        var (stated, moved) = (PassSights.Of(Section), PassSights.Of(Section, leftError: 1, rightError: -0.5));
        moved.Lines[0].ExitY.Should().BeApproximately(stated.Lines[0].ExitY - 1, 1e-12);
        moved.Lines[^1].ExitY.Should().BeApproximately(stated.Lines[^1].ExitY - 0.5, 1e-12);
        moved.Pairs[0].FromY.Should().BeApproximately(stated.Pairs[0].FromY - 1, 1e-12);
        moved.Pairs[0].ToY.Should().BeApproximately(stated.Pairs[0].ToY - 0.5, 1e-12);
    }

    [Fact]
    public void A_skew_error_turns_every_beam()
    {
        var (stated, turned) = (PassSights.Of(Section), PassSights.Of(Section, skewError: 0.05));
        turned.Lines.Zip(stated.Lines).Should().OnlyContain(pair => pair.First.Angle < pair.Second.Angle);
    }

    [Fact]
    public void A_law_with_a_fault_sees_nothing()
    {
        var steep = Given.Sector with { Angles = new AngleSweep(Given.Deg(30), Given.Deg(40), Given.Deg(1)) };
        var section = Given.Section(Section.Examination with { Passes = [Section.Pass with { Beams = [steep] }] }, 20);
        PassSights.Of(section).Lines.Select(line => line.Angle * 180 / Math.PI).Should().OnlyContain(angle => angle > 33.3).And.HaveCount(7);
    }
}
