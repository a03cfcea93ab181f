using FluentAssertions;
using MathNet.Numerics.Optimization;
using TechLint.Tests.Unit.Ultrasonics;
using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Delays;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Materials;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;
using Xunit;

namespace TechLint.Tests.Validation;

/// <summary>
/// Delays against least time found without Snell's law: the places where a way crosses sole, surface and bore are left free, and a minimiser or a brute sampling finds the
/// quickest. Places of elements, focal points and surfaces are worked out here again from the wedge's and the pipe's drawing.
/// </summary>
public sealed class DelayTests
{
    private const double Degree = Math.PI / 180;

    /// <summary>ns; golden section leaves a path's time good to far less.</summary>
    private const double Nanosecond = 0.01;

    private const string Minimiser = "least time without Snell's law, MathNet.Numerics golden section over each place crossed";

    private static double Couplant => BuiltInMaterials.Water.Longitudinal.MetresPerSecond;

    [Theory]
    [InlineData(45, 0, false), InlineData(60, 0, false), InlineData(70, 0, true), InlineData(45, 40, false), InlineData(60, 25, true), InlineData(70, 90, false)]
    public void On_a_flat_section_a_minimiser_agrees(double angle, double focus, bool fromFront)
    {
        var set = Setting.Of(angle, focus, fromFront, 20, null);
        set.Delays.Should().HaveCount(16);
        set.AgreesWith(element => set.Least(s => (s, 0), element));
    }

    [Theory]
    [InlineData(45, 0, 500), InlineData(60, 20, 500), InlineData(55, 18, 219.1), InlineData(45, 0, 219.1)]
    public void Through_a_contoured_sole_a_minimiser_agrees(double angle, double focus, double diameter)
    {
        var set = Setting.Of(angle, focus, false, 12, diameter, contoured: true);
        set.AgreesWith(element => set.Least(set.OnCircle, element));
    }

    [Theory]
    [InlineData(45, 14, 800), InlineData(60, 0, 800)]
    public void From_inside_through_a_contoured_sole_a_minimiser_agrees(double angle, double focus, double diameter)
    {
        var set = Setting.Of(angle, focus, false, 12, diameter, contoured: true, inside: true);
        set.AgreesWith(element => set.Least(set.OnCircle, element));
    }

    [Theory]
    [InlineData(45, 0, 700, false), InlineData(60, 20, 700, false), InlineData(50, 15, 400, false), InlineData(50, 15, 900, true), InlineData(45, 0, 900, true)]
    public void Across_the_gap_of_a_flat_sole_a_minimiser_over_both_crossings_agrees(double angle, double focus, double diameter, bool inside)
    {
        var set = Setting.Of(angle, focus, false, 12, diameter, inside: inside);
        set.AgreesWith(set.LeastAcrossGap);
    }

    [Fact]
    public void Brute_sampling_of_both_crossings_agrees()
    {
        // No derivative, no bracket: a grid over sole and surface, refined about its best cell four times.
        var set = Setting.Of(55, 20, false, 12, 600);
        set.AgreesWith(element =>
        {
            var (u, s, reach, best) = (0.0, 0.0, 20.0, double.PositiveInfinity);
            for (var pass = 0; pass < 9; pass++, reach /= 10)
            {
                var (aroundU, aroundS) = (u, s);
                for (var i = -40; i <= 40; i++)
                {
                    for (var j = -40; j <= 40; j++)
                    {
                        var (tryU, tryS) = (aroundU + (i * reach / 40), aroundS + (j * reach / 40));
                        var time = set.GapTime(element, tryU, tryS);
                        if (time < best) (best, u, s) = (time, tryU, tryS);
                    }
                }
            }

            return best;
        }, "least time over a refined grid of both crossings");
    }

    [Fact]
    public void A_focus_behind_the_bore_is_reached_by_least_time_over_the_bounce()
    {
        // 12 mm wall at 45 deg: leg 1 is about 19 mm long around this pipe, the focus 30 mm away lies in leg 2. The place on the bore is free as well.
        var set = Setting.Of(45, 30, false, 12, 500, contoured: true);
        set.FocusInLegTwo();
        set.AgreesWith(element =>
        {
            double Time(double exit, double bounce) =>
                (Distance(element, set.Polar(exit, 250)) / Given.Polystyrene)
                + ((Distance(set.Polar(exit, 250), set.Polar(bounce, 238)) + Distance(set.Polar(bounce, 238), set.Folded)) / Given.Transverse);
            return Descend(Time, set.Law.Ray.ExitArc / 250, set.BouncePolar, 0.02);
        });
    }

    [Theory]
    [InlineData(40, false), InlineData(55, true), InlineData(70, false)]
    public void The_slope_of_the_delays_is_the_law_s_steering(double angle, bool fromFront)
    {
        // A plane wave leaves the array at β: neighbours differ by p sin β / vw.
        var set = Setting.Of(angle, 0, fromFront, 20, null);
        var step = 0.5 * Math.Sin(set.Law.Study.Steering.Radians) / Given.Polystyrene * 1e6;
        for (var index = 1; index < set.Delays.Length; index++)
        {
            (set.Delays[index] - set.Delays[index - 1]).Should().BeApproximately(fromFront ? -step : step, 1e-6);
        }
    }

