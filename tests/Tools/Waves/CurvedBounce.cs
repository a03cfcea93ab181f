namespace TechLint.Tests.Tools.Waves;

/// <summary>
/// A piece of a ring, free inside and outside. A Gaussian transverse beam enters it at arc 0 of the outside: the tractions there are those of a bundle of plane
/// transverse waves about the asked angle (so that nothing else is sent), narrowest at the bore, whose curve would else fan it out. Measured: the beam's axis on its way to the bore and on its way back.
/// </summary>
internal sealed record CurvedBounce(double Angle, double Frequency, double OutsideDiameter, double Wall, double Waist, Solid Part)
{
    private const double Sponge = 5;
    private const double Ahead = 26;

    /// <summary>The front that meets the outside at the launched angle is sought this far about the bounce's mirror image, mm.</summary>
    private const double FrontSearch = 9;

    /// <summary>The far flank of the fan comes later, us.</summary>
    private const double Tail = 2;

    /// <summary>Plane waves of the bundle: to four times the spread's 1/e angle either way.</summary>
    private const int Waves = 81;

    private const double Degree = Math.PI / 180;

    private double Radius => OutsideDiameter / 2;

    private double Bore => Radius - Wall;

    private double PulseWidth => 1 / Frequency;

    public IReadOnlyDictionary<string, double> Inputs => new Dictionary<string, double>(StringComparer.Ordinal)
    {
        ["angle-deg"] = Angle, ["frequency-MHz"] = Frequency, ["outside-diameter-mm"] = OutsideDiameter, ["wall-mm"] = Wall, ["waist-mm"] = Waist,
        ["part-longitudinal-m/s"] = Part.Longitudinal * 1000, ["part-transverse-m/s"] = Part.Transverse * 1000, ["part-density-g/cm3"] = Part.Density,
        ["pulse-half-width-us"] = PulseWidth,
    };

    public WaveRun Run(double step, int workers)
    {
        // Only to size the ring, to split the record between the two legs and to start the fit: the chord to the bore and its mirror image.
        var launch = new Axis(0, 0, Angle * Degree);
        var leg = Leg;
        var bounce = launch.At(leg, 0);
        var turned = Math.Atan2(bounce.X, Radius - bounce.Z);
        var back = new Axis(bounce.X, bounce.Z, Math.PI - launch.Angle - (2 * turned));
        var left = -Math.Ceiling(LastTraction + Sponge + 1);
        var right = Math.Ceiling((2 * turned * Radius) + Ahead);
        var grid = new WaveGrid(Nodes(right - left), Nodes(Wall), step, left, 0, Radius, null, Part, Nodes(Sponge), SpongeAllRound: false);
        if (Math.Abs((grid.Rows * step) - Wall) > 1e-9) throw new ArgumentException("The wall must be a whole number of steps.", nameof(step));
        var solver = new WaveSolver(grid, workers);
        var (down, up) = (WaveRun.Map(grid), WaveRun.Map(grid));
        var burst = new ToneBurst(Frequency, PulseWidth);
        var split = burst.Middle + Lead + (leg / Part.Transverse);
        var steps = (int)Math.Ceiling((split + (leg / Part.Transverse) + burst.Middle + Tail) / grid.TimeStep);
        var surface = new SurfaceRecord(grid, Frequency, Part.Transverse);
        var every = WaveRun.MapEvery(grid, Frequency);
        for (var now = 0; now < steps; now++)
        {
            var time = now * grid.TimeStep;
            if (time < burst.Middle + (3 * Lead)) Load(solver, grid, burst, time);
            else { Array.Clear(solver.UpperTraction); Array.Clear(solver.UpperShear); }
            solver.Step();
            if (time >= split) surface.Add(solver.UpperVelocity, time);
            if (now % every == 0 && time < split + (leg / Part.Transverse) + PulseWidth) solver.AddRotation(time < split ? down : up);
        }

        var fitDown = new BeamAxis(grid, down);
        var axisDown = fitDown.Fit(launch, 0.25 * leg, 0.75 * leg);
        var fitUp = new BeamAxis(grid, up);
        var axisUp = fitUp.Fit(back, 0.25 * leg, 0.85 * leg);
        var expected = 2 * turned * Radius;
        var frontArc = surface.ArcOf(Angle * Degree, expected - FrontSearch, expected + FrontSearch);
        return new WaveRun(grid, steps, Part.Transverse / Frequency / step, new Dictionary<string, double>(StringComparer.Ordinal)
        {
            ["launch-arc-mm"] = ArcOn(axisDown, Radius, first: true).Arc,
            ["launch-angle-deg"] = ArcOn(axisDown, Radius, first: true).Incidence,
            ["bore-angle-going-down-deg"] = ArcOn(axisDown, Bore, first: true).Incidence,
            ["bore-arc-going-down-mm"] = ArcOn(axisDown, Bore, first: true).Arc,
            ["bore-angle-coming-back-deg"] = ArcOn(axisUp, Bore, first: false).Incidence,
            ["bore-arc-coming-back-mm"] = ArcOn(axisUp, Bore, first: false).Arc,
            ["return-arc-mm"] = ArcOn(axisUp, Radius, first: false).Arc,
            ["return-angle-deg"] = ArcOn(axisUp, Radius, first: false).Incidence,
            ["return-arc-of-front-mm"] = frontArc,
            ["return-path-of-front-mm"] = (surface.TimeAt(frontArc) - burst.Middle - Lead) * Part.Transverse,
            ["scatter-going-down-mm"] = fitDown.Scatter,
            ["scatter-coming-back-mm"] = fitUp.Scatter,
        });

        int Nodes(double length) => (int)Math.Round(length / step);
    }

