using System.Collections.Immutable;
using CsCheck;
using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Coverage;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Tests.Unit.Ultrasonics.Properties;

/// <summary>Examinations and sections of all sorts for the properties that hold of any.</summary>
internal static class Sections
{
    public static readonly Gen<Curvature> Curvatures = Gen.Int[0, 2].Select(index => (Curvature)index);

    /// <summary>One or two arrays about a single V, with or without a pair, cap and root; a narrow band of thickness; any of the curvatures, from either surface.</summary>
    public static readonly Gen<Examination> Examinations =
        from thickness in Gen.Double[8, 30]
        from curvature in Curvatures
        from ratio in Gen.Double[12, 60]
        from isInside in Gen.Bool
        from isTwoSided in Gen.Bool
        from hasPair in Gen.Bool
        from left in Gen.Double[0.5, 1.6]
        from right in Gen.Double[0.5, 1.6]
        from least in Gen.Int[35, 45]
        from span in Gen.Int[5, 30]
        from legs in Gen.Int[1, 3]
        from window in Gen.Double[40, 200]
        from hasCap in Gen.Bool
        from centre in Gen.Double[-2, 2]
        let diameter = Math.Max(thickness * ratio, 260)
        let beam = Given.Sector with
        {
            Angles = new AngleSweep(Given.Deg(least), Given.Deg(least + span), Given.Deg(5)), Legs = [.. Enumerable.Range(1, legs)],
            PathWindow = new Band<Length>(Given.Mm(0), Given.Mm(window)),
        }
        let probes = new List<MountedProbe>
        {
            Given.ArrayProbe(Side.Left, thickness * left), Given.ArrayProbe(Side.Right, thickness * right), Given.TofdProbe(Side.Left), Given.TofdProbe(Side.Right),
        }
        let beams = new List<Beam?> { beam, isTwoSided ? beam with { Id = "right", From = 2 } : null, hasPair ? Given.Diffraction : null }
        let weld = new WeldSection(
            Given.Examination(Given.Pass(new())).Weld.Preparation, hasCap ? new Reinforcement(Given.Mm(16), Given.Mm(2), Given.Mm(centre)) : null,
            hasCap ? new Reinforcement(Given.Mm(6), Given.Mm(1), Given.Mm(centre / 2)) : null, null)
        let pass = new Pass(
            "setup", null, isInside ? Surface.Inside : Surface.Outside, PositioningTolerance.None, [.. probes], [.. beams.OfType<Beam>()], null)
        select Given.Examination(pass, curvature) with
        {
            Weld = weld, Thickness = new Band<Length>(Given.Mm(thickness), Given.Mm(thickness)),
            OutsideDiameter = curvature == Curvature.Flat ? null : new Band<Length>(Given.Mm(diameter), Given.Mm(diameter)),
        };

    /// <summary>Two fans in a flat or curved section over cap and root, as the kernel takes them.</summary>
    public static readonly Gen<CoverageInput> Inputs =
        from thickness in Gen.Double[8, 30]
        from isPipe in Gen.Bool
        from ratio in Gen.Double[10, 50]
        from isInside in Gen.Bool
        from left in Gen.Double[4, 45]
        from right in Gen.Double[4, 45]
        from least in Gen.Double[30, 60]
        from step in Gen.Double[1, 6]
        from aperture in Gen.Double[4, 16]
        from legs in Gen.Int[1, 7]
        from hasMetal in Gen.Bool
        from half in Gen.Double[2, 9]
        let fans = Fan(-left, 1, least, step, aperture, legs).AddRange(Fan(right, -1, least, step, aperture, legs))
        select new CoverageInput(
            thickness, isPipe ? Math.Max(200, thickness * ratio) : null, new VolumeRectangle(-14, 15, 0, thickness),
            hasMetal ? new MirrorGap(-half, half) : null, hasMetal ? new MirrorGap(-half / 2, half / 3) : null,
            [new CoveragePass(isInside ? Surface.Inside : Surface.Outside, fans, [])], 0.3);

    /// <summary>The same section with what sees from the left and from the right moved away from the weld by so much, in the pass's own frame.</summary>
    public static CoverageInput Moved(CoverageInput input, double left, double right) => input with
    {
        Passes =
        [
            .. input.Passes.Select(pass => pass with
            {
                Lines = [.. pass.Lines.Select(line => line with { ExitY = line.ExitY + (line.Direction > 0 ? -left : right) })],
            }),
        ],
    };

    private static ImmutableArray<SightLine> Fan(double exit, int direction, double least, double step, double aperture, int legs) =>
    [
        .. Enumerable.Range(0, 6).Select(index => new SightLine(
            exit - (direction * 0.2 * index), direction, Math.Min(75, least + (index * step)) * Math.PI / 180, new BeamWidth(aperture, 0.65, 8), legs, 0, 160)),
    ];
}
