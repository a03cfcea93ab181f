using System.Collections.Immutable;
using TechLint.Model.Documents;
using TechLint.Ultrasonics.Examinations;

namespace TechLint.Model.Equipment;

/// <summary>A library that a technique names, or why it cannot be read.</summary>
public sealed record LibraryLink(Binding.Bound<string> Name, DocumentLookup Lookup, Library? Library);

/// <summary>Everything that a technique may name, from its libraries and the workspace's; the first of an id wins.</summary>
public sealed class EquipmentPool
{
    private readonly Dictionary<(EquipmentKind, string), (EquipmentItem Item, Library Library)> items = [];

    public EquipmentPool(ImmutableArray<LibraryLink> links, ImmutableArray<Library> shared)
    {
        Links = links;
        Libraries = [.. links.Select(link => link.Library).Where(library => library is not null).Select(library => library!), .. shared];
        IsComplete = links.All(link => link.Library is not null && link.Name.IsKnown);
        foreach (var library in Libraries)
        {
            foreach (var item in library.Items)
            {
                if (item.Id.TryGet(out var id)) items.TryAdd((item.Kind, id), (item, library));
                else if (item.Id.IsBroken) IsComplete = false;
            }

            IsComplete &= library is
            {
                Probes.IsBroken: false, Wedges.IsBroken: false, Frames.IsBroken: false, Instruments.IsBroken: false,
                Encoders.IsBroken: false, Materials.IsBroken: false, Blocks.IsBroken: false,
            };
        }
    }

    public ImmutableArray<LibraryLink> Links { get; }

    public ImmutableArray<Library> Libraries { get; }

    /// <summary>False when some library, or part of one, could not be read: then nobody may call a name unknown.</summary>
    public bool IsComplete { get; }

    public T? Find<T>(EquipmentKind kind, string id) where T : EquipmentItem => items.TryGetValue((kind, id), out var found) ? found.Item as T : null;

    public Library? LibraryOf(EquipmentItem item) =>
        item.Id.TryGet(out var id) && items.TryGetValue((item.Kind, id), out var found) && ReferenceEquals(found.Item, item) ? found.Library : null;

    public IEnumerable<string> Ids(EquipmentKind kind) => items.Keys.Where(key => key.Item1 == kind).Select(key => key.Item2);
}