    /// <summary>Where the tractions end: there the beam has fallen to e^-9.</summary>
    private double LastTraction => 3 * WidthAtSurface / Math.Cos(Angle * Degree);

    /// <summary>A Gaussian beam's 1/e half width, <c>w sqrt(1 + (z λ / π w²)²)</c>, as far before its waist as the bore is away.</summary>
    private double WidthAtSurface => Waist * Math.Sqrt(1 + Math.Pow(Leg * Part.Transverse / Frequency / Math.PI / (Waist * Waist), 2));

    private double Leg => ToCircle(new Axis(0, 0, Angle * Degree), Bore, first: true);

    /// <summary>The nearer flank of the beam starts before its axis does.</summary>
    private double Lead => LastTraction * Math.Sin(Angle * Degree) / Part.Transverse;

    private void Load(WaveSolver solver, WaveGrid grid, ToneBurst burst, double time)
    {
        var focus = new Axis(0, 0, Angle * Degree).At(Leg, 0);
        var spread = 2 * Part.Transverse / Frequency / (2 * Math.PI) / Waist;
        Parallel.For(0, grid.Columns, new ParallelOptions { MaxDegreeOfParallelism = 2 }, column =>
        {
            solver.UpperTraction[column] = (float)Stress(column, shear: false);
            solver.UpperShear[column] = (float)Stress(column + 0.5, shear: true);
        });

        double Stress(double column, bool shear)
        {
            var arc = grid.FromArc + (column * grid.Step);
            if (Math.Abs(arc) > LastTraction) return 0;
            var around = arc / Radius;
            var (x, z) = (Radius * Math.Sin(around), Radius * (1 - Math.Cos(around)));
            var sum = 0.0;
            for (var wave = 0; wave < Waves; wave++)
            {
                var off = ((2.0 * wave / (Waves - 1)) - 1) * 4 * spread;
                var angle = (Angle * Degree) + off;
                var local = angle + around;
                var since = time - Lead - ((Leg + ((x - focus.X) * Math.Sin(angle)) + ((z - focus.Z) * Math.Cos(angle))) / Part.Transverse);
                var weight = Math.Exp(-off * off / (spread * spread)) * burst.At(since);
                sum += weight * (shear ? -Math.Cos(2 * local) : Math.Sin(2 * local));
            }

            return sum;
        }
    }

    /// <summary>Path along a line to a circle about the ring's axis: the first crossing or the last.</summary>
    private double ToCircle(Axis axis, double radius, bool first)
    {
        var (x, y, dx, dy) = (axis.X, Radius - axis.Z, Math.Sin(axis.Angle), -Math.Cos(axis.Angle));
        var middle = -((x * dx) + (y * dy));
        var root = Math.Sqrt((middle * middle) - ((x * x) + (y * y) - (radius * radius)));
        return first ? middle - root : middle + root;
    }

    private (double Arc, double Incidence) ArcOn(Axis axis, double radius, bool first)
    {
        var (x, z) = axis.At(ToCircle(axis, radius, first), 0);
        var around = Math.Atan2(x, Radius - z);
        var incidence = Math.Abs(axis.Angle + around);
        return (Radius * around, (incidence > Math.PI / 2 ? Math.PI - incidence : incidence) * 180 / Math.PI);
    }
}
