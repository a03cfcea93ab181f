using System.Collections.Concurrent;
using System.Collections.Immutable;
using TechLint.Engine.Files;
using TechLint.Model.Documents;
using TechLint.Model.Shape;
using TechLint.Syntax;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Engine;

/// <summary>
/// The workspace as it stood at one moment: texts, settings, date. Immutable to its readers; files are read from the store
/// the first time they are asked for and kept. Thread-safe.
/// </summary>
public sealed class Snapshot : IDocumentSource
{
    private readonly IFileStore store;
    private readonly WorkspaceOptions options;
    private readonly StudyCache studies;
    private readonly ConcurrentDictionary<string, Lazy<Loaded>> onDisk;
    private readonly ImmutableDictionary<string, Lazy<Loaded>> open;
    private readonly ImmutableDictionary<string, SourceText> texts;
    private readonly ConcurrentDictionary<string, Lazy<LinkedTechnique>> linked = new(StringComparer.Ordinal);
    private readonly Lazy<IReadOnlyList<string>> files;
    private readonly Lazy<WorkspaceSettings> settings;
    private readonly Lazy<ImmutableDictionary<string, DocumentLookup>> requirementSets;
    private readonly Lazy<IReadOnlyList<DocumentLookup>> sharedLibraries;

    private Snapshot(
        IFileStore store, WorkspaceOptions options, StudyCache studies, ConcurrentDictionary<string, Lazy<Loaded>> onDisk,
        ImmutableDictionary<string, Lazy<Loaded>> open, ImmutableDictionary<string, SourceText> texts, Lazy<IReadOnlyList<string>> stored)
    {
        this.store = store;
        this.options = options;
        this.studies = studies;
        this.onDisk = onDisk;
        this.open = open;
        this.texts = texts;
        Stored = stored;
        files = new(() => [.. Stored.Value.Concat(open.Keys).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)]);
        settings = new(ReadSettings);
        requirementSets = new(IndexRequirementSets);
        sharedLibraries = new(ReadSharedLibraries);
    }

    private sealed record Loaded(SyntaxTree? Tree, LookupFault Fault);

    private Lazy<IReadOnlyList<string>> Stored { get; }

    public DateOnly AsOf => options.AsOf ?? (Settings.AsOf.IsKnown ? Settings.AsOf.Value : options.Today);

    /// <summary>Every file of the workspace that can be judged, in ordinal order; open texts included.</summary>
    public IReadOnlyList<string> Files => files.Value;

    public WorkspaceSettings Settings => settings.Value;

    public IReadOnlyList<DocumentLookup> SharedLibraries => sharedLibraries.Value;

    public IReadOnlyList<string> DefaultRequirements => [.. Settings.Requirements.Items.Where(id => id.IsKnown).Select(id => id.Value!)];

    public IReadOnlyList<string> AddedRequirements => options.AddedRequirements;

    public static Snapshot Open(IFileStore store, WorkspaceOptions options) => new(
        store, options, new StudyCache(), new(StringComparer.Ordinal), ImmutableDictionary.Create<string, Lazy<Loaded>>(StringComparer.Ordinal),
        ImmutableDictionary.Create<string, SourceText>(StringComparer.Ordinal), new(store.List));

    /// <summary>This workspace with one text replaced (an open editor's), or given back to the store where null.
    /// Trees and studies of everything else are shared.</summary>
    public Snapshot With(string path, SourceText? text) => new(
        store, options, studies, onDisk,
        text is null ? open.Remove(path) : open.SetItem(path, new(() => new Loaded(YamlReader.Read(text), LookupFault.None))),
        text is null ? texts.Remove(path) : texts.SetItem(path, text), Stored);

    /// <summary>This workspace with the named files (all where empty) read anew from the store.</summary>
    public Snapshot Refreshed(IReadOnlyCollection<string> paths)
    {
        var kept = paths.Count == 0 ? [] : onDisk.Where(pair => !paths.Contains(pair.Key, StringComparer.Ordinal));
        return new(store, options, studies, new(kept, StringComparer.Ordinal), open, texts, new(store.List));
    }

    /// <summary>The text of a file, or null where it cannot be read. That of an open editor is at hand before it is read as YAML.</summary>
    public SourceText? SourceOf(string path) => texts.TryGetValue(path, out var text) ? text : Load(path).Tree?.Source;

    /// <summary>The tree of a file, or null where it cannot be read.</summary>
    public SyntaxTree? TreeOf(string path) => Load(path).Tree;

    /// <summary>A technique with everything that it names, linked once in this snapshot for rules, hover and hints alike; null where the file
    /// is no technique that can be read.</summary>
    public LinkedTechnique? LinkedOf(string path) => FormatKinds.Of(path) == FormatKind.Technique && TreeOf(path) is { Root: not null } tree
        ? linked.GetOrAdd(path, _ => new Lazy<LinkedTechnique>(() => TechniqueLinker.Link(BoundDocument.Of(tree), this))).Value
        : null;

    /// <summary>Why a file cannot be read.</summary>
    public LookupFault FaultOf(string path) => Load(path).Fault;

    /// <summary>The files whose findings may change when this one does (techniques that use a library or set), itself left out.</summary>
    public IReadOnlyList<string> DependantsOf(string path)
    {
        if (FormatKinds.Of(path) is not { } kind || kind == FormatKind.Technique) return [];
        var techniques = Files.Where(file => FormatKinds.Of(file) == FormatKind.Technique);
        if (kind != FormatKind.Equipment) return [.. techniques, .. Files.Where(file => FormatKinds.Of(file) == FormatKind.Requirement && file != path)];
        var shared = SharedLibraries.Any(lookup => lookup.Path == path);
        return [.. techniques.Where(file => shared || NamesLibrary(file, path))];
    }

    /// <summary>Sets that the caller adds and that no set answers to: such a call cannot be served as it was meant.</summary>
    public IReadOnlyList<string> UnknownAddedRequirements => [.. options.AddedRequirements.Where(id => TechniqueLinker.FindSet(id, this) is null)];

    /// <summary>The study of an examination; the same inputs are worked out once, whatever file they stand in.</summary>
    public Study StudyOf(Examination examination) => studies.Of(examination);

    public DocumentLookup Find(string fromFile, string path) => RelativePath.Resolve(fromFile, path) is { } resolved
        ? Look(resolved)
        : new DocumentLookup(path, null, LookupFault.OutsideWorkspace);

    public DocumentLookup? FindRequirementSet(string id) => requirementSets.Value.GetValueOrDefault(id);

    private bool NamesLibrary(string technique, string library) => TreeOf(technique) is { } tree
        && BoundDocument.Of(tree).Technique.Equipment.Items.Any(item => item.IsKnown && RelativePath.Resolve(technique, item.Value!) == library);

    private DocumentLookup Look(string path)
    {
        var loaded = Load(path);
        return new DocumentLookup(path, loaded.Tree, loaded.Fault);
    }

    private Loaded Load(string path) => open.TryGetValue(path, out var text)
        ? text.Value
        : onDisk.GetOrAdd(path, key => new Lazy<Loaded>(() => Read(key))).Value;

    private Loaded Read(string path)
    {
        var text = store.Read(path);
        return text.Source is { } source ? new Loaded(YamlReader.Read(source), LookupFault.None) : new Loaded(null, text.Fault);
    }

    private WorkspaceSettings ReadSettings()
    {
        if (options.SettingsText is { } text) return BoundDocument.Of(YamlReader.Read(text)).Settings;
        return TreeOf(FormatKinds.SettingsName) is { } tree ? BoundDocument.Of(tree).Settings : WorkspaceSettings.None;
    }

    private ImmutableDictionary<string, DocumentLookup> IndexRequirementSets()
    {
        var sets = ImmutableDictionary.CreateBuilder<string, DocumentLookup>(StringComparer.Ordinal);
        foreach (var file in Files.Where(file => FormatKinds.Of(file) == FormatKind.Requirement))
        {
            var lookup = Look(file);
            if (lookup.Tree is { } tree && BoundDocument.Of(tree).RequirementSet.Id.TryGet(out var id)) sets.TryAdd(id, lookup);
        }

        return sets.ToImmutable();
    }

    private IReadOnlyList<DocumentLookup> ReadSharedLibraries()
    {
        var folders = Settings.Equipment.Items.Where(item => item.IsKnown).Select(item => RelativePath.Resolve("", item.Value!)).OfType<string>().ToArray();
        return [.. Files.Where(file => FormatKinds.Of(file) == FormatKind.Equipment && folders.Any(folder => RelativePath.IsWithin(folder, file))).Select(Look)];
    }
}
