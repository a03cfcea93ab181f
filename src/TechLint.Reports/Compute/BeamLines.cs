using System.Globalization;
using TechLint.Ultrasonics.Drifts;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Reports.Compute;

/// <summary>What a study adds to a beam, for people: bounces, rock, temperature, and the table of delays where asked for.</summary>
internal static class BeamLines
{
    public static void Write(TextWriter output, BeamStudy beam, ComputeParts parts)
    {
        foreach (var law in beam.Laws)
        {
            foreach (var leg in law.Legs.Where(leg => leg.IsModeConverted)) Line(output, Converted(law, leg));
        }

        Rock(output, beam);
        if (beam.Temperature is { } temperature)
        {
            Shift(output, "permitted difference of block and part", temperature.Permitted, temperature.NotComputed);
            if (temperature.OverSurface is not null) Shift(output, "surface temperature", temperature.OverSurface, temperature.SurfaceNotComputed);
        }

        if (parts.Delays && beam.Laws.Length > 0) Delays(output, beam);
    }

    private static string Converted(LawStudy law, LegStudy leg)
    {
        var bounce = law.Legs.First(one => one.Leg == leg.Leg - 1).Reflected;
        var other = bounce is { OtherAngle: { } angle } told ? $", the rest goes on as a {Words.Of(told.Other)} wave at {Number(angle.Degrees, 1)} deg" : "";
        return $"{Number(law.Angle.Degrees, 1)} deg: leg {leg.Leg.ToString(CultureInfo.InvariantCulture)} is mode-converted, the bounce before it keeps "
            + $"{(bounce is { } kept ? Number(kept.Kept.Percent, 1) : "-")} % of the energy{other}";
    }

    private static void Rock(TextWriter output, BeamStudy beam)
    {
        var worst = beam.Laws.Where(law => law.Rock?.AngleShift is not null).MaxBy(law => Math.Abs(law.Rock!.AngleShift!.Value.Degrees));
        if (worst?.Rock is { AngleShift: { } angle, ExitShift: { } exit, Squint: { } squint } && (angle.Degrees != 0 || squint.Degrees != 0))
        {
            Line(
                output,
                $"at full rock the {Number(worst.Angle.Degrees, 1)} deg law turns by {Number(angle.Degrees, 2)} deg, its exit point moves {Number(exit.Millimetres, 2)} mm, it squints "
                + $"{Number(squint.Degrees, 2)} deg");
        }
    }

    private static void Shift(TextWriter output, string what, AngleShift? shift, string? reason)
    {
        if ((reason ?? Words.NotRefracted(shift)) is { } told) Line(output, $"temperature shift by the {what} not computed: {told}");
        else if (shift is { } known)
        {
            Line(
                output,
                $"temperature shift by the {what}: {Number(known.Shift.Degrees, 2)} deg at {Number(known.Law.Degrees, 1)} deg, {(known.PartDrifts ? "wedge and part" : "wedge alone")} drifting "
                + $"{Number(known.Drift.Kelvins, 1)} K");
        }
    }

    private static void Delays(TextWriter output, BeamStudy beam)
    {
        Line(output, "delays in ns, by element:");
        var most = beam.Laws.Max(law => law.Focal?.Elements.Length ?? 0);
        List<string> heads = ["angle deg", "first element"];
        for (var element = 1; element <= most; element++) heads.Add(element.ToString(CultureInfo.InvariantCulture));
        var table = new Table([.. heads]);
        foreach (var law in beam.Laws)
        {
            if (law.Focal is not { NotComputed: null } focal) continue;
            List<string> row = [Number(law.Angle.Degrees, 1), law.FirstElement.ToString(CultureInfo.InvariantCulture)];
            foreach (var element in focal.Elements) row.Add(Number(element.Delay.Seconds * BeamJson.NanosecondsPerSecond, 1));
            while (row.Count < heads.Count) row.Add("-");
            table.Add([.. row]);
        }

        if (most > 0) table.Write(output, "        ");
        foreach (var law in beam.Laws)
        {
            if (law.Focal?.NotComputed is { } reason) Line(output, $"{Number(law.Angle.Degrees, 1)} deg has no delays: {reason}");
        }
    }

    private static string Number(double value, int digits) =>
        Digits.Rounded(value, digits) is { } shown ? shown.ToString("F" + digits.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture) : "-";

    private static void Line(TextWriter output, string text) => output.Write("      " + text + "\n");
}
