using CsCheck;
using FluentAssertions;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Rays;
using TechLint.Ultrasonics.Studies;
using TechLint.Ultrasonics.Tofd;
using Xunit;

namespace TechLint.Tests.Unit.Ultrasonics.Tofd;

public sealed class TofdPairTests
{
    private const double Degree = Math.PI / 180;

    [Fact]
    public void A_plate_s_pair_gives_the_textbook_figures()
    {
        var study = Pair(Given.TofdSection(25)).Study;
        study.ProbeCentreSeparation.Millimetres.Should().Be(50);
        study.IntersectionDepth.Millimetres.Should().BeApproximately(25 / Math.Tan(60 * Degree), 1e-9);
        study.LateralWaveTime.Microseconds.Should().BeApproximately(50 / 5.92, 1e-9);
        study.BackWallTime.Microseconds.Should().BeApproximately(2 * Math.Sqrt((25 * 25) + (25 * 25)) / 5.92, 1e-9);
        study.CoveredFrom.Millimetres.Should().BeGreaterThanOrEqualTo(study.NearSurfaceDeadZone.Millimetres);
        study.CoveredTo.Millimetres.Should().BeLessThanOrEqualTo(25 - study.BackWallDeadZone.Millimetres);
        study.CoveredTo.Millimetres.Should().BeGreaterThan(study.CoveredFrom.Millimetres);
    }

    [Theory]
    [InlineData(Surface.Outside), InlineData(Surface.Inside)]
    public void A_huge_diameter_is_flat(Surface surface)
    {
        var flat = Pair(Given.TofdSection(25)).Study;
        var wedge = Given.TofdWedge with { ContourDiameter = Given.Mm(1e7) };
        var curved = Pair(Given.TofdSection(25, outsideDiameter: 1e7, surface: surface, wedge: wedge)).Study;
        curved.IntersectionDepth.Millimetres.Should().BeApproximately(flat.IntersectionDepth.Millimetres, 1e-3);
        curved.NearSurfaceDeadZone.Millimetres.Should().BeApproximately(flat.NearSurfaceDeadZone.Millimetres, 1e-3);
        curved.BackWallDeadZone.Millimetres.Should().BeApproximately(flat.BackWallDeadZone.Millimetres, 1e-3);
        curved.CoveredFrom.Millimetres.Should().BeApproximately(flat.CoveredFrom.Millimetres, 1e-2);
        curved.CoveredTo.Millimetres.Should().BeApproximately(flat.CoveredTo.Millimetres, 1e-2);
    }

    [Fact]
    public void On_a_pipe_the_lateral_wave_takes_the_chord_and_leaves_its_sagitta_unseen()
    {
        var wedge = Given.TofdWedge with { ContourDiameter = Given.Mm(406.4) };
        var study = Pair(Given.TofdSection(12.7, 12, 406.4, wedge: wedge)).Study;
        var radius = 203.2;

        // The sole's front lies on the surface at half its length along the chord.
        var front = radius * Math.Asin(9 / radius);
        var half = radius * Math.Sin((12 + front - (front - 7)) / radius);
        study.ProbeCentreSeparation.Millimetres.Should().BeApproximately(2 * half, 1e-9);
        var sagitta = radius - Math.Sqrt((radius * radius) - (half * half));
        var pulse = 5.92 * 0.3;
        study.NearSurfaceDeadZone.Millimetres.Should().BeApproximately(sagitta + Math.Sqrt((pulse * pulse / 4) + (half * pulse)), 1e-9);
        study.BackWallTime.Microseconds.Should().BeApproximately(2 * Math.Sqrt((half * half) + Math.Pow(12.7 - sagitta, 2)) / 5.92, 1e-9);
    }

    [Fact]
    public void From_inside_the_lateral_wave_follows_the_surface_and_straight_lines_stay_below_the_tangents()
    {
        var wedge = Given.TofdWedge with { ContourDiameter = Given.Mm(381) };
        var study = Pair(Given.TofdSection(12.7, 18, 406.4, Surface.Inside, wedge)).Study;
        study.LateralWaveTime.Microseconds.Should().BeApproximately(50 / 5.92, 1e-9);
        study.ProbeCentreSeparation.Millimetres.Should().BeApproximately(2 * 190.5 * Math.Sin(25 / 190.5), 1e-9);
        study.NearSurfaceDeadZone.Millimetres.Should().BeGreaterThanOrEqualTo((190.5 / Math.Cos(25 / 190.5)) - 190.5);
    }

    [Fact]
    public void Axes_around_a_pipe_cross_where_two_rays_meet() =>
        Gen.Select(Gen.Double[100, 2000], Gen.Double[5, 30], Gen.Double[40, 70], Gen.Bool).Sample((diameter, half, degrees, outside) =>
        {
            var wall = 0.4 * diameter;
            var section = outside ? SectionRays.FromOutside(wall, diameter) : SectionRays.FromInside(wall, diameter);
            if (half / section.ScanRadius > 0.5) return;
            var depth = new PairGeometry(section, -half, half, transmitsFromLeft: true).IntersectionDepth(degrees * Degree, degrees * Degree);
            if (double.IsNaN(depth) || depth > wall) return;

            // At that depth the left ray has come half-way across.
            section.TryReach(degrees * Degree, depth, 1, out var advance, out _).Should().BeTrue();
            advance.Should().BeApproximately(half, 1e-6);
        });

