using FluentAssertions;
using TechLint.Tests.Unit.Ultrasonics;
using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Faces;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;
using Xunit;

namespace TechLint.Tests.Validation;

/// <summary>
/// Served shares of fusion faces against vectors traced place by place, and against cases worked by hand. Both look at the same places, 0.1 mm apart; the
/// tolerance, 0.5 % of a face, is one such step at an edge of what is served.
/// </summary>
public sealed class FaceTests
{
    private const double Tolerance = 0.5;

    /// <summary>Over a step rays beside the axis are taken to cross it in the axis's leg.</summary>
    private const double StepTolerance = 3;

    private const double Every = 0.1;
    private const double Degree = Math.PI / 180;

    private static Length Mm(double value) => new(value);

    private static Angle Deg(double value) => new(value);

    private static Preparation V(double bevel, double rootFace, double gap, PreparationShape shape = PreparationShape.SingleV) => new(
        shape, Surface.Outside, Side.Left, Groove.None with { FaceAngle = Deg(bevel), Radius = Mm(6), BreakDepth = Mm(5), UpperFaceAngle = Deg(10) },
        Groove.None with { FaceAngle = Deg(bevel), Radius = Mm(5) }, Mm(rootFace), Mm(gap), default, Mm(0.2), [], []);

    private static Examination Of(Preparation preparation, Pass pass, Curvature curvature = Curvature.Flat, double cap = 0, double root = 0) =>
        Given.Examination(pass, curvature) with
        {
            Weld = new WeldSection(
                preparation, cap > 0 ? new Reinforcement(Mm(cap), Mm(2), default) : null, root > 0 ? new Reinforcement(Mm(root), Mm(1), default) : null, null),
            FusionFaceIncidence = Deg(6),
        };

    private static Beam Fan(int from, double first, double last, double step = 2, params int[] legs) => Given.Sector with
    {
        Id = $"fan-{from}", From = from, Angles = new AngleSweep(Deg(first), Deg(last), Deg(step)), Legs = [.. legs],
    };

    private static Pass Both(double offset, double first, double last, params int[] legs) => Given.Pass(
        new(Given.ArrayProbe(Side.Left, offset), Given.ArrayProbe(Side.Right, offset)), Fan(1, first, last, 2, legs), Fan(2, first, last, 2, legs));

    private static readonly Dictionary<string, (Examination Examination, double Thickness, double? Diameter)> Cases = new(StringComparer.Ordinal)
    {
        ["single v"] = (Of(V(30, 1.5, 2), Both(30, 40, 70, 1, 2), cap: 18, root: 6), 14, null),
        ["single v, first leg alone"] = (Of(V(45, 2, 2), Both(8, 40, 70, 1)), 20, null),
        ["double v"] = (Of(V(30, 4, 0, PreparationShape.DoubleV), Both(28, 45, 70, 1, 2), cap: 20, root: 18), 20, null),
        ["single u"] = (Of(V(8, 2, 2, PreparationShape.SingleU), Both(30, 45, 72, 1, 2), cap: 18, root: 6), 20, null),
        ["double u, three legs"] = (Of(V(10, 2, 2, PreparationShape.DoubleU), Both(40, 45, 72, 1, 2, 3)), 18, null),
        ["single j"] = (Of(V(20, 2, 2, PreparationShape.SingleJ), Both(30, 45, 72, 1, 2), root: 5), 20, null),
        ["single bevel"] = (Of(V(45, 2, 2, PreparationShape.SingleBevel), Both(24, 40, 70, 1, 2)), 16, null),
        ["compound v"] = (Of(V(37.5, 1.6, 3, PreparationShape.CompoundV), Both(36, 40, 72, 1, 2), cap: 22, root: 6), 22, null),
        ["square"] = (Of(V(0, 0, 1, PreparationShape.Square), Both(14, 45, 65, 1, 2)), 12, null),
        ["pressure weld"] = (Of(V(0, 0, 0, PreparationShape.PressureWeld), Both(14, 45, 65, 1, 2)), 12, null),
        ["from inside"] = (Of(V(30, 2, 2), Both(26, 40, 70, 1, 2) with { ScanningSurface = Surface.Inside }, cap: 16, root: 5), 14, null),
        ["curved"] = (Of(V(30, 1.5, 2), Both(26, 40, 60, 1, 2), Curvature.AcrossWeld, cap: 16, root: 6), 12, 323.9),
        ["curved, thick"] = (Of(V(30, 4, 0, PreparationShape.DoubleV), Both(24, 36, 56, 1, 2), Curvature.AcrossWeld), 24, 406.4),
        ["curved, from inside"] = (Of(V(30, 2, 2), Both(28, 40, 68, 1, 2) with { ScanningSurface = Surface.Inside }, Curvature.AcrossWeld, cap: 16, root: 5), 14, 406.4),
        ["tandem"] = (Of(V(0, 0, 0.2, PreparationShape.Square), TandemPass()), 40, null),
        ["tandem on a curve"] = (Of(V(0, 0, 0.2, PreparationShape.Square), TandemPass(), Curvature.AcrossWeld), 40, 1200),
    };

