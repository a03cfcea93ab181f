using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Welds;
using Xunit;

namespace TechLint.Tests.Validation;

public sealed class PreparationTests
{
    public static TheoryData<string> HalfWidths => CheckValue.Ids("half-width");

    [Theory, MemberData(nameof(HalfWidths))]
    public void Half_the_width_of_an_opening_agrees(string id)
    {
        var row = CheckValue.Of(id);
        var radius = row.Or("radius", 0);
        var groove = Groove.None with { FaceAngle = new Angle(row["angle"]), Radius = new Length(radius) };
        var preparation = new Preparation(
            radius > 0 ? PreparationShape.SingleU : PreparationShape.SingleV, Surface.Outside, Side.Left, groove, Groove.None, new Length(row["land"]),
            new Length(row["gap"]), default, default, [], []);
        row.Holds(WeldOutline.At(preparation, new Length(row["t"])).OpeningOn(Surface.Outside).Right.Millimetres);
    }
}
