using FluentAssertions;
using MathNet.Numerics.Optimization;
using TechLint.Tests.Unit.Ultrasonics;
using TechLint.Ultrasonics;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Rays;
using TechLint.Ultrasonics.Studies;
using TechLint.Ultrasonics.Tofd;
using Xunit;

namespace TechLint.Tests.Validation;

/// <summary>What a pair's study tells beside its chief figures, against outside values and against plain points in the plane.</summary>
public sealed class TofdInFullTests
{
    private const string Stepped = "points in the plane, depth stepped by 0.001 mm";

    private static readonly Speed Longitudinal = new(Given.Longitudinal);

    public static TheoryData<string> Resolutions => CheckValue.Ids("tofd-resolution");

    public static TheoryData<string> Depths => CheckValue.Ids("tofd-depth");

    public static TheoryData<string> DeadZones => CheckValue.Ids("tofd-dead-zone");

    public static TheoryData<string> OtherForm => CheckValue.Ids("tofd-dead-zone-other-form");

    public static TheoryData<string> Separations => CheckValue.Ids("tofd-separation");

    public static TheoryData<string> Zones => CheckValue.Ids("tofd-zones");

    [Theory, MemberData(nameof(Resolutions))]
    public void A_spatial_resolution_agrees(string id)
    {
        var row = CheckValue.Of(id);
        row.Holds(TofdFormulas.ResolutionAt(new Length(row["d"]), new Duration(row["pulse"]), Longitudinal, new Length(row["pcs"])).Millimetres);
    }

    [Theory, MemberData(nameof(Depths))]
    public void A_depth_by_the_public_formula_agrees(string id)
    {
        var row = CheckValue.Of(id);
        var separation = new Length(row["pcs"]);
        if (row.Inputs.ContainsKey("after"))
        {
            row.Holds(TofdFormulas.DepthAt(new Duration((row["pcs"] / Longitudinal.MillimetresPerMicrosecond) + row["after"]), Longitudinal, separation).Millimetres);
            return;
        }

        row.Holds(row["tip"] + TofdFormulas.DepthErrorOffMiddle(new Length(row["tip"]), new Length(row["offset"]), Longitudinal, separation).Millimetres);
    }

    [Theory, MemberData(nameof(DeadZones))]
    public void A_dead_zone_by_the_public_formula_agrees(string id)
    {
        var row = CheckValue.Of(id);
        var (pulse, separation) = (new Duration(row["pulse"]), new Length(row["pcs"]));
        row.Holds(row.Inputs["what"] == "near"
            ? TofdFormulas.NearSurfaceDeadZone(pulse, Longitudinal, separation).Millimetres
            : TofdFormulas.BackWallDeadZone(new Length(row["t"]), pulse, Longitudinal, separation, countedBack: false).Millimetres);
    }

    [Theory, MemberData(nameof(OtherForm))]
    public void The_other_form_of_the_back_wall_s_dead_zone_is_some_three_per_cent_larger(string id)
    {
        var row = CheckValue.Of(id);
        var (wall, pulse, separation) = (new Length(row["t"]), new Duration(row["pulse"]), new Length(row["pcs"]));
        var back = TofdFormulas.BackWallDeadZone(wall, pulse, Longitudinal, separation, countedBack: true).Millimetres;
        row.Holds(back);
        (back / TofdFormulas.BackWallDeadZone(wall, pulse, Longitudinal, separation, countedBack: false).Millimetres).Should().BeInRange(1.01, 1.05);
        var study = StudyOf(Pair(row["t"], row["pcs"] / 2, row["pcs"] / 2, pulse: row["pulse"]));
        row.Holds(study.BackWallDeadZoneCountedBack.Millimetres);
    }

    [Theory, MemberData(nameof(Separations))]
    public void A_separation_by_the_public_formula_agrees(string id)
    {
        var row = CheckValue.Of(id);
        row.Holds(TofdFormulas.SeparationFor(new Length(row["crossing"] * row["t"]), new Angle(row["angle"])).Millimetres);
    }

    [Theory, MemberData(nameof(Zones))]
    public void The_recommended_zones_agree(string id)
    {
        var row = CheckValue.Of(id);
        var zones = TofdZones.Recommended(new Length(row["t"]));
        row.Holds(row.Inputs["what"] == "count" ? zones.Length : zones[(int)row["zone"] - 1].Crossing.Fraction);
    }

