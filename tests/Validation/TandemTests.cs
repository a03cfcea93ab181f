using FluentAssertions;
using TechLint.Tests.Unit.Ultrasonics;
using TechLint.Ultrasonics;
using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;
using TechLint.Ultrasonics.Tandem;
using Xunit;

namespace TechLint.Tests.Validation;

/// <summary>Tandem pairs against rays stepped as vectors in the plane, which know nothing of unfolding, arcs or axis distances.</summary>
public sealed class TandemTests
{
    private const double Degree = Math.PI / 180;

    public static TheoryData<string> Spacings => CheckValue.Ids("tandem-spacing");

    [Theory, MemberData(nameof(Spacings))]
    public void A_spacing_agrees(string id)
    {
        var row = CheckValue.Of(id);
        var spacing = TandemFormulas.SpacingFor(new Length(row["t"]), new Length(row["d"]), new Angle(row["angle"]));
        row.Holds(spacing.Millimetres);
        TandemFormulas.CrossingDepth(new Length(row["t"]), spacing, new Angle(row["angle"])).Millimetres.Should().BeApproximately(row["d"], 1e-9);
    }

    [Theory]
    [InlineData(0, false), InlineData(300, false), InlineData(300, true), InlineData(800, false), InlineData(800, true)]
    public void A_ray_stepped_by_vectors_comes_up_where_the_spacing_says(double diameter, bool fromInside)
    {
        const double wall = 25;
        foreach (var angle in (double[])[40, 45, 50])
        {
            foreach (var depth in (double[])[4, 9, 14, 21])
            {
                var spacing = diameter == 0
                    ? TandemFormulas.SpacingFor(new Length(wall), new Length(depth), new Angle(angle))
                    : TandemFormulas.SpacingOnCurve(new Length(wall), new Length(diameter), fromInside, new Length(depth), new Angle(angle));
                var stepped = new Plane(wall, diameter / 2, fromInside).SpacingByRay(angle * Degree, depth);
                Checks.Record(
                    "tandem spacing",
                    FormattableString.Invariant($"{angle} deg, depth {depth} mm, wall 25 mm{(diameter == 0 ? "" : $", diameter {diameter} mm, {(fromInside ? "inside" : "outside")}")}"),
                    stepped, spacing.Millimetres, 2e-3, "mm", "a ray stepped by vectors: bounce, mirror, and up", Checks.Computed);
            }
        }
    }

    [Theory]
    [InlineData(null, Surface.Outside), InlineData(400.0, Surface.Outside), InlineData(400.0, Surface.Inside)]
    public void What_the_pair_serves_is_what_both_beams_hold_by_stepped_rays(double? diameter, Surface surface)
    {
        var section = Section(30, 14, diameter, surface);
        var (pair, reason) = TandemPair.Of(section, section.Pass.Beams[0]);
        reason.Should().BeNull();
        var laws = section.Pass.Probes.Select(probe => LawGeometry.Of(section, probe, section.Pass.Beams[0])[0].Sight!).OrderBy(line => line.ExitY).ToArray();
        var plane = new Plane(30, (diameter ?? 0) / 2, surface == Surface.Inside);
        var (seen, judged, apart) = (0, 0, 0);
        for (var y = -30.0; y <= 20; y += 0.41)
        {
            for (var z = 0.4; z < 30; z += 0.37)
            {
                var rear = plane.OffAxis(laws[0], y, z, 2, out var rearEdge);
                var front = plane.OffAxis(laws[1], y, z, 1, out var frontEdge);
                if (rearEdge || frontEdge) continue;
                judged++;
                if (rear && front) seen++;
                if (pair!.Sight.Serves(y, z) != (rear && front)) apart++;
            }
        }

        Checks.Record(
            "tandem sight", $"places that pair and rays judge differently, wall 30 mm{(diameter is { } round ? FormattableString.Invariant($", diameter {round} mm, {surface.ToString().ToLowerInvariant()}") : "")}",
            0, apart, 0, "-", "rays stepped by vectors to every place of a grid", Checks.Computed);
        seen.Should().BeGreaterThan(20);
        judged.Should().BeGreaterThan(1500);
    }

    [Fact]
    public void The_crossing_is_the_spacing_s_own_and_a_face_there_stands_upright()
    {
        var section = Section(30, 14, null, Surface.Outside);
        var (pair, _) = TandemPair.Of(section, section.Pass.Beams[0]);
        var study = pair!.Study;
        study.Spacing.Millimetres.Should().BeApproximately(40, 1e-9);
        study.CrossingDepth.Millimetres.Should().BeApproximately(30 - (40 / 2.0 / Math.Tan(45 * Degree)), 1e-8);
        study.SpacingForZone.Millimetres.Should().BeApproximately(2 * (30 - 12), 1e-9, "the zone of 8 to 16 mm has its middle at 12");
        study.SpacingError.Millimetres.Should().BeApproximately(4, 1e-9);
        pair.Sight.TryFaceTilt(study.CrossingY.Millimetres, study.CrossingDepth.Millimetres, out var tilt).Should().BeTrue();
        tilt.Should().BeApproximately(0, 1e-9);
        study.ServedFrom.Millimetres.Should().BeLessThan(study.CrossingDepth.Millimetres);
        study.ServedTo.Millimetres.Should().BeGreaterThan(study.CrossingDepth.Millimetres);
    }

