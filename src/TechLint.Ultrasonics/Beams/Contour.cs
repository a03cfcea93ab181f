namespace TechLint.Ultrasonics.Beams;

/// <summary>A ray in the plane of incidence: a place in mm (x forward along the contact plane, z down) and a unit direction.</summary>
internal readonly record struct PlaneRay(double X, double Z, double Dx, double Dz)
{
    public PlaneRay After(double path) => this with { X = X + (path * Dx), Z = Z + (path * Dz) };

    /// <summary>Twice the area between the ray's direction and the way to a place: the place's distance from the ray, signed.</summary>
    public double Beside(double x, double z) => (Dx * (z - Z)) - (Dz * (x - X));
}

/// <summary>A surface in the plane of incidence: a line or a circle, entered from above (z grows into the part). mm.</summary>
internal readonly struct Contour
{
    /// <summary>Rays that start on the surface by rounding.</summary>
    private const double Slack = 1e-9;

    private readonly double centreX;
    private readonly double centreZ;
    private readonly double radius;
    private readonly int bend;

    private Contour(double centreX, double centreZ, double radius, int bend)
    {
        this.centreX = centreX;
        this.centreZ = centreZ;
        this.radius = radius;
        this.bend = bend;
    }

    /// <summary>The contact plane itself.</summary>
    public static Contour Plane => new(0, 0, 0, 0);

    /// <summary>A plane parallel to it.</summary>
    public static Contour PlaneAt(double z) => new(0, z, 0, 0);

    /// <param name="x">Of the centre.</param>
    /// <param name="z">Of the centre.</param>
    /// <param name="radius">mm.</param>
    /// <param name="bend">+1 where its inside lies below (a part scanned from outside), −1 where its outside does.</param>
    public static Contour Circle(double x, double z, double radius, int bend) => new(x, z, radius, bend);

    /// <summary>A circle about the same centre.</summary>
    public Contour Concentric(double other) => new(centreX, centreZ, other, bend);

    /// <summary>Along a circle from above its centre (or below it, where its outside lies below), forward positive; along a plane from x = 0.</summary>
    public double ArcTo(double x, double z) => bend == 0 ? x : radius * Math.Atan2(x - centreX, bend * (centreZ - z));

    /// <summary>Where a ray from above enters; the normal points down, into what lies below.</summary>
    public bool TryEnter(PlaneRay ray, out double path, out double normalX, out double normalZ) => TryMeet(ray, bend, out path, out normalX, out normalZ);

    /// <summary>Where a ray from below comes back up to it.</summary>
    public bool TryLeave(PlaneRay ray, out double path, out double normalX, out double normalZ) => TryMeet(ray, -bend, out path, out normalX, out normalZ);

    private bool TryMeet(PlaneRay ray, int nearer, out double path, out double normalX, out double normalZ)
    {
        if (bend == 0)
        {
            (normalX, normalZ) = (0, 1);
            path = (centreZ - ray.Z) / ray.Dz;
            return path >= -Slack && double.IsFinite(path);
        }

        // |P + s d − C| = R, the nearer crossing where the circle is entered from outside.
        var (x, z) = (ray.X - centreX, ray.Z - centreZ);
        var along = (x * ray.Dx) + (z * ray.Dz);
        var square = (along * along) - ((x * x) + (z * z) - (radius * radius));
        var root = Math.Sqrt(Math.Max(0, square));
        path = -along - (nearer * root);
        (normalX, normalZ) = (-bend * (x + (path * ray.Dx)) / radius, -bend * (z + (path * ray.Dz)) / radius);
        return square >= 0 && path >= -Slack;
    }
}
