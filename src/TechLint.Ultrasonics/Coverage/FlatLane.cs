using System.Runtime.CompilerServices;
using TechLint.Ultrasonics.Beams;

namespace TechLint.Ultrasonics.Coverage;

/// <summary>
/// One law in one leg of a flat section. Unfolded over the bounces, the leg's row at depth z lies at the unfolded depth u, a
/// ray launched at φ meets it at the advance <c>a = u tan φ</c>, and in the beam's own axes that place is
/// <c>s = u cos θ + a sin θ</c> along, <c>n = a cos θ − u sin θ</c> across. The width is straight in pieces, so
/// <c>|n| ≤ w(s)/2</c> is a handful of bounds on a, each linear in u: no iteration at all.
/// </summary>
internal struct FlatLane
{
    public int Leg;
    public double Origin;
    public double Scale;
    public double PathFrom;
    public double PathTo;
    public PieceBounds First;
    public PieceBounds Second;
    public PieceBounds Third;
    public LaunchSegments Segments;

    public FlatLane(SightLine line, int leg, PassFrame frame, MirrorGap? near, MirrorGap? far)
    {
        Leg = leg;
        Origin = frame.ToOuter * line.ExitY;
        Scale = frame.ToOuter * line.Direction;
        PathFrom = line.PathFrom;
        PathTo = line.PathTo;
        var (sine, cosine) = Math.SinCos(line.Angle);
        Span<WidthPiece> pieces = stackalloc WidthPiece[WidthPieces.AtMost];
        var count = WidthPieces.Of(line.Width, pieces);
        First = PieceBounds.Of(pieces[0], sine, cosine);
        Second = count > 1 ? PieceBounds.Of(pieces[1], sine, cosine) : PieceBounds.Nothing;
        Third = count > 2 ? PieceBounds.Of(pieces[2], sine, cosine) : PieceBounds.Nothing;

        // Bounce j lies at the advance j t tan φ.
        Segments = LaunchSegments.All;
        for (var bounce = 1; bounce < leg; bounce++)
        {
            if (((bounce & 1) == 1 ? far : near) is not { } gap) continue;
            var one = (gap.From - line.ExitOfBounce(bounce)) * line.Direction / (bounce * frame.Rays.Thickness);
            var other = (gap.To - line.ExitOfBounce(bounce)) * line.Direction / (bounce * frame.Rays.Thickness);
            Segments.Remove(Math.Min(one, other), Math.Max(one, other));
        }
    }

    public readonly void AddRow(double thickness, double depth, RowIntervals row)
    {
        var u = (Leg & 1) == 1 ? ((Leg - 1) * thickness) + depth : (Leg * thickness) - depth;
        if (!(u <= PathTo)) return;
        AddPiece(First, u, row);
        if (Second.IsAny) AddPiece(Second, u, row);
        if (Third.IsAny) AddPiece(Third, u, row);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private readonly void AddPiece(in PieceBounds piece, double u, RowIntervals row)
    {
        var low = piece.Low(u);
        var high = piece.High(u);
        if (!(low < high)) return;
        var square = u * u;

        // The path is sqrt(u² + a²): the window's ends are bounds on |a|.
        if ((Math.Max(low * low, high * high)) + square > PathTo * PathTo)
        {
            var reach = Math.Sqrt((PathTo * PathTo) - square);
            low = Math.Max(low, -reach);
            high = Math.Min(high, reach);
        }

        if (PathFrom > u)
        {
            var start = Math.Sqrt((PathFrom * PathFrom) - square);
            AddSegments(Math.Max(low, start), high, u, row);
            AddSegments(low, Math.Min(high, -start), u, row);
            return;
        }

        AddSegments(low, high, u, row);
    }

    private readonly void AddSegments(double low, double high, double u, RowIntervals row)
    {
        if (!(low < high)) return;
        if (Segments.Count == 0)
        {
            row.Add(Origin + (Scale * low), Origin + (Scale * high));
            return;
        }

        for (var index = 0; index < Segments.Count; index++)
        {
            var segment = Segments[index];
            var from = Math.Max(low, u * segment.From);
            var to = Math.Min(high, u * segment.To);
            if (from < to) row.Add(Origin + (Scale * from), Origin + (Scale * to));
        }
    }
}

/// <summary>One straight piece of a width as bounds on the advance: the greatest of three lower and the least of three upper ones.</summary>
internal readonly struct PieceBounds
{
    /// <summary>What stands for 0 where a bound is divided by its coefficient: the bound then lies beyond every part, on the right side.</summary>
    private const double Vanishing = 1e-9;

    private readonly Bounds lower;
    private readonly Bounds upper;

    private PieceBounds(Bounds lower, Bounds upper)
    {
        this.lower = lower;
        this.upper = upper;
        IsAny = true;
    }

    public static PieceBounds Nothing => default;

    public bool IsAny { get; }

    public static PieceBounds Of(WidthPiece piece, double sine, double cosine)
    {
        var lowest = new Bounds(double.NegativeInfinity);
        var highest = new Bounds(double.PositiveInfinity);
        var half = piece.Slope / 2;
        Bound(cosine - (half * sine), piece.Intercept / 2, sine + (half * cosine), ref lowest, ref highest);
        Bound(-cosine - (half * sine), piece.Intercept / 2, -sine + (half * cosine), ref lowest, ref highest);

        // Pieces overlap by a crack's width: an upright beam's row must not fall between two of them, nor before the first.
        Bound(-sine, RowIntervals.Crack - piece.From, cosine, ref lowest, ref highest);
        if (double.IsFinite(piece.To)) Bound(sine, piece.To + RowIntervals.Crack, -cosine, ref lowest, ref highest);
        return new PieceBounds(lowest, highest);
    }

    public double Low(double u) => Math.Max(
        lower.A + (lower.SlopeA * u), Math.Max(lower.B + (lower.SlopeB * u), lower.C + (lower.SlopeC * u)));

    public double High(double u) => Math.Min(
        upper.A + (upper.SlopeA * u), Math.Min(upper.B + (upper.SlopeB * u), upper.C + (upper.SlopeC * u)));

    /// <summary>coefficient × a ≤ constant + slope × u.</summary>
    private static void Bound(double coefficient, double constant, double slope, ref Bounds lowest, ref Bounds highest)
    {
        if (Math.Abs(coefficient) < Vanishing) coefficient = Math.CopySign(Vanishing, coefficient);
        if (coefficient > 0) highest.Add(constant / coefficient, slope / coefficient);
        else lowest.Add(constant / coefficient, slope / coefficient);
    }

    private struct Bounds(double none)
    {
        public double A = none;
        public double B = none;
        public double C = none;
        public double SlopeA;
        public double SlopeB;
        public double SlopeC;
        private int count;

        public void Add(double constant, double slope)
        {
            switch (count++)
            {
                case 0: (A, SlopeA) = (constant, slope); break;
                case 1: (B, SlopeB) = (constant, slope); break;
                default: (C, SlopeC) = (constant, slope); break;
            }
        }
    }
}