    [Fact]
    public void A_leaning_face_mirrors_the_one_ray_into_the_other()
    {
        var section = Section(30, 14, null, Surface.Outside);
        var (pair, _) = TandemPair.Of(section, section.Pass.Beams[0]);
        var laws = section.Pass.Probes.Select(probe => LawGeometry.Of(section, probe, section.Pass.Beams[0])[0].Sight!).OrderBy(line => line.ExitY).ToArray();
        var found = 0;
        for (var y = -30.0; y <= 20; y += 0.53)
        {
            for (var z = 1.0; z < 30; z += 0.61)
            {
                if (!pair!.Sight.TryFaceTilt(y, z, out var tilt)) continue;
                found++;

                // The rear ray's way up to the place, mirrored at the face, must point at the front exit point. Lower end away from the probes: along (sin, cos).
                var (inX, inZ) = (y - laws[0].ExitY, -(60 - z));
                var (alongX, alongZ) = (Math.Sin(tilt), Math.Cos(tilt));
                var along = (inX * alongX) + (inZ * alongZ);
                var (outX, outZ) = ((2 * along * alongX) - inX, (2 * along * alongZ) - inZ);
                var (wantX, wantZ) = (laws[1].ExitY - y, -z);
                ((outX * wantZ) - (outZ * wantX)).Should().BeApproximately(0, 1e-6);
                ((outX * wantX) + (outZ * wantZ)).Should().BePositive();
            }
        }

        found.Should().BeGreaterThan(10);
    }

    [Theory]
    [InlineData(Surface.Outside), InlineData(Surface.Inside)]
    public void Coverage_counts_the_pair_inside_its_zone_and_for_no_side(Surface surface)
    {
        // A narrow gap in a plate of 60 mm: the axes cross at a depth of 30 mm on the weld's middle, since 2 (60 − 30) tan 45° = 60 mm and the front
        // exit point, at 45° some 20 mm behind the front edge, stands 30 mm before the middle.
        const double wall = 60;
        var section = Section(wall, 10, null, surface, 60, (20, 40));
        var (pair, _) = TandemPair.Of(section, section.Pass.Beams[0]);
        pair!.Study.CrossingDepth.Millimetres.Should().BeApproximately(30, 1e-8);
        pair.Study.CrossingY.Millimetres.Should().BeInRange(-5, 5, "the set-up serves the weld");
        var coverage = new Study(section.Examination with { Thickness = new Band<Length>(new Length(wall), new Length(wall)) }).At(new Length(wall), null).Coverage;
        coverage.NotComputed.Should().BeNull();
        coverage.Left.Percent.Should().Be(0);
        coverage.Right.Percent.Should().Be(0);

        // Counted point by point over the examined rectangle, in the pass's own frame: the zone's depths count from the surface that it scans on.
        var volume = TechLint.Ultrasonics.Coverage.VolumeRectangle.Of(section.Examination.Weld, section.Examination.Volume, wall, null, besideIsInside: false);
        var turn = surface == Surface.Inside ? -1 : 1;
        const int fine = 500;
        var hits = 0;
        for (var i = 0; i < fine; i++)
        {
            for (var j = 0; j < fine; j++)
            {
                var y = turn * (volume.FromY + ((volume.ToY - volume.FromY) * (i + 0.5) / fine));
                var z = wall * (j + 0.5) / fine;
                if (z is >= 20 and <= 40 && pair.Sight.Serves(y, z)) hits++;
            }
        }

        coverage.Volume.Percent.Should().BeGreaterThan(3, "two beams some 6 and 9 mm wide cross squarely: 54 of 1200 mm2, less what the zone cuts");
        Checks.Record(
            "tandem coverage", $"share of the volume seen, wall 60 mm, zone 20 to 40 mm, scanned from {(surface == Surface.Inside ? "inside" : "outside")}",
            100.0 * hits / (fine * fine), coverage.Volume.Percent, 0.3, "%", "counted point by point, 500 × 500", Checks.Computed);
    }

    /// <summary>Front probe so that its exit point is known; two equal arrays, 40 mm apart and with a zone of 8 to 16 mm unless told otherwise.</summary>
    private static PassSection Section(
        double wall, double front, double? diameter, Surface surface, double apart = 40, (double From, double To)? zone = null)
    {
        var (zoneFrom, zoneTo) = zone ?? (8, 16);
        var wedge = Given.ArrayWedge with
        {
            ContourDiameter = diameter is { } d ? new Length(surface == Surface.Inside ? d - (2 * wall) : d) : null,
        };
        var near = Given.ArrayProbe(offset: front) with { Wedge = wedge };
        var beam = Given.Sector with
        {
            Id = "tandem", Scan = ScanKind.Tandem, From = null, Transmit = 5, Receive = 1, Angles = new AngleSweep(new Angle(45), new Angle(45), default),
            PathWindow = null, ZoneFrom = new Depth(zoneFrom, IsShare: false), ZoneTo = new Depth(zoneTo, IsShare: false),
        };
        var pass = Given.Pass(new(near, near with { Station = 5, IndexOffset = new Length(front + apart) }), beam) with { ScanningSurface = surface };
        return Given.Section(Given.Examination(pass, diameter is null ? Curvature.Flat : Curvature.AcrossWeld), wall, diameter);
    }

