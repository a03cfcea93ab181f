using TechLint.Ultrasonics.Beams;

namespace TechLint.Ultrasonics.Delays;

/// <summary>
/// The least time from one element to a target. A way is stationary in time exactly where it keeps Snell's law at each surface (Fermat), so every direction in
/// the wedge is shot through the sole, the ones that meet the target are found to the last bits, and the quickest is taken.
/// </summary>
internal static class LeastTime
{
    /// <summary>rad between two shots; two stationary ways nearer than that would be one caustic, and alike in time.</summary>
    private const double Step = 0.0125;
    private const int Halvings = 60;

    /// <summary>Seconds; NaN where no way leads there.</summary>
    /// <param name="tracer">Wedge and sole.</param>
    /// <param name="place">u of the element, mm.</param>
    /// <param name="height">mm.</param>
    /// <param name="speed">In the part, mm/s.</param>
    /// <param name="wall">The section.</param>
    /// <param name="target">What to reach.</param>
    /// <param name="guess">A direction near the answer: it is tried itself.</param>
    public static double To(SoleTracer tracer, double place, double height, double speed, Wall wall, FocalTarget target, double guess)
    {
        var least = double.NaN;
        var last = (int)((Math.PI / 2 + Math.Abs(guess)) / Step) + 1;
        var (before, beforeMiss, beforeValid) = (0.0, 0.0, false);
        for (var k = -last; k <= last; k++)
        {
            var direction = guess + (k * Step);
            if (!(Math.Abs(direction) < Math.PI / 2)) continue;
            var valid = Try(direction, out var miss, out var time);
            if (valid && miss == 0) Take(time);
            if (valid && beforeValid) Between(before, beforeMiss, direction, miss);
            else if (valid) Between(Edge(before, direction), null, direction, miss);
            else if (beforeValid) Between(before, beforeMiss, Edge(direction, before), null);
            (before, beforeMiss, beforeValid) = (direction, miss, valid);
        }

        return least;

        bool Try(double direction, out double miss, out double time)
        {
            (miss, time) = (double.NaN, double.NaN);
            if (!tracer.TryShoot(place, height, direction, speed, out var traced)) return false;
            if (!target.TryMiss(wall, traced.Ray, speed, out miss, out time)) return false;
            time += traced.Time;
            return true;
        }

        void Take(double time)
        {
            if (!(time >= least)) least = time;
        }

        // The last direction that still gets there, between one that does not and one that does.
        double Edge(double invalid, double valid)
        {
            for (var k = 0; k < Halvings; k++)
            {
                var middle = (invalid + valid) / 2;
                if (Try(middle, out _, out _)) valid = middle;
                else invalid = middle;
            }

            return valid;
        }

        void Between(double low, double? lowMiss, double high, double? highMiss)
        {
            if (lowMiss is null && Try(low, out var first, out _)) lowMiss = first;
            if (highMiss is null && Try(high, out var second, out _)) highMiss = second;
            if (lowMiss is not { } a || highMiss is not { } b || !(a * b < 0)) return;
            for (var k = 0; k < Halvings; k++)
            {
                var middle = (low + high) / 2;
                if (!Try(middle, out var miss, out _)) return;
                if (miss * a > 0) low = middle;
                else high = middle;
            }

            if (Try((low + high) / 2, out _, out var time)) Take(time);
        }
    }
}
