using TechLint.Engine.Navigating;
using TechLint.Engine.Outlining;
using TechLint.LanguageServer.Protocol;

namespace TechLint.LanguageServer.Features;

internal static class Outlines
{
    public static readonly SemanticTokensLegend Legend = new(
        ["property", "enumMember", "number", "variable", "string", "comment", "function"], ["declaration"]);

    public static DocumentSymbol[] Symbols(FeatureContext context)
    {
        return context.Tree is { } tree ? Render(Outliner.Outline(tree)) : [];

        DocumentSymbol[] Render(IEnumerable<OutlineItem> items) =>
        [
            .. items.Select(item => new DocumentSymbol(
                item.Name.Length > 0 ? item.Name : "entry", item.Detail.Length > 0 ? item.Detail : null, KindOf(item.Kind),
                context.Map.ToRange(item.Span), context.Map.ToRange(item.NameSpan), item.Children.IsEmpty ? null : Render(item.Children))),
        ];
    }

    public static FoldingRange[] Folds(FeatureContext context) => context.Tree is not { } tree ? []
        : [.. Outliner.Folds(tree).Select(fold => new FoldingRange(fold.First, fold.Last, fold.IsComment ? "comment" : null))];

    public static SelectionRange[] Selections(FeatureContext context, Position[] positions)
    {
        return [.. positions.Select(Of)];

        SelectionRange Of(Position position)
        {
            SelectionRange? range = null;
            var tree = context.Tree;
            IEnumerable<Syntax.TextSpan> spans = tree is null ? [new(0, context.Document.Source.Text.Length)] : Outliner.Selections(tree, context.Offset(position));
            foreach (var span in spans.Reverse()) range = new SelectionRange(context.Map.ToRange(span), range);
            return range!;
        }
    }

    /// <summary>Five numbers a token: lines and characters from the one before, length, type, modifiers.</summary>
    public static SemanticTokens Tokens(FeatureContext context, Syntax.TextSpan within)
    {
        var data = new List<int>();
        var (line, character) = (0L, 0L);
        foreach (var token in context.Tree is { } tree ? Outliner.Tokens(tree) : [])
        {
            if (token.Span.End < within.Start || token.Span.Start > within.End) continue;
            var (start, end) = (context.Map.ToPosition(token.Span.Start), context.Map.ToPosition(token.Span.End));
            if (end.Line != start.Line || end.Character <= start.Character) continue;
            data.AddRange(
                (int)(start.Line - line), (int)(start.Line == line ? start.Character - character : start.Character), (int)(end.Character - start.Character),
                (int)token.Kind switch { (int)TokenKind.Key => 0, (int)TokenKind.Word => 1, (int)TokenKind.Number => 2, (int)TokenKind.Name => 3, (int)TokenKind.Text => 4, (int)TokenKind.Comment => 5, _ => 6 },
                token.IsDefinition ? 1 : 0);
            (line, character) = (start.Line, start.Character);
        }

        return new SemanticTokens([.. data]);
    }

    /// <summary>Libraries, and requirement sets of the workspace; a built-in set has no file.</summary>
    public static DocumentLink[] Links(FeatureContext context) => context.Tree is not { } tree ? []
        : [.. from use in NameIndex.Of(tree).Uses
              where !use.IsDefinition
              let target = Navigator.FileOf(context.Snapshot, context.Path, use)
              where target is not null
              let address = context.AddressOf(target)
              where address is not null
              select new DocumentLink(context.Map.ToRange(use.Span), address, use.Kind == NameKind.LibraryPath ? "Open the library" : "Open the requirement set")];

    /// <summary>What remains to be filled in, as a signature whose parameters are the missing keys.</summary>
    public static SignatureHelp? Signature(FeatureContext context, Position position)
    {
        if (context.Tree is not { } tree || WhatRemains.At(tree, context.Offset(position)) is not { } remaining) return null;
        var names = remaining.Missing.Select(key => key.Name).ToArray();
        var parameters = remaining.Missing.Select(key => new ParameterInformation(key.Name, new MarkupContent("markdown", key.Description))).ToArray();
        return new SignatureHelp([new SignatureInformation($"{remaining.Title}, still to be filled in: {string.Join(", ", names)}", null, parameters)], 0, 0);
    }

    public static int KindOf(OutlineKind kind) => kind switch
    {
        OutlineKind.Group => 19,
        OutlineKind.List => 18,
        OutlineKind.Item => 23,
        _ => 7,
    };
}
