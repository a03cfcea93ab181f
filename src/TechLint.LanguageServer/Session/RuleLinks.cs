namespace TechLint.LanguageServer.Session;

/// <summary>Where a rule's documentation page is found.</summary>
internal static class RuleLinks
{
    // The pages of docs/rules/ as published with the project. One constant: a fork or an internal mirror changes it here.
    private const string Base = "https://techlint.example/docs/rules/";

    public static string PageOf(string rule) => Base + Uri.EscapeDataString(rule) + ".md";
}
