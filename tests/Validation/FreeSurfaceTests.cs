using FluentAssertions;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.RootFinding;
using TechLint.Tests.Unit.Ultrasonics;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Reflection;
using Xunit;
using Complex = System.Numerics.Complex;

namespace TechLint.Tests.Validation;

public sealed class FreeSurfaceTests
{
    private const double Degree = Math.PI / 180;
    private const double Steel = Given.Longitudinal / Given.Transverse;

    public static TheoryData<double, double> Cases
    {
        get
        {
            var cases = new TheoryData<double, double>();
            foreach (var ratio in (double[])[1.5, Math.Sqrt(3), Steel, 2.0, 2.5])
            {
                for (var angle = 1.0; angle < 90; angle += 4.3) cases.Add(ratio, angle);
            }

            return cases;
        }
    }

    [Theory, MemberData(nameof(Cases))]
    public void Energy_is_conserved(double ratio, double degrees)
    {
        var angle = degrees * Degree;
        var (own, other) = FreeSurface.Amplitudes(Wave.Longitudinal, angle, ratio);
        var slow = Math.Cos(Math.Asin(Math.Sin(angle) / ratio));
        (Square(own) + (Square(other) * slow / (ratio * Math.Cos(angle)))).Should().BeApproximately(1, 1e-12);

        (own, other) = FreeSurface.Amplitudes(Wave.Transverse, angle, ratio);
        var fastSine = ratio * Math.Sin(angle);
        var carried = fastSine < 1 ? Square(other) * ratio * Math.Cos(Math.Asin(fastSine)) / Math.Cos(angle) : 0;
        (Square(own) + carried).Should().BeApproximately(1, 1e-12, "beyond the critical angle all of it stays");
    }

    [Theory, MemberData(nameof(Cases))]
    public void The_amplitudes_leave_the_surface_free(double ratio, double degrees)
    {
        // Not the closed formula: the two conditions of no traction, from Hooke's law and the three waves' own displacements, solved as a linear system (cT = 1, density 1).
        foreach (var wave in (Wave[])[Wave.Transverse, Wave.Longitudinal])
        {
            var slowness = Math.Sin(degrees * Degree) / (wave == Wave.Transverse ? 1 : ratio);
            var fast = Complex.Sqrt((1 / (ratio * ratio)) - (slowness * slowness));
            var slow = Complex.Sqrt(1 - (slowness * slowness));
            var comes = Tractions(wave, slowness, wave == Wave.Transverse ? slow : fast, ratio);
            var longitudinal = Tractions(Wave.Longitudinal, slowness, -fast, ratio);
            var transverse = Tractions(Wave.Transverse, slowness, -slow, ratio);
            var matrix = Matrix<Complex>.Build.DenseOfArray(new[,] { { longitudinal.Normal, transverse.Normal }, { longitudinal.Shear, transverse.Shear } });
            var solved = matrix.Solve(Vector<Complex>.Build.DenseOfArray([-comes.Normal, -comes.Shear]));

            var (own, other) = FreeSurface.Amplitudes(wave, degrees * Degree, ratio);
            var (wantOwn, wantOther) = wave == Wave.Transverse ? (solved[1], solved[0]) : (solved[0], solved[1]);
            Complex.Abs(other).Should().BeApproximately(Complex.Abs(wantOther), 1e-9);
            Complex.Abs(own).Should().BeApproximately(Complex.Abs(wantOwn), 1e-9);
            if (ratio != Steel) continue;
            var title = FormattableString.Invariant($"{wave.ToString().ToLowerInvariant()} wave in steel at {degrees:0.0} deg");
            Records($"its own reflection: {title}", Complex.Abs(wantOwn), Complex.Abs(own));
            Records($"converted: {title}", Complex.Abs(wantOther), Complex.Abs(other));
        }
    }

    private static void Records(string quantity, double expected, double got) => Checks.Record(
        "free surface", quantity, expected, got, 1e-8, "-", "no traction: Hooke's law and the three waves as a linear system, MathNet.Numerics", Checks.Computed);

    /// <summary>Stresses at the surface of a plane wave of displacement 1 and slowness (p, q): <c>σzz = λ ∇·u + 2μ ∂uz/∂z</c>, <c>σxz = μ (∂ux/∂z + ∂uz/∂x)</c>, over iω.</summary>
    private static (Complex Normal, Complex Shear) Tractions(Wave wave, double p, Complex q, double ratio)
    {
        var lambda = (ratio * ratio) - 2;
        var (x, z) = wave == Wave.Longitudinal ? (ratio * p, ratio * q) : (-q, (Complex)p);
        return ((lambda * ((p * x) + (q * z))) + (2 * q * z), (q * x) + (p * z));
    }

