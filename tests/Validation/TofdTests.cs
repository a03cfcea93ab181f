using FluentAssertions;
using TechLint.Tests.Unit.Ultrasonics;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Rays;
using TechLint.Ultrasonics.Studies;
using TechLint.Ultrasonics.Tofd;
using Xunit;

namespace TechLint.Tests.Validation;

public sealed class TofdTests
{
    private const double Degree = Math.PI / 180;

    public static TheoryData<string> Separations => CheckValue.Ids("tofd-separation");

    public static TheoryData<string> Times => CheckValue.Ids("tofd-time");

    public static TheoryData<string> Depths => CheckValue.Ids("tofd-depth");

    public static TheoryData<string> DeadZones => CheckValue.Ids("tofd-dead-zone");

    [Theory, MemberData(nameof(Separations))]
    public void The_separation_for_a_crossing_agrees(string id)
    {
        // Move the pair apart until its axes cross at the depth.
        var row = CheckValue.Of(id);
        var (near, far) = (0.0, 1000.0);
        for (var step = 0; step < 60; step++)
        {
            var middle = (near + far) / 2;
            var depth = Pair(row["t"], middle).IntersectionDepth(row["angle"] * Degree, row["angle"] * Degree);
            if (depth < row["crossing"] * row["t"]) near = middle;
            else far = middle;
        }

        row.Holds(Pair(row["t"], near).Separation);
    }

    [Theory, MemberData(nameof(Times))]
    public void An_arrival_time_agrees(string id)
    {
        var row = CheckValue.Of(id);
        var study = StudyOf(row["t"], row["pcs"], out var pair);
        row.Holds(row.Inputs["what"] switch
        {
            "lateral" => study.LateralWaveTime.Microseconds,
            "back-wall" => study.BackWallTime.Microseconds,
            _ => pair.ConvertedBackWallTime(Given.Longitudinal * 1000, Given.Transverse * 1000)!.Value.Microseconds,
        });
    }

    [Theory, MemberData(nameof(Depths))]
    public void A_depth_from_an_arrival_time_agrees(string id)
    {
        var row = CheckValue.Of(id);
        var pair = Pair(1000, row["pcs"]);
        if (row.Inputs.ContainsKey("after"))
        {
            row.Holds(pair.DepthOf(pair.LateralPath + (row["after"] * Given.Longitudinal / 1000)));
            return;
        }

        // A tip beside the middle is read as if it lay on it, and so too deep.
        var frame = new SectionFrame(pair.Section);
        frame.TryLine(pair.LeftExitY, row["offset"], row["tip"], out var down, out _);
        frame.TryLine(pair.RightExitY, row["offset"], row["tip"], out var up, out _);
        row.Holds(pair.DepthOf(down + up));
    }

    [Theory, MemberData(nameof(DeadZones))]
    public void A_dead_zone_agrees(string id)
    {
        var row = CheckValue.Of(id);
        var study = StudyOf(row["t"], row["pcs"], out _, row["pulse"]);
        row.Holds(row.Inputs["what"] == "near" ? study.NearSurfaceDeadZone.Millimetres : study.BackWallDeadZone.Millimetres);
    }

    [Theory]
    [InlineData(8), InlineData(20), InlineData(40)]
    public void The_converted_echo_lies_between_the_back_wall_s_two_waves(double thickness)
    {
        var study = StudyOf(thickness, 50, out var pair);
        var converted = pair.ConvertedBackWallTime(Given.Longitudinal * 1000, Given.Transverse * 1000)!.Value.Microseconds;
        converted.Should().BeGreaterThan(study.BackWallTime.Microseconds)
            .And.BeLessThan(study.BackWallTime.Microseconds * Given.Longitudinal / Given.Transverse, "by least time it beats two transverse legs");
    }

    private static PairGeometry Pair(double thickness, double separation) =>
        new(SectionRays.Flat(thickness), -separation / 2, separation / 2, transmitsFromLeft: true);

    private static TofdStudy StudyOf(double thickness, double separation, out TofdPair pair, double pulse = 0.3)
    {
        // The index point lies 7 mm behind the wedge's front.
        var section = Given.TofdSection(
            thickness, (separation / 2) - Given.TofdWedge.IndexPointBehindFront!.Value.Millimetres,
            transducer: Given.Round with { PulseLength = new Duration(pulse) });
        (var found, var reason) = TofdPair.Of(section, Given.Diffraction);
        reason.Should().BeNull();
        pair = found!;
        return pair.Study;
    }
}
