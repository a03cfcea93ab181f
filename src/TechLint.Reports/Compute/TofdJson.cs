using System.Text.Json;
using TechLint.Ultrasonics.Studies;
using TechLint.Ultrasonics.Tofd;

namespace TechLint.Reports.Compute;

/// <summary>The rest of a diffraction pair's figures, and the depth that several pairs cover together.</summary>
internal static class TofdJson
{
    public static void Write(Utf8JsonWriter writer, TofdDetail pair)
    {
        writer.Number("converted-back-wall-time", pair.ConvertedBackWallTime?.Microseconds);
        if (pair.ConvertedBackWallTime is null)
        {
            writer.WriteString("converted-not-computed", pair.TransverseBackWallTime is null ? "a speed of sound is not known" : "every way over the back wall meets the bore");
        }

        writer.Number("transverse-back-wall-time", pair.TransverseBackWallTime?.Microseconds);
        writer.Number("mid-plane-y", pair.MidPlaneY.Millimetres);
        writer.Number("stated-separation", pair.StatedSeparation?.Millimetres);
        writer.Number("separation-difference", pair.SeparationDifference?.Millimetres);
        Stretch(writer, "covered-depth-6-db", pair.Covered6);
        Stretch(writer, "covered-depth-12-db", pair.Covered12);
        Stretch(writer, "covered-depth-20-db", pair.Covered20);
        Stretch(writer, "covered-depth-in-zone", pair.CoveredInZone);
        writer.Number("back-wall-dead-zone-counted-back", pair.BackWallDeadZoneCountedBack.Millimetres);
        writer.WriteStartArray("dead-zones-off-centre");
        foreach (var place in pair.OffCentre)
        {
            writer.WriteStartObject();
            writer.Number("y", place.Y.Millimetres);
            writer.Number("near-surface", place.NearSurface.Millimetres);
            writer.Number("back-wall", place.BackWall.Millimetres);
            if (!double.IsFinite(place.BackWall.Millimetres)) writer.WriteString("not-computed", "the place does not lie between the index points");
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteStartObject("spatial-resolution");
        writer.Number("from", pair.ResolutionFrom.Millimetres);
        writer.Number("to", pair.ResolutionTo.Millimetres);
        writer.WriteEndObject();
        writer.Number("centreline-depth-error", pair.CentrelineDepthError.Millimetres);
    }

    /// <summary>Only where the case has a pair; depths from the outer surface.</summary>
    public static void WriteDepths(Utf8JsonWriter writer, CaseStudy study)
    {
        if (DepthsCovered.Of(study) is not { } depths) return;
        writer.WriteStartObject("tofd-depths");
        Stretches(writer, "depth-covered", depths.Covered);
        Stretches(writer, "depth-unseen", depths.Unseen);
        writer.WriteStartArray("recommended-zones");
        foreach (var zone in TofdZones.Recommended(study.Thickness))
        {
            writer.WriteStartObject();
            writer.Number("from", zone.From.Fraction * study.Thickness.Millimetres);
            writer.Number("to", zone.To.Fraction * study.Thickness.Millimetres);
            writer.Number("intersection-depth", zone.Crossing.Fraction * study.Thickness.Millimetres);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteEndObject();
    }

    private static void Stretches(Utf8JsonWriter writer, string name, IEnumerable<CoveredDepth> stretches)
    {
        writer.WriteStartArray(name);
        foreach (var stretch in stretches)
        {
            writer.WriteStartObject();
            writer.Number("from", stretch.From.Millimetres);
            writer.Number("to", stretch.To.Millimetres);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    private static void Stretch(Utf8JsonWriter writer, string name, CoveredDepth depth)
    {
        writer.WriteStartObject(name);
        writer.Number("from", depth.From.Millimetres);
        writer.Number("to", depth.To.Millimetres);
        writer.WriteEndObject();
    }
}
