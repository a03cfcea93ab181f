using FluentAssertions;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Optimization;
using TechLint.Tests.Unit.Ultrasonics;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Imaging;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;
using Xunit;

namespace TechLint.Tests.Validation;

/// <summary>Total focusing against a general-purpose minimiser, a point-by-point sum of its own making, and published grid spacings.</summary>
public sealed class ImagingTests
{
    private const double Wall = 20;

    public static TheoryData<string> Grids => CheckValue.Ids("imaging-grid");

    /// <summary>A cheapest path, sought over the places on the surfaces without a word of Snell, takes the same time.</summary>
    [Theory]
    [InlineData("T-T", null, Surface.Outside)]
    [InlineData("TT-T", null, Surface.Outside)]
    [InlineData("LT-T", null, Surface.Outside)]
    [InlineData("LL-L", null, Surface.Outside)]
    [InlineData("TTT-T", null, Surface.Outside)]
    [InlineData("T-T", 300.0, Surface.Outside)]
    [InlineData("TT-T", 300.0, Surface.Outside)]
    [InlineData("LT-L", 300.0, Surface.Outside)]
    [InlineData("TT-T", 400.0, Surface.Inside)]
    [InlineData("LT-T", 400.0, Surface.Inside)]
    public void The_way_of_a_ray_takes_the_least_time(string path, double? diameter, Surface surface)
    {
        var image = Image(path, diameter, surface);
        var met = 0;
        foreach (var element in new[] { 0, 9, 31 })
        {
            foreach (var (y, z) in new[] { (-22.0, 6.0), (-8.0, 14.0), (0.0, 3.0), (5.0, 19.0) })
            {
                if (LeastTime.Of(image, image.Transmit, 0, image.Elements[element], y, z) is not { } ray) continue;
                met++;
                var least = Cheapest(image, path, image.Elements[element], y, z);
                ray.Time.Should().BeApproximately(least, 1e-11, $"element {element} to {y}, {z}: 0.01 ns");
                if (element != 9) continue;
                var where = diameter is { } round ? FormattableString.Invariant($", diameter {round} mm, {surface.ToString().ToLowerInvariant()}") : "";
                Checks.Record(
                    "imaging time", FormattableString.Invariant($"{path[..path.IndexOf('-', StringComparison.Ordinal)]} from element 10 to y {y}, z {z} mm{where}"), least * 1e9, ray.Time * 1e9,
                    0.01, "ns", "least time without Snell's law, MathNet.Numerics Nelder-Mead over every place crossed", Checks.Computed);
            }
        }

        met.Should().BeGreaterThan(3);
    }

    /// <summary>Every element to every point by a search of its own, amplitudes summed by the stated model.</summary>
    [Theory]
    [InlineData("T-T", false)]
    [InlineData("TT-T", false)]
    [InlineData("TT-TT", true)]
    [InlineData("L-L", false)]
    [InlineData("LL-LL", true)]
    [InlineData("L-TL", false)]
    public void The_reach_agrees_with_a_sum_over_every_element_and_point(string path, bool hasRoot)
    {
        var image = Image(path, null, Surface.Outside, hasRoot);
        var sight = new ImageSight(SensitivityMap.Of(image), -6);
        var brute = BruteReach(image, ImagingPath.TryParse(path)!, hasRoot);
        brute.Should().BeInRange(0.05, 0.999);

        // Nodes stand half a wavelength apart, and cells at an edge count as not reached.
        Checks.Record(
            "imaging reach", $"share of the region within 6 dB: {path}{(hasRoot ? ", over a root of 6 mm" : "")}", 100 * brute, 100 * sight.Reach, 2, "%",
            "every element to 81 × 43 points by bisection, amplitudes summed", Checks.Computed);
    }

