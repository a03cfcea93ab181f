using System.Collections.Immutable;
using CsCheck;
using FluentAssertions;
using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Coverage;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Studies;
using Xunit;
using static TechLint.Tests.Unit.Ultrasonics.Coverage.Strips;

namespace TechLint.Tests.Unit.Ultrasonics.Coverage;

public sealed class CoverageKernelTests
{
    private static CoverageResult Compute(CoverageInput input) => CoverageKernel.Compute(input, traceUnseen: true);

    [Fact]
    public void A_strip_half_as_wide_as_the_volume_sees_half_of_it()
    {
        var result = Compute(Plate(Upright(-5, 10)));
        result.Volume.Percent.Should().BeApproximately(50, 1e-6);
        result.Left.Percent.Should().BeApproximately(50, 1e-6);
        result.Right.Percent.Should().Be(0);
        result.BothSides.Percent.Should().Be(0);
        result.IsComplete.Should().BeFalse();
        result.LargestUnseenAcross.Millimetres.Should().BeApproximately(10, 1e-6);
        result.LargestUnseenDepth.Millimetres.Should().BeApproximately(20, 1e-9);
    }

    [Fact]
    public void A_slanted_strip_sees_its_width_over_the_cosine_in_every_row()
    {
        // 45°, 4 mm wide: 4√2 mm of each 20 mm row, as long as it stays inside.
        var result = Compute(Plate(new SightLine(-10, 1, Math.PI / 4, Strip(4), 1, 0, double.PositiveInfinity)) with
        {
            Volume = new VolumeRectangle(-10, 10, 4, 14),
        });
        result.Volume.Percent.Should().BeApproximately(100 * 4 * Math.Sqrt(2) / 20, 1e-5);
    }

    [Fact]
    public void What_is_seen_entirely_is_exactly_100_percent()
    {
        var result = Compute(Plate(Upright(0, 100), Upright(1, 100, direction: -1)));
        result.Volume.Percent.Should().Be(100);
        result.Left.Percent.Should().Be(100);
        result.Right.Percent.Should().Be(100);
        result.BothSides.Percent.Should().Be(100);
        result.IsComplete.Should().BeTrue();
        result.Unseen.Should().BeEmpty();
        result.LargestUnseenAcross.Millimetres.Should().Be(0);
    }

    [Fact]
    public void What_nothing_sees_is_one_ring_around_the_volume()
    {
        var result = Compute(Plate());
        result.Volume.Percent.Should().Be(0);
        result.IsComplete.Should().BeFalse();
        result.Unseen.Should().ContainSingle().Which.Select(place => (place.Y.Millimetres, place.Z.Millimetres))
            .Should().BeEquivalentTo([(-10.0, 0.0), (10.0, 0.0), (10.0, 20.0), (-10.0, 20.0)]);
    }

    [Theory]
    [InlineData(0.4, true)]
    [InlineData(0.6, false)]
    public void A_slit_counts_once_it_is_wider_than_half_a_millimetre(double slit, bool isComplete)
    {
        var result = Compute(Plate(Upright(-10 - (slit / 2), 20), Upright(10 + (slit / 2), 20)));
        result.IsComplete.Should().Be(isComplete);
        result.Volume.Percent.Should().BeApproximately(100 - (100 * slit / 20), 1e-6);
        result.LargestUnseenAcross.Millimetres.Should().BeApproximately(slit, 1e-6);
        var ring = result.Unseen.Should().ContainSingle().Subject;
        ring.Should().HaveCount(4);
    }

    [Fact]
    public void An_unseen_margin_below_the_surface_counts_by_its_depth()
    {
        // Seen from 0.4 mm of path on: a ring of rows above is left, less than half a millimetre deep.
        Compute(Plate(Upright(0, 100, from: 0.3)) with { Volume = new VolumeRectangle(-0.1, 0.1, 0, 20) }).IsComplete.Should().BeTrue();
        var deep = Compute(Plate(Upright(0, 100, from: 3)) with { Volume = new VolumeRectangle(-1, 1, 0, 20) });
        deep.IsComplete.Should().BeFalse();
        deep.LargestUnseenDepth.Millimetres.Should().BeApproximately(3, 0.16);
    }

