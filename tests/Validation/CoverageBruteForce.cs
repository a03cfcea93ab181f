using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Coverage;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Tofd;

namespace TechLint.Tests.Validation;

/// <summary>
/// The definition of "seen", point by point: rays are traced as lines between two lines or two circles in the plane, the ray through a
/// point is found by bisection, and the definition is read off it. Shares no code with the kernel but the width model.
/// </summary>
internal static class CoverageBruteForce
{
    public static (double Volume, double Left, double Right, double Both) Percent(CoverageInput input, double grid)
    {
        var volume = input.Volume;
        var columns = (int)Math.Ceiling((volume.ToY - volume.FromY) / grid);
        var rows = (int)Math.Ceiling((volume.ToZ - volume.FromZ) / grid);
        int seenByAny = 0, seenFromLeft = 0, seenFromRight = 0, seenFromBoth = 0;
        for (var row = 0; row < rows; row++)
        {
            var z = volume.FromZ + ((row + 0.5) * (volume.ToZ - volume.FromZ) / rows);
            for (var column = 0; column < columns; column++)
            {
                var y = volume.FromY + ((column + 0.5) * (volume.ToY - volume.FromY) / columns);
                var (left, right, pair) = Seen(input, y, z);
                if (left) seenFromLeft++;
                if (right) seenFromRight++;
                if (left && right) seenFromBoth++;
                if (left || right || pair) seenByAny++;
            }
        }

        var share = 100.0 / (rows * columns);
        return (seenByAny * share, seenFromLeft * share, seenFromRight * share, seenFromBoth * share);
    }

    private static (bool Left, bool Right, bool Pair) Seen(CoverageInput input, double y, double z)
    {
        bool left = false, right = false, pair = false;
        foreach (var pass in input.Passes)
        {
            var isInside = pass.ScanningSurface == Surface.Inside;
            var outer = input.OutsideDiameter / 2 ?? 0;
            var inner = outer - input.Thickness;
            var ratio = outer > 0 ? inner / outer : 1;
            var ownY = isInside ? -y * ratio : y;
            var ownZ = isInside ? input.Thickness - z : z;
            foreach (var line in pass.Lines)
            {
                var isLeft = (line.Direction > 0) != isInside;
                if (isLeft ? left : right) continue;
                for (var leg = 1; leg <= 9; leg++)
                {
                    if (!line.Allows(leg)) continue;
                    var tracer = new Tracer(input.Thickness, outer, isInside);
                    if (!IsSeen(line, leg, tracer, ownY, ownZ, input, isInside)) continue;
                    if (isLeft) left = true;
                    else right = true;
                    break;
                }
            }

            foreach (var sight in pass.Pairs.IsDefault ? [] : pass.Pairs) pair |= sight.Sees(ownY, ownZ);
        }

        return (left, right, pair);
    }

    private static bool IsSeen(SightLine line, int leg, Tracer tracer, double y, double z, CoverageInput input, bool isInside)
    {
        var target = (y - line.ExitY) * line.Direction;

        // Bisection over the launch: the advance grows with it. The far end is the last angle that gets there at all, less what keeps
        // rounding from making a ray miss the surface that it grazes. From outside the advance runs with the square root of that: it must be tiny.
        var greatest = tracer.GreatestLaunch(z, leg) - (isInside ? 1e-5 : 1e-9);
        double low = -greatest, high = greatest;
        Span<double> bounces = stackalloc double[10];
        if (!tracer.Trace(low, z, leg, bounces, out var lowAdvance, out _) || lowAdvance > target) return false;
        if (!tracer.Trace(high, z, leg, bounces, out var highAdvance, out _) || highAdvance < target) return false;
        for (var step = 0; step < 36; step++)
        {
            var middle = (low + high) / 2;
            tracer.Trace(middle, z, leg, bounces, out var advance, out _);
            if (advance < target) low = middle;
            else high = middle;
        }

        var launch = (low + high) / 2;
        tracer.Trace(launch, z, leg, bounces, out _, out var path);
        if (path < line.PathFrom || path > line.PathTo) return false;
        var off = launch - line.Angle;
        if (Math.Cos(off) <= 0) return false;
        if (Math.Abs(path * Math.Sin(off)) > line.Width.At(path * Math.Cos(off)) / 2) return false;
        for (var bounce = 1; bounce < leg; bounce++)
        {
            // Where the bounce falls, as a length along the surface that it falls on, in the frame of the outer surface.
            var ownY = line.ExitY + (line.Direction * bounces[bounce]);
            var isOnScanningSurface = (bounce & 1) == 0;
            var isOnOuter = isOnScanningSurface != isInside;
            var along = isOnScanningSurface ? ownY : ownY * tracer.OppositeArc;
            if (isInside) along = -along;
            if ((isOnOuter ? input.Cap : input.Root) is { } gap && along > gap.From && along < gap.To) return false;
        }

        return true;
    }