    [Theory, MemberData(nameof(Grids))]
    public void A_published_grid_has_as_many_points_a_wavelength(string id)
    {
        var row = CheckValue.Of(id);
        var speeds = new SoundSpeeds("metal", new Speed(row.Inputs["wave"] == "L" ? row["speed"] : 5920), new Speed(row.Inputs["wave"] == "T" ? row["speed"] : 3240));
        var section = SectionOf(row.Inputs["wave"] == "L" ? "L-L" : "T-T", null, Surface.Outside, hasRoot: false);
        var probe = section.Pass.Probes[0] with { Transducer = Given.Array with { Frequency = new Frequency(row["frequency"]) } };
        var grid = Given.Mm(row["grid"]);
        var beam = section.Pass.Beams[0] with { Grid = grid };
        var examination = section.Examination with
        {
            Part = new Part(Curvature.Flat, speeds, speeds), Passes = [section.Pass with { Probes = [probe], Beams = [beam] }],
        };
        var (study, reason) = ImageWork.StudyOf(Given.Section(examination, Wall), beam);
        reason.Should().BeNull();
        row.Holds(study!.Wavelength.Millimetres / grid.Millimetres);
    }

    private static ImageGeometry Image(string path, double? diameter, Surface surface, bool hasRoot = false)
    {
        var section = SectionOf(path, diameter, surface, hasRoot);
        var (image, reason) = ImageGeometry.Of(section, section.Pass.Beams[0]);
        reason.Should().BeNull();
        return image!;
    }

    private static PassSection SectionOf(string path, double? diameter, Surface surface, bool hasRoot)
    {
        var beam = Given.Sector with
        {
            Scan = ScanKind.TotalFocusing, Angles = null, Aperture = null, PathWindow = null, ImagingPath = ImagingPath.TryParse(path),
            Region = new ImageRegion(Given.Mm(-20), Given.Mm(15), new Depth(10, IsShare: true), new Depth(100, IsShare: true)),
        };
        var wedge = diameter is { } outside
            ? Given.ArrayWedge with { ContourDiameter = Given.Mm(surface == Surface.Outside ? outside : outside - (2 * Wall)) }
            : Given.ArrayWedge;
        var examination = Given.Examination(
            Given.Pass(new(Given.ArrayProbe(offset: 15) with { Wedge = wedge }), beam) with { ScanningSurface = surface },
            diameter is null ? Curvature.Flat : Curvature.AcrossWeld);
        if (hasRoot) examination = examination with { Weld = examination.Weld with { Root = new Reinforcement(Given.Mm(6), Given.Mm(1), Given.Mm(0)) } };
        return Given.Section(examination, Wall, diameter);
    }

    private static double Cheapest(ImageGeometry image, string path, (double U, double Height) element, double y, double z)
    {
        var rays = image.Section.Rays;
        var legs = path[..path.IndexOf('-', StringComparison.Ordinal)];
        var centre = image.ForwardOf(0, 0);
        (double X, double Z) start;
        if (rays.IsCurved)
        {
            // The tangent plane under the sole's centre: forward along it, and out of the part.
            var turn = centre / rays.ScanRadius;
            var (sine, cosine) = Math.SinCos(turn);
            var foot = Place(rays.ScanRadius, rays.Bend, centre, 0);
            start = (foot.X + (element.U * cosine) + (rays.Bend * element.Height * sine), foot.Z + (rays.Bend * element.U * sine) - (element.Height * cosine));
        }
        else
        {
            start = (centre + element.U, -element.Height);
        }

        var goal = Place(rays.ScanRadius, rays.Bend, y, z);
        double Time(Vector<double> places)
        {
            var from = start;
            var time = 0.0;
            for (var leg = 0; leg <= legs.Length; leg++)
            {
                var to = leg == legs.Length ? goal : Place(rays.ScanRadius, rays.Bend, places[leg], (leg & 1) == 0 ? 0 : Wall);
                var speed = leg == 0 ? Given.Polystyrene : legs[leg - 1] == 'L' ? Given.Longitudinal : Given.Transverse;
                time += Math.Sqrt(((to.X - from.X) * (to.X - from.X)) + ((to.Z - from.Z) * (to.Z - from.Z))) / speed / 1000;
                from = to;
            }

            return time * 1e6;
        }

        var first = centre + element.U;
        var places = Vector<double>.Build.Dense(legs.Length, leg => first + ((y - first) * (leg + 0.5) / legs.Length));
        for (var round = 0; round < 4; round++) places = new NelderMeadSimplex(1e-13, 20_000).FindMinimum(ObjectiveFunction.Value(Time), places).MinimizingPoint;
        return Time(places) / 1e6;
    }

