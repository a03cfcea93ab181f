using System.Xml.Linq;
using FluentAssertions;
using Xunit;

namespace TechLint.Tests.Unit.Architecture;

/// <summary>Eight projects, each of which knows only those above it.</summary>
public sealed class ProjectTests
{
    private static readonly Dictionary<string, string[]> References = new(StringComparer.Ordinal)
    {
        ["TechLint.Syntax"] = [],
        ["TechLint.Ultrasonics"] = [],
        ["TechLint.Model"] = ["TechLint.Syntax", "TechLint.Ultrasonics"],
        ["TechLint.Rules"] = ["TechLint.Model"],
        ["TechLint.Engine"] = ["TechLint.Rules"],
        ["TechLint.Reports"] = ["TechLint.Engine"],
        ["TechLint.LanguageServer"] = ["TechLint.Engine", "TechLint.Reports"],
        ["TechLint.Cli"] =
        [
            "TechLint.Syntax", "TechLint.Ultrasonics", "TechLint.Model", "TechLint.Rules", "TechLint.Engine", "TechLint.Reports", "TechLint.LanguageServer",
        ],
    };

    private static readonly string[] Pure = ["TechLint.Syntax", "TechLint.Ultrasonics", "TechLint.Model", "TechLint.Rules"];

    public static TheoryData<string> Projects => [.. Repository.SourceProjects];

    [Fact]
    public void The_house_has_these_projects() => Repository.SourceProjects.Should().BeEquivalentTo(References.Keys);

    [Theory]
    [MemberData(nameof(Projects))]
    public void A_project_references_only_those_above_it(string project) =>
        Included(project, "ProjectReference").Select(Path.GetFileNameWithoutExtension).Should().BeEquivalentTo(References[project]);

    [Theory]
    [InlineData("TechLint.Ultrasonics")]
    [InlineData("TechLint.Rules")]
    [InlineData("TechLint.Engine")]
    [InlineData("TechLint.Reports")]
    public void A_project_that_needs_no_package_has_none(string project) => Included(project, "PackageReference").Should().BeEmpty();

    [Fact]
    public void Only_the_language_server_knows_its_protocol_and_only_the_command_line_its_parser()
    {
        UsersOf("StreamJsonRpc").Should().Equal("TechLint.LanguageServer");
        UsersOf("System.CommandLine").Should().Equal("TechLint.Cli");
        UsersOf("YamlDotNet").Should().Equal("TechLint.Syntax");

        static IEnumerable<string> UsersOf(string package) =>
            Repository.SourceProjects.Where(project => Included(project, "PackageReference").Contains(package));
    }

    [Theory]
    [MemberData(nameof(Projects))]
    public void A_project_can_be_compiled_ahead_of_time(string project)
    {
        Properties(XDocument.Load(Path.Combine(Repository.Root, "src", "Directory.Build.props")), "IsAotCompatible").Should().Equal("true");
        Properties(Repository.ProjectFile(project), "IsAotCompatible").Should().NotContain("false", "no project may opt out");
    }

    [Theory]
    [MemberData(nameof(Projects))]
    public void Warnings_are_errors_and_a_project_silences_none(string project)
    {
        Properties(XDocument.Load(Path.Combine(Repository.Root, "Directory.Build.props")), "TreatWarningsAsErrors").Should().Equal("true");
        Properties(XDocument.Load(Path.Combine(Repository.Root, "Directory.Build.props")), "Nullable").Should().Equal("enable");
        var file = Repository.ProjectFile(project);
        Properties(file, "NoWarn").Concat(Properties(file, "TreatWarningsAsErrors")).Concat(Properties(file, "Nullable")).Should().BeEmpty();
    }

    [Theory]
    [MemberData(nameof(Projects))]
    public void A_project_lists_what_it_must_not_know(string project)
    {
        if (project == "TechLint.Cli") return;
        var banned = Repository.Read("src", project, "BannedSymbols.txt");
        banned.Should().Contain("T:System.Console;");
        if (!Pure.Contains(project)) return;
        banned.Should().Contain("T:System.IO.File;").And.Contain("T:System.IO.Directory;").And.Contain("T:System.Environment;")
            .And.Contain("P:System.DateTime.UtcNow;").And.Contain("T:System.Random;");
    }

    [Fact]
    public void No_project_reads_the_local_day_or_culture()
    {
        var banned = Repository.Read("src", "BannedSymbols.txt");
        banned.Should().Contain("P:System.DateTime.Now;").And.Contain("P:System.DateTime.Today;").And.Contain("CultureInfo.CurrentCulture;");
        Repository.Read("src", "Directory.Build.props").Should().Contain("AdditionalFiles Include=\"$(MSBuildThisFileDirectory)BannedSymbols.txt\"");
    }

    [Fact]
    public void The_solution_lists_every_project()
    {
        var solution = Repository.Read("TechLint.sln");
        var projects = new[] { "src", "tests" }.SelectMany(folder => Directory.GetDirectories(Path.Combine(Repository.Root, folder)))
            .SelectMany(folder => Directory.GetFiles(folder, "*.csproj")).Select(file => Path.GetRelativePath(Repository.Root, file).Replace('/', '\\'));
        projects.Should().HaveCountGreaterThan(12).And.OnlyContain(project => solution.Contains($"\"{project}\"", StringComparison.Ordinal));
    }

    [Fact]
    public void Package_versions_stand_in_one_place()
    {
        var files = new[] { "src", "tests" }.SelectMany(folder => Directory.GetDirectories(Path.Combine(Repository.Root, folder)))
            .SelectMany(folder => Directory.GetFiles(folder, "*.csproj"));
        files.SelectMany(file => XDocument.Load(file).Descendants("PackageReference")).Should().NotBeEmpty()
            .And.OnlyContain(reference => reference.Attribute("Version") == null && reference.Attribute("VersionOverride") == null);
    }

    private static string[] Included(string project, string item) =>
        [.. Repository.ProjectFile(project).Descendants(item).Select(element => (string)element.Attribute("Include")!)];

    private static IEnumerable<string> Properties(XDocument file, string name) => file.Descendants(name).Select(element => element.Value);
}
