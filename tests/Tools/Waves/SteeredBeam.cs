namespace TechLint.Tests.Tools.Waves;

/// <summary>
/// An array on a sloping wedge over a plate of steel, slipping contact: each element a row of explosive line sources in the wedge (an element sends
/// longitudinal waves there), delayed for a plane wave whose refracted transverse angle is asked for by Snell's law. Measured: the axis of the transverse beam in
/// the steel, hence its angle and where it leaves the wedge.
/// </summary>
internal sealed record SteeredBeam(
    double Angle, double Frequency, int Elements, double Pitch, double ElementSize, double Slope, double CentreHeight, Solid Wedge, Solid Part, double MeasuredFrom,
    double MeasuredTo)
{
    private const double Sponge = 4;
    private const int PointsPerElement = 9;

    /// <summary>1/e half width of the pulse, us: 1 cycle, a bandwidth of half the frequency.</summary>
    private double PulseWidth => 1 / Frequency;

    public IReadOnlyDictionary<string, double> Inputs => new Dictionary<string, double>(StringComparer.Ordinal)
    {
        ["angle-deg"] = Angle, ["frequency-MHz"] = Frequency, ["elements"] = Elements, ["pitch-mm"] = Pitch, ["element-size-mm"] = ElementSize,
        ["slope-deg"] = Slope, ["centre-height-mm"] = CentreHeight,
        ["wedge-longitudinal-m/s"] = Wedge.Longitudinal * 1000, ["wedge-transverse-m/s"] = Wedge.Transverse * 1000, ["wedge-density-g/cm3"] = Wedge.Density,
        ["part-longitudinal-m/s"] = Part.Longitudinal * 1000, ["part-transverse-m/s"] = Part.Transverse * 1000, ["part-density-g/cm3"] = Part.Density,
        ["measured-from-mm"] = MeasuredFrom, ["measured-to-mm"] = MeasuredTo, ["pulse-half-width-us"] = PulseWidth,
    };

    public WaveRun Run(double step, int workers)
    {
        var (angle, slope) = (Angle * Math.PI / 180, Slope * Math.PI / 180);
        var wedgeAngle = Math.Asin(Wedge.Longitudinal / Part.Transverse * Math.Sin(angle));
        var half = Elements * Pitch / 2;
        var above = Math.Ceiling(CentreHeight + (half * Math.Sin(slope)) + Sponge + 1);
        var below = Math.Ceiling((MeasuredTo * Math.Cos(angle)) + HalfBeam + Sponge);
        var left = -Math.Ceiling((half * Math.Cos(slope)) + Sponge + 2);
        var right = Math.Ceiling((CentreHeight * Math.Tan(wedgeAngle)) + (MeasuredTo * Math.Sin(angle)) + HalfBeam + Sponge);
        var grid = new WaveGrid(
            Nodes(right - left), Nodes(above + below), step, left, -above, 0, Wedge, Part, Nodes(Sponge), SpongeAllRound: true);
        var solver = new WaveSolver(grid, workers);
        var map = WaveRun.Map(grid);
        var burst = new ToneBurst(Frequency, PulseWidth);
        var points = Points(wedgeAngle, slope).ToList();
        var first = points.Min(point => point.Delay);
        var duration = burst.Middle + (half * 2 / Wedge.Longitudinal) + (CentreHeight / Math.Cos(wedgeAngle) / Wedge.Longitudinal)
            + ((MeasuredTo + HalfBeam) / Part.Transverse);
        var steps = (int)Math.Ceiling(duration / grid.TimeStep);
        var every = WaveRun.MapEvery(grid, Frequency);
        for (var now = 0; now < steps; now++)
        {
            foreach (var (x, z, delay) in points) solver.Explode(x, z, burst.At((now * grid.TimeStep) - (delay - first)));
            solver.Step();
            if (now % every == 0) solver.AddRotation(map);
        }

        var fit = new BeamAxis(grid, map);
        var axis = fit.Fit(new Axis(CentreHeight * Math.Tan(wedgeAngle), 0, angle), MeasuredFrom, MeasuredTo);
        return new WaveRun(grid, steps, Part.Transverse / Frequency / step, new Dictionary<string, double>(StringComparer.Ordinal)
        {
            ["beam-angle-deg"] = axis.Angle * 180 / Math.PI,
            ["exit-ahead-of-array-centre-mm"] = axis.X - (axis.Z * Math.Tan(axis.Angle)),
            ["scatter-mm"] = fit.Scatter,
        });

        int Nodes(double length) => (int)Math.Round(length / step);
    }

    /// <summary>Room beside the beam's axis.</summary>
    private const double HalfBeam = 5;

    private IEnumerable<(double X, double Z, double Delay)> Points(double wedgeAngle, double slope)
    {
        for (var element = 0; element < Elements; element++)
        {
            var middle = (element - ((Elements - 1) / 2.0)) * Pitch;
            var delay = Delay(middle);
            for (var point = 0; point < PointsPerElement; point++)
            {
                var place = middle + (ElementSize * (((point + 0.5) / PointsPerElement) - 0.5));
                yield return (place * Math.Cos(slope), -CentreHeight - (place * Math.Sin(slope)), delay);
            }
        }

        // A plane wave gets to a point by its place along the direction of travel.
        double Delay(double place) =>
            ((place * Math.Cos(slope) * Math.Sin(wedgeAngle)) - (place * Math.Sin(slope) * Math.Cos(wedgeAngle))) / Wedge.Longitudinal;
    }
}
