using TechLint.Ultrasonics.Quantities;

namespace TechLint.Ultrasonics.Acquiring;

/// <summary>
/// An encoder knows its place in whole steps. A line is due at every increment and taken at the first step at or past its due place; the error
/// does not add up along the scan. With N steps an increment, lines lie regularly where N is whole; else the fraction of N, p/q in lowest terms,
/// brings a line up to (1 − 1/q) of a step too late, and neighbours lie floor(N) or ceil(N) steps apart (arithmetic of the steps; no published
/// source). Where N is no simple fraction q grows without end, and the error is one step.
/// </summary>
/// <param name="StepsPerIncrement">N.</param>
/// <param name="PositionErrorAtMost">Farthest that a line lies behind its due place.</param>
/// <param name="Increments">Least and greatest distance of neighbouring lines; the least is 0 where an increment is less than a step.</param>
internal sealed record EncoderGrid(Steps StepsPerIncrement, Length PositionErrorAtMost, Band<Length> Increments)
{
    /// <summary>Of a step: closer than this a count is whole, and a fraction is found. Decimal inputs are not exact in binary.</summary>
    private const double Rounding = 1e-7;

    /// <summary>Null where either is unknown or no distance.</summary>
    public static EncoderGrid? Of(EncoderResolution? resolution, Length? increment)
    {
        if (resolution is not { StepsPerMillimetre: > 0 } known || increment is not { Millimetres: > 0 } step) return null;
        var steps = known.StepsPerMillimetre * step.Millimetres;
        if (!double.IsFinite(steps)) return null;
        var whole = Math.Round(steps);
        if (Math.Abs(steps - whole) <= Rounding * Math.Max(1, steps) && whole > 0)
        {
            return new EncoderGrid(new Steps(whole), Length.Zero, new Band<Length>(step, step));
        }

        var late = 1 - (1 / Denominator(steps - Math.Floor(steps)));
        return new EncoderGrid(
            new Steps(steps), new Length(late / known.StepsPerMillimetre),
            new Band<Length>(new Length(Math.Floor(steps) / known.StepsPerMillimetre), new Length(Math.Ceiling(steps) / known.StepsPerMillimetre)));
    }

    /// <summary>q of a share p/q between 0 and 1, by continued fractions; infinite where none is found.</summary>
    private static double Denominator(double share)
    {
        var (before, last) = (0.0, 1.0);
        var rest = share;
        while (rest > Rounding && last < 1 / Rounding)
        {
            var inverse = 1 / rest;
            var part = Math.Floor(inverse + Rounding);
            (before, last) = (last, (part * last) + before);
            if (Math.Abs((share * last) - Math.Round(share * last)) <= Rounding * last) return last;
            rest = inverse - part;
        }

        return double.PositiveInfinity;
    }
}