    /// <summary>Rays in the plane: (across, along the outward axis of the scanning surface's normal).</summary>
    private readonly struct Tracer(double thickness, double outer, bool isInside)
    {
        private readonly double scan = outer > 0 ? (isInside ? outer - thickness : outer) : 0;
        private readonly double opposite = outer > 0 ? (isInside ? outer : outer - thickness) : 0;

        public double OppositeArc => scan > 0 ? opposite / scan : 1;

        public double GreatestLaunch(double z, int leg)
        {
            if (scan == 0 || isInside) return Math.PI / 2;
            return Math.Asin((leg > 1 ? opposite : scan - z) / scan);
        }

        /// <summary>Follows a ray to a depth in a leg; advance and bounces along the scanning surface.</summary>
        public bool Trace(double launch, double z, int leg, Span<double> bounces, out double advance, out double path)
        {
            return scan == 0
                ? TraceFlat(launch, z, leg, bounces, out advance, out path)
                : TraceRound(launch, z, leg, bounces, out advance, out path);
        }

        private bool TraceFlat(double launch, double z, int leg, Span<double> bounces, out double advance, out double path)
        {
            var (dx, dz) = (Math.Sin(launch), Math.Cos(launch));
            double x = 0, depth = 0;
            path = 0;
            for (var now = 1; ; now++)
            {
                var goal = now == leg ? z : (now & 1) == 1 ? thickness : 0;
                var length = (goal - depth) / dz;
                x += dx * length;
                depth = goal;
                path += length;
                if (now == leg) break;
                bounces[now] = x;
                dz = -dz;
            }

            advance = x;
            return true;
        }

        private bool TraceRound(double launch, double z, int leg, Span<double> bounces, out double advance, out double path)
        {
            // The scanning surface lies at (0, scan); "down" is towards the axis from outside, away from it from inside.
            var down = isInside ? 1 : -1;
            double x = 0, y = scan, dx = Math.Sin(launch), dy = down * Math.Cos(launch);
            path = 0;
            var turned = 0.0;
            advance = 0;
            for (var now = 1; ; now++)
            {
                var goal = now == leg ? scan + (down * z) : (now & 1) == 1 ? opposite : scan;
                if (!Meet(x, y, dx, dy, goal, out var length)) return false;
                var (nextX, nextY) = (x + (dx * length), y + (dy * length));
                turned += Math.Atan2((y * nextX) - (x * nextY), (x * nextX) + (y * nextY));
                (x, y) = (nextX, nextY);
                path += length;
                advance = turned * scan;
                if (now == leg) return true;
                bounces[now] = advance;

                // Mirror at the circle: the component along the radius turns round.
                var radius = Math.Sqrt((x * x) + (y * y));
                var along = ((dx * x) + (dy * y)) / radius;
                dx -= 2 * along * x / radius;
                dy -= 2 * along * y / radius;
            }
        }

        /// <summary>The next crossing of a circle about the axis: going inwards the first, going outwards the second.</summary>
        private static bool Meet(double x, double y, double dx, double dy, double radius, out double length)
        {
            var middle = -((x * dx) + (y * dy));
            var square = (middle * middle) - ((x * x) + (y * y) - (radius * radius));
            length = double.NaN;
            if (square < 0) return false;
            var isInwards = radius * radius < (x * x) + (y * y);
            length = isInwards ? middle - Math.Sqrt(square) : middle + Math.Sqrt(square);
            return true;
        }
    }
}
