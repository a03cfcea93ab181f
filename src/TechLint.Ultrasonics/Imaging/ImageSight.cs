using TechLint.Ultrasonics.Coverage;

namespace TechLint.Ultrasonics.Imaging;

/// <summary>What a total-focusing image sees: the points of its region whose predicted sensitivity is within a stated drop of the image's best.</summary>
internal sealed class ImageSight : IPointSight
{
    private readonly double least;

    /// <param name="map">The image's sensitivity.</param>
    /// <param name="drop">dB, negative.</param>
    public ImageSight(SensitivityMap map, double drop)
    {
        Map = map;
        least = LeastOf(map, drop);
    }

    public SensitivityMap Map { get; }

    public double FromY => Map.Region.FromY;

    public double ToY => Map.Region.ToY;

    public double FromZ => Map.Region.FromZ;

    public double ToZ => Map.Region.ToZ;

    /// <summary>Share of the region that is seen, 0 to 1.</summary>
    public double Reach => Map.Best > 0 ? Map.ShareAbove(least) : 0;

    public bool Sees(double y, double z) => Map.At(y, z) is > 0 and var value && value >= least;

    private static double LeastOf(SensitivityMap map, double drop) => map.Best * Math.Pow(10, drop / 20);
}