    [Theory]
    [InlineData(5), InlineData(12), InlineData(30)]
    public void Depth_errors_are_the_slopes_of_the_depth(double depth)
    {
        // Central differences of depth over time, speed and separation.
        var (d, separation) = (new Length(depth), new Length(60));
        var time = TofdFormulas.TimeOf(d, Longitudinal, separation).Microseconds;
        const double little = 1e-5;
        double At(double t, double c, double s) => TofdFormulas.DepthAt(new Duration(t), new Speed(c), new Length(s)).Millimetres;
        var byTime = (At(time + little, 5920, 60) - At(time - little, 5920, 60)) / (2 * little);
        TofdFormulas.DepthErrorOfTime(d, new Duration(0.01), Longitudinal, separation).Millimetres.Should().BeApproximately(0.01 * byTime, 1e-5);
        var bySpeed = (At(time, 5920 + 0.1, 60) - At(time, 5920 - 0.1, 60)) / 0.2;
        TofdFormulas.DepthErrorOfSpeed(d, new Speed(20), Longitudinal, separation, timedFromLateralWave: false).Millimetres
            .Should().BeApproximately(20 * bySpeed, 1e-4);

        // Timed from the lateral wave: its own time at the assumed speed is added back.
        var after = time - (60 / 5.92);
        var fromLateral = (At(after + (60 / 5.9201), 5920.1, 60) - At(after + (60 / 5.9199), 5919.9, 60)) / 0.2;
        TofdFormulas.DepthErrorOfSpeed(d, new Speed(20), Longitudinal, separation, timedFromLateralWave: true).Millimetres
            .Should().BeApproximately(20 * fromLateral, 1e-4);
        var bySeparation = (At(time, 5920, 60 + little) - At(time, 5920, 60 - little)) / (2 * little);
        TofdFormulas.DepthErrorOfSeparation(d, new Length(0.5), separation).Millimetres.Should().BeApproximately(-0.5 * bySeparation, 1e-4);
    }

    [Theory]
    [InlineData(null, false), InlineData(400.0, false), InlineData(400.0, true)]
    public void The_converted_echo_is_the_least_of_a_minimiser_s(double? diameter, bool fromInside)
    {
        var detail = StudyOf(Pair(20, 25, 32, diameter, fromInside), out var study, out var exits);
        var radius = diameter is { } d ? (d / 2) - (fromInside ? 20 : 0) : 0;
        var far = diameter is null ? 0 : fromInside ? diameter.Value / 2 : (diameter.Value / 2) - 20;
        double Time(double place)
        {
            // Arc along the scanning surface → point of the opposite one.
            var (lx, lz) = Point(exits.Left, radius, radius, 0);
            var (rx, rz) = Point(exits.Right, radius, radius, 0);
            var (x, z) = Point(place, radius, far, 20);
            return (Math.Sqrt(((x - lx) * (x - lx)) + ((z - lz) * (z - lz))) / Given.Longitudinal
                + (Math.Sqrt(((x - rx) * (x - rx)) + ((z - rz) * (z - rz))) / Given.Transverse)) * 1000;
        }

        var least = GoldenSectionMinimizer.Minimum(ObjectiveFunction.ScalarValue(Time), exits.Left, exits.Right, 1e-7, 500).MinimizingPoint;
        Checks.Record(
            "tofd time", $"converted back-wall echo, wall 20 mm, index points 25 and 32 mm from the middle{Where(diameter, fromInside)}", Time(least),
            detail.ConvertedBackWallTime!.Value.Microseconds, 1e-6, "us", "least time over the wall, MathNet.Numerics golden section", Checks.Computed);
        detail.TransverseBackWallTime!.Value.Microseconds.Should().BeApproximately(
            study.BackWallTime.Microseconds * Given.Longitudinal / Given.Transverse, 1e-9);
        detail.MidPlaneY.Millimetres.Should().BeApproximately((exits.Left + exits.Right) / 2, 1e-9);
    }

    [Theory]
    [InlineData(60, false), InlineData(120, false), InlineData(140, false), InlineData(150, false), InlineData(157, false), InlineData(60, true), InlineData(105, true), InlineData(130, true)]
    public void Around_a_thick_pipe_only_ways_that_clear_the_bore_count(double half, bool fromInside)
    {
        // Diameter 400 mm, wall 60 mm: the bore is in sight of an exit point for acos(140/200) of the pipe. Lines are stepped through in a thousand pieces;
        // a converted echo is a place of the far wall whose two lines stay in the metal and whose time is less than its neighbours'.
        const double outer = 200, inner = 140;
        var (scan, far) = fromInside ? (inner, outer) : (outer, inner);
        var section = fromInside ? SectionRays.FromInside(60, 400) : SectionRays.FromOutside(60, 400);
        var pair = new PairGeometry(section, -half, half, transmitsFromLeft: true);
        bool IsClear(double exit, double place)
        {
            var (ex, ez) = Point(exit, scan, scan, 0);
            var (x, z) = Point(place, scan, far, 0);
            return Enumerable.Range(1, 998).All(step =>
            {
                var share = step / 999.0;
                return double.Hypot(ex + (share * (x - ex)), ez + (share * (z - ez))) is > inner - 1e-4 and < outer + 1e-4;
            });
        }

        double Time(double place)
        {
            if (!IsClear(-half, place) || !IsClear(half, place)) return double.NaN;
            var (x, z) = Point(place, scan, far, 0);
            var ((lx, lz), (rx, rz)) = (Point(-half, scan, scan, 0), Point(half, scan, scan, 0));
            return (double.Hypot(x - lx, z - lz) / Given.Longitudinal * 1000) + (double.Hypot(x - rx, z - rz) / Given.Transverse * 1000);
        }

        var times = Enumerable.Range(0, 2001).Select(step => Time(half * (step - 1000) / 1000.0)).ToArray();
        var expected = double.NaN;
        for (var index = 1; index < times.Length - 1; index++)
        {
            if (times[index] <= times[index - 1] && times[index] < times[index + 1]) expected = times[index];
        }

        Checks.Record(
            "tofd time", FormattableString.Invariant($"converted back-wall echo, wall 60 mm, index points {half} mm either side, diameter 400 mm, {(fromInside ? "inside" : "outside")}"), expected,
            ConvertedWave.BackWallTime(pair, Given.Longitudinal * 1000, Given.Transverse * 1000) * 1e6, 1e-3, "us", "2001 places of the wall, lines stepped through the metal", Checks.Computed);
    }

