using System.Text.Json;
using TechLint.Ultrasonics.Faces;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Reports.Compute;

/// <summary>How the fusion faces are met: one entry for each face and each side that probes stand on.</summary>
internal static class FaceFigures
{
    private const string NoNumber = "-";

    public static void Write(Utf8JsonWriter writer, FaceStudy study)
    {
        if (study.NotComputed is not null)
        {
            writer.WriteNull("faces");
            return;
        }

        writer.WriteStartArray("faces");
        foreach (var face in study.Faces)
        {
            writer.WriteStartObject();
            writer.WriteString("face", Words.Of(face.Face));
            writer.WriteString("side", Words.Of(face.From));
            ComputeJsonReport.Shown(writer, "served", face.Served, computed: true);
            ComputeJsonReport.Shown(writer, "from-either", face.FromEither, computed: true);
            writer.WriteString("by", Of(face.By));
            WriteWorst(writer, face.Worst);
            writer.WriteStartArray("ways");
            foreach (var way in face.Ways)
            {
                writer.WriteStartObject();
                writer.WriteString("by", Of(way.Way));
                ComputeJsonReport.Shown(writer, "served", way.Share, computed: true);
                writer.WriteEndObject();
            }

            writer.WriteEndArray();
            writer.WriteStartArray("legs");
            foreach (var leg in face.Legs)
            {
                writer.WriteStartObject();
                writer.WriteNumber("leg", leg.Leg);
                ComputeJsonReport.Shown(writer, "served", leg.Share, computed: true);
                writer.WriteEndObject();
            }

            writer.WriteEndArray();
            writer.WriteStartArray("pieces");
            foreach (var piece in face.Pieces) WritePiece(writer, piece);
            writer.WriteEndArray();
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    public static IEnumerable<string> Lines(FaceStudy study)
    {
        if (study.NotComputed is { } reason)
        {
            yield return "fusion faces not computed: " + reason;
            yield break;
        }

        foreach (var face in study.Faces)
        {
            var worst = face.Worst is { } place
                ? $", worst at y {Number(place.Place.Y.Millimetres)}, z {Number(place.Place.Z.Millimetres)} mm: "
                    + (place.Incidence is { } incidence ? $"{Number(incidence.Degrees)} deg from the normal" : "no ray is seen there")
                : "";
            var ways = face.Ways.IsEmpty ? "" : " (" + string.Join(", ", face.Ways.Select(way => $"{Of(way.Way)} {Percent(way.Share)}")) + ")";
            yield return $"{Words.Of(face.Face)} fusion face from the {Words.Of(face.From)}: {Percent(face.Served)} served{ways}{worst}";
        }
    }

    private static void WritePiece(Utf8JsonWriter writer, FacePieceService piece)
    {
        writer.WriteStartObject();
        writer.Number("from-z", piece.From.Z.Millimetres);
        writer.Number("to-z", piece.To.Z.Millimetres);
        writer.Number("slope", piece.Slope.Degrees);
        ComputeJsonReport.Shown(writer, "served", piece.Served, computed: true);
        writer.WriteString("by", Of(piece.By));
        WriteWorst(writer, piece.Worst);
        writer.WriteEndObject();
    }

    /// <summary>Null where nothing is to be said of rays: no place unserved and none that a ray serves, or no ray seen at the worst place.</summary>
    private static void WriteWorst(Utf8JsonWriter writer, FacePlace? worst)
    {
        writer.Number("best-incidence", worst?.Incidence?.Degrees);
        writer.Number("worst-y", worst?.Place.Y.Millimetres);
        writer.Number("worst-z", worst?.Place.Z.Millimetres);
        if (worst is null) writer.WriteString("not-computed", "all of it is served, and none by a ray");
        else if (worst.Value.Incidence is null) writer.WriteString("not-computed", "no ray is seen there");
    }

    private static string Of(FaceWay way) => way switch
    {
        FaceWay.Beam => "beam",
        FaceWay.Tandem => "tandem",
        FaceWay.CornerEcho => "corner-echo",
        FaceWay.Tofd => "tofd",
        _ => "none",
    };

    private static string Percent(Share share) => Digits.Apart(share.Percent, 100, 1) is { } shown ? Digits.Text(shown) + " %" : NoNumber;

    private static string Number(double value) => Digits.Rounded(value, 1) is { } shown ? Digits.Text(shown) : NoNumber;
}
