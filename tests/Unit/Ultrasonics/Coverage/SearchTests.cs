using FluentAssertions;
using TechLint.Ultrasonics.Coverage;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;
using Xunit;
using static TechLint.Tests.Unit.Ultrasonics.Coverage.Strips;

namespace TechLint.Tests.Unit.Ultrasonics.Coverage;

public sealed class SearchTests
{
    private static readonly SearchRange Plain = new(10, 30, [null], 0, 0, HasLeft: true, HasRight: true);

    /// <summary>Two strips from left and right that leave a slit in the middle.</summary>
    private static CoverageInput Slit(CoverageCase place, double slit) => Plate(
        Upright(-50 - (slit / 2) - place.LeftError, 100), Upright(50 + (slit / 2) + place.RightError, 100, direction: -1)) with
    {
        Thickness = place.Thickness, OutsideDiameter = null, Volume = new VolumeRectangle(-10, 10, 0, place.Thickness),
    };

    /// <summary>Short cuts spare work and change no answer.</summary>
    private static WorstCoverage Worst(SearchRange range, CoverageBuilder build)
    {
        var worst = WorstCaseSearch.Find(range, build, InsetRule.None);
        var shorter = WorstCaseSearch.Find(range, build, new InsetRule(MovesAsOne: true));
        shorter.Result.IsComplete.Should().Be(worst.Result.IsComplete);
        if (worst.NotComputed is null) shorter.Result.Volume.Percent.Should().BeApproximately(worst.Result.Volume.Percent, 0.1);
        return worst;
    }

    private static OffsetWindow? Window(SearchRange range, ShiftedBuilder build, double from, double to)
    {
        var window = OffsetSearch.Find(range, build, InsetRule.None, from, to, new RuledOutMoves());
        var shorter = OffsetSearch.Find(range, build, new InsetRule(MovesAsOne: true) { CanRuleOut = true }, from, to, new RuledOutMoves());
        shorter.Should().Be(window);
        return window;
    }

    [Fact]
    public void The_worst_thickness_is_found_between_the_ends_to_its_resolution()
    {
        var worst = Worst(Plain, place => Slit(place, 5 - (0.05 * Math.Pow(place.Thickness - 17.3, 2))));
        worst.NotComputed.Should().BeNull();
        worst.Thickness.Millimetres.Should().BeApproximately(17.3, 2 * WorstCaseSearch.ThicknessResolution);
        worst.Result.Volume.Percent.Should().BeApproximately(75, 0.01);
        worst.Result.Unseen.Should().ContainSingle();
    }

    [Fact]
    public void The_worst_corner_of_the_tolerance_is_found()
    {
        var worst = Worst(Plain with { OffsetTolerance = 1.5 }, place => Slit(place, 2));
        worst.LeftError.Millimetres.Should().Be(1.5);
        worst.RightError.Millimetres.Should().Be(1.5);
        worst.Result.Volume.Percent.Should().BeApproximately(75, 1e-6);

        var oneSided = Worst(Plain with { OffsetTolerance = 1.5, HasRight = false }, place => Slit(place, 2));
        oneSided.RightError.Millimetres.Should().Be(0);
        oneSided.Result.Volume.Percent.Should().BeApproximately(82.5, 1e-6);
    }

    [Fact]
    public void The_skew_is_tried_both_ways()
    {
        var worst = Worst(
            Plain with { SkewTolerance = 0.05 }, place => Slit(place, 2 + (40 * Math.Max(0, -place.SkewError))));
        worst.Result.Volume.Percent.Should().BeApproximately(80, 1e-6);
    }

    [Fact]
    public void The_worst_diameter_is_named()
    {
        var worst = Worst(
            Plain with { Diameters = [300, 500] }, place => Slit(place, place.OutsideDiameter == 500 ? 3 : 1));
        worst.OutsideDiameter.Should().Be(new Length(500));
        worst.Result.Volume.Percent.Should().BeApproximately(85, 1e-6);
    }

    [Fact]
    public void Incomplete_is_worse_than_a_smaller_share_in_slits_that_are_tolerated()
    {
        // At 10 mm: twelve slits of 0.4 mm are tolerated; at 30 mm one of 0.6 mm is not.
        var worst = Worst(Plain, place => place.Thickness > 29
            ? Slit(place, 0.6)
            : Plate([.. Enumerable.Range(0, 13).Select(index => Upright(-12 + (2 * index), 1.6))]) with
            {
                Thickness = place.Thickness, Volume = new VolumeRectangle(-10, 10, 0, place.Thickness),
            });
        worst.Result.IsComplete.Should().BeFalse();
        worst.Result.Volume.Percent.Should().BeApproximately(97, 1e-6);
    }

    [Fact]
    public void A_case_that_cannot_be_built_leaves_the_worst_case_unknown()
    {
        var worst = Worst(Plain, place => place.Thickness > 20 ? null : Slit(place, 0));
        worst.NotComputed.Should().NotBeNullOrEmpty();
        worst.Result.IsComplete.Should().BeFalse();
        worst.Thickness.Millimetres.Should().BeGreaterThan(20);
    }

    [Fact]
    public void A_range_that_is_whole_everywhere_costs_few_sections()
    {
        var built = 0;
        var worst = WorstCaseSearch.Find(
            Plain with { OffsetTolerance = 1, SkewTolerance = 0.03, IsSkewEven = true },
            place =>
            {
                built++;
                return Slit(place, -10);
            },
            new InsetRule(MovesAsOne: true));
        worst.Result.Volume.Percent.Should().Be(100);
        built.Should().BeLessThan(40);
    }