    [Theory]
    [InlineData(55, 20, 500.0, false), InlineData(60, 30, null, false), InlineData(50, 18, 700.0, true)]
    public void At_the_aperture_s_middle_the_slope_is_the_steering_of_a_focused_law_too(double angle, double focus, double? diameter, bool contoured)
    {
        // A hundredth of the pitch: the middle pair's difference is the derivative there.
        var set = Setting.Of(angle, focus, false, 12, diameter, contoured, pitch: 0.05);
        var slope = (set.Delays[8] - set.Delays[7]) / 0.05;
        slope.Should().BeApproximately(Math.Sin(set.Law.Study.Steering.Radians) / Given.Polystyrene * 1e6, 0.01);
    }

    private static double Distance((double X, double Z) a, (double X, double Z) b) => Math.Sqrt(((a.X - b.X) * (a.X - b.X)) + ((a.Z - b.Z) * (a.Z - b.Z)));

    /// <summary>The least of a smooth function of two places, each in its turn by a minimiser, until neither moves.</summary>
    private static double Descend(Func<double, double, double> time, double first, double second, double reach)
    {
        for (var round = 0; round < 200; round++)
        {
            var (heldFirst, heldSecond) = (first, second);
            first = GoldenSectionMinimizer.Minimum(ObjectiveFunction.ScalarValue(x => time(x, heldSecond)), heldFirst - reach, heldFirst + reach, 1e-9 * reach, 2000).MinimizingPoint;
            var moved = first;
            second = GoldenSectionMinimizer.Minimum(ObjectiveFunction.ScalarValue(x => time(moved, x)), heldSecond - reach, heldSecond + reach, 1e-9 * reach, 2000).MinimizingPoint;
            if (Math.Abs(first - heldFirst) + Math.Abs(second - heldSecond) < 1e-9 * reach) break;
        }

        return time(first, second);
    }

    /// <summary>One law of a 16-element aperture, and the same scene drawn again: elements, surface and focus in mm, x forward, z down, from the sole's centre.</summary>
    private sealed record Setting(string Title, Law Law, double[] Delays, (double X, double Z)[] Elements, double Radius, double AxisZ, int Bend, double Wall, (double X, double Z) Focus, double Path)
    {
        public static Setting Of(
            double angle, double focus, bool fromFront, double wall, double? diameter, bool contoured = false, bool inside = false, double pitch = 0.5)
        {
            var under = diameter is { } outside ? inside ? outside - (2 * wall) : outside : 0;
            var probe = Given.ArrayProbe() with
            {
                Transducer = Given.Array with { Pitch = Given.Mm(pitch), Gap = Given.Mm(0.01) },
                Wedge = Given.ArrayWedge with
                {
                    ContourDiameter = contoured ? Given.Mm(under) : null, ElementOneAtFront = fromFront,
                    FirstElement = fromFront ? new ElementPlace(Given.Mm(13), Given.Mm(18)) : Given.ArrayWedge.FirstElement,
                },
            };
            var section = Given.ArraySection(wall, diameter, inside ? Surface.Inside : Surface.Outside, probe);
            var beam = Given.Sector with
            {
                Scan = ScanKind.Fixed, Angles = new AngleSweep(Given.Deg(angle), Given.Deg(angle), Given.Deg(1)),
                Focus = focus > 0 ? new Focus(FocusKind.Path, Given.Mm(focus)) : default,
            };
            var law = LawGeometry.Of(section, probe, beam)[0];
            law.Study.Fault.Should().Be(LawFault.None);
            var focal = DelayWork.Of(section, probe, beam, law);
            focal.NotComputed.Should().BeNull();
            focal.Elements.Min(element => element.Delay.Microseconds).Should().Be(0, "the earliest fires at nought");

            var (sine, cosine) = Math.SinCos(36 * Degree);
            var (height, behind) = (probe.Wedge.FirstElement!.Value.Height.Millimetres, probe.Wedge.FirstElement.Value.BehindFront.Millimetres);
            var sign = fromFront ? -1 : 1;
            var elements = Enumerable.Range(0, 16).Select(k => (17 - behind + (sign * k * pitch * cosine), -(height + (sign * k * pitch * sine)))).ToArray();
            var (radius, bend) = (under / 2, inside ? -1 : 1);
            var axis = inside && !contoured ? -Math.Sqrt((radius * radius) - (17 * 17)) : bend * radius;
            var title = FormattableString.Invariant($"{angle} deg, {(focus > 0 ? $"focus {focus} mm" : "no focus")}, wall {wall} mm")
                + (diameter is { } d ? FormattableString.Invariant($", outside diameter {d} mm, {(contoured ? "contoured" : "flat")} sole{(inside ? ", from inside" : "")}") : "")
                + (fromFront ? ", element 1 at the front" : "");
            var scene = new Setting(title, law, [.. focal.Elements.Select(element => element.Delay.Seconds * 1e9)], elements, radius, axis, bend, wall, default, focus);

            // The law's ray: from its exit point at its angle to the local normal.
            var exit = scene.OnSurface(law.Ray.ExitArc);
            var direction = scene.DirectionAt(law.Ray.ExitArc, angle * Degree);
            return scene with { Focus = focus > 0 ? (exit.X + (focus * direction.X), exit.Z + (focus * direction.Z)) : direction };
        }

