using TechLint.Model.Shape;

namespace TechLint.Engine.Files;

/// <summary>The root of a workspace: the nearest folder upwards that holds <c>techlint.yaml</c>, else the folder given.</summary>
public static class RootFinder
{
    /// <param name="folder">A full path.</param>
    public static string Find(string folder)
    {
        for (var here = folder; here is not null; here = Path.GetDirectoryName(here))
        {
            if (File.Exists(Path.Combine(here, FormatKinds.SettingsName))) return here;
        }

        return folder;
    }
}
