using System.Text.Json;
using TechLint.Ultrasonics.Duals;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Reports.Compute;

/// <summary>What <c>compute</c> gives of a dual probe's law: depths below the scanning surface in mm, unfolded over the legs.</summary>
internal static class DualReport
{
    public static void Write(Utf8JsonWriter writer, DualStudy? dual)
    {
        if (dual is null) return;
        writer.Number("crossing-depth", dual.CrossingDepth?.Millimetres);
        if (dual is { OverlapFrom: { } from, OverlapTo: { } to })
        {
            writer.WriteStartObject("overlap");
            writer.Number("from", from.Millimetres);
            writer.Number("to", to.Millimetres);
            writer.WriteEndObject();
        }
        else
        {
            writer.WriteNull("overlap");
        }
    }

    public static string Line(DualStudy dual, string angle) =>
        $"{angle} deg: halves cross at depth {Mm(dual.CrossingDepth)}, both beams hold {Mm(dual.OverlapFrom)} to {Mm(dual.OverlapTo)}"
        + (dual.NotComputed is { } reason ? $" ({reason})" : "");

    private static string Mm(Length? depth) => Digits.Rounded(depth?.Millimetres ?? double.NaN, 1) is { } shown ? Digits.Text(shown) + " mm" : "-";
}
