using TechLint.Syntax;

namespace TechLint.Reports;

/// <summary>A place as readers count: line and column from 1, columns in Unicode code points.</summary>
public readonly record struct Place(int Line, int Column);

/// <summary>Where a span starts, and where it ends: the first place behind it.</summary>
public readonly record struct Position(Place Start, Place End)
{
    /// <summary>The first character; all that can be said of a file whose text is not at hand.</summary>
    public static readonly Position FileStart = new(new Place(1, 1), new Place(1, 1));

    public static Position Of(SourceText? source, TextSpan span) =>
        source is null ? FileStart : new Position(At(source.Lines, span.Start), At(source.Lines, span.End));

    private static Place At(LineMap lines, int offset) => new(lines.LineOf(offset) + 1, lines.CodePointColumn(offset) + 1);
}
