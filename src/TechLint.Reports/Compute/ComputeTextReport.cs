using System.Globalization;
using TechLint.Engine;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Reports.Compute;

/// <summary>What <c>compute</c> gives for people: one block a case, one table for probes, one for the laws of each beam.</summary>
public sealed class ComputeTextReport(TextWriter output, ComputeParts? printed = null)
{
    private const string NoNumber = "-";

    public void Write(ComputedTechnique technique)
    {
        Line($"technique {technique.Id}");
        foreach (var setup in technique.Setups)
        {
            Line(setup.Pass is { } pass ? string.Create(CultureInfo.InvariantCulture, $"\nsetup {setup.Id}, pass {pass}") : $"\nsetup {setup.Id}");
            if (setup.NotComputed is { } reason) Line($"  not computed: {reason}");
            foreach (var study in setup.Cases) Write(study, setup.Id);
            if (setup.Cases.IsEmpty) continue;
            if (setup.Margin is { } margin) Line("\n  " + MarginReport.Text(margin));
            if (setup.WithDrifts is { } drifted) Line("  " + DriftedCoverageReport.Text(drifted));
        }
    }

    private void Write(CaseStudy study, string setup)
    {
        var diameter = study.OutsideDiameter is { } outside ? $", outside diameter {Mm(outside)} mm" : "";
        Line($"\n  thickness {Mm(study.Thickness)} mm{diameter}");
        if (Words.PassOf(study, setup) is not { } pass) return;
        var probes = new Table("station", "side", "index offset mm", "front y mm", "body y mm", "contact gap mm", "rocks deg");
        foreach (var probe in pass.Probes)
        {
            probes.Add(
                probe.Station.ToString(CultureInfo.InvariantCulture), Words.Of(probe.Side), Mm(probe.IndexOffset), Mm(probe.FrontY),
                $"{Mm(probe.BodyFromY)}..{Mm(probe.BodyToY)}", Number(probe.ContactGap.Millimetres, 2), Number(probe.RockingAngle.Degrees, 2));
        }

        probes.Write(output, "    ");
        foreach (var beam in pass.Beams) Write(beam);
        foreach (var line in TofdText.Depths(study, Mm)) Line($"    {line}");
        Write(study.Coverage);
        foreach (var line in FieldText.Lines(printed is { FieldCoverage: true } ? study.FieldCoverage : null)) Line("    " + line);
        foreach (var line in FaceFigures.Lines(study.Faces)) Line("    " + line);
        Write(pass.Acquisition, pass.Pass.Acquisition);
        foreach (var line in AcquisitionFigures.Lines(pass.Acquisition, study)) Line("    " + line);
    }

    private void Write(BeamStudy beam)
    {
        var wavelength = beam.Wavelength is { } length ? $", wavelength {Number(length.Millimetres, 3)} mm" : "";
        Line($"    beam {beam.Beam.Id}: {Words.Of(beam.Beam.Scan)}{wavelength}");
        if (Words.WhyNot(beam) is { } reason) Line($"      not computed: {reason}");
        if (beam.Tofd is { } pair) Write(pair);
        if (beam.Image is { } image) foreach (var line in ImageReport.Lines(image, beam.Beam)) Line("      " + line);
        foreach (var line in beam.Tandem is { } tandem ? TandemReport.Lines(tandem, Mm) : []) Line($"      {line}");
        if (beam.Laws.Length > 0) Write(beam.Laws);
        foreach (var line in FieldText.Lines(beam.Laws)) Line("      " + line);
        BeamLines.Write(output, beam, printed ?? ComputeParts.Usual);
    }