    [Fact]
    public void A_stretch_that_only_a_window_leaves_seen_is_a_hole_in_what_is_unseen()
    {
        var result = Compute(Plate(Upright(0, 10, from: 6, to: 12)));
        result.Unseen.Should().HaveCount(2);
        SignedArea(result.Unseen[0]).Should().BeApproximately(400, 1e-3, "the outer ring runs around the volume");
        SignedArea(result.Unseen[1]).Should().BeNegative("a hole runs the other way");
        (SignedArea(result.Unseen[0]) + SignedArea(result.Unseen[1])).Should()
            .BeApproximately(400 * (1 - (result.Volume.Percent / 100)), 0.05);
    }

    [Fact]
    public void A_leg_whose_bounce_falls_on_the_root_does_not_see()
    {
        // Straight down and back: the rays at positive advance bounce at y > 0.
        var free = Plate(Upright(0, 10, legs: 0b10));
        Compute(free).Volume.Percent.Should().BeApproximately(50, 1e-6);
        Compute(free with { Root = new MirrorGap(0, 8) }).Volume.Percent.Should().BeApproximately(25, 1e-6);
        Compute(free with { Root = new MirrorGap(-8, 8) }).Volume.Percent.Should().Be(0);
        Compute(free with { Cap = new MirrorGap(-8, 8) }).Volume.Percent.Should().BeApproximately(50, 1e-6, "leg 2 ends at the cap");
        Compute(Plate(Upright(0, 10, legs: 0b100)) with { Cap = new MirrorGap(-8, 8) }).Volume.Percent.Should().Be(0);
        Compute(Plate(Upright(0, 10)) with { Root = new MirrorGap(-8, 8) }).Volume.Percent.Should().BeApproximately(50, 1e-6);
    }

    [Fact]
    public void Flush_reinforcement_is_a_mirror()
    {
        MirrorGap.Of(new Reinforcement(new(20), new(0), new(0))).Should().BeNull();
        MirrorGap.Of(new Reinforcement(new(20), new(2), new(1))).Should().Be(new MirrorGap(-9, 11));
        MirrorGap.Of(null).Should().BeNull();
    }

    [Fact]
    public void A_pass_from_inside_is_turned_round_before_it_is_united()
    {
        // Its own left is the common frame's right, and it counts depth from the other surface.
        var input = Plate() with
        {
            Passes = [new CoveragePass(Surface.Inside, [Upright(-5, 6, direction: 1, from: 4, to: 10)], [])],
        };
        var result = Compute(input);
        result.Right.Percent.Should().BeGreaterThan(5).And.BeApproximately(result.Volume.Percent, 1e-9);
        result.Left.Percent.Should().Be(0);
        var hole = result.Unseen[1];
        hole.Min(place => place.Y.Millimetres).Should().BeApproximately(2, 1e-6);
        hole.Max(place => place.Y.Millimetres).Should().BeApproximately(8, 1e-6);
        hole.Min(place => place.Z.Millimetres).Should().BeApproximately(10, 0.2);
    }

    [Fact]
    public void A_pipe_of_huge_diameter_is_a_plate()
    {
        var flat = Plate([.. Fan(-24, 1), .. Fan(27, -1)]) with { Cap = new MirrorGap(-9, 7), Root = new MirrorGap(-3, 4) };
        var expected = Compute(flat);
        foreach (var surface in new[] { Surface.Outside, Surface.Inside })
        {
            var turned = flat with { Passes = [flat.Passes[0] with { ScanningSurface = surface }] };
            var plate = Compute(turned);
            var pipe = Compute(turned with { OutsideDiameter = 4e6 });
            pipe.Volume.Percent.Should().BeApproximately(plate.Volume.Percent, 0.1);
            pipe.Left.Percent.Should().BeApproximately(plate.Left.Percent, 0.1);
            pipe.Right.Percent.Should().BeApproximately(plate.Right.Percent, 0.1);
        }

        expected.Volume.Percent.Should().BeInRange(20, 99);
    }

    [Theory]
    [InlineData(null)]
    [InlineData(323.9)]
    public void The_same_input_gives_the_same_bits_on_any_thread(double? diameter)
    {
        var input = Plate([.. Fan(-24, 1), .. Fan(27, -1)]) with { OutsideDiameter = diameter, Root = new MirrorGap(-3, 4) };
        var other = Plate(Fan(-20, 1)) with { Thickness = 15, Volume = new VolumeRectangle(-30, 4, 0, 15) };
        var bits = new long[64];
        Parallel.For(0, bits.Length, index =>
        {
            // Another section in between: buffers that are kept must not remember it.
            CoverageKernel.Volume(other);
            bits[index] = BitConverter.DoubleToInt64Bits(CoverageKernel.Compute(input, traceUnseen: false).Volume.Percent);
        });
        bits.Distinct().Should().ContainSingle();
    }