    public static TheoryData<string> Names => [.. Cases.Keys];

    [Theory, MemberData(nameof(Names))]
    public void Shares_agree_with_vectors_traced_place_by_place(string name)
    {
        var (examination, thickness, diameter) = Cases[name];
        var study = FaceKernel.Of(examination, new FacePlaceInRange(thickness, diameter));
        study.NotComputed.Should().BeNull();
        var met = 0.0;
        foreach (var face in study.Faces)
        {
            var expected = FaceBruteForce.Of(examination, thickness, diameter, face.Face, face.From, Every);
            TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant(
                $"{face.Face} from {face.From}: beam {expected.Beam:F2} {ShareOf(face, FaceWay.Beam):F2}, corner {expected.Corner:F2} {ShareOf(face, FaceWay.CornerEcho):F2}, tandem {expected.Tandem:F2} {ShareOf(face, FaceWay.Tandem):F2}"));
            Records(name, face, FaceWay.Beam, expected.Beam, Tolerance);
            Records(name, face, FaceWay.CornerEcho, expected.Corner, Tolerance);
            Records(name, face, FaceWay.Tandem, expected.Tandem, Tolerance);
            for (var leg = 1; leg <= 3; leg++)
            {
                face.Legs.FirstOrDefault(one => one.Leg == leg).Share.Percent.Should().BeApproximately(expected.Legs[leg], Tolerance, "in leg {0}", leg);
            }

            met += face.Served.Percent;
        }

