using System.Reflection;
using Xunit;

namespace TechLint.Tests.EndToEnd.Support;

/// <summary>The executables under test: the ordinary build and, where it was published, the native one.</summary>
internal static class Executables
{
    private const string Ordinary = "ordinary";
    private const string Native = "native";

    public static TheoryData<string> All => Each();

    /// <summary>Each executable with each of the values.</summary>
    public static TheoryData<string, string> With(params IEnumerable<string> values)
    {
        var rows = new TheoryData<string, string>();
        foreach (var value in values)
        {
            rows.Add(Ordinary, value);
            if (File.Exists(PathOf(Native))) rows.Add(Native, value);
        }

        return rows;
    }

    public static string PathOf(string name) => name == Native
        ? Path.Combine(Repository.Root, "artifacts", "native", "techlint")
        : Path.Combine(Repository.Root, "src", "TechLint.Cli", "bin", Configuration(), "net10.0", "techlint");

    private static TheoryData<string> Each()
    {
        var rows = new TheoryData<string> { Ordinary };
        var native = new TheoryDataRow<string>(Native);
        if (!File.Exists(PathOf(Native))) native.Skip = "no native executable was published to artifacts/native";
        rows.Add(native);
        return rows;
    }

    private static string Configuration() => typeof(Executables).Assembly.GetCustomAttributes<AssemblyMetadataAttribute>()
        .Single(attribute => attribute.Key == "Configuration").Value!;
}
