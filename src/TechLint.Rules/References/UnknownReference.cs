using TechLint.Model.Binding;
using TechLint.Model.Equipment;
using TechLint.Model.Techniques;
using TechLint.Rules.Findings;
using TechLint.Rules.Registry;
using TechLint.Ultrasonics.Materials;

namespace TechLint.Rules.References;

public sealed class UnknownReference : TechniqueRule
{
    public override RuleDescription Description { get; } = new(
        "unknown-reference", RuleFamily.References, Severity.Error,
        "A name leads nowhere: no probe, wedge, frame, block, beam reference, material, instrument or requirement set answers to it.",
        "What the technique says of that item cannot be checked by anybody, and on site somebody guesses which one was meant.",
        "Correct the name, add the item to the equipment library, or name the library that holds it under equipment.");

    public override void Check(TechniqueContext context)
    {
        CheckSets(context);
        CheckReferences(context);

        // With a library unreadable, a name not found may well be in it: that one finding is enough.
        if (!context.Equipment.IsComplete) return;
        CheckMaterials(context);
        foreach (var setup in context.Technique.Setups.Items)
        {
            Check(context, setup.Frame, EquipmentKind.Frame);
            Check(context, setup.Acquisition.Text("instrument"), EquipmentKind.Instrument);
            Check(context, setup.Acquisition.Text("encoder"), EquipmentKind.Encoder);
            foreach (var probe in setup.Probes.Items)
            {
                Check(context, probe.Probe, EquipmentKind.Probe);
                Check(context, probe.Wedge, EquipmentKind.Wedge);
            }
        }

        CheckMaterialsOfEquipment(context);
        foreach (var use in context.Technique.BlockUses) Check(context, use.Block, EquipmentKind.Block);
        foreach (var reference in context.Technique.References.Items)
        {
            Check(context, reference.Block, EquipmentKind.Block);
            CheckReflectors(context, reference);
        }
    }

    private void Check(TechniqueContext context, Bound<string> name, EquipmentKind kind)
    {
        if (!name.TryGet(out var id) || context.Equipment.Find<EquipmentItem>(kind, id) is not null) return;
        Report(context, name, Words.Spell(kind), id, context.Equipment.Ids(kind));
    }

    private void CheckMaterials(TechniqueContext context)
    {
        var material = context.Technique.Component.Material;
        foreach (var side in material.Left == material.Right ? [material.Left] : new[] { material.Left, material.Right })
        {
            if (!side.TryGet(out var id) || BuiltInMaterials.Find(id) is not null || context.Equipment.Find<MaterialItem>(EquipmentKind.Material, id) is not null) continue;
            Report(context, side, "material", id, [.. context.Equipment.Ids(EquipmentKind.Material), .. BuiltInMaterials.All.Select(known => known.Name)]);
        }
    }

    /// <summary>Told where the technique rests on the wedge or block: the library need not be part of the run.</summary>
    private void CheckMaterialsOfEquipment(TechniqueContext context)
    {
        var told = new HashSet<string>(StringComparer.Ordinal);
        foreach (var probe in context.Technique.Setups.Items.SelectMany(setup => setup.Probes.Items))
        {
            if (!probe.Wedge.TryGet(out var id) || context.Equipment.Find<WedgeItem>(EquipmentKind.Wedge, id) is not { } wedge || wedge.Map.Has("velocity")) continue;
            if (told.Add($"wedge {id}")) CheckMaterialOf(context, probe.Wedge, $"the wedge {id}", wedge.Material);
        }

        foreach (var reference in context.Technique.References.Items)
        {
            if (!reference.Block.TryGet(out var id) || context.Equipment.Find<BlockItem>(EquipmentKind.Block, id) is not { } block) continue;
            if (told.Add($"block {id}")) CheckMaterialOf(context, reference.Block, $"the block {id}", block.Material);
        }
    }

    private void CheckMaterialOf(TechniqueContext context, Bound<string> place, string what, Bound<string> material)
    {
        if (!material.TryGet(out var name) || BuiltInMaterials.Find(name) is not null || context.Equipment.Find<MaterialItem>(EquipmentKind.Material, name) is not null) return;
        context.Sink.Report(this, place, $"{what} is of {name}, and no material has that name: its speed of sound is not known").With("name", name);
    }

    private void CheckReflectors(TechniqueContext context, ReferenceSetting reference)
    {
        if (!reference.Block.TryGet(out var id) || context.Equipment.Find<BlockItem>(EquipmentKind.Block, id) is not { Reflectors.IsBroken: false } block) return;
        foreach (var reflector in reference.Reflectors.Items)
        {
            if (!reflector.TryGet(out var name) || block.Reflectors.Items.Any(item => item.Id.Value == name)) continue;
            Report(context, reflector, $"reflector of {id}", name, block.Reflectors.Items.Select(item => item.Id.Or(null)).OfType<string>());
        }
    }

    private void CheckReferences(TechniqueContext context)
    {
        var references = context.Technique.References;
        if (references.IsBroken || references.Items.Any(reference => reference.Id.IsBroken)) return;
        var known = references.Items.Select(reference => reference.Id.Or(null)).OfType<string>().ToArray();
        foreach (var beam in context.Technique.Setups.Items.SelectMany(setup => setup.Beams.Items))
        {
            if (!beam.Reference.TryGet(out var id) || known.Contains(id, StringComparer.Ordinal)) continue;
            Report(context, beam.Reference, "reference setting", id, known);
        }
    }

    private void CheckSets(TechniqueContext context)
    {
        foreach (var name in context.Technique.Requirements.Items)
        {
            if (!name.TryGet(out var id) || !context.Requirements.Unknown.Contains(id, StringComparer.Ordinal)) continue;
            Report(context, name, "requirement set", id, Model.Requirements.BuiltInSets.Ids);
        }
    }

    private void Report(TechniqueContext context, Bound<string> place, string kind, string id, IEnumerable<string> known)
    {
        var names = known.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToArray();
        var nearest = Model.Shape.NearestName.Of(id, names);
        var draft = context.Sink.Report(this, place, NearestText.With($"no {kind} is named {id}", nearest)).With("name", id);
        if (nearest is not null) draft.Fix($"Write {nearest}", safe: false, new TextEdit(context.Technique.File, place.Span, nearest));
    }
}