        met.Should().BeInRange(1, (100 * study.Faces.Length) - 1, "a case that is all or nothing shows nothing");
    }

    /// <summary>A way that serves nothing by either count is compared, but makes no row.</summary>
    private static void Records(string name, FaceService face, FaceWay way, double expected, double tolerance)
    {
        var got = ShareOf(face, way);
        if (expected == 0 && got == 0) return;
        Checks.Record(
            "fusion faces", FormattableString.Invariant($"{name}: {face.Face.ToString().ToLowerInvariant()} face from the {face.From.ToString().ToLowerInvariant()}, {WordOf(way)}"),
            expected, got, tolerance, "%", "brute force: vectors in the plane traced to places 0.1 mm apart", Checks.Computed);
    }

    private static string WordOf(FaceWay way) => way switch { FaceWay.Beam => "beam", FaceWay.Tandem => "tandem", _ => "corner echo" };

    private static double ShareOf(FaceService face, FaceWay way) => face.Ways.FirstOrDefault(one => one.Way == way).Share.Percent;

    [Theory]
    [InlineData(30, 60), InlineData(37.5, 52.5), InlineData(45, 45), InlineData(20, 70)]
    public void A_bevel_is_met_squarely_in_leg_2_by_the_beam_of_its_complement(double bevel, double angle)
    {
        // By hand: the face of a single V leans by β from the upright, its normal by β from the level; a ray going up at θ from the
        // upright is level but for 90° − θ. They agree where θ = 90° − β (the rows CV446 to CV449 of the reference say the same: 60.0 and 52.5).
        var pass = Given.Pass(new(Given.ArrayProbe(Side.Left, 30)), Fan(1, angle, angle, 1, 2));
        var examination = Of(V(bevel, 2, 2), pass) with { FusionFaceIncidence = Deg(0.25) };
        var study = FaceKernel.Of(examination, new FacePlaceInRange(16, null));
        var law = new Study(examination).At(Mm(16), null).Passes[0].Beams[0].Laws[0];

        // The axis in leg 2 meets the face where y = exit + (2t − z) tan θ and y = −(1 + (14 − z) tan β).
        var (tangent, slope) = (Math.Tan(angle * Degree), Math.Tan(bevel * Degree));
        var z = (law.ExitY.Millimetres + (32 * tangent) + 1 + (14 * slope)) / (tangent + slope);
        var piece = study.Faces.Single(face => face is { Face: Side.Left, From: Side.Left }).Pieces[0];
        if (z is > 0.5 and < 13.5)
        {
            // Rays 0.25° either side of the axis, by the path to the face and the face's slope to the ray (a right angle): ± path × 0.25°.
            var path = (32 - z) / Math.Cos(angle * Degree);
            var length = 2 * path * Math.Tan(0.25 * Degree) / (14 / Math.Cos(bevel * Degree)) * 100;
            piece.Served.Percent.Should().BeApproximately(length, 2 * 0.1 / 14 * 100);
            piece.By.Should().Be(FaceWay.Beam);
        }

        (z is > 0.5 and < 13.5 || piece.Served.Percent < 5).Should().BeTrue();
    }

    [Theory]
    [InlineData(60, 20, 30, 2), InlineData(60, -12, 30, 2), InlineData(52, 8, 30, 1)]
    public void A_skewed_ray_meets_a_face_as_vectors_in_space_say(double angle, double skew, double bevel, int leg)
    {
        // Direction (sin θ sin δ, sin θ cos δ, ± cos θ), down in leg 1; the normal of the left face, which opens upwards: (0, cos β, −sin β).
        var down = leg == 1 ? 1 : -1;
        var expected = Math.Acos(
            (Math.Sin(angle * Degree) * Math.Cos(skew * Degree) * Math.Cos(bevel * Degree)) - (down * Math.Cos(angle * Degree) * Math.Sin(bevel * Degree))) / Degree;
        var pass = Given.Pass(new(Given.ArrayProbe(Side.Left, 30)), Fan(1, angle, angle, 1, 1, 2) with { Skew = Deg(skew) });

        // By the width of the beam rays beside the axis come nearer in the section; the turn out of it stays. So the share is 0 below some tolerance,
        // and at the axis's own incidence the place on the axis is served.
        var section = PassSection.Of(Of(V(bevel, 2, 2), pass), pass, Mm(16), null)!;
        var place = FacePass.Of(section, Side.Left, new FacePlaceInRange(16, null));
        var law = place.FromLeft.Should().ContainSingle().Subject;
        section.Rays.TryReach(law.Line.Angle, 8, leg, out var advance, out _);
        place.Rays.TrySee(law, leg, law.Line.ExitY + advance, 8, 0, out var ray).Should().BeTrue();
        var cosine = (ray.AlongSurface * Math.Cos(bevel * Degree)) - (ray.Inwards * Math.Sin(bevel * Degree));
        Checks.Record(
            "fusion faces", FormattableString.Invariant($"incidence of a {angle} deg beam turned by {skew} deg in leg {leg} on a bevel of {bevel} deg"), expected, Math.Acos(cosine) / Degree, 1e-8, "deg", "vectors in space, by hand",
            Checks.Computed);
        ((ray.AlongWeld * ray.AlongWeld) + (ray.AlongSurface * ray.AlongSurface) + (ray.Inwards * ray.Inwards)).Should().BeApproximately(1, 1e-12);
    }

    [Theory]
    [InlineData(1.5), InlineData(-1.5), InlineData(3)]
    public void Over_a_step_of_the_edges_shares_agree_with_rays_traced_over_it(double step)
    {
        var examination = Of(V(30, 1.5, 2), Both(30, 40, 70, 1, 2), cap: 18, root: 6);
        var study = FaceKernel.Of(examination, new FacePlaceInRange(14, null, Misalignment: step));
        foreach (var face in study.Faces)
        {
            var expected = FaceBruteForce.Of(examination, 14, null, face.Face, face.From, Every, step);
            var name = FormattableString.Invariant($"single v, edges {step} mm apart");
            Records(name, face, FaceWay.Beam, expected.Beam, StepTolerance);
            Records(name, face, FaceWay.CornerEcho, expected.Corner, StepTolerance);
        }
    }

    /// <summary>Two probes at 45° on the left of a wall of 40 mm: the first sees a depth of 20 mm straight, the second by way of the opposite surface.</summary>
    private static Pass TandemPass()
    {
        var front = Given.ArrayProbe(Side.Left, 3);
        var rear = Given.ArrayProbe(Side.Left, 42) with { Station = 5 };
        var tandem = Given.Sector with
        {
            Id = "tandem", Scan = ScanKind.Tandem, From = null, Transmit = 1, Receive = 5, Angles = new AngleSweep(Deg(45), Deg(45), default), Legs = [],
            ZoneFrom = new Depth(12, false), ZoneTo = new Depth(30, false),
        };
        return Given.Pass(new(front, rear), tandem);
    }
}
