namespace TechLint.Tests.Validation;

/// <summary>
/// Rays traced as vectors in the plane of the section, segment by segment, between two lines (with a step between misaligned edges at y = 0) or two
/// circles (the right pair of arcs lowered as a whole by the step). x across, y down from the outer surface. Shares nothing with the code under test but the meaning of its numbers.
/// </summary>
internal sealed class PlaneRays(double thickness, double outerRadius, bool isInside, double step = 0)
{
    public readonly record struct Hit(double X, double Y, double DirectionX, double DirectionY, double Path, double[] Bounces);

    private bool IsRound => outerRadius > 0;

    /// <summary>A place of the section (y a true length at its depth z) in the plane; the right half lies lower by the step.</summary>
    public (double X, double Y) Place(double y, double z, bool isRightHalf)
    {
        if (!IsRound) return (y, z + (isRightHalf ? step : 0));
        var radius = outerRadius - z;
        return (radius * Math.Sin(y / radius), outerRadius - (radius * Math.Cos(y / radius)) + (isRightHalf ? step : 0));
    }

    /// <summary>Where a ray from an exit point (of the pass's own frame) is in a leg at the depth of a place; bounces as lengths along their own surface.</summary>
    public Hit? Reach(double exitY, int direction, double launch, int leg, double depth, bool isRightHalf) =>
        IsRound ? ReachRound(exitY, direction, launch, leg, depth, isRightHalf) : ReachFlat(exitY, direction, launch, leg, depth + (isRightHalf ? step : 0));

    /// <summary>All launches about an angle whose ray passes through a place in a leg: by sampling and halving, whatever the advance does.</summary>
    public IEnumerable<(double Launch, Hit Hit)> Through(double exitY, int direction, double angle, int leg, double y, double z, bool isRightHalf)
    {
        const double Reachable = 30 * Math.PI / 180;
        const int Samples = 50;
        var target = Place(y, z, isRightHalf);
        double? before = null;
        var last = 0.0;
        for (var sample = 0; sample <= Samples; sample++)
        {
            var launch = angle - Reachable + (2 * Reachable * sample / Samples);
            if (Math.Abs(launch) >= Math.PI / 2) continue;
            var miss = MissOf(launch);
            if (miss is { } now && before is { } then && now <= 0 != then <= 0)
            {
                var (low, high) = (last, launch);
                for (var halving = 0; halving < 60; halving++)
                {
                    var middle = (low + high) / 2;
                    if (MissOf(middle) is { } value && value <= 0 == then <= 0) low = middle;
                    else high = middle;
                }

                // A jump at a step or a tangent is no passage.
                if (MissOf(low) is { } found && Math.Abs(found) < 1e-6 && Reach(exitY, direction, low, leg, z, isRightHalf) is { } hit) yield return (low, hit);
            }

            before = miss;
            last = launch;
        }

        double? MissOf(double launch) => Reach(exitY, direction, launch, leg, z, isRightHalf) is { } hit
            ? IsRound ? Turn(target.X, target.Y, hit.X, hit.Y) : hit.X - target.X
            : null;
    }

    private double Turn(double fromX, double fromY, double toX, double toY) => outerRadius * Math.IEEERemainder(
        Math.Atan2(toX, outerRadius - toY) - Math.Atan2(fromX, outerRadius - fromY), 2 * Math.PI);

    private Hit? ReachFlat(double exitY, int direction, double launch, int leg, double depth)
    {
        // From inside the frame is turned over: the exit lies on the far surface, the beam runs up and the other way.
        var (x, y) = isInside ? (-exitY, thickness) : (exitY, 0.0);
        var (dx, dy) = isInside ? (-direction * Math.Sin(launch), -Math.Cos(launch)) : (direction * Math.Sin(launch), Math.Cos(launch));
        if (x > 0) y += step;
        var path = 0.0;
        var bounces = new double[leg];
        for (var now = 1; now <= leg; now++)
        {
            // Within a leg the ray may cross the step once; its surface is that of the half where it meets it.
            var surface = dy > 0 ? thickness : 0;
            var goal = now == leg ? depth : surface + (x > 0 ? step : 0);
            var length = (goal - y) / dy;
            if (now < leg && (x + (dx * length) > 0) != (x > 0)) length = (surface + (x > 0 ? 0 : step) - y) / dy;
            if (length < 0) return null;
            x += dx * length;
            y += dy * length;
            path += length;
            if (now == leg) break;
            bounces[now] = x;
            dy = -dy;
        }

        return new Hit(x, y, dx, dy, path, bounces);
    }

    private Hit? ReachRound(double exitY, int direction, double launch, int leg, double depth, bool isRightHalf)
    {
        var inner = outerRadius - thickness;
        var start = isInside ? inner : outerRadius;
        var turn = isInside ? -exitY / inner : exitY / outerRadius;
        var side = isInside ? -direction : direction;

        // About the left half's axis: u across, v outwards at y = 0; the right half's axis lies lower by the step.
        var (u, v) = (start * Math.Sin(turn), (start * Math.Cos(turn)) - (turn > 0 ? step : 0));
        var (radialU, radialV) = (Math.Sin(turn), Math.Cos(turn));
        var outwards = isInside ? 1 : -1;
        var du = (outwards * Math.Cos(launch) * radialU) + (side * Math.Sin(launch) * radialV);
        var dv = (outwards * Math.Cos(launch) * radialV) - (side * Math.Sin(launch) * radialU);
        var path = 0.0;
        var bounces = new double[leg];
        for (var now = 1; now <= leg; now++)
        {
            // Within a leg the ray may cross the step once; its surface is that of the half where it meets it.
            var towardsOuter = (now & 1) == 1 == isInside;
            var goal = now == leg ? outerRadius - depth : towardsOuter ? outerRadius : inner;
            var axis = (now == leg ? isRightHalf : u > 0) ? -step : 0;
            var length = ToCircle(u, v - axis, du, dv, goal, towardsOuter);
            if (now < leg && step != 0 && (double.IsNaN(length) || (u + (du * length) > 0) != (u > 0)))
            {
                axis = u > 0 ? 0 : -step;
                length = ToCircle(u, v - axis, du, dv, goal, towardsOuter);
            }

            if (!(length >= -1e-9)) return null;
            u += du * length;
            v += dv * length;
            path += length;
            if (now == leg) break;
            bounces[now] = Math.Atan2(u, v - axis) * goal;
            var along = ((du * u) + (dv * (v - axis))) / goal;
            du -= 2 * along * u / goal;
            dv -= 2 * along * (v - axis) / goal;
        }

        return new Hit(u, outerRadius - v, du, -dv, path, bounces);
    }

    /// <summary>Way to a circle about the origin: its near side on the way in, its far side on the way out; NaN where the line misses it.</summary>
    private static double ToCircle(double u, double v, double du, double dv, double radius, bool isOutwards)
    {
        var middle = -((u * du) + (v * dv));
        var square = (middle * middle) - ((u * u) + (v * v) - (radius * radius));
        return isOutwards ? middle + Math.Sqrt(square) : middle - Math.Sqrt(square);
    }
}