    [Fact]
    public void A_difficult_range_costs_a_bounded_number_of_sections()
    {
        var built = 0;
        WorstCaseSearch.Find(
            Plain with { OffsetTolerance = 1, SkewTolerance = 0.03, Diameters = [300, null] },
            place =>
            {
                built++;
                return Slit(place, 1 + (0.01 * place.Thickness));
            },
            new InsetRule(MovesAsOne: true));
        built.Should().BeLessThan(400);
    }

    [Theory]
    [InlineData(0, 0, -5, 5)]
    [InlineData(0, 1, -4, 4)]
    [InlineData(-8, 0, 3, 13)]
    [InlineData(40, 0.5, -44.5, -35.5)]
    public void Covering_offsets_are_found_with_the_tolerance_taken_off(double start, double tolerance, double from, double to)
    {
        // A strip of 30 mm over a volume of 20 mm may stand 5 mm off either way.
        var window = Window(
            Plain with { OffsetTolerance = tolerance },
            (place, shift) => Plate(Upright(start + shift + place.LeftError, 30)) with
            {
                Thickness = place.Thickness, Volume = new VolumeRectangle(-10, 10, 0, place.Thickness),
            },
            -60, 60);

        // Half a millimetre may stay unseen at either edge.
        window.Should().NotBeNull();
        window!.From.Millimetres.Should().BeInRange(from - 0.5 - OffsetSearch.Fine, from + OffsetSearch.Fine);
        window.To.Millimetres.Should().BeInRange(to - OffsetSearch.Fine, to + 0.5 + OffsetSearch.Fine);
    }

    [Fact]
    public void Covering_offsets_never_pass_the_limits()
    {
        var window = Window(
            Plain, (place, shift) => Plate(Upright(shift, 30)) with { Thickness = place.Thickness, Volume = new(-10, 10, 0, place.Thickness) }, -2, 3);
        window.Should().Be(new OffsetWindow(new Length(-2), new Length(3)));
    }

    [Fact]
    public void No_window_where_nothing_within_reach_covers()
    {
        Window(Plain, (_, shift) => Plate(Upright(shift, 15)), -60, 60).Should().BeNull();
        Window(Plain, (_, _) => null, -60, 60).Should().BeNull();
        Window(Plain, (_, shift) => Plate(Upright(shift, 100)), 5, -5).Should().BeNull();
    }

    [Fact]
    public void The_window_holds_for_the_whole_thickness_band()
    {
        // A slanted strip needs another place at every thickness.
        CoverageInput Build(CoverageCase place, double shift) => Plate(
            new TechLint.Ultrasonics.Beams.SightLine(-20 - shift, 1, Math.PI / 4, Strip(30), 1, 0, double.PositiveInfinity)) with
        {
            Thickness = place.Thickness, Volume = new VolumeRectangle(-5, 5, 0, place.Thickness),
        };
        var band = Window(Plain, Build, -60, 60);
        var thin = Window(Plain with { ToThickness = 10 }, Build, -60, 60);
        var thick = Window(Plain with { FromThickness = 30 }, Build, -60, 60);
        band!.To.Millimetres.Should().BeApproximately(Math.Min(thin!.To.Millimetres, thick!.To.Millimetres), 0.2);
        band.From.Millimetres.Should().BeApproximately(Math.Max(thin.From.Millimetres, thick.From.Millimetres), 0.2);
        thick.From.Millimetres.Should().NotBeApproximately(thin.From.Millimetres, 1);
    }

    public static TheoryData<Curvature, double?, double?, double?[]> Bands => new()
    {
        { Curvature.Flat, null, null, [null] },
        { Curvature.AcrossWeld, 300, 500, [300, 500] },
        { Curvature.AcrossWeld, 300, 300, [300] },
        { Curvature.AcrossWeld, 300, null, [300, null] },
        { Curvature.AcrossWeld, 300, 2000, [300, 2000] },
        { Curvature.AlongWeld, 114.3, null, [114.3] },
    };

    [Theory]
    [MemberData(nameof(Bands))]
    public void Diameters_stand_for_their_band(Curvature curvature, double? from, double? to, double?[] expected)
    {
        var speeds = new SoundSpeeds("steel", null, null);
        var preparation = new Preparation(
            PreparationShape.Square, Surface.Outside, Side.Left, Groove.None, Groove.None, default, default, default, default, [], []);
        var examination = new Examination(
            new Part(curvature, speeds, speeds), new WeldSection(preparation, null, null, null),
            new ExaminedVolume(new(10), new(0, true), new(100, true)), new(new Length(10), new Length(20)),
            from is { } least ? new Band<Length>(new Length(least), to is { } most ? new Length(most) : null) : null,
            new Level(-12),
            [
                new Pass("a", 1, Surface.Outside, new(new(1), new(2)), [], [], null),
                new Pass("b", 2, Surface.Outside, new(new(2), new(1)), [], [], null),
            ]);
        var range = SearchRange.Of(examination);
        range.Diameters.Should().Equal(expected);
        range.FromThickness.Should().Be(10);
        range.OffsetTolerance.Should().Be(2);
        range.SkewTolerance.Should().BeApproximately(2 * Math.PI / 180, 1e-12);
        range.Corners().Should().BeEmpty("no probe stands on either side");
    }
}
