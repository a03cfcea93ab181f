using System.Collections.Immutable;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Ultrasonics.Imaging;

/// <summary>Works out a total-focusing image at one case: for what is shown, and for coverage.</summary>
internal static class ImageWork
{
    /// <summary>What is shown, or why there is nothing.</summary>
    public static (ImageStudy? Study, string? NotComputed) StudyOf(PassSection section, Beam beam)
    {
        var (image, reason) = ImageGeometry.Of(section, beam);
        if (image is null) return (null, reason);
        var sight = new ImageSight(SensitivityMap.Of(image), section.Examination.ImageDrop.Decibels);
        return (new ImageStudy(
            image.Elements.Length, new Share(100 * sight.Reach), new Length(image.ShortestWavelength),
            Corners(image), sight.Map.Best > 0 ? Place(sight.Map.BestAt) : null), null);
    }

    /// <summary>An image as coverage takes it; null where it cannot be worked out.</summary>
    /// <param name="section">The pass at one case.</param>
    /// <param name="beam">The image.</param>
    /// <param name="probe">Whose.</param>
    /// <param name="error">mm; moves the probe away from the weld where positive.</param>
    /// <param name="skewError">rad.</param>
    public static Coverage.SidedSight? SightOf(PassSection section, Beam beam, MountedProbe probe, double error, double skewError) =>
        ImageGeometry.Of(section, beam, error, skewError).Image is { } image
            ? new Coverage.SidedSight(new ImageSight(SensitivityMap.Of(image), section.Examination.ImageDrop.Decibels), probe.Side)
            : null;

    private static ImmutableArray<ImageCorner> Corners(ImageGeometry image)
    {
        var (fromY, toY, fromZ, toZ) = image.Region;
        (double Y, double Z)[] places = [(fromY, fromZ), (toY, fromZ), (fromY, toZ), (toY, toZ)];
        var front = image.Toward * image.ForwardOf(image.Sole.HalfArc, 0);
        var far = places.MaxBy(place => ((place.Y - front) * (place.Y - front)) + (place.Z * place.Z));
        return
        [
            .. places.Select(place => new ImageCorner(
                Place(place), Opening(image, image.Transmit, image.TransmitCritical, place), Opening(image, image.Receive, image.ReceiveCritical, place), place == far)),
        ];
    }

    private static Angle? Opening(ImageGeometry image, Way way, double critical, (double Y, double Z) place)
    {
        // Rays to one point do not cross: the outermost elements that reach it have the outermost rays.
        var first = Array.FindIndex(image.Elements, element => IncidenceOf(element) is not null);
        if (first < 0) return null;
        var last = Array.FindLastIndex(image.Elements, element => IncidenceOf(element) is not null);
        return last > first ? Angle.FromRadians(Math.Abs(IncidenceOf(image.Elements[last])!.Value - IncidenceOf(image.Elements[first])!.Value)) : null;

        double? IncidenceOf((double U, double Height) element) =>
            LeastTime.Of(image, way, critical, element, place.Y, place.Z) is { } ray ? way.IncidenceAt(ray.Angle, place.Z) : null;
    }

    private static ImagePlace Place((double Y, double Z) place) => new(new Length(place.Y), new Length(place.Z));
}