    [Theory]
    [InlineData(null, false), InlineData(500.0, false), InlineData(500.0, true)]
    public void Dead_zones_beside_the_middle_agree_with_points_in_the_plane(double? diameter, bool fromInside)
    {
        const double wall = 20;
        var pulse = 0.2 * Given.Longitudinal / 1000;
        var detail = StudyOf(Pair(wall, 30, 30, diameter, fromInside, 0.2), out var study, out var exits);
        var radius = diameter is { } d ? (d / 2) - (fromInside ? wall : 0) : 0;
        double Path(double y, double z)
        {
            var (lx, lz) = Point(exits.Left, radius, radius, 0);
            var (rx, rz) = Point(exits.Right, radius, radius, 0);
            var (x, h) = Point(y, radius, fromInside ? radius + z : radius - z, z);
            return Math.Sqrt(((x - lx) * (x - lx)) + ((h - lz) * (h - lz))) + Math.Sqrt(((x - rx) * (x - rx)) + ((h - rz) * (h - rz)));
        }

        var lateral = study.LateralWaveTime.Microseconds * Given.Longitudinal / 1000;
        var last = Path(0, wall - study.BackWallDeadZone.Millimetres);
        detail.OffCentre.Count.Should().BeGreaterThanOrEqualTo(2);
        foreach (var place in detail.OffCentre)
        {
            // Every hundredth of a millimetre from below: the lowest place whose echo comes in time, and the highest that comes late enough.
            var y = place.Y.Millimetres;
            var lowest = wall;
            while (Path(y, lowest) > last) lowest -= 0.001;
            var at = FormattableString.Invariant($"y {y:0.0} mm, wall 20 mm{Where(diameter, fromInside)}");
            Checks.Record("tofd dead zone beside the middle", $"back wall: {at}", wall - lowest, place.BackWall.Millimetres, 2e-3, "mm", Stepped, Checks.Computed);
            place.BackWall.Millimetres.Should().BeGreaterThanOrEqualTo(study.BackWallDeadZone.Millimetres - 1e-9, "the ellipse rises beside the middle");
            var highest = wall;
            while (highest > 0 && Path(y, highest) > lateral + pulse && (!fromInside || IsStraight(y, highest))) highest -= 0.001;
            Checks.Record("tofd dead zone beside the middle", $"near surface: {at}", highest, place.NearSurface.Millimetres, 3e-3, "mm", Stepped, Checks.Computed);
        }

        // From inside a line leaves the bore at once only above the tangent of its exit point.
        bool IsStraight(double y, double z) => new[] { exits.Left, exits.Right }.All(exit =>
        {
            var (x, h) = Point(y, radius, radius + z, z);
            var (ex, eh) = Point(exit, radius, radius, 0);
            return ((x - ex) * ex) + ((h - eh) * eh) >= 0;
        });
    }

    [Fact]
    public void An_offset_pair_reads_the_centreline_too_deep_by_the_ellipse()
    {
        var detail = StudyOf(Pair(25, 22, 34), out var study, out _);
        detail.MidPlaneY.Millimetres.Should().BeApproximately(6, 1e-9);
        var (from, to, separation) = (study.CoveredFrom.Millimetres, study.CoveredTo.Millimetres, study.ProbeCentreSeparation);
        var worst = Enumerable.Range(0, 5001)
            .Max(step => TofdFormulas.DepthErrorOffMiddle(new Length(from + ((to - from) * step / 5000)), new Length(6), Longitudinal, separation).Millimetres);
        detail.CentrelineDepthError.Millimetres.Should().BeGreaterThan(0.1);
        Checks.Record(
            "tofd depth", "how far too deep the centreline is read at most: index points 22 and 34 mm from it, wall 25 mm", worst, detail.CentrelineDepthError.Millimetres, 1e-3, "mm",
            "the ellipse at 5001 depths", Checks.Computed);
        StudyOf(Pair(25, 28, 28)).CentrelineDepthError.Millimetres.Should().Be(0);
    }

