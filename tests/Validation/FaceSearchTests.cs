using FluentAssertions;
using TechLint.Tests.Unit.Ultrasonics;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Faces;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;
using Xunit;

namespace TechLint.Tests.Validation;

/// <summary>The worst case of the faces against every case of a finer grid. What the search may miss: 5 % of a face.</summary>
public sealed class FaceSearchTests
{
    private const double Missed = 5;

    [Theory]
    [InlineData(PreparationShape.SingleV, 30, 12, 20, 30)]
    [InlineData(PreparationShape.DoubleV, 30, 18, 24, 34)]
    [InlineData(PreparationShape.SingleU, 10, 18, 26, 30)]
    public void No_case_of_a_finer_grid_is_much_worse(PreparationShape shape, double bevel, double from, double to, double offset)
    {
        var pass = Given.Pass(
            new(Given.ArrayProbe(Side.Left, offset), Given.ArrayProbe(Side.Right, offset)),
            Given.Sector with { Angles = new AngleSweep(new Angle(45), new Angle(70), new Angle(2.5)) },
            Given.Sector with { Id = "right", From = 2, Angles = new AngleSweep(new Angle(45), new Angle(70), new Angle(2.5)) })
            with
        { Tolerance = new PositioningTolerance(new Length(1), new Angle(2)) };
        var groove = Groove.None with { FaceAngle = new Angle(bevel), Radius = new Length(6) };
        var examination = Given.Examination(pass) with
        {
            Weld = new WeldSection(
                new Preparation(shape, Surface.Outside, Side.Left, groove, groove, new Length(2), new Length(2), new Length(1.5), default, [], []), null, null, null),
            Thickness = new Band<Length>(new Length(from), new Length(to)),
        };
        var found = new Study(examination).Faces.Study.Faces.Min(face => face.FromEither.Percent);
        var least = double.PositiveInfinity;
        for (var step = 0; step <= 4; step++)
        {
            foreach (var (left, right) in new[] { (-1.0, -1.0), (-1, 1), (0, 0), (1, -1), (1, 1) })
            {
                foreach (var (hiLo, skew) in from hiLo in new[] { -1.5, 0, 1.5 } from skew in new[] { -2.0, 0, 2 } select (hiLo, skew))
                {
                    var place = new FacePlaceInRange(from + (step * (to - from) / 4), null, left, right, skew * Math.PI / 180, hiLo);
                    least = Math.Min(least, FaceKernel.Of(examination, place).Faces.Min(face => face.FromEither.Percent));
                }
            }
        }

        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"searched {found:F2}, finer {least:F2}"));
        found.Should().BeInRange(0.0, least + Missed);
    }
}
