using TechLint.Tests.Validation;
using Xunit;

[assembly: AssemblyFixture(typeof(ValidationRun))]

namespace TechLint.Tests.Validation;

/// <summary>
/// After the last test of a whole run: no row of the outside values is left unused, there are as many checks as are owed, and <c>docs/validation.md</c>
/// says what the run found. With TECHLINT_VALIDATION_PAGE set (a path) the page is written there instead. A run of part of the tests asks for nothing.
/// </summary>
public sealed class ValidationRun : IDisposable
{
    public const string PageVariable = "TECHLINT_VALIDATION_PAGE";

    /// <summary>What the project's purpose owes.</summary>
    private const int LeastChecks = 250;

    private static readonly string[] Filters = ["-class", "-method", "-namespace", "-trait", "-filter", "-id"];

    public void Dispose()
    {
        if (Environment.GetCommandLineArgs().Skip(1).Any(argument => Filters.Any(filter => argument.StartsWith(filter, StringComparison.Ordinal)))) return;
        var unused = CheckValue.Unused.ToList();
        if (unused.Count > 0) throw new InvalidOperationException($"Rows of Data/check-values.csv that no test uses: {string.Join(", ", unused)}.");
        var checks = Checks.All;
        if (checks.Count < LeastChecks) throw new InvalidOperationException($"{checks.Count} outside checks, {LeastChecks} are owed.");
        var page = ValidationPage.Of(checks, File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Data", "disagreements.md")));
        if (Environment.GetEnvironmentVariable(PageVariable) is { Length: > 0 } path)
        {
            File.WriteAllText(path, page);
            return;
        }

        var kept = Path.Combine(Root(), "docs", "validation.md");
        if (!File.Exists(kept) || !string.Equals(File.ReadAllText(kept), page, StringComparison.Ordinal))
        {
            throw new InvalidOperationException("docs/validation.md is stale: dotnet run -c Release --project tests/Tools -- validation");
        }
    }

    internal static string Root()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "TechLint.sln"))) return folder.FullName;
        }

        throw new InvalidOperationException("No TechLint.sln above the tests.");
    }
}