    [Fact]
    public void The_bands_of_drop_lie_in_one_another_and_twelve_is_the_common_drop()
    {
        var detail = StudyOf(Pair(60, 40, 40), out var study, out _);
        detail.Covered12.Should().Be(new CoveredDepth(study.CoveredFrom, study.CoveredTo));
        detail.Covered6.From.Millimetres.Should().BeGreaterThanOrEqualTo(detail.Covered12.From.Millimetres);
        detail.Covered6.To.Millimetres.Should().BeLessThan(detail.Covered12.To.Millimetres);
        detail.Covered12.To.Millimetres.Should().BeLessThanOrEqualTo(detail.Covered20.To.Millimetres);
        detail.Covered20.From.Millimetres.Should().BeLessThanOrEqualTo(detail.Covered12.From.Millimetres);
    }

    [Fact]
    public void Two_pairs_leave_unseen_what_neither_covers()
    {
        var upper = Given.Diffraction with { Id = "upper", ZoneTo = new Depth(40, IsShare: true) };
        var lower = Given.Diffraction with { Id = "lower", ZoneFrom = new Depth(60, IsShare: true) };
        var pass = Given.Pass(new(Given.TofdProbe(Side.Left, 30), Given.TofdProbe(Side.Right, 30)), upper, lower);
        var study = new Study(Given.Examination(pass)).At(new Length(30), null);
        var depths = DepthsCovered.Of(study)!;
        depths.Covered.Should().HaveCount(2);
        depths.Unseen.Should().HaveCount(3);
        depths.Unseen[1].From.Millimetres.Should().BeApproximately(12, 1e-9);
        depths.Unseen[1].To.Millimetres.Should().BeApproximately(18, 1e-9);
        depths.Covered.Concat(depths.Unseen).Sum(stretch => stretch.To.Millimetres - stretch.From.Millimetres).Should().BeApproximately(30, 1e-9);
    }

    [Fact]
    public void A_stated_separation_is_held_against_the_computed_one()
    {
        var section = Given.TofdSection(25, beam: Given.Diffraction with { StatedSeparation = new Length(52) });
        var detail = StudyOf(section);
        detail.StatedSeparation!.Value.Millimetres.Should().Be(52);
        detail.SeparationDifference!.Value.Millimetres.Should().BeApproximately(2, 1e-9);
        StudyOf(Given.TofdSection(25)).SeparationDifference.Should().BeNull();
    }

    private static string Where(double? diameter, bool fromInside) =>
        diameter is { } round ? FormattableString.Invariant($", diameter {round} mm, {(fromInside ? "inside" : "outside")}") : "";

    /// <summary>Arc along the scanning surface, and a radius (or depth, when flat), as a point.</summary>
    private static (double X, double Z) Point(double arc, double scanRadius, double radius, double depth) => scanRadius == 0
        ? (arc, depth)
        : (radius * Math.Sin(arc / scanRadius), radius * Math.Cos(arc / scanRadius));

    private static PassSection Pair(double wall, double left, double right, double? diameter = null, bool fromInside = false, double pulse = 0.3)
    {
        var surface = fromInside ? Surface.Inside : Surface.Outside;
        var wedge = Given.TofdWedge with { ContourDiameter = diameter is { } d ? new Length(fromInside ? d - (2 * wall) : d) : null };
        var section = Given.TofdSection(wall, left - 7, diameter, surface, wedge, Given.Round with { PulseLength = new Duration(pulse) });
        var probes = section.Pass.Probes.Select(probe => probe with { IndexOffset = new Length((probe.Side == Side.Left ? left : right) - 7) });
        return Given.Section(section.Examination with { Passes = [section.Pass with { Probes = [.. probes] }] }, wall, diameter);
    }

    private static TofdDetail StudyOf(PassSection section) => StudyOf(section, out _, out _);

    private static TofdDetail StudyOf(PassSection section, out TofdStudy study, out (double Left, double Right) exits)
    {
        var outer = section.OutsideDiameter is { } diameter ? new Length(diameter) : (Length?)null;
        var beam = new Study(section.Examination).At(new Length(section.Thickness), outer).Passes[0].Beams[0];
        beam.NotComputed.Should().BeNull();
        study = beam.Tofd!;
        exits = (beam.Laws.Min(law => law.ExitY.Millimetres), beam.Laws.Max(law => law.ExitY.Millimetres));
        return study.Detail!;
    }
}
