using TechLint.Ultrasonics.Examinations;

namespace TechLint.Ultrasonics.Imaging;

/// <summary>
/// The predicted sensitivity of an image over its region: at each node of a grid, the amplitude that an ideal point would give in the image.
/// </summary>
/// <remarks>
/// Delay-and-sum brings every element pair into phase at the point, so amplitudes add: <c>A = Σt at × Σr ar</c>, and the sum over pairs is the product
/// of the two sums (computed; full-matrix capture with the total focusing method: Holmes, Drinkwater, Wilcox, NDT &amp; E Int. 38 (2005) 701, from memory). One
/// element's share is <c>a = D / √r</c>: its directivity D in the wedge, and cylindrical spreading in the plane of incidence over
/// <c>r = Σ sᵢ vᵢ / v₁</c>, the path that spreads alike across interfaces near the normal (paraxial ray tube). An element without a real ray to the point
/// gives nothing. Left out, as for the laws: transmission at the sole, reflection and conversion at the mirrors (a way that converts weakly looks
/// as good as one that converts well), attenuation, spreading across the plane, the reflector's own directivity. Figures mean something against the best of the
/// same image only.
/// Nodes lie half a wavelength of the slowest wave apart or farther: no more than <see cref="MostAcross"/> by <see cref="MostDown"/>.
/// In between it is bilinear, and a cell with a corner that no ray reaches counts as not reached.
/// </remarks>
internal sealed class SensitivityMap
{
    public const int MostAcross = 64;
    public const int MostDown = 32;

    /// <summary>Nodes per shortest wavelength, where the region is small enough.</summary>
    private const double NodesPerWavelength = 2;

    private readonly double[] values;
    private readonly int across;
    private readonly int down;

    private SensitivityMap(ImageGeometry image, double[] values, int across, int down)
    {
        (Region, this.values, this.across, this.down) = (image.Region, values, across, down);
        for (var index = 0; index < values.Length; index++)
        {
            if (values[index] > Best) (Best, BestAt) = (values[index], PlaceOf(index));
        }
    }

    public (double FromY, double ToY, double FromZ, double ToZ) Region { get; }

    /// <summary>0 where no point of the region is reached.</summary>
    public double Best { get; }

    /// <summary>y and z of the best node; the first one in rows from the top where several are equal.</summary>
    public (double Y, double Z) BestAt { get; }

    public static SensitivityMap Of(ImageGeometry image)
    {
        var (fromY, toY, fromZ, toZ) = image.Region;
        var step = image.ShortestWavelength / NodesPerWavelength;
        var columns = Nodes(toY - fromY, step, MostAcross);
        var rows = Nodes(toZ - fromZ, step, MostDown);
        var sent = Sums(image, image.Transmit, image.TransmitCritical, columns, rows);
        var received = image.IsOneWay ? sent : Sums(image, image.Receive, image.ReceiveCritical, columns, rows);
        var products = new double[columns * rows];
        var window = image.Beam.PathWindow;
        for (var index = 0; index < products.Length; index++)
        {
            // What the instrument records counts there and back: half the way of the mean element pair.
            var path = (sent[index].MeanPath + received[index].MeanPath) / 2;
            var isRecorded = !(path < window?.From?.Millimetres) && !(path > window?.To?.Millimetres);
            products[index] = isRecorded ? sent[index].Amplitude * received[index].Amplitude : 0;
        }

        return new SensitivityMap(image, products, columns, rows);
    }

    /// <summary>Between the nodes; 0 outside the region and beside what no ray reaches.</summary>
    public double At(double y, double z)
    {
        var column = (y - Region.FromY) / (Region.ToY - Region.FromY) * (across - 1);
        var row = (z - Region.FromZ) / (Region.ToZ - Region.FromZ) * (down - 1);
        if (!(column >= 0 && column <= across - 1 && row >= 0 && row <= down - 1)) return 0;
        var (left, top) = (Math.Min((int)column, across - 2), Math.Min((int)row, down - 2));
        var index = (top * across) + left;
        var (a, b, c, d) = (values[index], values[index + 1], values[index + across], values[index + across + 1]);
        if (a == 0 || b == 0 || c == 0 || d == 0) return 0;
        var (x, w) = (column - left, row - top);
        return ((1 - w) * (((1 - x) * a) + (x * b))) + (w * (((1 - x) * c) + (x * d)));
    }

