using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Studies;
using TechLint.Ultrasonics.Welds;

namespace TechLint.Ultrasonics.Faces;

/// <summary>
/// A place on a fusion face in a pass's own frame: y along the scanning surface, z below it, and the face's unit normal in the axes of that place (along the
/// surface, into the part). mm.
/// </summary>
/// <remarks>
/// A face's y is a true length at its own depth; on a curved section it stands at the polar angle ψ = y / r, and going along the face turns by
/// dψ, so that the tangent in local axes is (dy + (y/r) dz, dz).
/// </remarks>
internal readonly record struct FacePoint(double Y, double Z, double NormalY, double NormalZ)
{
    /// <param name="piece">The piece.</param>
    /// <param name="share">Along its length, 0 at its outer end.</param>
    /// <param name="section">The pass.</param>
    public static FacePoint On(FacePiece piece, double share, PassSection section)
    {
        var (y, z, alongY, alongZ) = At(piece, share);
        var sign = section.IsInside ? -1 : 1;
        var ownY = sign * y;
        if (section.Rays.IsCurved)
        {
            var radius = (section.OutsideDiameter!.Value / 2) - z;
            ownY = sign * y / radius * section.Rays.ScanRadius;
            alongY += y / radius * alongZ;
        }

        var size = Math.Sqrt((alongY * alongY) + (alongZ * alongZ));
        return new FacePoint(ownY, section.IsInside ? section.Thickness - z : z, sign * alongZ / size, -sign * alongY / size);
    }

    /// <summary>Place and tangent in the frame of the outer surface.</summary>
    public static (double Y, double Z, double AlongY, double AlongZ) At(FacePiece piece, double share)
    {
        var (fromY, fromZ) = (piece.From.Y.Millimetres, piece.From.Z.Millimetres);
        var (toY, toZ) = (piece.To.Y.Millimetres, piece.To.Z.Millimetres);
        if (piece.Centre is not { } centre) return (fromY + (share * (toY - fromY)), fromZ + (share * (toZ - fromZ)), toY - fromY, toZ - fromZ);
        var (centreY, centreZ) = (centre.Y.Millimetres, centre.Z.Millimetres);
        var start = Math.Atan2(fromZ - centreZ, fromY - centreY);
        var turn = TurnOf(piece);
        var (sine, cosine) = Math.SinCos(start + (share * turn));
        var radius = piece.Radius.Millimetres;
        return (centreY + (radius * cosine), centreZ + (radius * sine), -sine * turn, cosine * turn);
    }

    public static double LengthOf(FacePiece piece) => piece.Centre is null
        ? Math.Sqrt(Math.Pow(piece.To.Y.Millimetres - piece.From.Y.Millimetres, 2) + Math.Pow(piece.To.Z.Millimetres - piece.From.Z.Millimetres, 2))
        : Math.Abs(TurnOf(piece)) * piece.Radius.Millimetres;

    /// <summary>From the arc's start to its end, the short way; rad.</summary>
    private static double TurnOf(FacePiece piece)
    {
        var (centreY, centreZ) = (piece.Centre!.Value.Y.Millimetres, piece.Centre.Value.Z.Millimetres);
        var start = Math.Atan2(piece.From.Z.Millimetres - centreZ, piece.From.Y.Millimetres - centreY);
        var end = Math.Atan2(piece.To.Z.Millimetres - centreZ, piece.To.Y.Millimetres - centreY);
        return Math.IEEERemainder(end - start, 2 * Math.PI);
    }
}
