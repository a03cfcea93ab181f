using PolyType;

namespace TechLint.LanguageServer.Protocol;

/// <summary>
/// The types of what the server sends of its own accord. No method of <see cref="Session.IServerMethods"/> mentions them, and the
/// formatter refuses a type whose shape was not generated.
/// </summary>
[GenerateShapeFor<Diagnostic[]>]
[GenerateShapeFor<Registration[]>]
[GenerateShapeFor<ConfigurationItem[]>]
[GenerateShapeFor<ClientSettings[]>]
[GenerateShapeFor<ProgressToken>]
[GenerateShapeFor<WorkDoneProgress>]
[GenerateShapeFor<WorkspaceDiagnosticReport>]
[GenerateShapeFor<string>]
[GenerateShapeFor<int>]
[GenerateShapeFor<long>]
[GenerateShapeFor<object>]
internal sealed partial class OutgoingShapes;
