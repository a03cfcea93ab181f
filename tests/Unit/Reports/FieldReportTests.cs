using FluentAssertions;
using TechLint.Engine;
using TechLint.Reports.Compute;
using TechLint.Ultrasonics.Fields;
using TechLint.Ultrasonics.Quantities;
using Xunit;

namespace TechLint.Tests.Unit.Reports;

public sealed class FieldReportTests
{
    [Fact]
    public void A_map_has_its_axes_and_units_and_a_line_for_each_place()
    {
        var map = new FieldMap("sector", new Angle(55), [new Length(-1), new Length(1.5)], [new Length(2)], [new Level(0), new Level(-6.25)], null);
        var output = new StringWriter();
        FieldCsvReport.Write(output, new ComputedField("seam", new Length(20), null, map));
        output.ToString().Should().Be(
            "y (mm),z (mm),pulse-echo amplitude (dB relative to maximum),setup,beam,law (deg),thickness (mm)\n-1,2,0,seam,sector,55,20\n1.5,2,-6.25,seam,sector,55,20\n");
    }

    [Fact]
    public void The_share_is_told_beside_both_measures_or_why_there_is_none()
    {
        FieldText.Lines(new FieldCoverage(new Share(97.44), new Share(99.6), new Level(-6), null)).Should().ContainSingle()
            .Which.Should().Contain("within 6.0 dB").And.Contain("97.4 %").And.Contain("own laws alone 99.6 %");
        FieldText.Lines(new FieldCoverage(new Share(double.NaN), new Share(double.NaN), new Level(-6), "there is no sound beam")).Should().ContainSingle()
            .Which.Should().EndWith("not computed: there is no sound beam");
        FieldText.Lines((FieldCoverage?)null).Should().BeEmpty();
    }
}
