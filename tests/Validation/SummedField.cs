using System.Numerics;
using TechLint.Tests.Unit.Ultrasonics;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Fields;

namespace TechLint.Tests.Validation;

/// <summary>
/// A field by brute force, with no ray and no Snell's law: line sources over the elements sound the interface point by point, and each point of the interface sends on a
/// cylindrical wave (Kirchhoff's integral in two dimensions, <c>√(k/2πr) cos θ e^(ikr)</c>). Refraction, spreading and the elements' pattern come out of the sum. A second such sum
/// over the bore makes leg 2. Several laws at once, since their sources stand at the same places. mm, rad, µs, MHz.
/// </summary>
internal sealed class SummedField
{
    public const double Wedge = Given.Polystyrene / 1000;
    public const double Part = Given.Transverse / 1000;

    private readonly IReadOnlyList<Point> surface;
    private readonly double[] frequencies;

    /// <summary>By law, line and point.</summary>
    private readonly Complex[][][] sounded;

    /// <param name="sources">Places of line sources, z down: negative in the wedge.</param>
    /// <param name="fired">When each is fired, by law and source.</param>
    /// <param name="surface">The interface.</param>
    /// <param name="frequencies">Lines of the pulse.</param>
    public SummedField(IReadOnlyList<(double X, double Z)> sources, double[][] fired, IReadOnlyList<Point> surface, double[] frequencies)
        : this(surface, frequencies, Empty(fired.Length, frequencies.Length, surface.Count))
    {
        for (var line = 0; line < frequencies.Length; line++)
        {
            var turn = 2 * Math.PI * frequencies[line];
            var starts = fired.Select(law => law.Select(time => Complex.FromPolarCoordinates(1, turn * time)).ToArray()).ToArray();
            for (var index = 0; index < surface.Count; index++)
            {
                var point = surface[index];
                for (var source = 0; source < sources.Count; source++)
                {
                    var (dx, dz) = (point.X - sources[source].X, point.Z - sources[source].Z);
                    var distance = double.Hypot(dx, dz);
                    var sine = ((dx * point.NormalZ) - (dz * point.NormalX)) / distance * Part / Wedge;
                    var wave = Complex.FromPolarCoordinates(1 / Math.Sqrt(distance), turn * distance / Wedge) * Transmitted(sine);
                    for (var law = 0; law < starts.Length; law++) sounded[law][line][index] += wave * starts[law][source];
                }
            }
        }
    }

    private SummedField(IReadOnlyList<Point> surface, double[] frequencies, Complex[][][] sounded) => (this.surface, this.frequencies, this.sounded) = (surface, frequencies, sounded);

    /// <summary>At a place, by law and line.</summary>
    public Complex[][] At(double x, double z, int? only = null)
    {
        var answer = sounded.Select(_ => new Complex[frequencies.Length]).ToArray();
        for (var line = 0; line < frequencies.Length; line++)
        {
            var number = 2 * Math.PI * frequencies[line] / Part;
            for (var index = 0; index < surface.Count; index++)
            {
                var point = surface[index];
                var (dx, dz) = (x - point.X, z - point.Z);
                var distance = double.Hypot(dx, dz);
                var cosine = ((point.NormalX * dx) + (point.NormalZ * dz)) / distance;
                var wave = Complex.FromPolarCoordinates(cosine * Math.Sqrt(number / (2 * Math.PI * distance)) * point.Step, number * distance);
                if (only is { } one) answer[one][line] += sounded[one][line][index] * wave;
                else for (var law = 0; law < answer.Length; law++) answer[law][line] += sounded[law][line][index] * wave;
            }
        }

        return answer;
    }

    /// <summary>What another surface receives and sends on whole.</summary>
    public SummedField Mirrored(IReadOnlyList<Point> mirror)
    {
        var received = Empty(sounded.Length, frequencies.Length, mirror.Count);
        for (var index = 0; index < mirror.Count; index++)
        {
            var here = At(mirror[index].X, mirror[index].Z);
            for (var law = 0; law < here.Length; law++)
            {
                for (var line = 0; line < frequencies.Length; line++) received[law][line][index] = here[law][line];
            }
        }

        return new SummedField(mirror, frequencies, received);
    }

    /// <summary>Points along the plane z = 0, normals down.</summary>
    public static Point[] Plane(double from, double to, double step) =>
        [.. Enumerable.Range(0, (int)((to - from) / step)).Select(index => new Point(from + (step * (index + 0.5)), 0, 0, 1, step))];

    /// <summary>Points on a circle about (0, axis); normals towards the axis, or away from it.</summary>
    public static Point[] Circle(double axis, double radius, double from, double to, double step, bool outwards)
    {
        var count = (int)((to - from) * radius / step);
        return [.. Enumerable.Range(0, count).Select(index =>
        {
            var (sine, cosine) = Math.SinCos(from + ((index + 0.5) * step / radius));
            var sign = outwards ? 1 : -1;
            return new Point(radius * sine, axis - (radius * cosine), sign * sine, -sign * cosine, step);
        })];
    }

    private static Complex[][][] Empty(int laws, int lines, int points) =>
        [.. Enumerable.Range(0, laws).Select(_ => Enumerable.Range(0, lines).Select(_ => new Complex[points]).ToArray())];

    /// <summary>
    /// Checked against the boundary conditions elsewhere. Beyond grazing nothing: there it has the pole of the surface wave, which is no part of the field that is summed. It is faded out towards grazing,
    /// so that the end sends nothing of its own.
    /// </summary>
    private static Complex Transmitted(double sine)
    {
        if (Math.Abs(sine) >= 1) return 0;
        var value = SlipContact.Transmission(
            Math.Abs(sine), Densities.OfWedge("cross-linked-polystyrene"), Wedge, Densities.TransverseOfWedge("cross-linked-polystyrene", Wedge), Densities.Steel,
            Given.Longitudinal / 1000, Given.Transverse / 1000, Wave.Transverse);
        var fade = Math.Min(1, (1 - Math.Abs(sine)) / Fading);
        return (sine < 0 ? -value : value) * Math.Pow(Math.Sin(Math.PI / 2 * fade), 2);
    }

    /// <summary>Of the sine before grazing: beyond 80 deg.</summary>
    private const double Fading = 0.015;

    /// <param name="X">mm.</param>
    /// <param name="Z">mm, down.</param>
    /// <param name="NormalX">Of the way on.</param>
    /// <param name="NormalZ">Of the way on.</param>
    /// <param name="Step">How much of the surface it stands for, mm.</param>
    internal readonly record struct Point(double X, double Z, double NormalX, double NormalZ, double Step);
}