    [Fact]
    public void All_of_a_wave_is_converted_where_published_for_a_quarter_s_Poisson_ratio()
    {
        // cL²/cT² = 3: the longitudinal wave vanishes at 60 deg and 77.2 deg, the transverse one at 30 deg and 34.3 deg (Ewing, Jardetzky, Press; from memory).
        var ratio = Math.Sqrt(3);
        double Own(Wave wave, double degrees) => FreeSurface.Amplitudes(wave, degrees * Degree, ratio).Own.Real;
        Zero(Wave.Longitudinal, 55, 65, 60, 0.01);
        Zero(Wave.Transverse, 25, 32, 30, 0.01);
        Zero(Wave.Longitudinal, 70, 85, 77.2, 0.05);
        Zero(Wave.Transverse, 32, 35.2, 34.26, 0.02);

        void Zero(Wave wave, double from, double to, double expected, double tolerance) => Checks.Record(
            "free surface", FormattableString.Invariant($"all of a {wave.ToString().ToLowerInvariant()} wave is converted, Poisson ratio 1/4, between {from} and {to} deg"), expected,
            Bisection.FindRoot(degrees => Own(wave, degrees), from, to), tolerance, "deg", "Ewing, Jardetzky, Press, Elastic Waves in Layered Media", Checks.Memory);
    }

    [Fact]
    public void Total_conversion_ends_at_the_published_Poisson_ratio()
    {
        // Always a change of phase for Poisson ratios above 0.2631, none for some angles below it (abstract of BSSA 46, 203, 1956; published).
        bool HasZero(double poisson)
        {
            var ratio = Math.Sqrt(2 * (1 - poisson) / (1 - (2 * poisson)));
            return Enumerable.Range(1, 89999).Any(k => FreeSurface.Amplitudes(Wave.Longitudinal, k * 0.001 * Degree, ratio).Own.Real >= 0);
        }

        HasZero(0.2630).Should().BeTrue();
        HasZero(0.2632).Should().BeFalse();
        var (low, high) = (0.26, 0.27);
        for (var step = 0; step < 10; step++)
        {
            var middle = (low + high) / 2;
            if (HasZero(middle)) low = middle;
            else high = middle;
        }

        Checks.Record(
            "free surface", "Poisson ratio above which no longitudinal wave is converted altogether", 0.2631, (low + high) / 2, 0.00005, "-",
            "abstract of Bulletin of the Seismological Society of America 46, 203 (1956)", Checks.Published);
    }

    [Fact]
    public void In_steel_the_transverse_wave_all_but_vanishes_short_of_its_critical_angle()
    {
        // Krautkraemer, Ultrasonic Testing of Materials, fig. of the shear wave at a free boundary of steel: about 0.1 near 30 deg (from memory).
        Checks.Record(
            "free surface", "critical angle of the transverse wave, 3255 and 5920 m/s", Math.Asin(3255.0 / 5920) / Degree,
            FreeSurface.CriticalAngle(new Speed(Given.Longitudinal), new Speed(Given.Transverse))!.Value.Degrees, 1e-9, "deg", "arcsine, by hand", Checks.Computed);
        var least = Enumerable.Range(2000, 1300).Select(k => k * 0.01).MinBy(Kept);
        least.Should().BeInRange(29, 33);
        Math.Sqrt(Kept(least)).Should().BeInRange(0.05, 0.15);
        Kept(33.4).Should().BeApproximately(1, 1e-12);
        Kept(45).Should().BeApproximately(1, 1e-12);
        Kept(0).Should().Be(1);

        static double Kept(double degrees) => FreeSurface.Of(Wave.Transverse, new Angle(degrees), new Speed(Given.Longitudinal), new Speed(Given.Transverse))!.Value.Kept.Fraction;
    }

    [Fact]
    public void What_one_wave_loses_the_other_gains_on_the_way_back()
    {
        // Reciprocity: the same pair of angles converts the same share of energy both ways.
        for (var degrees = 1.0; degrees < 33; degrees += 1)
        {
            var forth = FreeSurface.Of(Wave.Transverse, new Angle(degrees), new Speed(Given.Longitudinal), new Speed(Given.Transverse))!.Value;
            var back = FreeSurface.Of(Wave.Longitudinal, forth.OtherAngle!.Value, new Speed(Given.Longitudinal), new Speed(Given.Transverse))!.Value;
            back.Converted.Fraction.Should().BeApproximately(forth.Converted.Fraction, 1e-12);
            back.OtherAngle!.Value.Degrees.Should().BeApproximately(degrees, 1e-9);
        }
    }

    private static double Square(Complex value) => (value.Real * value.Real) + (value.Imaginary * value.Imaginary);
}
