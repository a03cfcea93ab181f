using System.Globalization;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;
using TechLint.Ultrasonics.Tofd;

namespace TechLint.Reports.Compute;

/// <summary>The rest of a diffraction pair's figures as lines of text.</summary>
internal static class TofdText
{
    public static IEnumerable<string> Lines(TofdDetail pair, Func<Length, string> number)
    {
        if (pair is { ConvertedBackWallTime: { } converted, TransverseBackWallTime: { } transverse })
        {
            yield return $"back wall converted {Us(converted)} us, transverse {Us(transverse)} us";
        }

        yield return $"covered depth -6 dB {Stretch(pair.Covered6)}, -12 dB {Stretch(pair.Covered12)}, -20 dB {Stretch(pair.Covered20)} mm";
        var places = pair.OffCentre.Select(place => $"y {number(place.Y)}: {number(place.NearSurface)} and {number(place.BackWall)}");
        yield return $"dead zones off the middle, near surface and back wall, mm: {string.Join(", ", places)}";
        yield return $"spatial resolution {number(pair.ResolutionFrom)} mm at the upper end, {number(pair.ResolutionTo)} mm at the lower";
        if (pair.CentrelineDepthError.Millimetres != 0)
        {
            yield return $"mid-plane at y {number(pair.MidPlaneY)} mm: a tip on the weld centreline is read up to {number(pair.CentrelineDepthError)} mm too deep";
        }

        if (pair is { StatedSeparation: { } stated, SeparationDifference: { } difference })
        {
            yield return $"stated separation {number(stated)} mm, {number(difference)} mm from the computed one";
        }

        string Stretch(CoveredDepth depth) => $"{number(depth.From)}..{number(depth.To)}";
    }

    public static IEnumerable<string> Depths(CaseStudy study, Func<Length, string> number)
    {
        if (DepthsCovered.Of(study) is not { } depths) yield break;
        yield return $"diffraction pairs together cover depth {Joined(depths.Covered)} mm, leave {Joined(depths.Unseen)} mm";

        string Joined(IReadOnlyCollection<CoveredDepth> stretches) => stretches.Count == 0
            ? "no"
            : string.Join(", ", stretches.Select(stretch => $"{number(stretch.From)}..{number(stretch.To)}"));
    }

    private static string Us(Duration time) => time.Microseconds.ToString("0.000", CultureInfo.InvariantCulture);
}
