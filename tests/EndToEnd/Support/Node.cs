using System.Text.Json.Nodes;
using Xunit;

namespace TechLint.Tests.EndToEnd.Support;

/// <summary>The validators from outside, which run in Node.js.</summary>
internal static class Node
{
    private static readonly Lazy<bool> IsThere = new(() => Tools.Has("node") && Directory.Exists(Path.Combine(Repository.EndToEnd, "node_modules", "ajv")));

    /// <summary>What a script of this folder prints; skips the test where Node.js or its packages are missing.</summary>
    public static JsonObject Run(string script, params string[] arguments)
    {
        Assert.SkipUnless(IsThere.Value, "Node.js or the packages of tests/EndToEnd are not installed");
        var outcome = Outcome.OfProgram("node", Repository.EndToEnd, new Dictionary<string, string>(), null, [script, .. arguments]);
        return outcome.Status == 0 ? outcome.Json : throw new InvalidOperationException(outcome.Error);
    }

    public static string[] Faults(this JsonObject verdicts, string name) => [.. ((JsonArray)verdicts[name]!).Select(fault => (string)fault!)];
}
