using System.Collections.Immutable;

namespace TechLint.Engine;

/// <param name="Today">Today in UTC, from whoever may read the clock.</param>
/// <param name="AsOf">The date to judge by, where the caller names one; else the settings', else today.</param>
/// <param name="SettingsText">A settings file named by the caller, which replaces the workspace's own; only it may name paths outside the root.</param>
/// <param name="AddedRequirements">Requirement sets added to every technique.</param>
public sealed record WorkspaceOptions(
    DateOnly Today, DateOnly? AsOf, Syntax.SourceText? SettingsText, ImmutableArray<string> AddedRequirements)
{
    public static WorkspaceOptions For(DateOnly today) => new(today, null, null, []);
}
