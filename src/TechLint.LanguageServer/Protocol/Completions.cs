using System.Text.Json.Serialization;

namespace TechLint.LanguageServer.Protocol;

/// <param name="IsIncomplete">False: a client may go on filtering what it has.</param>
/// <param name="ItemDefaults">What all items share; null where the client does not know of it.</param>
internal sealed record CompletionList(bool IsIncomplete, CompletionItem[] Items, CompletionItemDefaults? ItemDefaults);

internal sealed record CompletionItemDefaults(Range EditRange);

/// <param name="Kind">10 property, 12 value, 11 unit, 18 reference.</param>
/// <param name="InsertTextFormat">2: a snippet.</param>
/// <param name="InsertTextMode">1: as it is, its indentation included.</param>
/// <param name="TextEditText">What is written where the range is the list's own.</param>
internal sealed record CompletionItem(
    string Label, int Kind, string? Detail, MarkupContent? Documentation, string SortText, string FilterText, int? InsertTextFormat, int? InsertTextMode, TextEdit? TextEdit,
    string? TextEditText);

internal sealed record CompletionOptions(string[] TriggerCharacters);

internal sealed record TextEdit(Range Range, string NewText);

/// <param name="Changes">By address of the document.</param>
internal sealed record WorkspaceEdit(Dictionary<string, TextEdit[]> Changes);