    /// <summary>Across under the weld centreline and down: the wall as a circle about the pipe's axis.</summary>
    private static (double X, double Z) Place(double radius, int bend, double y, double z)
    {
        if (bend == 0) return (y, z);
        var r = radius - (bend * z);
        return (r * Math.Sin(y / radius), bend * (radius - (r * Math.Cos(y / radius))));
    }

    private static double BruteReach(ImageGeometry image, ImagingPath path, bool hasRoot)
    {
        const int Across = 81;
        const int Down = 43;
        var (fromY, toY, fromZ, toZ) = image.Region;
        double[] down = [.. path.Transmit.Select(SpeedOf)];
        double[] up = [.. path.Receive.Select(SpeedOf).Reverse()];
        var values = new double[Across * Down];
        for (var index = 0; index < values.Length; index++)
        {
            var y = fromY + ((index % Across + 0.5) * (toY - fromY) / Across);
            var z = fromZ + ((index / Across + 0.5) * (toZ - fromZ) / Down);
            values[index] = image.Elements.Sum(element => Amplitude(element, down, y, z, hasRoot)) * image.Elements.Sum(element => Amplitude(element, up, y, z, hasRoot));
        }

        // The best place may lie on the region's edge: the centres of small cells miss it by less than the tolerance.
        return (double)values.Count(value => value >= values.Max() * Math.Pow(10, -6 / 20.0)) / values.Length;

        static double SpeedOf(Wave wave) => wave == Wave.Longitudinal ? Given.Longitudinal : Given.Transverse;
    }

    private static double Amplitude((double U, double Height) element, double[] speeds, double y, double z, bool hasRoot)
    {
        // The sole's front stands 15 mm left of the centreline; it is 34 mm long.
        var from = -15 - 17 + element.U;
        var depths = speeds.Select((_, leg) => leg < speeds.Length - 1 ? Wall : (leg & 1) == 0 ? z : Wall - z).ToArray();
        var least = speeds[0] == Given.Transverse ? 1 / Given.Longitudinal : 0;
        var (low, high) = (-1 / speeds.Max(), 1 / speeds.Max());
        double Run(double slowness, double speed, double height) => height * slowness * speed / Math.Sqrt(1 - (slowness * speed * slowness * speed));
        double End(double slowness) => from + Run(slowness, Given.Polystyrene, element.Height) + speeds.Zip(depths, (speed, depth) => Run(slowness, speed, depth)).Sum();
        for (var step = 0; step < 50; step++)
        {
            var middle = (low + high) / 2;
            if (End(middle) < y) low = middle;
            else high = middle;
        }

        if (Math.Abs(End(low) - y) > 1e-3 || Math.Abs(low) < least || Math.Abs(Math.Asin(low * speeds[0])) > 75 * Math.PI / 180) return 0;
        var place = from + Run(low, Given.Polystyrene, element.Height);
        if (place < -49 || place > -15) return 0;
        for (var leg = 0; leg + 1 < speeds.Length; leg++)
        {
            place += Run(low, speeds[leg], Wall);
            if (hasRoot && (leg & 1) == 0 && Math.Abs(place) <= 3) return 0;
        }

        double Length(double speed, double height) => height / Math.Sqrt(1 - (low * speed * low * speed));
        var spread = (Length(Given.Polystyrene, element.Height) * Given.Polystyrene) + speeds.Zip(depths, (speed, depth) => Length(speed, depth) * speed).Sum();
        var x = Math.PI * 0.45 * 5e3 / Given.Polystyrene * Math.Sin(Math.Asin(low * Given.Polystyrene) - (36 * Math.PI / 180));
        return (x == 0 ? 1 : Math.Sin(x) / x) / Math.Sqrt(spread / speeds[0]);
    }
}
