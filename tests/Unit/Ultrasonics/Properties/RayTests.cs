using CsCheck;
using FluentAssertions;
using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Rays;
using Xunit;

namespace TechLint.Tests.Unit.Ultrasonics.Properties;

/// <summary>Rays run the same way back; and a section of huge radius is a flat one.</summary>
public sealed class RayTests
{
    private const double Wedge = 2_337_000;
    private const double Part = 3_255_000;
    private const double Water = 1_480_000;

    private static readonly Gen<SectionRays> Curved = Gen.Select(Gen.Double[6, 40], Gen.Double[6, 60], Gen.Bool).Select((thickness, ratio, isInside) =>
        isInside ? SectionRays.FromInside(thickness, thickness * ratio) : SectionRays.FromOutside(thickness, thickness * ratio));

    [Fact]
    public void Snells_law_is_the_same_both_ways() => Gen.Select(Gen.Double[-1.5, 1.5], Gen.Double[1e6, 7e6], Gen.Double[1e6, 7e6]).Sample(
        (angle, from, to) =>
        {
            var there = Refraction.Through(angle, from, to);
            if (double.IsNaN(there) || Math.Abs(there) > 1.5) return;
            Refraction.Through(there, to, from).Should().BeApproximately(angle, 1e-9);
        },
        iter: 1000);

    [Fact]
    public void A_ray_aimed_from_the_part_comes_out_of_the_wedge_where_it_was_aimed() => Gen.Select(
        Curved, Gen.Double[-8, 8], Gen.Double[3, 20], Gen.Double[0.1, 1.2], Gen.Bool, Gen.Bool).Sample(
        (curved, place, height, angle, isContoured, isFlat) =>
        {
            var section = isFlat ? SectionRays.Flat(curved.Thickness) : curved;
            var sole = new Sole(Math.Min(30, curved.ScanRadius), isContoured, section, Wedge, Water);
            if (!sole.TryAim(place, height, angle, Part, out var ray)) return;

            // From the exit point, through whatever lies between, back up to the height that it came from.
            sole.Refract(ray.Direction, ray.ExitArc, Part).Should().BeApproximately(angle, 1e-6);
            if (section.IsCurved && !isContoured) return;
            var polar = section.IsCurved ? ray.ExitArc / section.ScanRadius : 0;
            var exitX = section.IsCurved ? section.ScanRadius * Math.Sin(polar) : ray.ExitArc;
            var exitZ = section.IsCurved ? section.Bend * section.ScanRadius * (Math.Cos(polar) - 1) : 0;
            (exitX - (ray.WedgePath * Math.Sin(ray.Direction))).Should().BeApproximately(place, 1e-6);
            (exitZ + (ray.WedgePath * Math.Cos(ray.Direction))).Should().BeApproximately(height, 1e-6);
        },
        iter: 1000);

    [Fact]
    public void A_leg_run_backwards_is_as_long_and_comes_out_at_the_angle_it_went_in() => Gen.Select(Curved, Gen.Double[0, 1.3]).Sample(
        (section, angle) =>
        {
            if (!section.TryReach(angle, section.Thickness, 1, out var advance, out var path)) return;
            var incidence = section.IncidenceAtEndOf(angle, 1);
            if (double.IsNaN(incidence) || incidence > 1.5) return;
            var outside = 2 * (section.Bend > 0 ? section.ScanRadius : section.ScanRadius + section.Thickness);
            var back = section.Bend > 0 ? SectionRays.FromInside(section.Thickness, outside) : SectionRays.FromOutside(section.Thickness, outside);
            back.TryReach(incidence, section.Thickness, 1, out var backAdvance, out var backPath).Should().BeTrue();
            backPath.Should().BeApproximately(path, 1e-6 * (1 + path));
            (backAdvance / back.ScanRadius).Should().BeApproximately(advance / section.ScanRadius, 1e-8);
            back.IncidenceAtEndOf(incidence, 1).Should().BeApproximately(angle, 1e-7);
        },
        iter: 1000);

    [Fact]
    public void A_huge_diameter_gives_the_flat_sections_rays() => Gen.Select(Gen.Double[6, 40], Gen.Double[0, 1.3], Gen.Double[0, 1], Gen.Int[1, 5], Gen.Bool).Sample(
        (thickness, angle, share, leg, isInside) =>
        {
            const double Huge = 1e8;
            var curved = isInside ? SectionRays.FromInside(thickness, Huge) : SectionRays.FromOutside(thickness, Huge);
            curved.TryReach(angle, share * thickness, leg, out var advance, out var path).Should().BeTrue();
            SectionRays.Flat(thickness).TryReach(angle, share * thickness, leg, out var flatAdvance, out var flatPath).Should().BeTrue();
            advance.Should().BeApproximately(flatAdvance, 1e-3 * (1 + flatAdvance));
            path.Should().BeApproximately(flatPath, 1e-3 * (1 + flatPath));
        },
        iter: 1000);
}
