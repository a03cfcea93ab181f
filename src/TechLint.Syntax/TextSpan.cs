namespace TechLint.Syntax;

/// <summary>A stretch of a text, in UTF-16 code units from its first character; <see cref="End"/> is exclusive.</summary>
public readonly record struct TextSpan(int Start, int Length) : IComparable<TextSpan>
{
    public int End => Start + Length;

    public static TextSpan FromBounds(int start, int end) => new(start, end - start);

    public bool Contains(int offset) => offset >= Start && offset < End;

    /// <summary>True when the offset lies inside or at either edge: where a caret still touches the text.</summary>
    public bool Touches(int offset) => offset >= Start && offset <= End;

    public bool Contains(TextSpan other) => other.Start >= Start && other.End <= End;

    public int CompareTo(TextSpan other) => Start != other.Start ? Start.CompareTo(other.Start) : Length.CompareTo(other.Length);

    public static bool operator <(TextSpan left, TextSpan right) => left.CompareTo(right) < 0;

    public static bool operator >(TextSpan left, TextSpan right) => left.CompareTo(right) > 0;

    public static bool operator <=(TextSpan left, TextSpan right) => left.CompareTo(right) <= 0;

    public static bool operator >=(TextSpan left, TextSpan right) => left.CompareTo(right) >= 0;
}
