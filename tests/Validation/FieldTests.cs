using FluentAssertions;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Optimization;
using MathNet.Numerics.RootFinding;
using TechLint.Tests.Unit.Ultrasonics;
using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Fields;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Rays;
using TechLint.Ultrasonics.Studies;
using Xunit;
using Complex = System.Numerics.Complex;

namespace TechLint.Tests.Validation;

/// <summary>The simulated field against piston theory, boundary equations, a numerical optimiser and pulses added up one by one.</summary>
public sealed class FieldTests
{
    private const double Degree = Math.PI / 180;

    [Theory]
    [InlineData(Wave.Transverse, 38), InlineData(Wave.Transverse, 45), InlineData(Wave.Transverse, 60), InlineData(Wave.Transverse, 72), InlineData(Wave.Transverse, 20)]
    [InlineData(Wave.Longitudinal, 0), InlineData(Wave.Longitudinal, 30), InlineData(Wave.Longitudinal, 60), InlineData(Wave.Longitudinal, 80)]
    public void Transmission_solves_the_four_conditions_of_slip_contact(Wave wave, double degrees)
    {
        const double rw = 1.06, lw = 2.337, tw = 1.155, rp = 7.85, lp = 5.92, tp = 3.255;
        var p = Math.Sin(degrees * Degree) / (wave == Wave.Transverse ? tp : lp);
        static Complex Q(double p, double c) => Complex.Sqrt(new Complex((1 / (c * c)) - (p * p), 0)) is var q && q.Imaginary < 0 ? -q : q;
        var (qlw, qtw, qlp, qtp) = (Q(p, lw), Q(p, tw), Q(p, lp), Q(p, tp));

        // Unit displacement waves by slowness (p, q), z down; stresses over iω: s_zz = λ(p ux + q uz) + 2μ q uz, s_xz = μ(q ux + p uz).
        (Complex Uz, Complex Szz, Complex Sxz) Of(double rho, double cl, double ct, Complex q, Complex ux, Complex uz)
        {
            var mu = rho * ct * ct;
            var lambda = (rho * cl * cl) - (2 * mu);
            return (uz, (lambda * ((p * ux) + (q * uz))) + (2 * mu * q * uz), mu * ((q * ux) + (p * uz)));
        }

        var incident = Of(rw, lw, tw, qlw, p * lw, qlw * lw);
        var backL = Of(rw, lw, tw, -qlw, p * lw, -qlw * lw);
        var backT = Of(rw, lw, tw, -qtw, qtw * tw, p * tw);
        var onL = Of(rp, lp, tp, qlp, p * lp, qlp * lp);
        var onT = Of(rp, lp, tp, qtp, -qtp * tp, p * tp);
        var matrix = Matrix<Complex>.Build.DenseOfArray(new[,]
        {
            { backL.Uz, backT.Uz, -onL.Uz, -onT.Uz },
            { backL.Szz, backT.Szz, -onL.Szz, -onT.Szz },
            { backL.Sxz, backT.Sxz, 0, 0 },
            { 0, 0, onL.Sxz, onT.Sxz },
        });
        var answer = matrix.Solve(Vector<Complex>.Build.Dense([-incident.Uz, -incident.Szz, -incident.Sxz, 0]));
        var expected = wave == Wave.Transverse ? answer[3] : answer[2];
        var got = SlipContact.Transmission(Math.Sin(degrees * Degree), rw, lw, tw, rp, lp, tp, wave);
        (got - expected).Magnitude.Should().BeLessThan(1e-9, $"expected {expected}, got {got}");
        Checks.Record(
            "transmission", FormattableString.Invariant($"{wave.ToString().ToLowerInvariant()} amplitude at {degrees} deg, polystyrene to steel, slip contact"), expected.Magnitude, got.Magnitude, 1e-8, "-",
            "four boundary conditions as a linear system, MathNet.Numerics", Checks.Computed);
        new SlipContact(rw, lw, tw, rp, lp, tp, wave).At(Math.Sin(degrees * Degree), wave).Magnitude.Should().BeApproximately(expected.Magnitude, 0.003 * (expected.Magnitude + 0.01));
    }

