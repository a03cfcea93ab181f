using TechLint.Model.Shape;

namespace TechLint.Rules.Findings;

/// <summary>Says of an unknown name what was most likely meant, alike in every rule.</summary>
internal static class NearestText
{
    public static string Of(string sentence, string name, IEnumerable<string> known) => With(sentence, NearestName.Of(name, known));

    public static string With(string sentence, string? nearest) => nearest is null ? sentence : $"{sentence}; the nearest is {nearest}";
}
