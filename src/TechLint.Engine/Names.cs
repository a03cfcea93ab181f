namespace TechLint.Engine;

internal static class Names
{
    public const string Settings = "techlint.yaml";
}
