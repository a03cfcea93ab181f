using TechLint.Ultrasonics.Quantities;

namespace TechLint.Ultrasonics.Tofd;

/// <summary>
/// The formulas of a diffraction pair on a flat part, for index points 2S apart. Valid for tips on or near the mid-plane, one wave both ways, wedge
/// delay taken off. Forms of EN 583-6 / ISO 16828 (from memory); a pair on a curve is worked out by <see cref="TofdPair"/> instead.
/// NaN where the geometry gives no answer.
/// </summary>
public static class TofdFormulas
{
    /// <summary>Probe centre separation whose axes cross at a depth: <c>2S = 2 d tan θ</c>. 0 &lt; θ &lt; 90 deg.</summary>
    public static Length SeparationFor(Length crossing, Angle angle) => new(2 * crossing.Millimetres * Math.Tan(angle.Radians));

    /// <summary>Depth of a tip on the mid-plane: <c>d = sqrt((c t / 2)² − S²)</c>, t from index point to index point. NaN before the lateral wave.</summary>
    public static Length DepthAt(Duration time, Speed speed, Length separation)
    {
        var half = speed.MillimetresPerMicrosecond * time.Microseconds / 2;
        var s = separation.Millimetres / 2;
        return new Length(Math.Sqrt((half * half) - (s * s)));
    }

    /// <summary>Arrival time of a tip on the mid-plane: <c>t = 2 sqrt(d² + S²) / c</c>.</summary>
    public static Duration TimeOf(Length depth, Speed speed, Length separation) => OffMiddleTime(depth, Length.Zero, speed, separation);

    /// <summary>Arrival time of a tip beside the mid-plane: <c>t = (sqrt(d² + (S + x)²) + sqrt(d² + (S − x)²)) / c</c>.</summary>
    public static Duration OffMiddleTime(Length depth, Length aside, Speed speed, Length separation)
    {
        var (d, x, s) = (depth.Millimetres, aside.Millimetres, separation.Millimetres / 2);
        return new Duration((Math.Sqrt((d * d) + ((s + x) * (s + x))) + Math.Sqrt((d * d) + ((s - x) * (s - x)))) / speed.MillimetresPerMicrosecond);
    }

    /// <summary>How far too deep a tip beside the mid-plane is read, as if it lay on it (ellipse of equal time); never negative between the probes.</summary>
    public static Length DepthErrorOffMiddle(Length depth, Length aside, Speed speed, Length separation) =>
        new(DepthAt(OffMiddleTime(depth, aside, speed, separation), speed, separation).Millimetres - depth.Millimetres);

    /// <summary>Depth error that a time error makes: <c>δd = c δt sqrt(d² + S²) / (2 d)</c>, first order; it grows without bound towards the surface.</summary>
    public static Length DepthErrorOfTime(Length depth, Duration timeError, Speed speed, Length separation)
    {
        var (d, s) = (depth.Millimetres, separation.Millimetres / 2);
        return new Length(speed.MillimetresPerMicrosecond * timeError.Microseconds * Math.Sqrt((d * d) + (s * s)) / (2 * d));
    }

    /// <summary>
    /// Depth error that an error of the speed makes, the time taken as it is: <c>δd = δc (d² + S²) / (c d)</c>, first order. Where the lateral wave
    /// is the clock's zero, S takes up its own share: <c>δd = δc (d² + S² − S sqrt(d² + S²)) / (c d)</c>.
    /// </summary>
    public static Length DepthErrorOfSpeed(Length depth, Speed speedError, Speed speed, Length separation, bool timedFromLateralWave)
    {
        var (d, s) = (depth.Millimetres, separation.Millimetres / 2);
        var path = Math.Sqrt((d * d) + (s * s));
        var square = (path * path) - (timedFromLateralWave ? s * path : 0);
        return new Length(speedError.MetresPerSecond / speed.MetresPerSecond * square / d);
    }

    /// <summary>Depth error that an error of S (half the separation) makes at a given time: <c>δd = S δS / d</c>, first order, sign left off.</summary>
    public static Length DepthErrorOfSeparation(Length depth, Length separationError, Length separation) =>
        new(separation.Millimetres / 2 * (separationError.Millimetres / 2) / depth.Millimetres);

    /// <summary>Spatial resolution: how much deeper a second tip must lie to arrive a pulse later, <c>R = sqrt(c²(td + tp)²/4 − S²) − d</c>.</summary>
    public static Length ResolutionAt(Length depth, Duration pulse, Speed speed, Length separation) =>
        new(DepthAt(new Duration(TimeOf(depth, speed, separation).Microseconds + pulse.Microseconds), speed, separation).Millimetres - depth.Millimetres);

    /// <summary>Near-surface dead zone: <c>sqrt(c² tp²/4 + S c tp)</c>, the depth that arrives a pulse after the lateral wave.</summary>
    public static Length NearSurfaceDeadZone(Duration pulse, Speed speed, Length separation)
    {
        var way = speed.MillimetresPerMicrosecond * pulse.Microseconds;
        return new Length(Math.Sqrt((way * way / 4) + (separation.Millimetres / 2 * way)));
    }

    /// <summary>
    /// Back-wall dead zone, in the form that the program goes by: <c>sqrt(c²(tw + tp)²/4 − S²) − W</c>. The form that counts the pulse back from the
    /// wall, <c>W − sqrt(c²(tw − tp)²/4 − S²)</c>, is larger by some 3 %: <paramref name="countedBack"/>.
    /// </summary>
    public static Length BackWallDeadZone(Length thickness, Duration pulse, Speed speed, Length separation, bool countedBack)
    {
        var wall = TimeOf(thickness, speed, separation).Microseconds;
        return countedBack
            ? new Length(thickness.Millimetres - DepthAt(new Duration(wall - pulse.Microseconds), speed, separation).Millimetres)
            : new Length(DepthAt(new Duration(wall + pulse.Microseconds), speed, separation).Millimetres - thickness.Millimetres);
    }
}
