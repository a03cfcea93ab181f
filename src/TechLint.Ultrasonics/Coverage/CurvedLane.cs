using TechLint.Ultrasonics.Beams;

namespace TechLint.Ultrasonics.Coverage;

/// <summary>
/// One law in one leg of a curved section. The launch is measured by <c>x = sin φ</c>: then a ray's distance from the axis is
/// <c>Rs x</c>, every length is a square root, and arcs are taken only where an edge has been found. The edges of a row are where
/// <c>± n − w(s)/2</c> changes sign, <c>n = ρ sin(φ − θ)</c>, <c>s = ρ cos(φ − θ)</c>, found by safeguarded Newton steps from the
/// edges of the row before. Rays that miss the bore count on their way down alone.
/// </summary>
internal struct CurvedLane
{
    /// <summary>Keeps square roots and slopes finite at the ends of the domain; 1e-9 of sin φ.</summary>
    private const double Edge = 1e-9;

    /// <summary>Of sin φ: the next Newton step would be about the square of it.</summary>
    private const double Settled = 1e-5;

    private const int MostSteps = 60;

    /// <summary>Steps of the careful search, for rows that a beam grazes.</summary>
    private const int CarefulSteps = 24;

    private readonly int leg;
    private readonly double scanRadius;
    private readonly double oppositeRadius;
    private readonly double bend;
    private readonly double sine;
    private readonly double cosine;
    private readonly double origin;
    private readonly double scale;
    private readonly double pathFrom;
    private readonly double pathTo;
    private readonly double thickness;
    private readonly Bearing least;
    private readonly Bearing greatest;
    private readonly double leastLaunch;
    private readonly double greatestLaunch;
    private readonly LaunchSegments segments;
    private readonly WidthPiece first;
    private readonly WidthPiece second;
    private readonly WidthPiece third;
    private Trend lowTrend;
    private Trend highTrend;

    public CurvedLane(SightLine line, int leg, PassFrame frame, MirrorGap? near, MirrorGap? far, double fromY, double toY)
    {
        this.leg = leg;
        thickness = frame.Rays.Thickness;
        scanRadius = frame.Rays.ScanRadius;
        bend = frame.Rays.Bend;
        oppositeRadius = scanRadius - (bend * thickness);
        (sine, cosine) = Math.SinCos(line.Angle);
        origin = frame.ToOuter * line.ExitY;
        scale = frame.ToOuter * line.Direction * scanRadius;
        pathFrom = line.PathFrom;
        pathTo = line.PathTo;

        Span<WidthPiece> pieces = stackalloc WidthPiece[WidthPieces.AtMost];
        var count = WidthPieces.Of(line.Width, pieces);
        first = pieces[0];
        second = count > 1 ? pieces[1] : new WidthPiece(double.PositiveInfinity, double.PositiveInfinity, 0, 0);
        third = count > 2 ? pieces[2] : new WidthPiece(double.PositiveInfinity, double.PositiveInfinity, 0, 0);

        // Rays that end their leg before the volume, or start it behind, are left out from the beginning.
        var one = ((fromY / frame.ToOuter) - line.ExitY) * line.Direction / scanRadius;
        var other = ((toY / frame.ToOuter) - line.ExitY) * line.Direction / scanRadius;
        var (leastAngle, greatestAngle) = (Math.Min(one, other), Math.Max(one, other));
        least = new Bearing(leastAngle);
        greatest = new Bearing(greatestAngle);
        leastLaunch = leastAngle >= 0 ? LaunchTo(new Bearing(leastAngle / leg), oppositeRadius)
            : leg > 1 ? LaunchTo(new Bearing(leastAngle / (leg - 1)), oppositeRadius)
            : -1;
        greatestLaunch = greatestAngle < 0 ? LaunchTo(new Bearing(greatestAngle / leg), oppositeRadius)
            : leg > 1 ? LaunchTo(new Bearing(greatestAngle / (leg - 1)), oppositeRadius)
            : 1;

        segments = LaunchSegments.All;
        for (var bounce = 1; bounce < leg; bounce++)
        {
            if (((bounce & 1) == 1 ? far : near) is not { } gap) continue;
            var turn = line.TurnOfBounce(bounce);
            var start = Turned(LaunchTo(new Bearing((gap.From - line.ExitOfBounce(bounce)) * line.Direction / scanRadius / bounce), oppositeRadius), turn);
            var end = Turned(LaunchTo(new Bearing((gap.To - line.ExitOfBounce(bounce)) * line.Direction / scanRadius / bounce), oppositeRadius), turn);
            segments.Remove(Math.Min(start, end), Math.Max(start, end));
        }
        lowTrend = highTrend = Trend.None;
    }

