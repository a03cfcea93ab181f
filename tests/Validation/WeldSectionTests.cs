using FluentAssertions;
using NetTopologySuite.Geometries;
using TechLint.Ultrasonics;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Faces;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Welds;
using Xunit;

namespace TechLint.Tests.Validation;

/// <summary>
/// Every preparation against geometry that is made another way: polygons, discs and convex hulls of a general geometry library, closed formulas, and the
/// proportions of ISO 9692-1 and ASME B16.25.
/// </summary>
public sealed class WeldSectionTests
{
    private const double Degree = Math.PI / 180;

    /// <summary>Discs are polygons of this many sides a quadrant: their area misses by 1e-7 of itself.</summary>
    private const int Quadrant = 1024;

    private static readonly GeometryFactory Factory = new();

    public static TheoryData<string> HalfWidths => CheckValue.Ids("weld-half-width");

    private static Groove V(double angle) => Groove.None with { FaceAngle = new Angle(angle) };

    private static Groove U(double angle, double radius) => V(angle) with { Radius = new Length(radius) };

    private static Preparation Of(PreparationShape shape, Groove outer, double rootFace, double rootGap, Groove? inner = null, Side side = Side.Left, Surface opens = Surface.Outside) =>
        new(shape, opens, side, outer, inner ?? Groove.None, new Length(rootFace), new Length(rootGap), default, default, [], []);

    [Theory, MemberData(nameof(HalfWidths))]
    public void The_half_width_at_the_surface_agrees(string id)
    {
        var row = CheckValue.Of(id);
        var groove = U(row["bevel"], row.Or("radius", 0)) with
        {
            UpperFaceAngle = new Angle(row.Or("upper", 0)), BreakDepth = new Length(row.Or("break", 0)),
        };
        var shape = row.Inputs.ContainsKey("radius") ? PreparationShape.SingleU
            : row.Inputs.ContainsKey("upper") ? PreparationShape.CompoundV
            : PreparationShape.SingleV;
        row.Holds(WeldOutline.At(Of(shape, groove, row["land"], row["gap"]), new Length(row["t"])).OpeningOn(Surface.Outside).Right.Millimetres);
    }

    /// <summary>Ranges of ISO 9692-1 (from memory) and ASME B16.25 (from memory), at their ends.</summary>
    public static TheoryData<string, double> Sections => new()
    {
        // g t + (t − c)² tan β, and half of it where one face is cut.
        { "square", 3 * 6.0 },
        { "single-v 60", (2 * 10.0) + (8.5 * 8.5 * Math.Tan(30 * Degree)) },
        { "single-v 60 from inside", (2 * 10.0) + (8.5 * 8.5 * Math.Tan(30 * Degree)) },
        { "single-bevel 45", (2 * 12.0) + (10 * 10 / 2.0) },
        { "double-v 60", (2 * 24.0) + (12 * 12 * Math.Tan(30 * Degree)) + (8 * 8 * Math.Tan(30 * Degree)) },
        { "compound-v 37.5/10", CompoundArea(30, 1.6, 3, 37.5, 10, 11) },
        { "single-u 8 r6", (2 * 20.0) + (2 * UHalf(18, 8, 6)) },
        { "single-u 12 r9", (4 * 40.0) + (2 * UHalf(37, 12, 9)) },
        { "single-u all arc", (2 * 6.0) + (2 * UHalf(4, 10, 8)) },
        { "single-j 20 r6", (2 * 25.0) + UHalf(23.4, 20, 6) },
        { "double-u 10 r7", (2 * 40.0) + (2 * UHalf(19, 10, 7)) + (2 * UHalf(19, 10, 7)) },
        { "double-j 20 r5", (2 * 30.0) + UHalf(14, 20, 5) + UHalf(14, 20, 5) },
        { "pressure-weld", 0.2 * 12 },
        { "profile", 9.5 * 20 },
    };

    [Theory, MemberData(nameof(Sections))]
    public void The_area_of_the_joint_agrees_with_geometry_made_another_way(string name, double area)
    {
        var (preparation, thickness) = PreparationOf(name);
        var polygon = PolygonOf(WeldOutline.At(preparation, new Length(thickness)));
        polygon.IsValid.Should().BeTrue("faces do not cross themselves or each other");
        Checks.Record(
            "weld section", $"area of the joint: {name}", area, polygon.Area, 2e-5 * area, "mm2", "closed formulas; discs and convex hulls of NetTopologySuite", Checks.Computed);
        polygon.EnvelopeInternal.MinY.Should().BeApproximately(0, 1e-9);
        polygon.EnvelopeInternal.MaxY.Should().BeApproximately(thickness, 1e-9);

        // What lies across at a depth is what a line cuts out of the polygon.
        var outline = WeldOutline.At(preparation, new Length(thickness));
        foreach (var share in new[] { 0.05, 0.21, 0.4, 0.57, 0.8, 0.97 })
        {
            var z = share * thickness;
            var cut = polygon.Intersection(Factory.CreateLineString([new(-500, z), new(500, z)]));
            Checks.Record(
                "weld section", FormattableString.Invariant($"width at {share} of the wall: {name}"), cut.Length, outline.WidthAt(new Length(z)).Millimetres, 2e-3, "mm",
                "a line cut by the polygon of the faces, NetTopologySuite", Checks.Computed);
        }
    }

