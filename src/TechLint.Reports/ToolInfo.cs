namespace TechLint.Reports;

/// <summary>What a report says of the tool that made it.</summary>
public sealed record ToolInfo(string Name, string Version);
