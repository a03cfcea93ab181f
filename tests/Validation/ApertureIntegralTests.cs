using System.Numerics;
using MathNet.Numerics.Integration;
using MathNet.Numerics.RootFinding;
using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Tofd;
using Xunit;

namespace TechLint.Tests.Validation;

/// <summary>
/// The Rayleigh integral of a piston (round) and a strip, point sources of one frequency summed over the aperture by MathNet's Gauss-Legendre rule: on the
/// axis for the near field's length, far out for the pattern. Shares nothing with the closed forms of the code.
/// </summary>
public sealed class ApertureIntegralTests
{
    private const string Integral = "Rayleigh integral over the aperture, MathNet.Numerics Gauss-Legendre";
    private const double Degree = Math.PI / 180;

    [Theory]
    [InlineData(6, 0.65), InlineData(10, 1.184), InlineData(10, 0.65), InlineData(20, 0.814), InlineData(6, 1.2)]
    public void The_last_loudest_place_on_a_piston_s_axis_is_the_near_field(double diameter, double wavelength)
    {
        double Loudness(double z) => OfPiston(diameter, wavelength, 0, z).Magnitude;

        // From far out inwards up to where it no longer gets louder.
        var short_ = diameter * diameter / (4 * wavelength);
        var (low, high) = (0.7 * short_, 1.5 * short_);
        var golden = (Math.Sqrt(5) - 1) / 2;
        for (var step = 0; step < 60; step++)
        {
            var (first, second) = (high - (golden * (high - low)), low + (golden * (high - low)));
            if (Loudness(first) > Loudness(second)) high = second;
            else low = first;
        }

        Checks.Record(
            "near field round", FormattableString.Invariant($"last maximum on the axis (D {diameter} mm, wavelength {wavelength} mm)"), (low + high) / 2,
            NearField.OfRound(diameter, wavelength), 0.02, "mm", Integral, Checks.Computed);
    }

    [Theory]
    [InlineData(true, 10, 0.65, 1), InlineData(true, 10, 0.65, 2), InlineData(true, 10, 0.65, 3), InlineData(true, 6, 1.2, 6)]
    [InlineData(false, 8, 0.65, 1), InlineData(false, 8, 0.65, 2), InlineData(false, 8, 0.65, 3), InlineData(false, 9.6, 0.4, 1.5)]
    public void Far_out_the_pattern_is_the_integral_s(bool isRound, double size, double wavelength, double degrees)
    {
        // Five hundred near fields away the rest of the near field is below the tolerance.
        var distance = 500 * size * size / (4 * wavelength);
        double Level(double angle) => isRound
            ? OfPiston(size, wavelength, distance * Math.Sin(angle), distance * Math.Cos(angle)).Magnitude
            : OfStrip(size, wavelength, distance * Math.Sin(angle), distance * Math.Cos(angle)).Magnitude;
        Checks.Record(
            "directivity", FormattableString.Invariant($"{(isRound ? "round" : "strip")} {size} mm, wavelength {wavelength} mm, {degrees} deg off the axis"),
            Level(degrees * Degree) / Level(0), new Directivity(size, isRound, wavelength, 1, 0, 0).At(degrees * Degree), 0.001, "-", Integral, Checks.Computed);
    }

    [Theory]
    [InlineData(8, 0.65), InlineData(16, 0.65), InlineData(10, 1.2)]
    public void Far_out_the_beam_s_width_is_the_integral_s(double aperture, double wavelength)
    {
        var distance = 50 * aperture * aperture / (4 * wavelength);
        double Level(double angle) => OfStrip(aperture, wavelength, distance * Math.Sin(angle), distance * Math.Cos(angle)).Magnitude;
        var axis = Level(0);
        var half = Bisection.FindRoot(angle => Level(angle) - (axis * Math.Sqrt(0.5)), 0, 0.8 * wavelength / aperture, 1e-9);
        var width = 2 * distance * Math.Tan(half);
        Checks.Record(
            "beam width", FormattableString.Invariant($"echo -6 dB width at 50 near fields (aperture {aperture} mm, wavelength {wavelength} mm)"), width,
            new BeamWidth(aperture, wavelength, 0).At(distance), 0.01 * width, "mm", Integral, Checks.Computed);
    }

    /// <summary>Rings about the axis times the angle around it; off the axis in the plane x.</summary>
    private static Complex OfPiston(double diameter, double wavelength, double x, double z)
    {
        const int Order = 64;
        Complex Ring(double radius)
        {
            double Part(double around, bool imaginary)
            {
                var distance = Math.Sqrt((z * z) + Math.Pow(x - (radius * Math.Cos(around)), 2) + Math.Pow(radius * Math.Sin(around), 2));
                var phase = 2 * Math.PI * (distance - z) / wavelength;
                return (imaginary ? Math.Sin(phase) : Math.Cos(phase)) * radius / distance;
            }

            if (x == 0) return Math.PI * new Complex(Part(0, false), Part(0, true));
            return new Complex(
                GaussLegendreRule.Integrate(around => Part(around, false), 0, Math.PI, Order),
                GaussLegendreRule.Integrate(around => Part(around, true), 0, Math.PI, Order));
        }

        return new Complex(
            GaussLegendreRule.Integrate(radius => Ring(radius).Real, 0, diameter / 2, Order),
            GaussLegendreRule.Integrate(radius => Ring(radius).Imaginary, 0, diameter / 2, Order));
    }

    /// <summary>Line sources: amplitude falls with the root of the distance.</summary>
    private static Complex OfStrip(double size, double wavelength, double x, double z)
    {
        const int Order = 128;
        double Part(double place, bool imaginary)
        {
            var distance = Math.Sqrt((z * z) + ((x - place) * (x - place)));
            var phase = 2 * Math.PI * (distance - z) / wavelength;
            return (imaginary ? Math.Sin(phase) : Math.Cos(phase)) / Math.Sqrt(distance);
        }

        return new Complex(
            GaussLegendreRule.Integrate(place => Part(place, false), -size / 2, size / 2, Order),
            GaussLegendreRule.Integrate(place => Part(place, true), -size / 2, size / 2, Order));
    }
}
