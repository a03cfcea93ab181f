using System.Text.RegularExpressions;
using FluentAssertions;
using Xunit;

namespace TechLint.Tests.Unit.Architecture;

/// <summary>What a part of the house must not speak of.</summary>
public sealed class SourceTests
{
    [Fact]
    public void Only_the_command_line_touches_the_console() =>
        Speaking(@"\bConsole\.", Repository.SourceProjects.Where(project => project != "TechLint.Cli")).Should().BeEmpty();

    [Fact]
    public void The_physics_knows_nothing_of_files_rules_or_their_notation() =>
        Speaking(@"(?i)\byaml|\bTechLint\.(Syntax|Model|Rules)\b|\bTextSpan\b|\bFinding\b", ["TechLint.Ultrasonics"]).Should().BeEmpty();

    [Fact]
    public void The_syntax_knows_nothing_of_ultrasonics() =>
        Speaking(@"(?i)\bultrason|\bprobe\b|\bweld\b|\bthickness\b", ["TechLint.Syntax"]).Should().BeEmpty();

    [Fact]
    public void Nothing_speaks_to_a_network() =>
        Speaking(@"\bHttpClient\b|\bSystem\.Net\b|\bSocket\b|\bTcpListener\b|\bTcpClient\b", Repository.SourceProjects).Should().BeEmpty();

    [Fact]
    public void Nothing_names_the_folder_that_it_was_built_in()
    {
        // A path of one machine works on no other.
        var own = Repository.Root + Path.DirectorySeparatorChar;
        new[] { "src", "tests" }.SelectMany(folder => Repository.SourcesOf(folder))
            .Where(file => Repository.Read(file).Contains(own, StringComparison.Ordinal)).Should().BeEmpty();
    }

    // Comments and texts count too: whoever needs the word here is in the wrong room.
    private static IEnumerable<string> Speaking(string pattern, IEnumerable<string> projects) =>
        from project in projects
        from file in Repository.SourcesOf("src", project)
        from match in Regex.Matches(Repository.Read(file), pattern)
        select $"{file}: {match.Value}";
}
