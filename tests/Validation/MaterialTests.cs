using TechLint.Ultrasonics.Materials;
using Xunit;

namespace TechLint.Tests.Validation;

public sealed class MaterialTests
{
    public static TheoryData<string> Speeds => CheckValue.Ids("material");

    [Theory, MemberData(nameof(Speeds))]
    public void A_built_in_speed_of_sound_agrees(string id)
    {
        var row = CheckValue.Of(id);
        var material = BuiltInMaterials.Find(row.Inputs["material"])!;
        row.Holds((row.Inputs["wave"] == "L" ? material.Longitudinal : material.Transverse!.Value).MetresPerSecond);
    }
}
