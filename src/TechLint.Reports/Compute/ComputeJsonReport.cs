using System.Text.Json;
using TechLint.Engine;
using TechLint.Ultrasonics.Fields;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Reports.Compute;

/// <summary>
/// What <c>compute --format json</c> gives. Lengths in mm, times in us, speeds of scanning in mm/s, angles in deg, at most four digits
/// behind the point. What could not be computed is null beside <c>not-computed</c>.
/// </summary>
public static class ComputeJsonReport
{
    public static void Write(TextWriter output, ComputedTechnique technique, ComputeParts? parts = null) => JsonWriting.Write(output, writer =>
    {
        writer.WriteStartObject();
        writer.WriteNumber("format", JsonReport.Format);
        writer.WriteString("technique", technique.Id);
        writer.WriteStartArray("setups");
        foreach (var setup in technique.Setups) WriteSetup(writer, setup, parts ?? ComputeParts.Usual);
        writer.WriteEndArray();
        writer.WriteEndObject();
    });

    private static void WriteSetup(Utf8JsonWriter writer, ComputedSetup setup, ComputeParts parts)
    {
        writer.WriteStartObject();
        writer.WriteString("id", setup.Id);
        if (setup.Pass is { } pass) writer.WriteNumber("pass", pass);
        else writer.WriteNull("pass");
        if (setup.NotComputed is not null)
        {
            writer.WriteNull("cases");
        }
        else
        {
            writer.WriteStartArray("cases");
            foreach (var study in setup.Cases) WriteCase(writer, study, setup, parts);
            writer.WriteEndArray();
        }

        Reason(writer, setup.NotComputed);
        writer.WriteEndObject();
    }

    private static void WriteCase(Utf8JsonWriter writer, CaseStudy study, ComputedSetup setup, ComputeParts parts)
    {
        writer.WriteStartObject();
        writer.Number("thickness", study.Thickness.Millimetres);
        writer.Number("outside-diameter", study.OutsideDiameter?.Millimetres);
        if (Words.PassOf(study, setup.Id) is { } pass)
        {
            writer.WriteStartArray("probes");
            foreach (var probe in pass.Probes) WriteProbe(writer, probe);
            writer.WriteEndArray();
            writer.WriteStartArray("beams");
            foreach (var beam in pass.Beams) WriteBeam(writer, beam, parts);
            writer.WriteEndArray();
            TofdJson.WriteDepths(writer, study);
            WriteCoverage(writer, setup, study, parts.FieldCoverage ? study.FieldCoverage : null);
            WriteAcquisition(writer, pass, study);
        }

        writer.WriteEndObject();
    }

    private static void WriteProbe(Utf8JsonWriter writer, ProbePlace probe)
    {
        writer.WriteStartObject();
        writer.WriteNumber("station", probe.Station);
        writer.WriteString("side", Words.Of(probe.Side));
        writer.Number("index-offset", probe.IndexOffset.Millimetres);
        writer.Number("front-y", probe.FrontY.Millimetres);
        writer.WriteStartObject("body");
        writer.Number("from-y", probe.BodyFromY.Millimetres);
        writer.Number("to-y", probe.BodyToY.Millimetres);
        writer.WriteEndObject();
        writer.Number("contact-gap", probe.ContactGap.Millimetres);
        writer.Number("rocking-angle", probe.RockingAngle.Degrees);
        if (!double.IsFinite(probe.ContactGap.Millimetres) || !double.IsFinite(probe.RockingAngle.Degrees)) Reason(writer, "the probe does not rest on this surface");
        writer.WriteEndObject();
    }

    private static void WriteBeam(Utf8JsonWriter writer, BeamStudy beam, ComputeParts parts)
    {
        writer.WriteStartObject();
        writer.WriteString("id", beam.Beam.Id);
        writer.WriteString("scan", Words.Of(beam.Beam.Scan));
        writer.Number("wavelength", beam.Wavelength?.Millimetres);
        if (beam.Tofd is { } pair)
        {
            WriteTofd(writer, pair);
            if (pair.Detail is { } detail) TofdJson.Write(writer, detail);
        }
        else if (beam.Image is { } image)
        {
            ImageReport.Write(writer, image, beam.Beam);
        }
        else if (beam.NotComputed is not null)
        {
            writer.WriteNull("laws");
            writer.WriteNull("temperature-shift");
            writer.WriteNull("surface-temperature-shift");
        }
        else
        {
            writer.WriteStartArray("laws");
            foreach (var law in beam.Laws) WriteLaw(writer, law, parts);
            writer.WriteEndArray();
            if (beam.Tandem is { } tandem) TandemReport.Write(writer, tandem);
            BeamJson.WriteTemperature(writer, beam.Temperature);
        }

        Reason(writer, Words.WhyNot(beam));
        writer.WriteEndObject();
    }

