using System.Globalization;
using TechLint.Ultrasonics.Fields;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Reports.Compute;

/// <summary>What the field adds to a beam and to coverage, for people: one line a beam, one a case.</summary>
internal static class FieldText
{
    /// <summary>Half-angles in the part over the beam's laws, and the loudest of their nearest grating lobes; nothing where no law has a divergence.</summary>
    public static IEnumerable<string> Lines(IReadOnlyCollection<LawStudy> laws)
    {
        var known = laws.Select(law => law.Divergence).OfType<Divergence>().ToArray();
        if (known.Length == 0) yield break;
        var lobes = laws.Select(law => law.GratingLobeLevel).OfType<Level>().Select(level => level.Decibels).ToArray();
        var lobe = lobes.Length == 0 ? "" : $"; loudest grating lobe {Number(lobes.Max())} dB beside its main lobe";
        yield return $"divergence (half-angle): echo -6 dB {Range(known, one => one.Echo6)}, echo -20 dB {Range(known, one => one.Echo20)}, "
            + $"one-way -6 dB {Range(known, one => one.OneWay6)}, one-way -20 dB {Range(known, one => one.OneWay20)}"
            + lobe;
    }

    /// <param name="field">As asked for; null where it was not.</param>
    public static IEnumerable<string> Lines(FieldCoverage? field)
    {
        if (field is null) yield break;
        if (field.NotComputed is { } reason)
        {
            yield return $"simulated field: not computed: {reason}";
            yield break;
        }

        yield return $"within {Number(-field.Drop.Decibels)} dB of the loudest axis at equal path (simulated field): {Number(field.Within.Percent)} %, "
            + $"beside the beam's own laws alone {Number(field.WithinOwnLaws.Percent)} %";
    }

    private static string Range(IEnumerable<Divergence> laws, Func<Divergence, Angle?> half)
    {
        var values = laws.Select(half).OfType<Angle>().Select(angle => angle.Degrees).ToArray();
        if (values.Length == 0) return "-";
        var (least, most) = (Number(values.Min()), Number(values.Max()));
        return string.Equals(least, most, StringComparison.Ordinal) ? $"{least} deg" : $"{least}..{most} deg";
    }

    private static string Number(double value) => value.ToString("0.0", CultureInfo.InvariantCulture);
}
