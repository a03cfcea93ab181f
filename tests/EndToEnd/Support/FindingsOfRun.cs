using System.Text.Json.Nodes;

namespace TechLint.Tests.EndToEnd.Support;

internal static class FindingsOfRun
{
    public static JsonObject[] Findings(this Outcome outcome) => [.. ((JsonArray)outcome.Json["findings"]!).Select(finding => (JsonObject)finding!)];
}