    /// <summary>Share (0 to 1) of the region where the sensitivity is at least a given one: by cells, each looked at in its sixteen parts.</summary>
    public double ShareAbove(double least)
    {
        if (!(Best > 0)) return 0;
        var (columns, rows) = ((across - 1) * Parts, (down - 1) * Parts);
        var seen = 0;
        for (var row = 0; row < rows; row++)
        {
            var z = Region.FromZ + ((row + 0.5) * (Region.ToZ - Region.FromZ) / rows);
            for (var column = 0; column < columns; column++)
            {
                if (At(Region.FromY + ((column + 0.5) * (Region.ToY - Region.FromY) / columns), z) >= least) seen++;
            }
        }

        return (double)seen / ((long)columns * rows);
    }

    private const int Parts = 4;

    private static int Nodes(double extent, double step, int most) => (int)Math.Clamp(Math.Ceiling(extent / step) + 1, 2, most);

    private (double Y, double Z) PlaceOf(int index) => (
        Region.FromY + (index % across * (Region.ToY - Region.FromY) / (across - 1)),
        Region.FromZ + (index / across * (Region.ToZ - Region.FromZ) / (down - 1)));

    /// <summary>Σ a over the elements at every node, rows from the top, and the mean path in the part of those that reach it.</summary>
    private static (double Amplitude, double MeanPath)[] Sums(ImageGeometry image, Way way, double critical, int across, int down)
    {
        var sums = new (double Amplitude, double MeanPath)[across * down];
        var counts = new int[across * down];
        var fan = RayFan.Of(way, critical);
        var rays = new ElementRay?[image.Elements.Length][];
        for (var index = 0; index < rays.Length; index++) rays[index] = fan.From(image, way, image.Elements[index]);
        var arrivals = new Arrival[fan.Angles.Length];
        var (fromY, toY, fromZ, toZ) = image.Region;
        var spacing = (toY - fromY) / (across - 1);
        var (fromForward, toForward) = image.Toward > 0 ? (fromY, toY) : (-toY, -fromY);
        for (var row = 0; row < down; row++)
        {
            var z = row == down - 1 ? toZ : fromZ + (row * (toZ - fromZ) / (down - 1));
            for (var angle = 0; angle < arrivals.Length; angle++) arrivals[angle] = way.At(fan.Angles[angle], z);
            foreach (var element in rays)
            {
                var before = double.NaN;
                for (var angle = 0; angle < arrivals.Length; angle++)
                {
                    // The place grows with the angle: what ends before the region or starts beyond it is left out.
                    var now = element[angle] is { } ray ? image.ForwardOf(ray.ExitArc, arrivals[angle].Advance) : double.NaN;
                    if (before > toForward) break;
                    if (now >= fromForward && !double.IsNaN(before) && fan.Joins[angle - 1])
                    {
                        Add(
                            Reach.Of(image, element[angle - 1]!.Value, arrivals[angle - 1], way.FirstSpeed),
                            Reach.Of(image, element[angle]!.Value, arrivals[angle], way.FirstSpeed), fromY, spacing, row, sums, counts, across);
                    }

                    before = now;
                }
            }
        }

        for (var index = 0; index < sums.Length; index++)
        {
            if (counts[index] > 0) sums[index].MeanPath /= counts[index];
        }

        return sums;
    }

    /// <summary>Nodes between two neighbouring rays; the end belongs to the next pair.</summary>
    private static void Add(
        Reach from, Reach to, double fromY, double spacing, int row, (double Amplitude, double MeanPath)[] sums, int[] counts, int across)
    {
        var (start, end) = ((from.Y - fromY) / spacing, (to.Y - fromY) / spacing);
        var (low, high) = start < end ? (start, end) : (end, start);
        for (var column = Math.Max(0, (int)Math.Ceiling(Math.Min(low, across))); column < across && column < high; column++)
        {
            var share = (column - start) / (end - start);
            var index = (row * across) + column;
            sums[index].Amplitude += from.Amplitude + ((to.Amplitude - from.Amplitude) * share);
            sums[index].MeanPath += from.Path + ((to.Path - from.Path) * share);
            counts[index]++;
        }
    }

    /// <summary>Where one ray meets a row, what it brings there, and its path in the part.</summary>
    private readonly record struct Reach(double Y, double Amplitude, double Path)
    {
        public static Reach Of(ImageGeometry image, ElementRay ray, Arrival arrival, double firstSpeed)
        {
            var spread = (ray.WedgePath * image.WedgeSpeed / firstSpeed) + arrival.Spread;
            return new Reach(
                image.Toward * image.ForwardOf(ray.ExitArc, arrival.Advance), ray.Directivity / Math.Sqrt(spread), arrival.Path);
        }
    }
}
