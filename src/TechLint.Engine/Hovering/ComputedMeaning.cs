using System.Globalization;
using TechLint.Model.Documents;
using TechLint.Model.Examinations;
using TechLint.Model.Techniques;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Engine;

/// <summary>What a number of a technique does: exit points, skips, wavelengths, greatest speed, coverage. From the same studies as the findings.</summary>
internal static class ComputedMeaning
{
    /// <param name="at">The model path of the number.</param>
    public static IEnumerable<string> Of(Snapshot snapshot, string path, string at)
    {
        var parts = at.Split('/');
        if (parts is not ["setups", var setupId, ..] && at is not "component/thickness" && !at.StartsWith("component/thickness/", StringComparison.Ordinal)) return [];
        if (snapshot.LinkedOf(path) is not { } linked) return [];
        if (parts[0] != "setups") return linked.Examinations.SelectMany(link => OfThickness(snapshot, link));
        setupId = parts[1];
        var found = linked.Examinations.FirstOrDefault(link => link.Setups.Any(setup => setup.Id.Value == setupId));
        if (found?.Examination is null) return [];
        var study = snapshot.StudyOf(found.Examination);
        return parts switch
        {
            [_, _, "probes", var station, ..] => OfProbe(study, setupId, station, parts[^1] == "index-offset"),
            [_, _, "beams", var beam, "aperture", ..] => OfBeam(study, setupId, beam).Concat(OfAperture(study, setupId, beam)),
            [_, _, "beams", var beam, ..] => OfBeam(study, setupId, beam),
            [_, _, "acquisition", ..] => OfAcquisition(study, setupId),
            [_, _, "for", "thickness", ..] => OfThickness(snapshot, found),
            _ => [],
        };
    }

    private static IEnumerable<string> OfThickness(Snapshot snapshot, ExaminationLink link)
    {
        if (link.Examination is null) yield break;
        var study = snapshot.StudyOf(link.Examination);
        yield return Coverage(study);
        foreach (var one in Ends(study))
        {
            foreach (var beam in one.Passes.SelectMany(pass => pass.Beams).Where(beam => beam.Laws.Length > 0)) yield return Skips(beam, one);
        }
    }

    private static IEnumerable<string> OfProbe(Study study, string setup, string station, bool isOffset)
    {
        var one = study.Cases[0];
        foreach (var pass in one.Passes.Where(pass => pass.Pass.Id == setup))
        {
            foreach (var beam in pass.Beams.Where(beam => beam.Beam.From?.ToString(CultureInfo.InvariantCulture) == station && beam.Laws.Length > 0))
            {
                var laws = beam.Laws.Where(law => law.Fault == LawFault.None).ToArray();
                if (laws.Length == 0) continue;
                yield return $"{beam.Beam.Id}: exit points {Mm(laws.Min(law => law.ExitBehindFront))} to {Mm(laws.Max(law => law.ExitBehindFront))} behind the front, "
                    + $"at y {Mm(laws.Min(law => law.ExitY))} to {Mm(laws.Max(law => law.ExitY))}";
            }

            foreach (var beam in pass.Beams.Where(beam => beam.Tofd is not null))
            {
                if (beam.Beam.Transmit?.ToString(CultureInfo.InvariantCulture) == station || beam.Beam.Receive?.ToString(CultureInfo.InvariantCulture) == station) yield return Pair(beam);
            }

            foreach (var beam in pass.Beams.Where(beam => beam.Tandem is not null))
            {
                if (beam.Beam.Transmit?.ToString(CultureInfo.InvariantCulture) == station || beam.Beam.Receive?.ToString(CultureInfo.InvariantCulture) == station) yield return Tandem(beam);
            }
        }

        if (isOffset) yield return Coverage(study);
    }

    private static IEnumerable<string> OfBeam(Study study, string setup, string id)
    {
        foreach (var one in Ends(study))
        {
            foreach (var beam in one.Passes.Where(pass => pass.Pass.Id == setup).SelectMany(pass => pass.Beams).Where(beam => beam.Beam.Id == id))
            {
                if (beam.Tofd is not null)
                {
                    yield return $"at {Mm(one.Thickness)}: {Pair(beam)}";
                    continue;
                }

                if (beam.Tandem is not null) yield return $"at {Mm(one.Thickness)}: {Tandem(beam)}";
                var laws = beam.Laws.Where(law => law.Fault == LawFault.None).ToArray();
                if (laws.Length == 0) continue;
                yield return Skips(beam, one);
                if (!ReferenceEquals(one, study.Cases[0])) continue;
                yield return $"{laws.Length} laws, wavelength {Mm(beam.Wavelength ?? default, 2)}, near field from the exit point {Mm(laws.Min(law => law.NearField))} to {Mm(laws.Max(law => law.NearField))}";
            }
        }
    }