    [Fact]
    public void A_tenth_of_density_hardly_moves_one_angle_beside_another()
    {
        static double Decibels(double density) => 20 * Math.Log10(At(density, 70) / At(density, 45));
        static double At(double density, double degrees) => SlipContact.Transmission(Math.Sin(degrees * Degree), density, 2337, 1155, 7.85, 5920, 3255, Wave.Transverse).Magnitude;
        Decibels(1.06 * 1.1).Should().BeApproximately(Decibels(1.06), 0.2);
    }

    [Theory]
    [InlineData(0, 1, 18.0, 1), InlineData(0, 1, 5.0, 2), InlineData(300, 1, 12.0, 1), InlineData(300, -1, 12.0, 1)]
    public void A_ray_takes_the_least_time(double diameter, int bend, double depth, int leg)
    {
        const double thickness = 20, u = -9, height = 11, forward = 14, wedge = 2.337e6, part = 3.255e6;
        var section = diameter == 0 ? SectionRays.Flat(thickness) : bend > 0 ? SectionRays.FromOutside(thickness, diameter) : SectionRays.FromInside(thickness, diameter);
        new InterfaceRays(section, wedge, part).TryFind(u, height, forward, depth, leg, double.NaN, out var ray).Should().BeTrue();
        var radius = section.ScanRadius;

        // Points of the section, written down here anew: a plane, or polar angles about the axis.
        double Time(double exit)
        {
            var (exitX, exitZ) = Surface(exit, 0);
            var (x, z) = Surface(forward, diameter == 0 && leg == 2 ? (2 * thickness) - depth : depth);
            return (double.Hypot(exitX - u, exitZ + height) / wedge) + (double.Hypot(x - exitX, z - exitZ) / part);
        }

        (double X, double Z) Surface(double arc, double below)
        {
            if (diameter == 0) return (arc, below);
            var r = radius - (bend * below);
            return (r * Math.Sin(arc / radius), bend * (radius - (r * Math.Cos(arc / radius))));
        }

        var least = GoldenSectionMinimizer.Minimum(ObjectiveFunction.ScalarValue(exit => Time(exit) * 1e6), -8, 13, 1e-9, 2000).MinimizingPoint;
        Checks.Record(
            "least time", FormattableString.Invariant($"exit of a field's ray: depth {depth} mm in leg {leg}, wall 20 mm{(diameter == 0 ? "" : $", diameter {diameter} mm, {(bend > 0 ? "outside" : "inside")}")}"),
            least, ray.Exit, 1e-3, "mm", "MathNet.Numerics golden section", Checks.Computed);
        ((ray.WedgePath / wedge) + (ray.PartPath / part)).Should().BeApproximately(Time(least), 1e-13);
    }

    [Theory]
    [InlineData(1.0), InlineData(1.3), InlineData(2.0), InlineData(4.0)]
    public void On_the_axis_of_a_disc_the_field_is_that_of_a_piston(double nearFields)
    {
        // One medium throughout: a wedge of the part's own speed, at normal incidence. Referee: |2 sin(k/2 (√(z² + a²) − z))|.
        const double diameter = 12, frequency = 5, speed = 5.92;
        var wavelength = speed / frequency;
        var nearField = ((diameter * diameter) - (wavelength * wavelength)) / (4 * wavelength);
        var (source, law) = Disc(diameter, frequency);
        var sum = new FieldSum(source);
        double Got(double z)
        {
            sum.TryMove(source.PlaceOn(law.Law, z - 8)!.Value.Forward, z - 8, 1).Should().BeTrue();
            return sum.Of(law).OneWay;
        }

        double Piston(double z) => 2 * Math.Abs(Math.Sin(Math.PI / wavelength * (Math.Sqrt((z * z) + (diameter * diameter / 4)) - z)));
        var ratio = Got(nearFields * nearField) / Got(3 * nearField);
        Checks.Record(
            "simulated field", FormattableString.Invariant($"amplitude at {nearFields} of the near field over that at 3, disc of 12 mm, 5 MHz, on the axis"),
            Piston(nearFields * nearField) / Piston(3 * nearField), ratio, 0.03 * ratio, "-", "piston theory: 2 sin(k/2 (sqrt(z² + a²) − z))", Checks.Computed);
    }

