using TechLint.Ultrasonics.Rays;
using Xunit;

namespace TechLint.Tests.Validation;

public sealed class SkipTests
{
    private const double Degree = Math.PI / 180;

    public static TheoryData<string> FlatLegs => CheckValue.Ids("flat-leg");

    public static TheoryData<string> FlatPaths => CheckValue.Ids("flat-path");

    public static TheoryData<string> CurvedLegs => CheckValue.Ids("curved-leg");

    public static TheoryData<string> GreatestAngles => CheckValue.Ids("greatest-angle");

    [Theory, MemberData(nameof(FlatLegs))]
    public void A_leg_in_a_plate_agrees(string id)
    {
        var row = CheckValue.Of(id);
        var section = SectionRays.Flat(row["t"]);
        row.Holds(Leg(section, row, row["angle"] * Degree));
    }

    [Theory, MemberData(nameof(FlatPaths))]
    public void A_place_on_a_path_in_a_plate_agrees(string id)
    {
        // Find the depth in leg 2 whose path it is: the path falls as the depth grows on the way up.
        var row = CheckValue.Of(id);
        var section = SectionRays.Flat(row["t"]);
        var (low, high) = (0.0, row["t"]);
        for (var step = 0; step < 60; step++)
        {
            var middle = (low + high) / 2;
            section.TryReach(row["angle"] * Degree, middle, 2, out _, out var path);
            if (path > row["path"]) low = middle;
            else high = middle;
        }

        section.TryReach(row["angle"] * Degree, low, 2, out var across, out _);
        row.Holds(row.Inputs["what"] == "depth" ? low : across);
    }

    [Theory, MemberData(nameof(CurvedLegs))]
    public void A_leg_around_a_pipe_agrees(string id)
    {
        var row = CheckValue.Of(id);
        row.Holds(Leg(SectionRays.FromOutside(row["t"], row["od"]), row, row["angle"] * Degree));
    }

    [Theory, MemberData(nameof(GreatestAngles))]
    public void The_greatest_angle_that_reaches_the_bore_agrees(string id)
    {
        var row = CheckValue.Of(id);
        row.Holds(SectionRays.FromOutside(row["t"], row["od"]).GreatestReachingAngle / Degree);
    }

    private static double Leg(SectionRays section, CheckValue row, double angle)
    {
        section.TryReach(angle, section.Thickness, 1, out var half, out var path);
        section.TryReach(angle, 0, 2, out var full, out _);
        return row.Inputs["what"] switch
        {
            "leg" => path,
            "half-skip" => half,
            "full-skip" => full,
            _ => section.IncidenceAtEndOf(angle, 1) / Degree,
        };
    }
}
