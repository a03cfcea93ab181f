namespace TechLint.Model.Binding;

/// <summary>The way to a value: keys joined by <c>/</c>; list entries by id, probes by station, others by 0-based <c>#n</c>.</summary>
public static class ModelPath
{
    public static string Join(string path, string key) => path.Length == 0 ? key : key.Length == 0 ? path : $"{path}/{key}";

    public static string Item(string path, string? id, int index) => Join(path, string.IsNullOrEmpty(id) ? $"#{index}" : id);

    /// <summary>True when <paramref name="path"/> is <paramref name="scope"/> or lies below it.</summary>
    public static bool IsWithin(string path, string scope) =>
        scope.Length == 0 || (path.StartsWith(scope, StringComparison.Ordinal) && (path.Length == scope.Length || path[scope.Length] == '/'));
}