    [Theory]
    [InlineData(45.0), InlineData(60.0)]
    public void The_simple_width_is_held_to_the_field_through_the_wedge(double degrees)
    {
        var section = Given.Section(Given.Examination(Given.Pass(new(Given.ArrayProbe()), Given.Sector)), 300);
        var law = Given.LawAt(section, degrees, aperture: new Aperture(1, 16, 16, 1));
        var (made, reason) = FieldSource.Of(section, section.Pass.Probes[0], Given.Sector with { Angles = new AngleSweep(new Angle(degrees), new Angle(degrees), new Angle(1)) }, [law]);
        reason.Should().BeNull();
        var source = made!;
        var field = source.LawOf(law);
        var sum = new FieldSum(source);
        foreach (var (times, least, most) in new[] { (1.5, 0.75, 1.1), (2.0, 0.85, 1.1), (3.0, 0.9, 1.1) })
        {
            var path = times * law.Study.NearField.Millimetres * 1.0;
            var angle = law.Ray.PartAngle;
            double Echo(double off)
            {
                var turned = angle + off;
                sum.TryMove(law.Ray.ExitArc + (path * Math.Sin(turned)), path * Math.Cos(turned), 1).Should().BeTrue();
                return sum.Of(field).Echo;
            }

            var half = Enumerable.Range(-60, 121).Select(step => Echo(step * 0.05 * Degree)).Max() / 2;
            double Edge(int sign) => Brent.FindRoot(off => Echo(sign * off) - half, 0.1 * Degree, 20 * Degree, 1e-7);
            var width = path * (Math.Tan(Edge(1)) + Math.Tan(Edge(-1)));
            (law.Width.At(path) / width).Should().BeInRange(least, most, $"at {times} of the near field behind the exit point the simulated width is {width}");
        }
    }

    [Fact]
    public void Divergence_factors_are_where_the_patterns_fall_to_their_levels()
    {
        static double Strip(double x) => Math.Sin(x) / x;
        static double Disc(double x) => 2 * MathNet.Numerics.SpecialFunctions.BesselJ(1, x) / x;
        static void Holds(Func<double, double> pattern, double level, double factor, double zero) =>
            Checks.Record(
                "divergence", FormattableString.Invariant($"factor of a {(zero < 3.5 ? "strip" : "disc")} at amplitude {level:0.0000}"),
                Brent.FindRoot(x => pattern(x) - level, 0.1, zero, 1e-12) / Math.PI, factor, 1e-7, "-", "sinc and Bessel pattern, MathNet.Numerics Brent", Checks.Computed);
        foreach (var (level, strip, disc) in new[]
        {
            (0.5, Divergence.StripOneWay6, Divergence.DiscOneWay6), (0.1, Divergence.StripOneWay20, Divergence.DiscOneWay20),
            (Math.Sqrt(0.5), Divergence.StripEcho6, Divergence.DiscEcho6), (Math.Sqrt(0.1), Divergence.StripEcho20, Divergence.DiscEcho20),
        })
        {
            Holds(Strip, level, strip, 3.14);
            Holds(Disc, level, disc, 3.83);
        }
    }