    private static (Preparation Preparation, double Thickness) PreparationOf(string name) => name switch
    {
        "square" => (Of(PreparationShape.Square, Groove.None, 0, 3), 6),
        "single-v 60" => (Of(PreparationShape.SingleV, V(30), 1.5, 2), 10),
        "single-v 60 from inside" => (Of(PreparationShape.SingleV, V(30), 1.5, 2, opens: Surface.Inside), 10),
        "single-bevel 45" => (Of(PreparationShape.SingleBevel, V(45), 2, 2, side: Side.Right), 12),
        "double-v 60" => (Of(PreparationShape.DoubleV, V(30) with { DepthShare = new Depth(60, true) }, 4, 2, V(30)), 24),
        "compound-v 37.5/10" => (Of(PreparationShape.CompoundV, V(37.5) with { UpperFaceAngle = new Angle(10), BreakDepth = new Length(11) }, 1.6, 3), 30),
        "single-u 8 r6" => (Of(PreparationShape.SingleU, U(8, 6), 2, 2), 20),
        "single-u 12 r9" => (Of(PreparationShape.SingleU, U(12, 9), 3, 4), 40),
        "single-u all arc" => (Of(PreparationShape.SingleU, U(10, 8), 2, 2), 6),
        "single-j 20 r6" => (Of(PreparationShape.SingleJ, U(20, 6), 1.6, 2), 25),
        "double-u 10 r7" => (Of(PreparationShape.DoubleU, U(10, 7), 2, 2, U(10, 7)), 40),
        "double-j 20 r5" => (Of(PreparationShape.DoubleJ, U(20, 5), 2, 2, U(20, 5), Side.Right), 30),
        "pressure-weld" => (Of(PreparationShape.PressureWeld, Groove.None, 0, 0) with { BondLineWidth = new Length(0.2) }, 12),
        _ => (
            Of(PreparationShape.Profile, Groove.None, 0, 0) with
            {
                // Trapezia by hand: on the left 9 to 2 and 2 to 3 over 10 mm each, 80 mm²; on the right 10 to 1 over 20 mm, 110 mm².
                LeftFace = [new(new Depth(0, true), new Length(-9)), new(new Depth(50, true), new Length(-2)), new(new Depth(100, true), new Length(-3))],
                RightFace = [new(new Depth(0, false), new Length(10)), new(new Depth(20, false), new Length(1))],
            }, 20),
    };

    [Fact]
    public void A_profile_that_goes_on_beyond_a_thinner_wall_is_cut_off_at_it()
    {
        var preparation = Of(PreparationShape.Profile, Groove.None, 0, 0) with
        {
            LeftFace = [new(new Depth(0, false), new Length(-8)), new(new Depth(25, false), new Length(2))],
            RightFace = [new(new Depth(0, false), new Length(9)), new(new Depth(10, false), new Length(4)), new(new Depth(20, false), new Length(4)), new(new Depth(25, false), new Length(8))],
        };
        var thin = WeldOutline.At(preparation, new Length(15));
        thin.Left.Should().ContainSingle().Which.To.Z.Millimetres.Should().BeApproximately(15, 1e-12);
        thin.Left[0].To.Y.Millimetres.Should().BeApproximately(-2, 1e-12);
        thin.Right.Should().HaveCount(2);
        thin.Right[1].To.Z.Millimetres.Should().Be(15);
        PolygonOf(thin).Area.Should().BeApproximately((15 * 5) + (10 * 6.5) + (5 * 4), 1e-9, "trapezia: 8 to 2 on the left over 15 mm, 9 to 4 over 10 mm and 4 over 5 mm on the right");
    }

    private static double CompoundArea(double t, double land, double gap, double lower, double upper, double depth)
    {
        // Trapezia: the lower part, then the upper one on its top.
        var rise = t - land - depth;
        var reach = rise * Math.Tan(lower * Degree);
        return (gap * t) + (rise * reach) + (2 * depth * reach) + (depth * depth * Math.Tan(upper * Degree));
    }

    /// <summary>
    /// One side of a U beyond the gap: the convex hull of the radius's disc and the far corner of the opening, by the geometry library. The corner is that of
    /// the welding engineer's formula <c>R (1 − sin β)/cos β + H tan β</c>.
    /// </summary>
    private static double UHalf(double height, double angle, double radius)
    {
        var disc = Factory.CreatePoint(new Coordinate(0, radius)).Buffer(radius, Quadrant);
        var corner = (radius * (1 - Math.Sin(angle * Degree)) / Math.Cos(angle * Degree)) + (height * Math.Tan(angle * Degree));
        var isAllArc = height <= radius * (1 - Math.Sin(angle * Degree));
        var hull = isAllArc
            ? disc
            : disc.Union(Factory.CreateLineString([new(0, height), new(corner, height)])).ConvexHull();
        return hull.Intersection(Factory.ToGeometry(new Envelope(0, 500, 0, height))).Area;
    }

    /// <summary>The joint's polygon, arcs in many short chords.</summary>
    private static Polygon PolygonOf(WeldOutline outline)
    {
        var ring = new List<Coordinate>();
        foreach (var piece in outline.Left) AddPiece(piece, ring);
        foreach (var piece in outline.Right.Reverse())
        {
            var own = new List<Coordinate>();
            AddPiece(piece, own);
            own.Reverse();
            ring.AddRange(own);
        }

        ring.Add(ring[0]);
        return Factory.CreatePolygon([.. ring]);
    }

    private static void AddPiece(FacePiece piece, List<Coordinate> ring)
    {
        var steps = piece.Centre is null ? 1 : Quadrant;
        for (var step = 0; step <= steps; step++)
        {
            var (y, z, _, _) = FacePoint.At(piece, (double)step / steps);
            var next = new Coordinate(y, z);
            if (ring.Count == 0 || ring[^1].Distance(next) > 1e-12) ring.Add(next);
        }
    }
}