    public void AddRow(double depth, RowIntervals row)
    {
        var radius = scanRadius - (bend * depth);
        var reach = Math.Min((leg > 1 ? oppositeRadius : radius) / scanRadius, 1) - Edge;
        var from = Math.Max(Math.Max(-reach, leastLaunch), Edge - cosine);
        var to = Math.Min(reach, greatestLaunch);
        if (leg == 1)
        {
            from = Math.Max(from, LaunchTo(least, radius));
            to = Math.Min(to, LaunchTo(greatest, radius));
        }

        if (!(from < to)) return;
        var atFrom = Place(from, radius);
        var atTo = Place(to, radius);
        var slopes = SlopesBetween(atFrom.Along, atTo.Along);

        // Whether the window can cut at all: no path is shorter than straight down, none longer than at the ends.
        var shortest = (leg & 1) == 1 ? ((leg - 1) * thickness) + depth : (leg * thickness) - depth;
        var isWindowed = pathFrom > shortest || pathTo < Math.Max(atFrom.Path, atTo.Path);

        // Short of the axis only the lower edge matters, beyond it only the upper one.
        if (sine <= from) AddBeyond(from, atFrom, to, atTo, slopes, radius, isWindowed, from, row);
        else if (sine >= to) AddShort(from, atFrom, to, atTo, slopes, radius, isWindowed, row);
        else
        {
            var onAxis = Place(sine, radius);
            if (RisesLower(atFrom, slopes) && RisesLower(onAxis, slopes))
            {
                var low = atFrom.Lower >= 0 ? from : Solve(from, sine, ref lowTrend, radius, isUpper: false);
                AddBeyond(sine, onAxis, to, atTo, slopes, radius, isWindowed, low, row);
            }
            else
            {
                AddShort(from, atFrom, sine, onAxis, slopes, radius, isWindowed, row);
                AddBeyond(sine, onAxis, to, atTo, slopes, radius, isWindowed, sine, row);
            }
        }
    }

    /// <summary>What is seen beyond the axis; a stretch that starts at <paramref name="from"/> goes back to <paramref name="start"/>.</summary>
    private void AddBeyond(
        double from, in Spot atFrom, double to, in Spot atTo, (double Least, double Greatest) slopes, double radius, bool isWindowed,
        double start, RowIntervals row)
    {
        if (RisesUpper(atFrom, slopes) && RisesUpper(atTo, slopes))
        {
            if (atFrom.Upper > 0) return;
            var high = atTo.Upper <= 0 ? to : Solve(from, to, ref highTrend, radius, isUpper: true);
            AddStretch(start, high, radius, isWindowed, row);
        }
        else
        {
            AddCarefully(from, to, radius, isUpper: true, isWindowed, start, row);
        }
    }

    /// <summary>What is seen short of the axis.</summary>
    private void AddShort(
        double from, in Spot atFrom, double to, in Spot atTo, (double Least, double Greatest) slopes, double radius, bool isWindowed,
        RowIntervals row)
    {
        if (RisesLower(atFrom, slopes) && RisesLower(atTo, slopes))
        {
            if (atTo.Lower < 0) return;
            var low = atFrom.Lower >= 0 ? from : Solve(from, to, ref lowTrend, radius, isUpper: false);
            AddStretch(low, to, radius, isWindowed, row);
        }
        else
        {
            AddCarefully(from, to, radius, isUpper: false, isWindowed, from, row);
        }
    }

    /// <summary>From the sine of the true launch to that of the virtual exit point's, over a step.</summary>
    private static double Turned(double sine, double turn) => turn == 0 ? sine : Math.Sin(Math.Asin(sine) - turn);

    /// <summary>The launch whose ray meets a radius at a polar angle from the exit point, in leg 1; held to the rays that do.</summary>
    private readonly double LaunchTo(in Bearing bearing, double radius)
    {
        var tangent = Math.Min(radius, scanRadius) / Math.Max(radius, scanRadius);
        if (bearing.Cosine <= tangent) return Math.CopySign(Math.Min(radius / scanRadius, 1), bearing.Sine);
        return radius * bearing.Sine
            / Math.Sqrt((radius * radius) + (scanRadius * scanRadius) - (2 * radius * scanRadius * bearing.Cosine));
    }

