using TechLint.Ultrasonics.Beams;

namespace TechLint.Ultrasonics.Coverage;

/// <summary>A stretch of the beam axis, from <paramref name="From"/> to <paramref name="To"/> mm of path, on which the full width is
/// <paramref name="Intercept"/> + <paramref name="Slope"/> × path.</summary>
internal readonly record struct WidthPiece(double From, double To, double Intercept, double Slope);

internal static class WidthPieces
{
    public const int AtMost = 3;

    /// <summary>The straight pieces of a width from the exit point on.</summary>
    public static int Of(BeamWidth width, Span<WidthPiece> pieces)
    {
        var (first, second) = width.Bends;
        var count = 0;
        Add(width, 0, first, pieces, ref count);
        Add(width, Math.Max(0, first), second, pieces, ref count);
        Add(width, Math.Max(0, second), double.PositiveInfinity, pieces, ref count);
        return count;
    }

    private static void Add(BeamWidth width, double from, double to, Span<WidthPiece> pieces, ref int count)
    {
        if (!(to > from)) return;

        // Two places well inside the piece, so that a bend at its end cannot be read from the wrong side.
        var length = Math.Min(to - from, 1000);
        var near = from + (length / 4);
        var far = from + (length * 3 / 4);
        var slope = (width.At(far) - width.At(near)) / (far - near);
        pieces[count++] = new WidthPiece(from, to, width.At(near) - (slope * near), slope);
    }
}
