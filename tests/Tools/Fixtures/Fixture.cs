using System.Collections.Immutable;

namespace TechLint.Tests.Tools.Fixtures;

/// <summary>One rule's fixture: prose, and texts with the findings marked in them. The format is described in <c>tests/Rules/README.md</c>.</summary>
/// <param name="Rule">The file's name, which is the rule's.</param>
internal sealed record Fixture(string Rule, string Prose, ImmutableArray<FixtureSection> Sections)
{
    public FixtureSection? Section(string title) => Sections.FirstOrDefault(section => section.Title == title);

    public IEnumerable<FixtureCase> Cases => Sections.SelectMany(section => section.Cases);
}

/// <param name="Title"><c>Wrong</c>, <c>Right</c> or <c>Boundary</c>.</param>
/// <param name="Markdown">The section as it stands, without its heading: for the rule's page.</param>
internal sealed record FixtureSection(string Title, string Markdown, ImmutableArray<FixtureCase> Cases);

/// <summary>One workspace: the base with some files changed, and exactly the findings that it must have.</summary>
/// <param name="Name">Section, title and number: for the reader of a failed test.</param>
/// <param name="Throwing">A rule that fails in this case, whatever it is given; null in almost all.</param>
internal sealed record FixtureCase(string Section, string Name, ImmutableArray<FixtureFile> Files, string? Throwing)
{
    public IEnumerable<ExpectedFinding> Expected => Files.SelectMany(file => file.Expected);

    /// <summary>The case stands in a test report by this.</summary>
    public override string ToString() => Name;
}

/// <param name="Text">The whole text with LF, the marks taken out; null where the file is bytes.</param>
/// <param name="Bytes">Bytes as given in hexadecimal; null where the file is text.</param>
internal sealed record FixtureFile(string Path, string? Text, byte[]? Bytes, ImmutableArray<ExpectedFinding> Expected);

/// <summary>Lines and columns count from 0, columns in UTF-16 code units; the end is exclusive.</summary>
/// <param name="Fragment">What the message must hold.</param>
internal sealed record ExpectedFinding(string File, string Rule, int Line, int Column, int EndLine, int EndColumn, string Fragment);