    private readonly Spot Place(double x, double radius)
    {
        var axis = scanRadius * x;
        var launchCosine = Math.Sqrt(1 - (x * x));
        var start = scanRadius * launchCosine;
        var end = Math.Sqrt(Math.Max(0, (radius * radius) - (axis * axis)));
        var path = bend * (start - end);
        var slope = bend * axis * ((scanRadius / end) - (1 / launchCosine));
        if (leg > 1)
        {
            var far = Math.Sqrt(Math.Max(0, (oppositeRadius * oppositeRadius) - (axis * axis)));
            var whole = bend * (start - far);
            var wholeSlope = bend * axis * ((scanRadius / far) - (1 / launchCosine));
            var isOdd = (leg & 1) == 1;
            path = isOdd ? ((leg - 1) * whole) + path : (leg * whole) - path;
            slope = isOdd ? ((leg - 1) * wholeSlope) + slope : (leg * wholeSlope) - slope;
        }

        var offSine = (x * cosine) - (launchCosine * sine);
        var offCosine = (launchCosine * cosine) + (x * sine);
        var along = path * offCosine;
        var turn = path / launchCosine;
        ref readonly var piece = ref PieceAt(along);
        return new Spot
        {
            Path = path,
            Along = along,
            Across = path * offSine,
            HalfWidth = (piece.Intercept + (piece.Slope * along)) / 2,
            AcrossSlope = (slope * offSine) + (turn * offCosine),
            AlongSlope = (slope * offCosine) - (turn * offSine),
            WidthSlope = piece.Slope / 2,
        };
    }

    [System.Diagnostics.CodeAnalysis.UnscopedRef]
    private readonly ref readonly WidthPiece PieceAt(double along)
    {
        if (along >= third.From) return ref third;
        if (along >= second.From) return ref second;
        return ref first;
    }

    /// <summary>Least and greatest slope of the half width over a stretch of the axis.</summary>
    private readonly (double Least, double Greatest) SlopesBetween(double one, double other)
    {
        var (low, high) = (Math.Min(one, other), Math.Max(one, other));
        var lowest = double.PositiveInfinity;
        var highest = double.NegativeInfinity;
        Take(first);
        Take(second);
        Take(third);
        return (lowest, highest);

        void Take(in WidthPiece piece)
        {
            if (piece.From > high || piece.To < low) return;
            lowest = Math.Min(lowest, piece.Slope / 2);
            highest = Math.Max(highest, piece.Slope / 2);
        }
    }

    // Where the row runs too nearly along the beam, an edge may be crossed more than once. The row's direction turns one way along the row,
    // so that looking at both ends of a stretch is enough.
    private static bool RisesUpper(in Spot spot, (double Least, double Greatest) slopes) =>
        spot.AcrossSlope > Math.Max(slopes.Least * spot.AlongSlope, slopes.Greatest * spot.AlongSlope);

    private static bool RisesLower(in Spot spot, (double Least, double Greatest) slopes) =>
        spot.AcrossSlope > -Math.Min(slopes.Least * spot.AlongSlope, slopes.Greatest * spot.AlongSlope);

    /// <summary>Newton inside a bracket that shrinks with every step; a step that leaves it is replaced by a halving.</summary>
    private readonly double Solve(double from, double to, ref Trend trend, double radius, bool isUpper)
    {
        var x = trend.Next;
        if (!(x > from && x < to)) x = Math.Clamp(sine, from + ((to - from) / 4), to - ((to - from) / 4));
        for (var step = 0; step < MostSteps; step++)
        {
            var spot = Place(x, radius);
            var value = isUpper ? spot.Upper : spot.Lower;
            var slope = isUpper
                ? spot.AcrossSlope - (spot.WidthSlope * spot.AlongSlope)
                : spot.AcrossSlope + (spot.WidthSlope * spot.AlongSlope);
            if (value > 0) to = x;
            else from = x;
            var next = x - (value / slope);
            if (!(next > from && next < to)) next = (from + to) / 2;
            var change = Math.Abs(next - x);
            x = next;

            // Newton squares the error: after a change this small the rest is rounding.
            if (change < Settled) break;
        }

        trend.Take(x);
        return x;
    }

    private readonly void AddCarefully(
        double from, double to, double radius, bool isUpper, bool isWindowed, double begin, RowIntervals row)
    {
        // Places are crowded towards the far end, where rays graze.
        var start = begin;
        var value = Outside(from, radius, isUpper);
        var x = from;
        for (var step = 1; step <= CarefulSteps; step++)
        {
            var left = 1 - ((double)step / CarefulSteps);
            var next = to - ((to - from) * left * left);
            var nextValue = Outside(next, radius, isUpper);
            if (nextValue <= 0 != value <= 0)
            {
                var edge = Between(x, value, next, nextValue, radius, isUpper);
                if (value <= 0) AddStretch(start, edge, radius, isWindowed, row);
                else start = edge;
            }

            x = next;
            value = nextValue;
        }

        if (value <= 0) AddStretch(start, to, radius, isWindowed, row);
    }

    /// <summary>Above 0 outside the beam.</summary>
    private readonly double Outside(double x, double radius, bool isUpper)
    {
        var spot = Place(x, radius);
        return isUpper ? spot.Upper : -spot.Lower;
    }

