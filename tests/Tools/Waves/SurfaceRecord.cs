using System.Numerics;

namespace TechLint.Tests.Tools.Waves;

/// <summary>
/// The motion of the upper surface, reduced to what tells a ray: at one frequency its phase (whose slope along the arc is <c>−2π f sin θ / v</c>: the angle at which
/// the wave front meets the surface there), and the middle of the energy's time.
/// </summary>
internal sealed class SurfaceRecord(WaveGrid grid, double frequency, double speed)
{
    /// <summary>Half length of the piece whose phase is fitted by a parabola, mm.</summary>
    private const double HalfFit = 4;

    private readonly Complex[] spectrum = new Complex[grid.Columns];
    private readonly double[] energy = new double[grid.Columns];
    private readonly double[] timed = new double[grid.Columns];

    public void Add(ReadOnlySpan<float> velocity, double time)
    {
        var turn = Complex.FromPolarCoordinates(1, -2 * Math.PI * frequency * time);
        for (var column = 0; column < grid.Columns; column++)
        {
            double v = velocity[column];
            spectrum[column] += v * turn;
            energy[column] += v * v;
            timed[column] += v * v * time;
        }
    }

    /// <summary>The arc at which the front meets the surface at an angle (rad), sought near an arc: the front's angle falls steadily along the fan.</summary>
    public double ArcOf(double angle, double from, double to)
    {
        // Halving: the sign of the difference at one end decides.
        var sign = Math.Sign(AngleAt(from) - angle);
        for (var step = 0; step < 40; step++)
        {
            var middle = (from + to) / 2;
            if (Math.Sign(AngleAt(middle) - angle) == sign) from = middle;
            else to = middle;
        }

        return (from + to) / 2;
    }

    /// <summary>Angle of the front from the surface's normal, rad.</summary>
    public double AngleAt(double arc)
    {
        var first = (int)Math.Ceiling((arc - HalfFit - grid.FromArc) / grid.Step);
        var last = (int)Math.Floor((arc + HalfFit - grid.FromArc) / grid.Step);
        double n = 0, x1 = 0, x2 = 0, x3 = 0, x4 = 0, y = 0, xy = 0, x2y = 0, phase = 0;
        for (var column = first; column <= last; column++)
        {
            if (column > first) phase += (spectrum[column] / spectrum[column - 1]).Phase;
            var x = grid.FromArc + (column * grid.Step) - arc;
            (n, x1, x2, x3, x4) = (n + 1, x1 + x, x2 + (x * x), x3 + (x * x * x), x4 + (x * x * x * x));
            (y, xy, x2y) = (y + phase, xy + (x * phase), x2y + (x * x * phase));
        }

        // Cramer's rule for the slope at the arc of the parabola of least squares.
        var whole = Determinant(n, x1, x2, x1, x2, x3, x2, x3, x4);
        var slope = Determinant(n, y, x2, x1, xy, x3, x2, x2y, x4) / whole;
        return Math.Asin(Math.Min(1, Math.Abs(slope) * speed / (2 * Math.PI * frequency)));
    }

    /// <summary>Middle of the energy's time at an arc, us.</summary>
    public double TimeAt(double arc)
    {
        var at = (arc - grid.FromArc) / grid.Step;
        var column = (int)Math.Floor(at);
        double Time(int where) => timed[where] / energy[where];
        return Time(column) + ((at - column) * (Time(column + 1) - Time(column)));
    }

    private static double Determinant(double a, double b, double c, double d, double e, double f, double g, double h, double i) =>
        (a * ((e * i) - (f * h))) - (b * ((d * i) - (f * g))) + (c * ((d * h) - (e * g)));
}
