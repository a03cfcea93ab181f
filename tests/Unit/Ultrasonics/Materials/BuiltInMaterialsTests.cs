using FluentAssertions;
using TechLint.Ultrasonics.Materials;
using Xunit;

namespace TechLint.Tests.Unit.Ultrasonics.Materials;

public sealed class BuiltInMaterialsTests
{
    [Fact]
    public void Every_material_has_its_own_name_a_source_and_credible_speeds()
    {
        BuiltInMaterials.All.Select(material => material.Name).Should().OnlyHaveUniqueItems();
        foreach (var material in BuiltInMaterials.All)
        {
            material.Source.Should().NotBeNullOrWhiteSpace(material.Name);
            material.Longitudinal.MetresPerSecond.Should().BeInRange(1000, 7000, material.Name);
            if (material.Transverse is { } transverse)
            {
                // For every isotropic solid of Poisson ratio above zero the longitudinal wave is faster by more than the root of two.
                (material.Longitudinal.MetresPerSecond / transverse.MetresPerSecond).Should().BeGreaterThan(Math.Sqrt(2), material.Name);
            }
        }
    }

    [Theory]
    [InlineData("carbon-steel", 5920, 3255), InlineData("cross-linked-polystyrene", 2337, 1155)]
    public void A_material_is_found_by_its_name(string name, double longitudinal, double transverse)
    {
        var material = BuiltInMaterials.Find(name)!;
        material.Longitudinal.MetresPerSecond.Should().Be(longitudinal);
        material.Transverse!.Value.MetresPerSecond.Should().Be(transverse);
    }

    [Theory]
    [InlineData(""), InlineData("Carbon-Steel"), InlineData("steel")]
    public void Another_name_is_not_guessed(string name) => BuiltInMaterials.Find(name).Should().BeNull();
}