    [Theory]
    [InlineData(null)]
    [InlineData(250.0)]
    public void A_section_drawn_to_another_scale_is_covered_alike(double? diameter)
    {
        var small = Scaled(1, diameter);
        var large = Scaled(2.5, diameter * 2.5);
        Compute(large).Volume.Percent.Should().BeApproximately(Compute(small).Volume.Percent, 1e-4);

        static CoverageInput Scaled(double scale, double? outside) => new(
            20 * scale, outside, new VolumeRectangle(-12 * scale, 12 * scale, 0, 20 * scale), null, new MirrorGap(-3 * scale, 3 * scale),
            [
                new CoveragePass(
                    Surface.Outside,
                    [.. Enumerable.Range(0, 6).Select(index => new SightLine(
                        -25 * scale, 1, (40 + (5 * index)) * Math.PI / 180, new BeamWidth(8 * scale, 0.65 * scale, 9 * scale, 40 * scale), 3, 0,
                        60 * scale))],
                    []),
            ],
            0.16 * scale);
    }

    [Fact]
    public void What_cannot_be_computed_is_said_and_never_passes_for_seen()
    {
        var sound = Plate(Upright(0, 100));
        CoverageInput[] broken =
        [
            sound with { Thickness = 0 }, sound with { Thickness = double.NaN }, sound with { OutsideDiameter = 40 },
            sound with { Volume = new VolumeRectangle(5, 5, 0, 20) }, sound with { Volume = new VolumeRectangle(-5, 5, 0, 21) },
            sound with { Volume = new VolumeRectangle(-5, double.NaN, 0, 20) },
            sound with { RowStep = 0 }, sound with { RowStep = 1e-7 },
            Plate(Upright(double.NaN, 10)), Plate(new SightLine(0, 1, double.NaN, Strip(10), 1, 0, 10)),
            Plate(new SightLine(0, 1, 0.5, Strip(double.NaN), 1, 0, 10)), Plate(Upright(0, 10, from: 10, to: 5)),
        ];
        foreach (var input in broken)
        {
            var result = Compute(input);
            result.NotComputed.Should().NotBeNullOrEmpty();
            result.IsComplete.Should().BeFalse();
            CoverageKernel.Volume(input).Should().BeNull();
            CoverageKernel.IsComplete(input).Should().BeFalse();
        }
    }

    [Fact]
    public void Sides_and_union_obey_the_laws_of_sets() => Inputs.Sample(
        input =>
        {
            var result = CoverageKernel.Compute(input, traceUnseen: false);
            var (volume, left, right, both) =
                (result.Volume.Percent, result.Left.Percent, result.Right.Percent, result.BothSides.Percent);
            (left + right - both).Should().BeApproximately(volume, 1e-3);
            both.Should().BeLessThanOrEqualTo(Math.Min(left, right) + 1e-9);
            volume.Should().BeInRange(0, 100 + 1e-9);

            // The same union, asked of few laws first: on a curve the edges are found from other starting points, to the last digits.
            var seen = CoverageKernel.Volume(input)!.Value;
            seen.Volume.Percent.Should().BeApproximately(result.Volume.Percent, 1e-9);
            seen.IsComplete.Should().Be(result.IsComplete);
            CoverageKernel.IsComplete(input).Should().Be(result.IsComplete);
            (result.LargestUnseenAcross.Millimetres > 0.5 + 1e-9 && result.LargestUnseenDepth.Millimetres > 0.5 + 1e-9)
                .Should().Be(!result.IsComplete);
        },
        iter: 200);

    [Fact]
    public void A_mirrored_section_is_covered_alike_with_its_sides_exchanged() => Inputs.Sample(
        input =>
        {
            var mirrored = input with
            {
                Volume = input.Volume with { FromY = -input.Volume.ToY, ToY = -input.Volume.FromY },
                Root = input.Root is { } root ? new MirrorGap(-root.To, -root.From) : null,
                Passes = [.. input.Passes.Select(pass => pass with
                {
                    Lines = [.. pass.Lines.Select(line => line with { ExitY = -line.ExitY, Direction = -line.Direction })],
                })],
            };
            var one = CoverageKernel.Compute(input, traceUnseen: false);
            var other = CoverageKernel.Compute(mirrored, traceUnseen: false);
            other.Volume.Percent.Should().BeApproximately(one.Volume.Percent, 1e-6);
            other.Left.Percent.Should().BeApproximately(one.Right.Percent, 1e-6);
            other.Right.Percent.Should().BeApproximately(one.Left.Percent, 1e-6);
        },
        iter: 200);

