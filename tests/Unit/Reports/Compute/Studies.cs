using System.Collections.Immutable;
using TechLint.Engine;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Faces;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Tests.Unit.Reports.Compute;

/// <summary>Hand-made studies; the numbers only have to be told apart.</summary>
internal static class Studies
{
    public static readonly LawStudy Law = new(
        LawFault.None, new Angle(45), new Angle(30.27654321), new Angle(-5.7), 1, Mm(12.5), Mm(-38.50004), Mm(7.95), Mm(6.789), Mm(17.78), Mm(9),
        null,
        [
            new LegStudy(1, Mm(-18.5), Mm(20), Mm(28.2843), new Angle(45), Mm(3.21), false),
            new LegStudy(2, Mm(1.5), Mm(0), Mm(56.5685), new Angle(45), Mm(5.43), true),
        ]);

    public static readonly LawStudy BrokenLaw = new(
        LawFault.OutsideWedge, new Angle(72), new Angle(double.NaN), new Angle(double.NaN), 1, Mm(double.NaN), Mm(double.NaN), Mm(7.95),
        Mm(double.NaN), Mm(double.NaN), Mm(double.NaN), null, []);

    public static readonly CoverageResult Coverage = new(
        new Share(99.99999), new Share(80), new Share(85.5), new Share(70.25), [[Place(-1, 20), Place(1, 20), Place(0, 18.123456)]], Mm(2), Mm(1.9),
        false, null);

    public static readonly FaceStudy Faces = new(
        new Angle(5),
        [
            new FaceService(
                Side.Left, Side.Right, new Share(75), new Share(99.99999), FaceWay.Beam,
                [new FaceWayShare(FaceWay.Beam, new Share(60)), new FaceWayShare(FaceWay.CornerEcho, new Share(15))], [new FaceLegShare(2, new Share(60))],
                [new FacePieceService(Place(-9, 0), Place(-1, 18), false, new Angle(24), new Share(80), FaceWay.Beam, new FacePlace(Place(-9, 0), null))],
                new FacePlace(Place(-8.5, 1.25), new Angle(11.5))),
        ],
        null);

    public static ComputedTechnique Technique
    {
        get
        {
            var pass = new Pass(
                "seam", 1, Surface.Outside, PositioningTolerance.None, [], [],
                new Acquisition(Mm(1), null, new Frequency(0.006), 1, null, 2, Mm(6000), Mm(50), Mm(50), Mm(25), null));
            var study = new PassStudy(
                pass, [new ProbePlace(1, Side.Left, Mm(26), Mm(-26), Mm(-60), Mm(-26), Mm(0))],
                [
                    new BeamStudy(Beam("sector", ScanKind.Sectorial), Mm(0.648), [Law, BrokenLaw], null, null),
                    new BeamStudy(
                        Beam("diffraction", ScanKind.Tofd), Mm(1.184), [],
                        new TofdStudy(Mm(50), Mm(16.7), new Duration(8.4459), new Duration(10.81), Mm(4.7), Mm(0.9), Mm(4.7), Mm(19.1)), null),
                    new BeamStudy(Beam("contact", ScanKind.CouplingMonitor), Mm(0.648), [], null, "a coupling monitor is no sound beam"),
                ],
                new AcquisitionStudy(66, Speed.FromMillimetresPerSecond(90.909090909), Mm(6170), null, null, null)
                {
                    PulseRateAtMost = new Frequency(0.0087654321), AmbiguityPath = Mm(271.25), Segments = 2, Lines = 6172, StepsPerIncrement = new Steps(9.6),
                    PositionErrorAtMost = Mm(0.0666667), SpeedAtMostForData = Speed.FromMillimetresPerSecond(43.5),
                });
            return new ComputedTechnique(
                "GM-UT-014",
                [
                    new ComputedSetup("seam", 1, [new CaseStudy(Mm(20), Mm(1400), [study], Coverage, Faces)], null),
                    new ComputedSetup("nozzle", null, [], "a nozzle's section is not computed"),
                ]);
        }
    }

    public static Length Mm(double value) => new(value);

    private static SectionPlace Place(double y, double z) => new(Mm(y), Mm(z));

    private static Beam Beam(string id, ScanKind scan) => new(
        id, scan, 1, null, null, Wave.Transverse, null, null, new Focus(FocusKind.None, default), [1, 2], null, null, default, default, default,
        null, null);
}