    private void Write(IReadOnlyCollection<LawStudy> laws)
    {
        var legs = laws.Max(law => law.Legs.Length);
        List<string> heads =
        [
            "angle deg", "in wedge deg", "steering deg", "exit behind front mm", "exit y mm", "aperture mm", "effective mm", "near field mm",
            "grating lobe deg",
        ];
        for (var i = 1; i <= legs; i++)
        {
            heads.Add(string.Create(CultureInfo.InvariantCulture, $"leg {i} ends y, z mm"));
            heads.Add("path mm");
            heads.Add("width mm");
        }

        var table = new Table([.. heads]);
        foreach (var law in laws)
        {
            List<string> row =
            [
                Number(law.Angle.Degrees, 1), Number(law.WedgeAngle.Degrees, 1), Number(law.Steering.Degrees, 1), Mm(law.ExitBehindFront),
                Mm(law.ExitY), Mm(law.ActiveAperture), Mm(law.EffectiveAperture), Mm(law.NearField),
                law.GratingLobeAngle is { } lobe ? Number(lobe.Degrees, 1) : NoNumber,
            ];
            foreach (var leg in law.Legs) row.AddRange([$"{Mm(leg.EndY)}, {Mm(leg.EndZ)}", Mm(leg.Path), Mm(leg.BeamWidth)]);
            while (row.Count < heads.Count) row.Add(NoNumber);
            table.Add([.. row]);
        }

        table.Write(output, "      ");
        foreach (var law in laws)
        {
            if (law.Dual is { } dual) Line("      " + DualReport.Line(dual, Number(law.Angle.Degrees, 1)));
            if (Words.Of(law.Fault) is { } reason) Line($"      {Number(law.Angle.Degrees, 1)} deg not computed: {reason}");
        }
    }

    private void Write(TofdStudy pair)
    {
        Line($"      probe centre separation {Mm(pair.ProbeCentreSeparation)} mm, intersection depth {Mm(pair.IntersectionDepth)} mm");
        Line($"      lateral wave {Number(pair.LateralWaveTime.Microseconds, 3)} us, back wall {Number(pair.BackWallTime.Microseconds, 3)} us");
        Line($"      dead zones: near surface {Mm(pair.NearSurfaceDeadZone)} mm, back wall {Mm(pair.BackWallDeadZone)} mm");
        Line($"      covered depth {Mm(pair.CoveredFrom)}..{Mm(pair.CoveredTo)} mm");
        foreach (var line in pair.Detail is { } detail ? TofdText.Lines(detail, Mm) : []) Line($"      {line}");
    }

    private void Write(CoverageResult coverage)
    {
        if (coverage.NotComputed is { } reason)
        {
            Line($"    coverage not computed: {reason}");
            return;
        }

        Line(
            $"    coverage {Percent(coverage.Volume)}, from the left {Percent(coverage.Left)}, from the right {Percent(coverage.Right)}, "
            + $"from both sides {Percent(coverage.BothSides)}");
        foreach (var ring in coverage.Unseen)
        {
            if (ring.IsEmpty) continue;
            Line(
                $"      unseen: y {Mm(ring.Min(place => place.Y))}..{Mm(ring.Max(place => place.Y))} mm, "
                + $"z {Mm(ring.Min(place => place.Z))}..{Mm(ring.Max(place => place.Z))} mm");
        }
    }

    private void Write(AcquisitionStudy study, Acquisition? stated)
    {
        List<string> parts = [];
        if (study.PulsesPerPosition is { } pulses) parts.Add(string.Create(CultureInfo.InvariantCulture, $"{pulses} pulses a position"));
        Add(parts, "speed at most", study.SpeedAtMost?.MillimetresPerSecond, "mm/s");
        Add(parts, "scan length", study.ScanLength?.Millimetres, "mm");
        Add(parts, "scan time", study.ScanTime?.Seconds, "s");
        Add(parts, "data rate", study.DataRate?.MegabytesPerSecond, "MB/s");
        Add(parts, "data size", study.DataSize?.Megabytes, "MB");
        if (parts.Count > 0) Line($"    acquisition: {string.Join(", ", parts)}");
        if (Words.WhyNot(study, stated) is { } reason) Line($"    acquisition not {(parts.Count > 0 ? "fully " : "")}computed: {reason}");
    }

    private static void Add(List<string> parts, string name, double? value, string unit)
    {
        if (value is { } number) parts.Add($"{name} {Number(number, 1)} {unit}");
    }

    private static string Mm(Length length) => Number(length.Millimetres, 1);

    private static string Percent(Share share) => Digits.Apart(share.Percent, 100, 1) is { } shown ? Fixed(shown, 1) + " %" : NoNumber;

    private static string Number(double value, int digits) => Digits.Rounded(value, digits) is { } shown ? Fixed(shown, digits) : NoNumber;

    private static string Fixed(decimal value, int digits)
    {
        // As many digits in every row; more only where a value must be kept apart from its limit.
        var text = Digits.Text(value);
        var point = text.IndexOf('.', StringComparison.Ordinal);
        var present = point < 0 ? 0 : text.Length - point - 1;
        return digits <= present ? text : (point < 0 ? text + "." : text) + new string('0', digits - present);
    }

    private void Line(string text) => output.Write(text + "\n");
}
