using System.Collections.Immutable;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Ultrasonics.Welds;

/// <summary>One piece of a fusion face, straight or a circular arc.</summary>
/// <param name="From">Nearer the outer surface.</param>
/// <param name="To">Nearer the inner surface.</param>
/// <param name="Centre">Of the arc; null where the piece is straight.</param>
/// <param name="Radius">Of the arc; zero where the piece is straight.</param>
public readonly record struct FacePiece(SectionPlace From, SectionPlace To, SectionPlace? Centre, Length Radius);

/// <summary>
/// The joint before welding, exact at one thickness: both fusion faces from the outer surface to the inner one. y from the
/// middle of the root gap, z from the outer surface; both along the section, flat or unrolled.
/// </summary>
/// <remarks>
/// A groove's face lies at the height h above its root face at the half width <c>g/2 + h tan β</c> (V and bevel; g root gap);
/// <c>g/2 + sqrt(R² − (R − h)²)</c> up to <c>h = R (1 − sin β)</c> and straight at β from there (U and J: the arc starts level at the root
/// face's corner and runs into the face; at the surface <c>g/2 + R (1 − sin β)/cos β + H tan β</c>); at two angles below and above the break, whose
/// depth counts from the surface (compound V). Forms and terms are those of ISO 9692-1 and ASME B16.25; the formulas are plane geometry, held to a
/// geometry library in tests/Validation.
/// </remarks>
public sealed class WeldOutline
{
    private readonly double thickness;

    private WeldOutline(double thickness, ImmutableArray<FacePiece> left, ImmutableArray<FacePiece> right)
    {
        this.thickness = thickness;
        Left = left;
        Right = right;
    }

    public Length Thickness => new(thickness);

    /// <summary>The left face, outer surface first.</summary>
    public ImmutableArray<FacePiece> Left { get; }

    public ImmutableArray<FacePiece> Right { get; }

    /// <summary>Ends of all pieces, mm.</summary>
    internal IEnumerable<(double Y, double Z)> Corners => Left.Concat(Right)
        .SelectMany(piece => new[] { piece.From, piece.To })
        .Select(place => (place.Y.Millimetres, place.Z.Millimetres));

    public static WeldOutline At(Preparation preparation, Length thickness) => At(preparation, thickness.Millimetres);

    internal static WeldOutline At(Preparation preparation, double thickness)
    {
        if (preparation.Shape == PreparationShape.Profile)
        {
            return new WeldOutline(
                thickness, FaceBuilder.FromPoints(preparation.LeftFace, thickness), FaceBuilder.FromPoints(preparation.RightFace, thickness));
        }

        return new WeldOutline(
            thickness, FaceBuilder.Of(preparation, thickness, Side.Left), FaceBuilder.Of(preparation, thickness, Side.Right));
    }

    /// <summary>Where the faces lie at a depth from the outer surface.</summary>
    public (Length Left, Length Right) AcrossAt(Length depth)
    {
        var (left, right) = AcrossAt(depth.Millimetres);
        return (new Length(left), new Length(right));
    }

    public Length WidthAt(Length depth)
    {
        var (left, right) = AcrossAt(depth.Millimetres);
        return new Length(right - left);
    }

    /// <summary>Where the joint opens on a surface: the least that a cap or root there must span.</summary>
    public (Length Left, Length Right) OpeningOn(Surface surface) => AcrossAt(surface == Surface.Outside ? Length.Zero : Thickness);

    /// <summary>Whether reinforcement spans the opening below it; narrower, the stated widths contradict each other.</summary>
    public bool IsSpannedBy(Reinforcement reinforcement, Surface surface)
    {
        var (left, right) = OpeningOn(surface);
        var half = reinforcement.Width.Millimetres / 2;
        return reinforcement.Centre.Millimetres - half <= left.Millimetres + Slack
            && reinforcement.Centre.Millimetres + half >= right.Millimetres - Slack;
    }

    /// <summary>Rounding only.</summary>
    private const double Slack = 1e-6;

    internal (double Left, double Right) AcrossAt(double depth) => (On(Left, depth), On(Right, depth));

    private static double On(ImmutableArray<FacePiece> face, double depth)
    {
        foreach (var piece in face)
        {
            var (fromY, fromZ) = (piece.From.Y.Millimetres, piece.From.Z.Millimetres);
            var (toY, toZ) = (piece.To.Y.Millimetres, piece.To.Z.Millimetres);
            if (depth > toZ && piece != face[^1]) continue;
            if (piece.Centre is { } centre)
            {
                var fromCentre = Math.Clamp(depth - centre.Z.Millimetres, -piece.Radius.Millimetres, piece.Radius.Millimetres);
                var reach = Math.Sqrt((piece.Radius.Millimetres * piece.Radius.Millimetres) - (fromCentre * fromCentre));

                // A groove's arc bulges away from the weld's middle, where its centre lies.
                return centre.Y.Millimetres + Math.CopySign(reach, fromY + toY - (2 * centre.Y.Millimetres));
            }

            if (toZ <= fromZ) continue;
            return fromY + ((toY - fromY) * Math.Clamp((depth - fromZ) / (toZ - fromZ), 0, 1));
        }

        return face.Length == 0 ? 0 : face[^1].To.Y.Millimetres;
    }
}
