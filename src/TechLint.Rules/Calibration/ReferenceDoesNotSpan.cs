using System.Collections.Immutable;
using TechLint.Model.Equipment;
using TechLint.Model.Examinations;
using TechLint.Model.Requirements;
using TechLint.Model.Techniques;
using TechLint.Rules.Beam;
using TechLint.Rules.Findings;
using TechLint.Rules.Registry;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Referencing;

namespace TechLint.Rules.Calibration;

public sealed class ReferenceDoesNotSpan : TechniqueRule
{
    /// <summary>A reflector met one leg later than the beam is used in still serves to set its correction (common practice); more bounces do not.</summary>
    private const int LegsBeyond = 1;

    /// <summary>Paths nearer than this to the reference's are within it: no calibration resolves less (mm).</summary>
    private const double Resolution = 0.5;

    public override RuleDescription Description { get; } = new(
        "reference-does-not-span", RuleFamily.Calibration, Severity.Error,
        "The sound paths used in the examined volume lie outside those of the reference's reflectors.",
        "Beyond its last reflector a correction is a guess. A flaw at a longer path is shown too small, and is left out of the report.",
        "Add a reflector at a greater depth, use a thicker block, or shorten the paths: other legs, other angles, a smaller index offset.",
        LimitNames.CorrectionExtrapolation.Name);

    public override void Check(TechniqueContext context)
    {
        foreach (var link in context.Linked.Examinations)
        {
            if (context.StudyOf(link) is not { } study) continue;
            foreach (var pass in study.Examination.Passes)
            {
                var setup = link.Setups.First(member => member.Name == pass.Id);
                foreach (var beam in pass.Beams.Where(beam => beam.Scan is ScanKind.Sectorial or ScanKind.Linear or ScanKind.Fixed))
                {
                    if (setup.Beams.Items.FirstOrDefault(item => item.Name == beam.Id) is not { } setting || LawRules.IsFaulty(study, pass.Id, beam.Id)) continue;
                    if (ReferenceOf(context, setting) is not { } reference || ReflectorsOf(context, reference, study.Examination) is not { } reflectors) continue;
                    Check(context, link, setting, reference, reflectors, beam, study.PathsUsed(pass.Id, beam.Id));
                }
            }
        }
    }

    private static ReferenceSetting? ReferenceOf(TechniqueContext context, BeamSetting setting) => setting.Reference.TryGet(out var id)
        ? context.Technique.References.Items.FirstOrDefault(item => item.Id.Value == id && item.Method.IsKnown
            && item.Method.Value is ReferenceMethod.TimeCorrectedGain or ReferenceMethod.DistanceAmplitudeCurve)
        : null;

    private static (BlockSection Block, ImmutableArray<ReflectorPlace> Places)? ReflectorsOf(
        TechniqueContext context, ReferenceSetting reference, Examination examination)
    {
        if (!reference.Block.TryGet(out var id) || context.Equipment.Find<BlockItem>(EquipmentKind.Block, id) is not { } block) return null;
        if (!block.Thickness.TryGet(out var thickness) || reference.Reflectors.IsBroken) return null;
        var wall = new Length(thickness.InBase);
        var curved = examination.Part.Curvature == Curvature.AcrossWeld && block.Form.Or(ComponentForm.Plate) == ComponentForm.Pipe && block.OutsideDiameter.IsKnown;
        var places = ImmutableArray.CreateBuilder<ReflectorPlace>();
        foreach (var name in reference.Reflectors.Items)
        {
            var reflector = block.Reflectors.Items.FirstOrDefault(item => item.Id.Value == name.Value);
            if (reflector is null || !reflector.Kind.IsKnown) return null;
            if (reflector.Kind.Value == ReflectorKind.Notch)
            {
                places.Add(reflector.Surface.Or(Surface.Outside) == Surface.Inside ? ReflectorPlace.OppositeNotch(wall) : ReflectorPlace.NearNotch);
            }
            else if (reflector.Depth.TryGet(out var depth))
            {
                // A hole deeper than the block is met by no beam.
                var below = new Length(depth.Kind == QuantityKind.Share ? depth.InBase / 100 * wall.Millimetres : depth.InBase);
                if (below <= wall) places.Add(ReflectorPlace.Hole(below));
            }
            else
            {
                return null;
            }
        }

        return (new BlockSection(wall, curved ? new Length(block.OutsideDiameter.Value.InBase) : null), places.ToImmutable());
    }

    private void Check(
        TechniqueContext context, ExaminationLink link, BeamSetting setting, ReferenceSetting reference,
        (BlockSection Block, ImmutableArray<ReflectorPlace> Places) reflectors, Ultrasonics.Examinations.Beam beam, ImmutableArray<Ultrasonics.Studies.PathUse> uses)
    {
        var limit = context.Requirements.Find(
            LimitNames.CorrectionExtrapolation, new LimitQuery(beam.Scan, reference.Method.Value, Thickness: link.Setups[0].Thickness.IsKnown ? link.Setups[0].Thickness.Value : null));
        var share = (limit?.Value.InBase ?? 0) / 100;
        Miss? worst = null;
        foreach (var use in uses)
        {
            var paths = ReflectorPaths.Of(reflectors.Block, reflectors.Places, use.Angle, (beam.Legs.Count > 0 ? beam.Legs[^1] : 1) + LegsBeyond);
            var miss = paths.IsEmpty
                ? new Miss(use.Angle, use.To.Millimetres, double.NaN, double.PositiveInfinity)
                : Worse(
                    new Miss(use.Angle, use.To.Millimetres, paths[^1].Millimetres, use.To.Millimetres - (paths[^1].Millimetres * (1 + share))),
                    new Miss(use.Angle, use.From.Millimetres, paths[0].Millimetres, (paths[0].Millimetres * (1 - share)) - use.From.Millimetres));
            if (miss.By > Resolution && (worst is null || miss.By > worst.By)) worst = miss;
        }

        if (worst is null) return;
        var angle = Digits.Text(Digits.Rounded(worst.Angle.Degrees, 2) ?? 0);
        var used = Digits.Text(Digits.Apart(worst.Used, worst.Reference, 1) ?? 0);
        var message = double.IsNaN(worst.Reference)
            ? $"no reflector of {reference.Id.Or("the reference")} is met at {angle} deg, where {setting.Name} uses sound paths to {used} mm"
            : $"at {angle} deg {setting.Name} uses sound paths {(worst.Used > worst.Reference ? "to" : "from")} {used} mm, and {reference.Id.Or("the reference")} "
            + $"{(worst.Used > worst.Reference ? "ends" : "starts")} at {Digits.Text(Digits.Rounded(worst.Reference, 1) ?? 0)} mm";
        var draft = context.Sink.Report(this, setting.Reference, message).With("angle", worst.Angle.Degrees, "deg").With("used-path", worst.Used, "mm", 1);
        if (!double.IsNaN(worst.Reference)) draft.With("reference-path", worst.Reference, "mm", 1);
        draft.With("extrapolation-limit", share * 100, "%").Under(limit?.Citation)
            .Related(context.Technique.File, reference.Id.IsKnown ? reference.Id.Span : reference.Map.Span, "the reference");
    }

    private static Miss Worse(Miss far, Miss near) => far.By >= near.By ? far : near;

    /// <param name="By">How far the path used lies outside what the reference allows, mm.</param>
    private sealed record Miss(Angle Angle, double Used, double Reference, double By);
}