    private static void WriteLaw(Utf8JsonWriter writer, LawStudy law, ComputeParts parts)
    {
        writer.WriteStartObject();
        writer.Number("angle", law.Angle.Degrees);
        writer.Number("wedge-angle", law.WedgeAngle.Degrees);
        writer.Number("steering", law.Steering.Degrees);
        writer.Number("exit-behind-front", law.ExitBehindFront.Millimetres);
        writer.Number("exit-y", law.ExitY.Millimetres);
        writer.Number("active-aperture", law.ActiveAperture.Millimetres);
        writer.Number("effective-aperture", law.EffectiveAperture.Millimetres);
        writer.Number("near-field", law.NearField.Millimetres);
        writer.WriteStartArray("beam-width");
        foreach (var leg in law.Legs) writer.Number(leg.BeamWidth.Millimetres);
        writer.WriteEndArray();
        writer.WriteStartArray("legs");
        foreach (var leg in law.Legs)
        {
            writer.WriteStartObject();
            writer.Number("end-y", leg.EndY.Millimetres);
            writer.Number("end-z", leg.EndZ.Millimetres);
            writer.Number("path", leg.Path.Millimetres);
            writer.Number("incidence", leg.Incidence.Degrees);
            BeamJson.WriteLeg(writer, leg);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.Number("grating-lobe-angle", law.GratingLobeAngle?.Degrees);
        DualReport.Write(writer, law.Dual);
        FieldJson.WriteLaw(writer, law);
        Reason(writer, BeamJson.WriteLaw(writer, law, parts) ?? law.Dual?.NotComputed);
        writer.WriteEndObject();
    }

    private static void WriteTofd(Utf8JsonWriter writer, TofdStudy pair)
    {
        writer.Number("probe-centre-separation", pair.ProbeCentreSeparation.Millimetres);
        writer.Number("intersection-depth", pair.IntersectionDepth.Millimetres);
        writer.Number("lateral-wave-time", pair.LateralWaveTime.Microseconds);
        writer.Number("back-wall-time", pair.BackWallTime.Microseconds);
        writer.Number("near-surface-dead-zone", pair.NearSurfaceDeadZone.Millimetres);
        writer.Number("back-wall-dead-zone", pair.BackWallDeadZone.Millimetres);
        writer.WriteStartObject("covered-depth");
        writer.Number("from", pair.CoveredFrom.Millimetres);
        writer.Number("to", pair.CoveredTo.Millimetres);
        writer.WriteEndObject();
    }

    private static void WriteCoverage(Utf8JsonWriter writer, ComputedSetup setup, CaseStudy of, FieldCoverage? field)
    {
        var coverage = of.Coverage;
        var computed = coverage.NotComputed is null;
        writer.WriteStartObject("coverage");
        Shown(writer, "volume", coverage.Volume, computed);
        Shown(writer, "left", coverage.Left, computed);
        Shown(writer, "right", coverage.Right, computed);
        Shown(writer, "both-sides", coverage.BothSides, computed);
        FaceFigures.Write(writer, of.Faces);
        if (computed)
        {
            writer.WriteStartArray("unseen");
            foreach (var ring in coverage.Unseen) WriteRing(writer, ring);
            writer.WriteEndArray();
        }
        else
        {
            writer.WriteNull("unseen");
        }

        if (setup.Margin is { } margin) MarginReport.Write(writer, margin);
        if (setup.WithDrifts is { } drifted) DriftedCoverageReport.Write(writer, drifted);
        Reason(writer, coverage.NotComputed ?? of.Faces.NotComputed);
        FieldJson.WriteCoverage(writer, field);
        writer.WriteEndObject();
    }

    // Less than all is never shown as all.
    internal static void Shown(Utf8JsonWriter writer, string name, Share share, bool computed)
    {
        writer.WritePropertyName(name);
        if (computed && Digits.Apart(share.Percent, 100, 4) is { } shown) writer.WriteRawValue(Digits.Text(shown), skipInputValidation: true);
        else writer.WriteNullValue();
    }

    private static void WriteRing(Utf8JsonWriter writer, IEnumerable<SectionPlace> ring)
    {
        writer.WriteStartArray();
        foreach (var place in ring)
        {
            writer.WriteStartArray();
            writer.Number(place.Y.Millimetres);
            writer.Number(place.Z.Millimetres);
            writer.WriteEndArray();
        }

        writer.WriteEndArray();
    }

    private static void WriteAcquisition(Utf8JsonWriter writer, PassStudy pass, CaseStudy of)
    {
        var study = pass.Acquisition;
        writer.WriteStartObject("acquisition");
        if (study.PulsesPerPosition is { } pulses) writer.WriteNumber("pulses-per-position", pulses);
        else writer.WriteNull("pulses-per-position");
        writer.Number("speed-at-most", study.SpeedAtMost?.MillimetresPerSecond);
        writer.Number("scan-length", study.ScanLength?.Millimetres);
        writer.Number("scan-time", study.ScanTime?.Seconds);
        writer.Number("data-rate", study.DataRate?.MegabytesPerSecond);
        writer.Number("data-size", study.DataSize?.Megabytes);
        AcquisitionFigures.Write(writer, study, of);
        Reason(writer, Words.WhyNot(study, pass.Pass.Acquisition));
        writer.WriteEndObject();
    }

    private static void Reason(Utf8JsonWriter writer, string? reason)
    {
        if (reason is not null) writer.WriteString("not-computed", reason);
    }
}
