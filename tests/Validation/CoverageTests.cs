using FluentAssertions;
using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Union;
using TechLint.Ultrasonics.Coverage;
using Xunit;

namespace TechLint.Tests.Validation;

/// <summary>
/// Coverage by rows against the same definition read point by point, and its polygons against a general geometry library. The tolerance, 0.5 % of
/// the area, is that of the project's contract; the grid's own error is about 0.1 %.
/// </summary>
public sealed class CoverageTests
{
    private const double Grid = 0.2;
    private const double Tolerance = 0.5;

    public static TheoryData<string> Names => [.. CoverageCases.All.Keys.Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Rows_agree_with_every_point_taken_singly(string name)
    {
        var input = CoverageCases.All[name];
        var (volume, left, right, both) = CoverageBruteForce.Percent(input, Grid);
        var result = CoverageKernel.Compute(input, traceUnseen: false);
        TestContext.Current.TestOutputHelper?.WriteLine(
            FormattableString.Invariant($"{volume:F3} {result.Volume.Percent:F3} {left:F3} {result.Left.Percent:F3} {right:F3} {result.Right.Percent:F3}"));
        result.NotComputed.Should().BeNull();
        volume.Should().BeInRange(1, 99.9, "a case that is all or nothing shows nothing");
        Records($"volume: {name}", volume, result.Volume.Percent);
        result.Left.Percent.Should().BeApproximately(left, Tolerance);
        result.Right.Percent.Should().BeApproximately(right, Tolerance);
        Records($"both sides: {name}", both, result.BothSides.Percent);

        static void Records(string quantity, double expected, double got) => Checks.Record(
            "coverage", quantity, expected, got, Tolerance, "%", "brute force: every point of a 0.2 mm grid taken singly, ray found by bisection", Checks.Computed);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Traced_rings_are_sound_polygons_and_enclose_what_the_rows_leave(string name)
    {
        var input = CoverageCases.All[name];
        var result = CoverageKernel.Compute(input, traceUnseen: true);
        var factory = new GeometryFactory();
        var rings = result.Unseen.Select(ring => factory.CreateLinearRing(
            [.. ring.Append(ring[0]).Select(place => new Coordinate(place.Y.Millimetres, place.Z.Millimetres))])).ToList();
        rings.Should().NotBeEmpty();

        var outer = rings.Where(ring => ring.IsCCW).Select(ring => factory.CreatePolygon(ring)).ToList();
        var holes = rings.Where(ring => !ring.IsCCW).Select(ring => factory.CreatePolygon(ring)).ToList();
        outer.Concat(holes).Should().OnlyContain(polygon => polygon.IsValid);
        var union = UnaryUnionOp.Union(outer.Cast<Geometry>().ToList());
        if (holes.Count > 0) union = union.Difference(UnaryUnionOp.Union(holes.Cast<Geometry>().ToList()));

        var volume = input.Volume;
        var whole = (volume.ToY - volume.FromY) * (volume.ToZ - volume.FromZ);
        Checks.Record(
            "areas", $"unseen share: {name}", 100 * union.Area / whole, 100 - result.Volume.Percent, 0.02, "%", "union of the traced polygons, NetTopologySuite",
            Checks.Computed);
        outer.Sum(polygon => polygon.Area).Should().BeApproximately(
            UnaryUnionOp.Union(outer.Cast<Geometry>().ToList()).Area, 1e-3 * whole, "outer rings of different parts do not overlap, holes apart");

        // The frame of all rings stays within the examined rectangle.
        union.EnvelopeInternal.MinX.Should().BeGreaterThanOrEqualTo(volume.FromY);
        union.EnvelopeInternal.MaxX.Should().BeLessThanOrEqualTo(volume.ToY);
        union.EnvelopeInternal.MaxY.Should().BeLessThanOrEqualTo(volume.ToZ + 1e-9);
    }
}
