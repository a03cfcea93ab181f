using System.Globalization;
using System.Text.Json;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Imaging;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Reports.Compute;

/// <summary>What <c>compute</c> gives of a total-focusing image.</summary>
internal static class ImageReport
{
    /// <summary>Lengths in mm, angles in deg, reach in percent of the region within the wall.</summary>
    public static void Write(Utf8JsonWriter writer, ImageStudy image, Beam beam)
    {
        writer.WriteString("imaging-path", beam.ImagingPath?.ToString());
        writer.WriteNumber("transmissions", image.Transmissions);
        writer.Number("reach", image.Reach.Percent);
        writer.Number("grid-per-wavelength", PerWavelength(image, beam));
        writer.WriteStartArray("opening-angles");
        foreach (var corner in image.Corners)
        {
            writer.WriteStartObject();
            writer.Number("y", corner.Place.Y.Millimetres);
            writer.Number("z", corner.Place.Z.Millimetres);
            writer.Number("transmit", corner.Transmit?.Degrees);
            writer.Number("receive", corner.Receive?.Degrees);
            writer.WriteBoolean("far", corner.IsFar);
            if (corner.Transmit is null || corner.Receive is null) writer.WriteString("not-computed", NotReached);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        if (image.BestAt is { } best)
        {
            writer.WriteStartObject("best-sensitivity-at");
            writer.Number("y", best.Y.Millimetres);
            writer.Number("z", best.Z.Millimetres);
            writer.WriteEndObject();
        }
        else
        {
            writer.WriteNull("best-sensitivity-at");
        }

        if (WhyNot(image, beam) is { } reason) writer.WriteString("not-computed", reason);
    }

    public static IEnumerable<string> Lines(ImageStudy image, Beam beam)
    {
        var grid = PerWavelength(image, beam) is { } points ? $", {Number(points)} points a wavelength" : "";
        yield return string.Create(
            CultureInfo.InvariantCulture, $"imaging path {beam.ImagingPath}, {image.Transmissions} transmissions, reach {Number(image.Reach.Percent)} % of the region{grid}");
        foreach (var corner in image.Corners)
        {
            var far = corner.IsFar ? " (far corner)" : "";
            yield return $"opening at {Of(corner.Place)}: transmit {Number(corner.Transmit?.Degrees)} deg, receive {Number(corner.Receive?.Degrees)} deg{far}";
        }

        if (image.BestAt is { } best) yield return $"best sensitivity at {Of(best)}";
        if (WhyNot(image, beam) is { } reason) yield return $"not computed: {reason}";
    }

    /// <summary>Points of the grid a wavelength; null where no grid is stated.</summary>
    private static double? PerWavelength(ImageStudy image, Beam beam) =>
        beam.Grid is { Millimetres: > 0 } grid ? image.Wavelength.Millimetres / grid.Millimetres : null;

    private const string NotReached = "fewer than two elements have a path to this corner";

    private static string? WhyNot(ImageStudy image, Beam beam) => image.BestAt is null ? "no element pair has a path to any point of the region"
        : PerWavelength(image, beam) is null ? "no grid is stated"
        : null;

    private static string Of(ImagePlace place) => $"y {Number(place.Y.Millimetres)}, z {Number(place.Z.Millimetres)} mm";

    private static string Number(double? value) => Digits.Rounded(value ?? double.NaN, 1) is { } shown ? Digits.Text(shown) : "-";
}