    [Fact]
    public void More_beams_or_a_longer_window_never_see_less() => Inputs.Sample(
        input =>
        {
            var pass = input.Passes[0];
            var fewer = input with { Passes = [pass with { Lines = pass.Lines.RemoveAt(0) }] };
            var longer = input with
            {
                Passes = [pass with { Lines = [.. pass.Lines.Select(line => line with { PathFrom = line.PathFrom / 2, PathTo = line.PathTo * 1.2 })] }],
            };
            var volume = CoverageKernel.Volume(input)!.Value.Volume.Percent;
            CoverageKernel.Volume(fewer)!.Value.Volume.Percent.Should().BeLessThanOrEqualTo(volume + 1e-4);
            CoverageKernel.Volume(longer)!.Value.Volume.Percent.Should().BeGreaterThanOrEqualTo(volume - 1e-4);
        },
        iter: 200);

    [Fact]
    public void The_width_is_straight_between_its_bends() => Gen.Select(
        Gen.Double[2, 30], Gen.Double[0.2, 2], Gen.Double[0, 40], Gen.Double[5, 80]).Sample(
        (aperture, wavelength, lead, focus) =>
        {
            var width = new BeamWidth(aperture, wavelength, lead, focus);
            Span<WidthPiece> pieces = stackalloc WidthPiece[WidthPieces.AtMost];
            var count = WidthPieces.Of(width, pieces);
            for (var path = 0.5; path < 200; path += 0.5)
            {
                for (var index = 0; index < count; index++)
                {
                    if (path < pieces[index].From || path > pieces[index].To) continue;
                    (pieces[index].Intercept + (pieces[index].Slope * path)).Should().BeApproximately(width.At(path), 1e-7);
                }
            }

            pieces[0].From.Should().Be(0);
            pieces[count - 1].To.Should().Be(double.PositiveInfinity);
        },
        iter: 200);

    /// <summary>Small fans in flat and curved sections, from either surface, over a root that may end legs.</summary>
    private static readonly Gen<CoverageInput> Inputs =
        from thickness in Gen.Double[6, 30]
        from isPipe in Gen.Bool
        from diameter in Gen.Double[3 * 30, 1500]
        from isInside in Gen.Bool
        from hasRoot in Gen.Bool
        from half in Gen.Double[1, 6]
        from lines in (
            from exit in Gen.Double[4, 50]
            from isLeft in Gen.Bool
            from angle in Gen.Double[0, 75]
            from aperture in Gen.Double[4, 20]
            from isFocused in Gen.Bool
            from focus in Gen.Double[8, 60]
            from legs in Gen.Int[1, 7]
            from startsLate in Gen.Bool
            from late in Gen.Double[0, 30]
            let direction = isLeft ? 1 : -1
            let start = startsLate ? late : 0
            select new SightLine(
                -direction * exit, direction, angle * Math.PI / 180, new BeamWidth(aperture, 0.65, 8, isFocused ? focus : 0), legs, start, start + 60)).Array[1, 8]
        select new CoverageInput(
            thickness, isPipe ? diameter : null, new VolumeRectangle(-14, 16, 0, thickness), null,
            hasRoot ? new MirrorGap(-half, half * 0.7) : null,
            [new CoveragePass(isInside ? Surface.Inside : Surface.Outside, [.. lines], [])], 0.2);

    private static ImmutableArray<SightLine> Fan(double exit, int direction) =>
        [.. Enumerable.Range(0, 7).Select(index => new SightLine(
            exit - (direction * 0.1 * index), direction, (40 + (5 * index)) * Math.PI / 180, new BeamWidth(8, 0.65, 9), 3, 0, 90))];

    private static double SignedArea(ImmutableArray<SectionPlace> ring)
    {
        var twice = 0.0;
        for (var index = 0; index < ring.Length; index++)
        {
            var (one, next) = (ring[index], ring[(index + 1) % ring.Length]);
            twice += (one.Y.Millimetres * next.Z.Millimetres) - (next.Y.Millimetres * one.Z.Millimetres);
        }

        return twice / 2;
    }
}