    [Fact]
    public void Unequal_angles_cross_off_the_middle()
    {
        var pair = new PairGeometry(SectionRays.Flat(50), -30, 30, transmitsFromLeft: true);
        pair.IntersectionDepth(60 * Degree, 45 * Degree).Should().BeApproximately(60 / (Math.Tan(60 * Degree) + 1), 1e-9);
    }

    [Theory]
    [InlineData(null), InlineData(406.4)]
    public void Which_of_the_pair_transmits_makes_no_difference(double? diameter)
    {
        var swapped = Given.Diffraction with { Transmit = 4, Receive = 3 };
        var wedge = Given.TofdWedge with { ContourDiameter = diameter is { } d ? Given.Mm(d) : null };
        var one = Pair(Given.TofdSection(12.7, 12, diameter, wedge: wedge));
        var other = Pair(Given.TofdSection(12.7, 12, diameter, wedge: wedge, beam: swapped));
        other.Study.Should().Be(one.Study);
        for (var y = -15.0; y <= 15; y += 2.5)
        {
            for (var z = 0.0; z <= 12.7; z += 0.5)
            {
                other.Sight.Sees(y, z).Should().Be(one.Sight.Sees(y, z));
                one.Sight.Sees(-y, z).Should().Be(one.Sight.Sees(y, z), "the pair is its own mirror image");
            }
        }
    }

    [Theory]
    [InlineData(null, Surface.Outside), InlineData(406.4, Surface.Outside), InlineData(406.4, Surface.Inside)]
    public void What_the_pair_sees_on_its_middle_is_the_covered_depth(double? diameter, Surface surface)
    {
        var wedge = Given.TofdWedge with { ContourDiameter = diameter is { } d ? Given.Mm(surface == Surface.Inside ? d - 25.4 : d) : null };
        var pair = Pair(Given.TofdSection(12.7, 12, diameter, surface, wedge));
        for (var z = 0.01; z < 12.7; z += 0.02)
        {
            var covered = z > pair.Study.CoveredFrom.Millimetres && z < pair.Study.CoveredTo.Millimetres;
            pair.Sight.Sees(0, z).Should().Be(covered, $"z {z}");
        }
    }

    [Fact]
    public void A_zone_is_counted_from_the_scanning_surface_on_either_side()
    {
        var upper = Given.Diffraction with { ZoneFrom = new Depth(0, IsShare: true), ZoneTo = new Depth(60, IsShare: true) };
        var outside = Pair(Given.TofdSection(30, beam: upper)).Sight;
        (outside.FromZ, outside.ToZ).Should().Be((0, 18));
        var inside = Pair(Given.TofdSection(30, surface: Surface.Inside, beam: upper)).Sight;
        (inside.FromZ, inside.ToZ).Should().Be((0, 18), "a setup that scans from inside has its own z");
        foreach (var sight in (TofdSight[])[outside, inside])
        {
            sight.Sees(0, 17.9).Should().BeTrue();
            sight.Sees(0, 18.1).Should().BeFalse();
        }
    }

    [Fact]
    public void A_window_that_starts_late_or_ends_early_narrows_the_covered_depth()
    {
        var full = Pair(Given.TofdSection(25)).Study;
        var late = Pair(Given.TofdSection(25, beam: Given.Diffraction with { TimeWindow = new TimeWindow(new Duration(-0.8), new Duration(1)) }));
        late.Study.CoveredFrom.Millimetres.Should().BeGreaterThan(full.CoveredFrom.Millimetres);
        var early = Pair(Given.TofdSection(25, beam: Given.Diffraction with { TimeWindow = new TimeWindow(new Duration(1), new Duration(-1)) }));
        early.Study.CoveredTo.Millimetres.Should().BeLessThan(full.CoveredTo.Millimetres);
        early.RecordedTime!.Value.Microseconds.Should().BeApproximately(full.BackWallTime.Microseconds - full.LateralWaveTime.Microseconds, 1e-9);
        Pair(Given.TofdSection(25, beam: Given.Diffraction with { TimeWindow = null })).RecordedTime.Should().BeNull();
    }

    [Fact]
    public void A_stricter_drop_covers_less()
    {
        var section = Given.TofdSection(60, 18);
        double Height(double drop)
        {
            var strict = Given.Section(section.Examination with { TofdDrop = new Level(drop) }, 60);
            var study = Pair(strict).Study;
            return study.CoveredTo.Millimetres - study.CoveredFrom.Millimetres;
        }

        Height(-6).Should().BeLessThan(Height(-12)).And.BeGreaterThan(0);
        Height(-12).Should().BeLessThan(Height(-24));
    }

