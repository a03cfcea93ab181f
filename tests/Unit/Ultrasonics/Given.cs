using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Tests.Unit.Ultrasonics;

/// <summary>Small sound examinations to vary with <c>with</c>. Numbers are the test's own, equipment is invented.</summary>
internal static class Given
{
    public const double Longitudinal = 5920;
    public const double Transverse = 3255;
    public const double Polystyrene = 2337;

    public static readonly SoundSpeeds Steel = new("carbon-steel", new Speed(Longitudinal), new Speed(Transverse));

    public static readonly Transducer Array = new(
        TransducerKind.PhasedArray, new Frequency(5), new Share(70), null, 32, Mm(0.5), Mm(0.05), Mm(10), Mm(0.45), IsRound: false);

    public static readonly Transducer Round = new(
        TransducerKind.SingleElement, new Frequency(5), null, new Duration(0.3), 1, Mm(0), Mm(0), Mm(6), Mm(6), IsRound: true);

    public static readonly Wedge ArrayWedge = new(
        "cross-linked-polystyrene", new Speed(Polystyrene), Deg(36), new ElementPlace(Mm(5), Mm(28)), ElementOneAtFront: false, null,
        Wave.Transverse, null, null, Mm(34), Mm(24), null, ContourDirection.AlongBeam);

    public static readonly Wedge TofdWedge = new(
        "cross-linked-polystyrene", new Speed(Polystyrene), null, null, ElementOneAtFront: false, Deg(60), Wave.Longitudinal, Mm(7), Mm(8), Mm(18),
        Mm(14), null, ContourDirection.AlongBeam);

    public static readonly Beam Sector = new(
        "sector", ScanKind.Sectorial, 1, null, null, Wave.Transverse, new AngleSweep(Deg(40), Deg(70), Deg(1)), new Aperture(1, 16, 16, 1), default,
        [1, 2], new Band<Length>(Mm(0), Mm(170)), null, default, default, default, null, null);

    public static readonly Beam Diffraction = new(
        "diffraction", ScanKind.Tofd, null, 3, 4, Wave.Longitudinal, null, null, default, [], null,
        new TimeWindow(new Duration(1), new Duration(1)), new Depth(0, IsShare: true), new Depth(100, IsShare: true), default, null, null);

    public static readonly Acquisition Recording = new(
        Mm(1), Speed.FromMillimetresPerSecond(50), new Frequency(0.006), 1, new Frequency(100), 1, Mm(6000), Mm(50), Mm(50), Mm(25), null);

    public static Length Mm(double value) => new(value);

    public static Angle Deg(double value) => new(value);

    public static MountedProbe ArrayProbe(Side side = Side.Left, double offset = 26) =>
        new(side == Side.Left ? 1 : 2, side, Mm(offset), Mm(0), default, Array, ArrayWedge);

    public static MountedProbe TofdProbe(Side side, double offset = 18) =>
        new(side == Side.Left ? 3 : 4, side, Mm(offset), Mm(70), default, Round, TofdWedge);

    public static Pass Pass(Probes probes, params Beam[] beams) =>
        new("setup", null, Surface.Outside, PositioningTolerance.None, [.. probes.Items], [.. beams], Recording);

    public static Examination Examination(Pass pass, Curvature curvature = Curvature.Flat) => new(
        new Part(curvature, Steel, Steel),
        new WeldSection(
            new Preparation(
                PreparationShape.SingleV, Surface.Outside, Side.Left, Groove.None, Groove.None, default, default, default, default, [], []), null, null, null),
        new ExaminedVolume(Mm(10), new Depth(0, IsShare: true), new Depth(100, IsShare: true)),
        new Band<Length>(Mm(20), Mm(20)), null, Mm(1000), new Level(-12), [pass]);

    public static PassSection Section(Examination examination, double thickness, double? outsideDiameter = null) =>
        PassSection.Of(examination, examination.Passes[0], Mm(thickness), outsideDiameter is { } d ? Mm(d) : null)!;

    /// <summary>One array on the left of a section.</summary>
    public static PassSection ArraySection(double thickness = 20, double? outsideDiameter = null, Surface surface = Surface.Outside, MountedProbe? probe = null) =>
        Section(
            Examination(
                Pass(new(probe ?? ArrayProbe()), Sector) with { ScanningSurface = surface },
                outsideDiameter is null ? Curvature.Flat : Curvature.AcrossWeld),
            thickness, outsideDiameter);

    /// <summary>Laws of a beam of one fixed angle from the first probe.</summary>
    public static Law LawAt(PassSection section, double angle, Wave wave = Wave.Transverse, Aperture? aperture = null) => LawGeometry.Of(
        section, section.Pass.Probes[0],
        Sector with { Scan = ScanKind.Fixed, Wave = wave, Angles = new AngleSweep(Deg(angle), Deg(angle), Deg(1)), Aperture = aperture ?? Sector.Aperture })[0];

    /// <summary>A pair at equal offsets.</summary>
    public static PassSection TofdSection(
        double thickness, double offset = 18, double? outsideDiameter = null, Surface surface = Surface.Outside, Wedge? wedge = null, Transducer? transducer = null, Beam? beam = null)
    {
        MountedProbe Probe(Side side) => TofdProbe(side, offset) with { Wedge = wedge ?? TofdWedge, Transducer = transducer ?? Round };
        return Section(
            Examination(
                Pass(new(Probe(Side.Left), Probe(Side.Right)), beam ?? Diffraction) with { ScanningSurface = surface },
                outsideDiameter is null ? Curvature.Flat : Curvature.AcrossWeld),
            thickness, outsideDiameter);
    }
}

/// <summary>Probes of a pass, listed before its beams.</summary>
internal sealed record Probes(params MountedProbe[] Items);
