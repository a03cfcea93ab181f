namespace TechLint.Cli;

/// <summary>What the process says to whoever called it; the same for every command.</summary>
internal static class ExitStatus
{
    public const int Clean = 0;
    public const int Findings = 1;

    /// <summary>The call, a named file or the settings could not be used, or nothing was left to check.</summary>
    public const int Unusable = 2;

    public const int InternalError = 3;

    /// <summary>Ended by Ctrl-C, as shells count it.</summary>
    public const int Interrupted = 130;
}