    private static IEnumerable<string> OfAperture(Study study, string setup, string id)
    {
        var laws = study.Cases[0].Passes.Where(pass => pass.Pass.Id == setup).SelectMany(pass => pass.Beams).Where(beam => beam.Beam.Id == id)
            .SelectMany(beam => beam.Laws).Where(law => law.Fault == LawFault.None).ToArray();
        if (laws.Length == 0) yield break;
        yield return $"active aperture {Mm(laws.Max(law => law.ActiveAperture), 2)}, as the part sees it {Mm(laws.Min(law => law.EffectiveAperture))} to {Mm(laws.Max(law => law.EffectiveAperture))}";
    }

    private static IEnumerable<string> OfAcquisition(Study study, string setup)
    {
        if (study.Cases[0].Passes.FirstOrDefault(pass => pass.Pass.Id == setup)?.Acquisition is not { } acquisition) yield break;
        if (acquisition.PulsesPerPosition is { } pulses) yield return $"{pulses} pulses at each position";
        if (acquisition.SpeedAtMost is { } speed) yield return $"greatest speed without losing lines: {Number(speed.MillimetresPerSecond, 1)} mm/s";
        if (acquisition.ScanLength is { } length) yield return $"scan length {Number(length.Millimetres, 0)} mm";
        if (acquisition.ScanTime is { } time) yield return $"time on the weld {Number(time.Seconds, 0)} s";
        if (acquisition.DataRate is { } rate) yield return $"data rate {Number(rate.MegabytesPerSecond, 2)} MB/s";
    }

    /// <summary>The thinnest and the thickest wall.</summary>
    internal static IEnumerable<CaseStudy> Ends(Study study)
    {
        var cases = study.Cases;
        yield return cases[0];
        if (cases.MaxBy(one => one.Thickness.Millimetres) is { } thickest && thickest.Thickness != cases[0].Thickness) yield return thickest;
    }

    private static string Skips(BeamStudy beam, CaseStudy one)
    {
        var laws = beam.Laws.Where(law => law.Fault == LawFault.None && law.Legs.Length > 0).ToArray();
        if (laws.Length == 0) return $"{beam.Beam.Id}: no law";
        var skips = $"{beam.Beam.Id} at {Mm(one.Thickness)}: half skip {Ends(1)}";
        return laws.Any(law => law.Legs.Length > 1) ? $"{skips}; full skip {Ends(2)}" : skips;

        string Ends(int leg)
        {
            var reach = laws.Where(law => law.Legs.Length >= leg).ToArray();
            return string.Join(" and ", new[] { reach[0], reach[^1] }.Distinct().Select(law =>
                $"{Number(law.Angle.Degrees, 1)} deg {Mm(new Length(Math.Abs(law.Legs[leg - 1].EndY.Millimetres - law.ExitY.Millimetres)))}"));
        }
    }

    private static string Pair(BeamStudy beam)
    {
        var pair = beam.Tofd!;
        return $"{beam.Beam.Id}: separation {Mm(pair.ProbeCentreSeparation)}, beams cross at {Mm(pair.IntersectionDepth)}, dead zones {Mm(pair.NearSurfaceDeadZone)} and {Mm(pair.BackWallDeadZone)}, "
            + $"covered depth {Mm(pair.CoveredFrom)} to {Mm(pair.CoveredTo)}";
    }

    private static string Tandem(BeamStudy beam)
    {
        var pair = beam.Tandem!;
        return $"{beam.Beam.Id}: spacing {Mm(pair.Spacing)}, {Mm(pair.SpacingForZone)} serves the middle of its zone, axes cross at {Mm(pair.CrossingDepth)}, "
            + $"serves {Mm(pair.ServedFrom)} to {Mm(pair.ServedTo)}";
    }

    internal static string Coverage(Study study)
    {
        var worst = study.Coverage;
        return worst.NotComputed is { } reason
            ? $"coverage is not computed: {reason}"
            : $"coverage at worst {Number(worst.Result.Volume.Percent, 1)} %, at {Mm(worst.Thickness)}";
    }

    internal static string Mm(Length length, int digits = 1) => $"{Number(length.Millimetres, digits)} mm";

    internal static string Number(double value, int digits) => double.IsFinite(value) ? Digits.Text(Digits.Rounded(value, digits) ?? 0) : "unknown";
}