    /// <summary>The section as circles about the origin (or two lines), rays as points and directions.</summary>
    private sealed class Plane(double wall, double outer, bool fromInside)
    {
        private readonly double scan = outer == 0 ? 0 : fromInside ? outer - wall : outer;
        private readonly double opposite = outer == 0 ? 0 : fromInside ? outer : outer - wall;

        /// <summary>From the surface in at the angle; one bounce; up to the depth; mirrored at the upright face there; up to the surface. Arc between start and end.</summary>
        public double SpacingByRay(double angle, double depth)
        {
            if (outer == 0)
            {
                var (x, z, dx, dz) = (0.0, 0.0, Math.Sin(angle), Math.Cos(angle));
                (x, z) = (x + (dx * wall / dz), wall);
                dz = -dz;
                var share = (depth - z) / dz;
                (x, z) = (x + (dx * share), z + (dz * share));
                dx = -dx;
                share = -z / dz;
                return x + (dx * share);
            }

            // Start on top of the scanning circle; inwards is away from it towards the opposite circle.
            var (px, py) = (0.0, scan);
            var inward = fromInside ? 1 : -1;
            var (vx, vy) = (Math.Sin(angle), inward * Math.Cos(angle));
            (px, py) = Hit(px, py, vx, vy, opposite);
            (vx, vy) = Mirror(vx, vy, px / opposite, py / opposite);
            var middle = scan + (inward * depth);
            (px, py) = Hit(px, py, vx, vy, middle);

            // The face stands along the radius: its normal is the tangent.
            (vx, vy) = Mirror(vx, vy, -py / middle, px / middle);
            (px, py) = Hit(px, py, vx, vy, scan);
            return scan * Math.Atan2(px, py);
        }

        /// <summary>Within the width, by a launch found by stepping over angles; near the width's edge nothing is judged.</summary>
        public bool OffAxis(SightLine line, double y, double z, int leg, out bool isEdge)
        {
            isEdge = false;
            var target = (y - line.ExitY) * line.Direction;
            var (low, high) = (-70 * Degree, outer > 0 && !fromInside ? Math.Asin((leg == 1 ? scan - z : opposite) / scan) - 1e-7 : 88 * Degree);
            if (!(At(high).Advance >= target)) return false;
            for (var step = 0; step < 60; step++)
            {
                var middle = (low + high) / 2;
                if (At(middle).Advance < target) low = middle;
                else high = middle;
            }

            var way = At(low).Path;
            var off = low - line.Angle;
            var beyond = Math.Abs(way * Math.Sin(off)) - (line.Width.At(way * Math.Cos(off)) / 2);
            isEdge = Math.Abs(beyond) < 1e-3;
            return Math.Cos(off) > 0 && beyond <= 0;

            (double Advance, double Path) At(double angle)
            {
                if (angle < 0)
                {
                    var mirrored = At(-angle);
                    return (-mirrored.Advance, mirrored.Path);
                }

                if (outer == 0)
                {
                    var down = leg == 1 ? z : (2 * wall) - z;
                    return (down * Math.Tan(angle), down / Math.Cos(angle));
                }

                var inward = fromInside ? 1 : -1;
                var (px, py, vx, vy) = (0.0, scan, Math.Sin(angle), inward * Math.Cos(angle));
                var path = 0.0;
                if (leg == 2)
                {
                    var (bx, by) = Hit(px, py, vx, vy, opposite);
                    path += Math.Sqrt(((bx - px) * (bx - px)) + ((by - py) * (by - py)));
                    (px, py) = (bx, by);
                    (vx, vy) = Mirror(vx, vy, px / opposite, py / opposite);
                }

                var (ex, ey) = Hit(px, py, vx, vy, scan + (inward * z));
                path += Math.Sqrt(((ex - px) * (ex - px)) + ((ey - py) * (ey - py)));
                return (scan * Math.Atan2(ex, ey), path);
            }
        }

        private static (double X, double Y) Hit(double px, double py, double vx, double vy, double radius)
        {
            var half = (px * vx) + (py * vy);
            var root = Math.Sqrt((half * half) - ((px * px) + (py * py) - (radius * radius)));
            var share = new[] { -half - root, -half + root }.Where(way => way > 1e-9).Min();
            return (px + (vx * share), py + (vy * share));
        }

        private static (double X, double Y) Mirror(double vx, double vy, double nx, double ny)
        {
            var along = (vx * nx) + (vy * ny);
            return (vx - (2 * along * nx), vy - (2 * along * ny));
        }
    }
}
