using System.Numerics;
using FluentAssertions;
using TechLint.Ultrasonics.Beams;
using Xunit;

namespace TechLint.Tests.Validation;

/// <summary>
/// The simple width model against a simulated field: a strip of line sources in one medium, summed with their phases,
/// focused by delays; the pulse-echo -6 dB width is the one-way -3 dB width of the same field, measured across the beam's axis.
/// Found here: the model is narrow rather than wide, by 25 % at 1.2 N and 5 % at 2 N unfocused; at N itself a continuous wave is three times
/// as wide as the model has it, and within the near field ripples leave no width to speak of.
/// </summary>
public sealed class BeamWidthTests
{
    private const int Sources = 400;

    [Theory]
    [InlineData(8, 0.65), InlineData(16, 0.65), InlineData(10, 1.2)]
    public void Beyond_the_near_field_the_unfocused_width_is_never_too_wide_and_soon_exact(double aperture, double wavelength)
    {
        var nearField = aperture * aperture / (4 * wavelength);
        var model = new BeamWidth(aperture, wavelength, 0);
        foreach (var (times, least) in new[] { (1.2, 0.70), (1.5, 0.85), (2, 0.92), (3, 0.96), (5, 0.98) })
        {
            var simulated = Simulated(aperture, wavelength, times * nearField, 0);
            (model.At(times * nearField) / simulated).Should().BeInRange(least, 1.01, $"at {times} N the simulated width is {simulated}");
            Records(FormattableString.Invariant($"unfocused, {times} N, aperture {aperture} mm, wavelength {wavelength} mm"), simulated, model.At(times * nearField), 1 - least);
        }
    }

    [Theory]
    [InlineData(16, 0.65, 0.5), InlineData(16, 0.65, 0.8), InlineData(10, 0.4, 0.5), InlineData(8, 0.65, 0.8)]
    public void About_its_focus_the_width_is_within_a_tenth_and_never_too_wide(double aperture, double wavelength, double focusInNearFields)
    {
        var focus = focusInNearFields * aperture * aperture / (4 * wavelength);
        var model = new BeamWidth(aperture, wavelength, 0, focus);
        model.IsFocused.Should().BeTrue();
        foreach (var (times, least) in new[] { (1.0, 0.95), (0.85, 0.9), (1.2, 0.9) })
        {
            var simulated = Simulated(aperture, wavelength, times * focus, focus);
            (model.At(times * focus) / simulated).Should().BeInRange(least, 1.01, $"at {times} of the focus the simulated width is {simulated}");
            var at = FormattableString.Invariant($"focused at {focusInNearFields} N, {times} of the focus, aperture {aperture} mm, wavelength {wavelength} mm");
            Records(at, simulated, model.At(times * focus), 1 - least);
        }
    }

    private static void Records(string quantity, double expected, double got, double share) => Checks.Record(
        "beam width", quantity, expected, got, share * expected, "mm", "simulated field: 400 line sources summed with their phases", Checks.Computed);

    /// <summary>Full one-way -3 dB width about the axis, on a circle around the aperture's centre.</summary>
    private static double Simulated(double aperture, double wavelength, double path, double focus)
    {
        var level = Field(0) * Math.Sqrt(0.5);
        var (inside, outside) = (0.0, 0.0);
        for (var angle = 0.0005; angle < 1; angle += 0.0005)
        {
            if (Field(angle) >= level) continue;
            (inside, outside) = (angle - 0.0005, angle);
            break;
        }

        for (var step = 0; step < 30; step++)
        {
            var middle = (inside + outside) / 2;
            if (Field(middle) >= level) inside = middle;
            else outside = middle;
        }

        return 2 * path * Math.Tan(inside);

        double Field(double angle)
        {
            var (x, z) = (path * Math.Sin(angle), path * Math.Cos(angle));
            var sum = Complex.Zero;
            for (var index = 0; index < Sources; index++)
            {
                var place = aperture * (((index + 0.5) / Sources) - 0.5);
                var distance = Math.Sqrt(((x - place) * (x - place)) + (z * z));
                var delay = focus > 0 ? Math.Sqrt((focus * focus) + (place * place)) - focus : 0;
                sum += Complex.FromPolarCoordinates(1 / Math.Sqrt(distance), 2 * Math.PI * (distance - delay) / wavelength);
            }

            return sum.Magnitude;
        }
    }
}