    [Theory]
    [InlineData(16, 1, 0.7), InlineData(32, 1, 0.5), InlineData(8, 2, 0.9)]
    public void A_grating_lobe_is_smeared_as_its_pulses_added_up_one_by_one(int elements, int order, double bandwidth)
    {
        var sigma = bandwidth / (2 * Math.Sqrt(2 * Math.Log(2)));
        double Pulse(double t) => Math.Cos(2 * Math.PI * t) * Math.Exp(-2 * Math.PI * Math.PI * sigma * sigma * t * t);
        var peak = 0.0;
        for (var t = 0.0; t < 2 * elements * order; t += 0.01)
        {
            var echo = 0.0;
            for (var send = 0; send < elements; send++)
            {
                for (var receive = 0; receive < elements; receive++) echo += Pulse(t - ((send + receive) * order));
            }

            peak = Math.Max(peak, Math.Abs(echo));
        }

        Checks.Record(
            "grating lobe", FormattableString.Invariant($"smear of order {order}: {elements} elements, bandwidth {bandwidth}"), peak / elements / elements,
            GratingLevel.Smear(elements, order, bandwidth), 0.01 * peak / elements / elements, "-", "pulses of every pair of elements added up one by one", Checks.Computed);
    }

    [Fact]
    public void A_law_far_beyond_what_its_wedge_is_made_for_is_not_within_reach_of_the_loudest()
    {
        // Laws of 55 and 80 deg: the wedge of 36 deg slope is made for the first.
        var beam = Given.Sector with { Angles = new AngleSweep(new Angle(55), new Angle(80), new Angle(25)) };
        var section = Given.Section(Given.Examination(Given.Pass(new(Given.ArrayProbe()), beam)), 60);
        var (fields, reason) = FieldCoverage.BeamField.AllOf(section);
        reason.Should().BeNull();
        var field = fields.Should().ContainSingle().Subject;
        (field.Axis(0, 40) - field.OwnMeasure(0, 40)).Should().BeApproximately(0, 0.5);
        (field.Axis(1, 40) - field.OwnMeasure(1, 40)).Should().BeLessThan(-6);
    }

    [Fact]
    public void The_share_within_reach_is_that_of_scattered_places()
    {
        var examination = Given.Examination(Given.Pass(new(Given.ArrayProbe()), Given.Sector)) with { };
        var coverage = FieldCoverage.Of(examination, new Length(20), null);
        coverage.NotComputed.Should().BeNull();
        var section = Given.Section(examination, 20);
        var field = FieldCoverage.BeamField.AllOf(section).Beams.Single();
        var random = new Random(20);
        var inside = 0;
        const int places = 6000;
        for (var place = 0; place < places; place++)
        {
            field.Forget();
            if (field.SightOf(-10 + (20 * random.NextDouble()), 20 * random.NextDouble(), -6) == FieldCoverage.Sight.Full) inside++;
        }

        coverage.Within.Percent.Should().BeInRange(1, 100);
        Checks.Record(
            "coverage by sensitivity", "share within 6 dB: sectorial beam 40 to 70 deg, wall 20 mm", 100.0 * inside / places, coverage.Within.Percent, 2, "%", "Monte Carlo, 6000 places",
            Checks.Computed);
        var wider = FieldCoverage.Of(examination with { SensitivityDrop = new Level(-12) }, new Length(20), null);
        wider.Within.Percent.Should().BeGreaterThanOrEqualTo(coverage.Within.Percent);
    }

    private static (FieldSource Source, FieldLaw Law) Disc(double diameter, double frequency)
    {
        var transducer = Given.Round with { Frequency = new Frequency(frequency), ElementSize = new Length(diameter), Elevation = new Length(diameter) };
        var wedge = Given.TofdWedge with
        {
            Material = "the part's own", Longitudinal = new Speed(Given.Longitudinal), RefractedAngle = new Angle(0), IndexPointBehindFront = new Length(9), Path = new Length(8),
        };
        var probe = new MountedProbe(1, Side.Left, new Length(10), default, default, transducer, wedge);
        var beam = new Beam(
            "disc", ScanKind.Fixed, 1, null, null, Wave.Longitudinal, null, null, default, [1], null, null, default, default, default, null, null);
        var section = Given.Section(Given.Examination(Given.Pass(new(probe), beam)), 400);
        var law = LawGeometry.Of(section, probe, beam)[0];
        var (source, reason) = FieldSource.Of(section, probe, beam, [law]);
        reason.Should().BeNull();
        return (source!, source!.LawOf(law));
    }
}