        public (double X, double Z) OnSurface(double arc) => Radius == 0 ? (arc, 0) : Polar(arc / Radius, Radius);

        public (double X, double Z) Polar(double polar, double radius) => (radius * Math.Sin(polar), AxisZ - (Bend * radius * Math.Cos(polar)));

        public Func<double, (double X, double Z)> OnCircle => OnSurface;

        public double BouncePolar { get; private set; }

        public void AgreesWith(Func<(double X, double Z), double> timeOf, string method = Minimiser)
        {
            var times = Elements.Select(element => timeOf(element) * 1e6).ToArray();

            // The last to fire, and one in the middle, stand for the sixteen on the page.
            foreach (var index in new[] { times.Length / 2, times[0] < times[^1] ? 0 : times.Length - 1 })
            {
                Checks.Record("delays", $"element {index + 1}: {Title}", times.Max() - times[index], Delays[index], Nanosecond, "ns", method, Checks.Computed);
            }

            for (var index = 0; index < times.Length; index++) Delays[index].Should().BeApproximately(times.Max() - times[index], Nanosecond, $"element {index + 1}");
        }

        /// <summary>mm over m/s are ms: times in thousandths of a second, as the caller scales them.</summary>
        public double Least(Func<double, (double X, double Z)> surface, (double X, double Z) element)
        {
            double Time(double s) => (Distance(element, surface(s)) / Given.Polystyrene) + InPart(surface(s));
            var near = Law.Ray.ExitArc;
            return Time(GoldenSectionMinimizer.Minimum(ObjectiveFunction.ScalarValue(Time), near - 12, near + 12, 1e-9, 2000).MinimizingPoint);
        }

        public double GapTime((double X, double Z) element, double u, double arc) =>
            (Distance(element, (u, 0)) / Given.Polystyrene) + (Distance((u, 0), OnSurface(arc)) / Couplant) + InPart(OnSurface(arc));

        /// <summary>One minimiser inside the other: a thin gap is too narrow a valley to walk down by turns.</summary>
        public double LeastAcrossGap((double X, double Z) element)
        {
            double Within(double arc)
            {
                double Time(double u) => GapTime(element, u, arc);
                return Time(GoldenSectionMinimizer.Minimum(ObjectiveFunction.ScalarValue(Time), arc - 6, arc + 6, 1e-10, 2000).MinimizingPoint);
            }

            return Within(GoldenSectionMinimizer.Minimum(ObjectiveFunction.ScalarValue(Within), Law.Ray.ExitArc - 12, Law.Ray.ExitArc + 12, 1e-9, 2000).MinimizingPoint);
        }

        /// <summary>To the focus, or to a wave front through the sole's centre.</summary>
        private double InPart((double X, double Z) place) =>
            Path > 0 ? Distance(place, Focus) / Given.Transverse : -((place.X * Focus.X) + (place.Z * Focus.Z)) / Given.Transverse;

        private (double X, double Z) DirectionAt(double arc, double angle)
        {
            // The normal into the part, and forward along the surface.
            var (sine, cosine) = Radius == 0 ? (0, 1) : Math.SinCos(arc / Radius);
            var (down, forward) = ((X: -Bend * sine, Z: cosine), (X: cosine, Z: Bend * sine));
            return ((Math.Cos(angle) * down.X) + (Math.Sin(angle) * forward.X), (Math.Cos(angle) * down.Z) + (Math.Sin(angle) * forward.Z));
        }

        /// <summary>Folds the straight focus at the bore: mirrored in the bore's tangent where the law's ray meets it.</summary>
        public void FocusInLegTwo()
        {
            var exit = OnSurface(Law.Ray.ExitArc);
            var polarAngle = 45 * Degree;
            var incidence = Math.Asin(Radius * Math.Sin(polarAngle) / (Radius - Wall));
            BouncePolar = (Law.Ray.ExitArc / Radius) + incidence - polarAngle;
            var bounce = Polar(BouncePolar, Radius - Wall);
            var (n, rest) = ((X: Math.Sin(BouncePolar), Z: -Math.Cos(BouncePolar)), Path - Distance(exit, bounce));
            rest.Should().BePositive();
            var d = (X: (bounce.X - exit.X) / Distance(exit, bounce), Z: (bounce.Z - exit.Z) / Distance(exit, bounce));
            var twice = 2 * ((d.X * n.X) + (d.Z * n.Z));
            folded = (bounce.X + (rest * (d.X - (twice * n.X))), bounce.Z + (rest * (d.Z - (twice * n.Z))));
        }

        private (double X, double Z)? folded;

        public (double X, double Z) Folded => folded!.Value;
    }
}