    /// <summary>False position, the Illinois way: the end that stays is halved, so that neither end sticks.</summary>
    private readonly double Between(double from, double atFrom, double to, double atTo, double radius, bool isUpper)
    {
        for (var step = 0; step < MostSteps && to - from > 1e-9; step++)
        {
            var x = from - (atFrom * (to - from) / (atTo - atFrom));
            if (!(x > from && x < to)) x = (from + to) / 2;
            var value = Outside(x, radius, isUpper);
            if (Math.Abs(value) < 1e-8) return x;
            if (value <= 0 == atFrom <= 0)
            {
                from = x;
                atFrom = value;
                atTo /= 2;
            }
            else
            {
                to = x;
                atTo = value;
                atFrom /= 2;
            }
        }

        return (from + to) / 2;
    }

    private readonly void AddStretch(double low, double high, double radius, bool isWindowed, RowIntervals row)
    {
        if (isWindowed) AddWindowed(low, high, radius, row);
        else if (low < high) AddSegments(low, high, radius, row);
    }

    /// <summary>Keeps what the recorded window holds: the path grows with |x|.</summary>
    private readonly void AddWindowed(double low, double high, double radius, RowIntervals row)
    {
        if (!(low < high)) return;
        if (low < 0 && high > 0)
        {
            AddWindowed(low, 0, radius, row);
            AddWindowed(0, high, radius, row);
            return;
        }

        var isForward = high > 0;
        var (inner, outer) = isForward ? (low, high) : (high, low);
        var shortest = Place(inner, radius).Path;
        var longest = Place(outer, radius).Path;
        if (longest < pathFrom || shortest > pathTo) return;
        var edge = outer;
        if (longest > pathTo) edge = PathReaches(pathTo, inner, outer, radius);
        if (shortest < pathFrom) inner = PathReaches(pathFrom, inner, outer, radius);
        if (isForward) AddSegments(inner, edge, radius, row);
        else AddSegments(edge, inner, radius, row);
    }

    private readonly double PathReaches(double path, double inner, double outer, double radius)
    {
        while (Math.Abs(outer - inner) > 1e-10)
        {
            var middle = (inner + outer) / 2;
            if (Place(middle, radius).Path < path) inner = middle;
            else outer = middle;
        }

        return (inner + outer) / 2;
    }

    private readonly void AddSegments(double low, double high, double radius, RowIntervals row)
    {
        if (segments.Count == 0)
        {
            row.Add(origin + (scale * Polar(low, radius)), origin + (scale * Polar(high, radius)));
            return;
        }

        for (var index = 0; index < segments.Count; index++)
        {
            var segment = segments[index];
            var from = Math.Max(low, segment.From);
            var to = Math.Min(high, segment.To);
            if (from < to) row.Add(origin + (scale * Polar(from, radius)), origin + (scale * Polar(to, radius)));
        }
    }

    /// <summary>Polar angle from the exit point to where the ray meets the row.</summary>
    private readonly double Polar(double x, double radius)
    {
        var launch = Math.Asin(x);
        var part = bend * (Math.Asin(Math.Clamp(scanRadius * x / radius, -1, 1)) - launch);
        if (leg == 1) return part;
        var whole = bend * (Math.Asin(Math.Clamp(scanRadius * x / oppositeRadius, -1, 1)) - launch);
        return (leg & 1) == 1 ? ((leg - 1) * whole) + part : (leg * whole) - part;
    }

    /// <summary>A polar angle from the exit point; no straight ray gets past a quarter turn.</summary>
    private readonly struct Bearing
    {
        public Bearing(double polar) => (Sine, Cosine) = Math.SinCos(Math.Clamp(polar, -Math.PI / 2, Math.PI / 2));

        public double Sine { get; }

        public double Cosine { get; }
    }

    /// <summary>An edge from row to row: the next one lies about as far on as the last two lie apart.</summary>
    private struct Trend
    {
        private double last;
        private double step;

        public static Trend None => new() { last = double.NaN };

        public readonly double Next => last + step;

        public void Take(double x)
        {
            step = double.IsNaN(last) ? 0 : x - last;
            last = x;
        }
    }

    private struct Spot
    {
        public double Path;
        public double Along;
        public double Across;
        public double HalfWidth;
        public double AcrossSlope;
        public double AlongSlope;
        public double WidthSlope;

        /// <summary>Above 0 beyond the edge at greater advance.</summary>
        public readonly double Upper => Across - HalfWidth;

        /// <summary>Below 0 beyond the edge at smaller advance.</summary>
        public readonly double Lower => Across + HalfWidth;
    }
}
