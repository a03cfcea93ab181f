namespace TechLint.Tests.Tools.Waves;

/// <summary>A straight line in the plane (x along the surface at arc 0, z downwards), by a place on it and its direction from the z axis.</summary>
internal readonly record struct Axis(double X, double Z, double Angle)
{
    public (double X, double Z) At(double path, double aside) =>
        (X + (path * Math.Sin(Angle)) + (aside * Math.Cos(Angle)), Z + (path * Math.Cos(Angle)) - (aside * Math.Sin(Angle)));
}

/// <summary>
/// The axis of a beam in a map of its energy: the middle of the beam on cuts square to it (a parabola through the logarithm of what is above half of the
/// greatest), a straight line through the middles, and again about that line until it stays.
/// </summary>
internal sealed class BeamAxis(WaveGrid grid, double[][] map)
{
    private const double HalfCut = 10;
    private const double Spacing = 0.05;
    private const double PathSpacing = 0.25;
    private const int Rounds = 12;

    /// <summary>Not read: waves in the wedge, and those that run along the surface.</summary>
    private const double Skin = 1;

    /// <summary>Root mean square distance of the middles from the line, mm.</summary>
    public double Scatter { get; private set; }

    public Axis Fit(Axis start, double from, double to)
    {
        var axis = start;
        for (var round = 0; round < Rounds; round++)
        {
            var places = new List<(double Path, double Aside)>();
            for (var path = from; path <= to; path += PathSpacing) places.Add((path, Middle(axis, path)));
            var (path0, aside0) = (places.Average(place => place.Path), places.Average(place => place.Aside));
            var slope = places.Sum(place => (place.Path - path0) * (place.Aside - aside0)) / places.Sum(place => (place.Path - path0) * (place.Path - path0));
            Scatter = Math.Sqrt(places.Average(place => Math.Pow(place.Aside - aside0 - (slope * (place.Path - path0)), 2)));
            var (x, z) = axis.At(0, aside0 - (slope * path0));
            axis = new Axis(x, z, axis.Angle + Math.Atan(slope));
        }

        return axis;
    }

    private double Middle(Axis axis, double path)
    {
        var count = (int)Math.Round(2 * HalfCut / Spacing) + 1;
        var levels = new double[count];
        for (var index = 0; index < count; index++)
        {
            var (x, z) = axis.At(path, -HalfCut + (index * Spacing));
            levels[index] = Level(x, z);
        }

        var top = Array.IndexOf(levels, levels.Max());
        var (first, last) = (top, top);
        while (first > 0 && levels[first - 1] >= levels[top] / 2) first--;
        while (last < count - 1 && levels[last + 1] >= levels[top] / 2) last++;
        return Vertex(levels, first, last);
    }

    /// <summary>The vertex of the parabola of least squares through the logarithms of levels first to last.</summary>
    private static double Vertex(double[] levels, int first, int last)
    {
        double n = 0, x1 = 0, x2 = 0, x3 = 0, x4 = 0, y = 0, xy = 0, x2y = 0;
        var middle = (first + last) / 2.0;
        for (var index = first; index <= last; index++)
        {
            var (x, level) = ((index - middle) * Spacing, Math.Log(levels[index]));
            (n, x1, x2, x3, x4) = (n + 1, x1 + x, x2 + (x * x), x3 + (x * x * x), x4 + (x * x * x * x));
            (y, xy, x2y) = (y + level, xy + (x * level), x2y + (x * x * level));
        }

        // About the middle of evenly spaced places the odd sums vanish.
        var bow = ((n * x2y) - (x2 * y)) / ((n * x4) - (x2 * x2));
        return -HalfCut + (middle * Spacing) - (xy / x2 / (2 * bow));
    }

    /// <summary>The map between its nodes, which lie half a step to the right of the columns.</summary>
    private double Level(double x, double z)
    {
        var (arc, depth) = (x, z);
        if (grid.Radius > 0)
        {
            var angle = Math.Atan2(x, grid.Radius - z);
            (arc, depth) = (grid.Radius * angle, grid.Radius - Math.Sqrt((x * x) + ((grid.Radius - z) * (grid.Radius - z))));
        }

        var (across, down) = (((arc - grid.FromArc) / grid.Step) - 0.5, (depth - grid.FromDepth) / grid.Step);
        var (column, row) = ((int)Math.Floor(across), (int)Math.Floor(down));
        if (column < 2 || column > grid.Columns - 4 || row < 1 || row > grid.Rows - 2) return double.Epsilon;
        if (depth < Skin) return double.Epsilon;
        var (right, below) = (across - column, down - row);
        return Math.Max(
            double.Epsilon,
            ((1 - below) * (((1 - right) * map[row][column]) + (right * map[row][column + 1])))
            + (below * (((1 - right) * map[row + 1][column]) + (right * map[row + 1][column + 1]))));
    }
}