    [Fact]
    public void The_loudest_depth_is_where_the_axes_cross()
    {
        var pair = new PairGeometry(SectionRays.Flat(50), -40, 40, transmitsFromLeft: true);
        var wedgeAngle = Math.Asin(2337.0 / 5920 * Math.Sin(60 * Degree));
        var directivity = new Directivity(6, isRound: true, 2.337 / 5, 2337.0 / 5920, wedgeAngle, 0);
        var level = new MidPlaneLevel(pair, directivity, directivity);
        var crossing = pair.IntersectionDepth(60 * Degree, 60 * Degree);
        var (loudest, depth) = level.Loudest(50, crossing);
        loudest.Should().BeApproximately(1, 1e-9);
        depth.Should().BeApproximately(crossing, 1e-9);
    }

    [Fact]
    public void What_cannot_be_worked_out_says_why()
    {
        Reason(Given.TofdSection(20, beam: Given.Diffraction with { Receive = 9 })).Should().Contain("missing");
        Reason(Given.TofdSection(20, transducer: Given.Round with { PulseLength = null })).Should().Contain("pulse length");
        Reason(Given.TofdSection(20, wedge: Given.TofdWedge with { Longitudinal = null })).Should().Contain("speed of sound");
        Reason(Given.TofdSection(20, offset: -30)).Should().Contain("leaves the wall", "the pair stands crosswise");
        var narrow = Given.TofdWedge with { ContourDiameter = Given.Mm(80) };
        Reason(Given.TofdSection(3, 30, 80, wedge: narrow)).Should().Contain("leaves the wall", "the chord runs through the bore");

        static string? Reason(PassSection section) => TofdPair.Of(section, section.Pass.Beams[0]).NotComputed;
    }

    [Fact]
    public void A_pulse_length_follows_from_the_bandwidth_where_none_is_stated()
    {
        Pulse.LengthOf(Given.Round)!.Value.Microseconds.Should().Be(0.3);
        var known = Given.Round with { PulseLength = null, Bandwidth = new Share(80) };
        Pulse.LengthOf(known)!.Value.Microseconds.Should().BeApproximately(1.6085 / 4, 1e-9);
        Pulse.LengthOf(known with { Bandwidth = null }).Should().BeNull();
        Pulse.LengthOf(known with { Bandwidth = new Share(0) }).Should().BeNull();

        // The constant, from the Gaussian pulse itself: halved spectrum at B/2, a tenth of the envelope at T/2.
        const double Bandwidth = 4;
        var sigma = Bandwidth / 2 / Math.Sqrt(2 * Math.Log(2));
        var half = Pulse.LengthTimesBandwidth / Bandwidth / 2;
        Math.Exp(-2 * Math.Pow(Math.PI * sigma * half, 2)).Should().BeApproximately(0.1, 1e-4);
    }

    [Fact]
    public void Above_the_chord_nothing_is_seen_though_its_time_would_do()
    {
        var wedge = Given.TofdWedge with { ContourDiameter = Given.Mm(300) };
        var brief = Given.Round with { PulseLength = new Duration(0.05), ElementSize = Given.Mm(1), Elevation = Given.Mm(1) };
        var pair = Pair(Given.TofdSection(40, 40, 300, wedge: wedge, transducer: brief));
        var half = pair.Study.ProbeCentreSeparation.Millimetres / 2;
        var sagitta = 150 - Math.Sqrt((150 * 150) - (half * half));
        pair.Sight.Sees(0, sagitta + 6).Should().BeTrue();
        pair.Sight.Sees(0, sagitta - 6).Should().BeFalse("it has the same arrival time as the place 6 mm below the chord");
    }

    [Fact]
    public void The_longer_pulse_of_the_pair_makes_the_dead_zone()
    {
        var equal = Pair(Given.TofdSection(25)).Study.NearSurfaceDeadZone.Millimetres;
        double With(int longer)
        {
            var section = Given.TofdSection(25);
            var probes = section.Pass.Probes.Select((probe, index) => index == longer
                ? probe with { Transducer = probe.Transducer with { PulseLength = new Duration(0.5) } }
                : probe);
            return Pair(Given.Section(section.Examination with { Passes = [section.Pass with { Probes = [.. probes] }] }, 25)).Study
                .NearSurfaceDeadZone.Millimetres;
        }

        With(0).Should().Be(With(1)).And.BeGreaterThan(equal);
    }

    [Fact]
    public void A_steered_array_is_loudest_along_its_own_axis()
    {
        var axis = 60 * Degree;
        var wedgeAngle = Math.Asin(2337.0 / 5920 * Math.Sin(axis));
        var array = new Directivity(8, isRound: false, 2.337 / 5, 2337.0 / 5920, wedgeAngle, -10 * Degree);
        array.At(axis).Should().BeApproximately(1, 1e-12);
        array.At(axis - 0.2).Should().BeLessThan(1);
        array.At(axis + 0.2).Should().BeLessThan(1);
    }

    private static TofdPair Pair(PassSection section)
    {
        var (pair, reason) = TofdPair.Of(section, section.Pass.Beams[0]);
        reason.Should().BeNull();
        return pair!;
    }
}
