using System.Collections.Immutable;
using TechLint.Ultrasonics.Coverage;
using TechLint.Ultrasonics.Examinations;

namespace TechLint.Ultrasonics.Faces;

/// <summary>How one place on a face is met from one side.</summary>
/// <param name="Way">The surest way that serves it.</param>
/// <param name="Incidence">Of the seen ray nearest to the normal, rad; infinite where none is seen.</param>
/// <param name="Legs">Bit k−1 set where a ray of leg k meets it within the tolerance.</param>
internal readonly record struct FaceMeeting(FaceWay Way, double Incidence, int Legs);

/// <summary>
/// Judges places on a face. An echo comes back the way it went when the face's normal halves the angle between the way in and the way out: with the unit
/// directions d1 and d2 of both rays towards the place, the face is met squarely where <c>d1 + d2</c> lies within the tolerance of its normal (law of
/// reflection). One ray there and back is d1 = d2: its incidence. A corner echo is one law's rays before and after the surface (legs k and k+1), a tandem pair
/// the rays of two probes, one of which has met the surface once more than the other.
/// </summary>
/// <remarks>
/// A corner echo's bounce at the surface needs no free mirror where the face itself opens to that surface and the probes stand on the face's own side: an
/// edge that is not fused has no reinforcement fused to it. Every other bounce on cap or root ends the ray. Losses by conversion at the corner
/// (greatest for transverse waves about 30 deg off either surface) are not weighed.
/// </remarks>
internal static class FaceJudge
{
    /// <summary>A corner or tandem echo needs a face nearer to the upright than this: sine of its slope.</summary>
    private const double UprightSine = 0.7071;

    /// <summary>Legs of a tandem pair's rays where the beam states none: one straight, the other by way of the opposite surface.</summary>
    private static readonly ImmutableArray<(int Sent, int Received)> TandemLegs = [(1, 2), (2, 1)];

    /// <param name="passes">All passes, for this face.</param>
    /// <param name="points">The place in the frame of each pass.</param>
    /// <param name="from">The side that the probes stand on.</param>
    /// <param name="face">The side of the face.</param>
    /// <param name="opening">Whether the piece ends on the outer and on the inner surface.</param>
    /// <param name="tolerance">rad.</param>
    public static FaceMeeting Judge(
        ImmutableArray<FacePass> passes, ReadOnlySpan<FacePoint> points, Side from, Side face, (bool Outer, bool Inner) opening, double tolerance)
    {
        var (nearest, legs) = (double.PositiveInfinity, 0);
        for (var index = 0; index < passes.Length; index++)
        {
            foreach (var law in from == Side.Left ? passes[index].FromLeft : passes[index].FromRight)
            {
                for (var leg = 1; law.Line.LegMask >> (leg - 1) != 0 && leg <= LaunchSegments.GreatestLeg; leg++)
                {
                    if (!law.Line.Allows(leg) || !passes[index].Rays.TrySee(law, leg, points[index].Y, points[index].Z, 0, out var ray)
                        || ray.Path < law.Line.PathFrom || ray.Path > law.Line.PathTo) continue;
                    var incidence = AngleTo(points[index], ray, ray);
                    nearest = Math.Min(nearest, incidence);
                    if (incidence <= tolerance) legs |= 1 << (leg - 1);
                }
            }
        }

        if (legs != 0) return new FaceMeeting(FaceWay.Beam, nearest, legs);
        for (var index = 0; index < passes.Length; index++)
        {
            if (HasTandem(passes[index], points[index], from, tolerance)) return new FaceMeeting(FaceWay.Tandem, nearest, 0);
        }

        for (var index = 0; index < passes.Length; index++)
        {
            if (HasCorner(passes[index], points[index], from, from == face, opening, tolerance)) return new FaceMeeting(FaceWay.CornerEcho, nearest, 0);
        }

        for (var index = 0; index < passes.Length; index++)
        {
            foreach (var pair in passes[index].Pairs)
            {
                if (pair.Sees(points[index].Y, points[index].Z)) return new FaceMeeting(FaceWay.Tofd, nearest, 0);
            }
        }

        return new FaceMeeting(FaceWay.None, nearest, 0);
    }

    /// <summary>Between the normal (either way) and what halves the two rays; rad.</summary>
    private static double AngleTo(in FacePoint point, in SeenRay one, in SeenRay other)
    {
        var x = one.AlongWeld + other.AlongWeld;
        var y = one.AlongSurface + other.AlongSurface;
        var z = one.Inwards + other.Inwards;
        var size = Math.Sqrt((x * x) + (y * y) + (z * z));
        var normal = (y * point.NormalY) + (z * point.NormalZ);

        // By the tangent's side: exact near 0, where the cosine is flat.
        var beside = Math.Sqrt(Math.Max(0, (size * size) - (normal * normal)));
        return size > 0 ? Math.Atan2(beside, Math.Abs(normal)) : Math.PI / 2;
    }

    private static bool HasTandem(FacePass pass, in FacePoint point, Side from, double tolerance)
    {
        if (Math.Abs(point.NormalZ) > UprightSine) return false;
        foreach (var pair in pass.Tandems)
        {
            if (pair.From != from || point.Z < pair.ZoneFrom || point.Z > pair.ZoneTo) continue;
            foreach (var (sentLeg, receivedLeg) in TandemLegs)
            {
                foreach (var sent in pair.Sent)
                {
                    if (!pass.Rays.TrySee(sent, sentLeg, point.Y, point.Z, 0, out var there)) continue;
                    foreach (var received in pair.Received)
                    {
                        if (pass.Rays.TrySee(received, receivedLeg, point.Y, point.Z, 0, out var back)
                            && IsRecorded(sent, there, back) && AngleTo(point, there, back) <= tolerance) return true;
                    }
                }
            }
        }

        return false;
    }

    private static bool HasCorner(FacePass pass, in FacePoint point, Side from, bool isOwnSide, (bool Outer, bool Inner) opening, double tolerance)
    {
        if (Math.Abs(point.NormalZ) > UprightSine) return false;
        foreach (var law in from == Side.Left ? pass.FromLeft : pass.FromRight)
        {
            for (var leg = 1; law.Line.LegMask >> (leg - 1) != 0 && leg < LaunchSegments.GreatestLeg; leg++)
            {
                if (!law.Line.Allows(leg) && !law.Line.Allows(leg + 1)) continue;

                // Odd legs end on the opposite surface: the inner one, but for passes from inside.
                var isInner = (leg & 1) == 1 != pass.Section.IsInside;
                var free = isOwnSide && (isInner ? opening.Inner : opening.Outer) ? leg : 0;
                if (pass.Rays.TrySee(law, leg, point.Y, point.Z, 0, out var before) && pass.Rays.TrySee(law, leg + 1, point.Y, point.Z, free, out var after)
                    && IsRecorded(law, before, after) && AngleTo(point, before, after) <= tolerance) return true;
            }
        }

        return false;
    }

    /// <summary>Two ways together are read as half their sum.</summary>
    private static bool IsRecorded(in FaceLine law, in SeenRay one, in SeenRay other) =>
        (one.Path + other.Path) / 2 is var path && path >= law.Line.PathFrom && path <= law.Line.PathTo;
}
