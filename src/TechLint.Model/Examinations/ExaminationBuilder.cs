using System.Collections.Immutable;
using TechLint.Model.Binding;
using TechLint.Model.Equipment;
using TechLint.Model.Requirements;
using TechLint.Model.Techniques;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Materials;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Model.Examinations;

/// <summary>One examination of a technique: the setups that make it (one, or several passes), and its inputs or what stands in the way.</summary>
public sealed record ExaminationLink(ImmutableArray<Setup> Setups, Examination? Examination, Obstacle? Obstacle);

/// <summary>
/// From a bound technique and its equipment to the span-free inputs of the physics. What it cannot compute it says once, at the
/// key that causes it.
/// </summary>
public sealed class ExaminationBuilder(Technique technique, EquipmentPool pool, RequirementSets requirements)
{
    /// <summary>Where no set says otherwise. physics.md of the design: covered depth where transmit × receive stays above -12 dB; common practice.</summary>
    private static readonly Level CommonTofdDrop = new(-12);

    /// <summary>Where no set says otherwise; common practice.</summary>
    private static readonly Level CommonImageDrop = new(-6);

    public ImmutableArray<ExaminationLink> Build()
    {
        var links = ImmutableArray.CreateBuilder<ExaminationLink>();
        foreach (var group in SetupGroups.Of(technique))
        {
            var gathering = new Gathering();
            var examination = Build(group, gathering);
            links.Add(new ExaminationLink(group.Setups, gathering.Failed ? null : examination, gathering.Obstacle));
        }

        return links.ToImmutable();
    }

    private Examination? Build(SetupGroup group, Gathering gathering)
    {
        if (group.IsContested) gathering.Stop(Obstacle.Reported(group.Setups[0].Map.Span, group.Setups[0].Path));
        StopAtGeometryNotComputed(gathering);
        StopAtWhatIsReported(group, gathering);
        if (gathering.Failed) return null;
        var curvature = CurvatureOf(gathering);
        var part = new Part(
            curvature, SpeedsOf(technique.Component.Material.Left, gathering), SpeedsOf(technique.Component.Material.Right, gathering));
        var weld = WeldBuilder.Build(technique.Weld, gathering);
        var extent = technique.Extent;
        var depth = gathering.Allow(extent.Depth, default);
        var volume = new ExaminedVolume(
            gathering.NeedLength(extent.BesideWeld, "The examined volume"),
            depth.From is { } from ? Gathering.ToDepth(from) : new Depth(0, IsShare: true),
            depth.To is { } to ? Gathering.ToDepth(to) : new Depth(100, IsShare: true));
        var thickness = group.Thickness;
        if (thickness is not { From: { } thinnest, To: { } thickest })
        {
            gathering.Stop(new Obstacle(
                "Coverage needs both ends of the thickness", technique.Component.Thickness.Span, technique.Component.Thickness.Path));
            return null;
        }

        Band<Length>? diameters = null;
        if (curvature != Curvature.Flat)
        {
            diameters = new Band<Length>(ToLength(group.OutsideDiameter.From), ToLength(group.OutsideDiameter.To));
            if (diameters is { From: null })
            {
                gathering.Stop(new Obstacle(
                    "Coverage needs the lower end of the outside diameter", technique.Component.OutsideDiameter.Span, technique.Component.OutsideDiameter.Path));
            }
            if (diameters is { From: { } least } && least.Millimetres <= 2 * thickest.InBase)
            {
                // Said by the shape checker's plausibility where both stand in one component; bands of setups come through here.
                gathering.Stop(new Obstacle(
                    $"An outside diameter of {group.OutsideDiameter.From!.Value.Display()} leaves no bore in a wall of {thickest.Display()}",
                    technique.Component.OutsideDiameter.Span, technique.Component.OutsideDiameter.Path));
            }
        }

        var passes = group.Setups.Select(setup => BuildPass(setup, gathering)).ToImmutableArray();
        if (gathering.Failed) return null;
        return new Examination(
            part, weld, volume, new Band<Length>(ToLength(thinnest), ToLength(thickest)), diameters, TofdDrop(group), new(passes))
        {
            VelocityTolerance = technique.VelocityTolerance.IsKnown ? new Share(Math.Abs(technique.VelocityTolerance.Value.InBase)) : default,
            FusionFaceIncidence = FusionFaceIncidence(group),
            ImageDrop = ImageDrop(group),
            SensitivityDrop = SensitivityDrop(group),
        }.WithTemperatures(technique, requirements, group.Thickness);
    }

    /// <summary>A band that cannot be understood has been told of; and a hand that moves a probe to and fro is no frame.</summary>
    private void StopAtWhatIsReported(SetupGroup group, Gathering gathering)
    {
        var component = technique.Component;
        gathering.Allow(component.Thickness, default);
        gathering.Allow(component.OutsideDiameter, default);
        foreach (var setup in group.Setups)
        {
            gathering.Allow(setup.Thickness, default);
            gathering.Allow(setup.OutsideDiameter, default);
            if (setup.Map.Text("recording").Or(null) is "none")
            {
                gathering.Stop(new Obstacle(
                    "What a probe sees that is moved by hand is not computed: coverage is not checked", setup.Map.SpanOfKey("movement"),
                    ModelPath.Join(setup.Path, "movement")));
            }
        }
    }

    /// <summary>Sections that this program does not compute.</summary>
    private void StopAtGeometryNotComputed(Gathering gathering)
    {
        var weld = technique.Weld;
        if (weld.Joint.TryGet(out var joint) && joint != Joint.Butt)
        {
            var article = Words.Spell(joint) is "corner" or "lap" or "nozzle" or "tee" ? "A" : "An";
            gathering.Stop(new Obstacle(
                $"{article} {Words.Spell(joint)}'s section is not computed: fit, coverage and scan length are not checked. Beams, references, checks and records are.",
                weld.Joint.Span, weld.Joint.Path));
        }

        if (weld.Orientation.TryGet(out var orientation) && orientation == WeldOrientation.Helical)
        {
            gathering.Stop(new Obstacle(
                "A helical seam's section is not computed: fit, coverage and scan length are not checked. Beams, references, checks and records are.",
                weld.Orientation.Span, weld.Orientation.Path));
        }

        if (technique.Component.Form.TryGet(out var form) && form == ComponentForm.Cone)
        {
            gathering.Stop(new Obstacle(
                "A cone's section is not computed: fit, coverage and scan length are not checked. Beams, references, checks and records are.",
                technique.Component.Form.Span, technique.Component.Form.Path));
        }

        if (technique.Component.ThicknessDiffersBySide)
        {
            gathering.Stop(new Obstacle(
                "A weld between walls of different thickness is not computed: coverage is not checked. Beams, references, checks and records are.",
                technique.Component.Map.SpanOfKey("thickness"), technique.Component.Thickness.Path));
        }
    }

    private Curvature CurvatureOf(Gathering gathering)
    {
        var form = gathering.Need(technique.Component.Form, "The section");
        if (form == ComponentForm.Plate) return Curvature.Flat;
        var diameter = technique.Component.OutsideDiameter;
        if (diameter.IsMissing && form is ComponentForm.Vessel or ComponentForm.Tank) return Curvature.Flat;
        gathering.Need(diameter, "The section");
        return gathering.Need(technique.Weld.Orientation, "The section") == WeldOrientation.Longitudinal
            ? Curvature.AcrossWeld
            : Curvature.AlongWeld;
    }

    private SoundSpeeds SpeedsOf(Bound<string> material, Gathering gathering)
    {
        var name = gathering.Need(material, "Refraction");
        if (name is null) return new SoundSpeeds("", null, null);
        if (pool.Find<MaterialItem>(EquipmentKind.Material, name) is { } item)
        {
            return new SoundSpeeds(
                name, gathering.AllowNull(item.Longitudinal, static value => new Speed(value)),
                gathering.AllowNull(item.Transverse, static value => new Speed(value)));
        }

        if (BuiltInMaterials.Find(name) is { } known) return new SoundSpeeds(name, known.Longitudinal, known.Transverse);
        gathering.Stop(Obstacle.Reported(material.Span, material.Path));
        return new SoundSpeeds(name, null, null);
    }

    private Level TofdDrop(SetupGroup group) =>
        requirements.Find(LimitNames.TofdDrop, new LimitQuery(ScanKind.Tofd, Thickness: group.Thickness)) is { } limit
            ? new Level(limit.Value.InBase)
            : CommonTofdDrop;

    private Angle FusionFaceIncidence(SetupGroup group) =>
        requirements.Find(LimitNames.FusionFaceIncidence, new LimitQuery(Thickness: group.Thickness)) is { } limit
            ? new Angle(limit.Value.InBase)
            : Examination.CommonFusionFaceIncidence;

    private Level ImageDrop(SetupGroup group) =>
        requirements.Find(LimitNames.ImageDrop, new LimitQuery(ScanKind.TotalFocusing, Thickness: group.Thickness)) is { } limit
            ? new Level(limit.Value.InBase)
            : CommonImageDrop;

    private Level SensitivityDrop(SetupGroup group) =>
        requirements.Find(LimitNames.SensitivityDrop, new LimitQuery(Thickness: group.Thickness)) is { } limit
            ? new Level(limit.Value.InBase)
            : Examination.CommonSensitivityDrop;

    private Pass BuildPass(Setup setup, Gathering gathering)
    {
        var frame = setup.Frame.TryGet(out var frameId) ? pool.Find<FrameItem>(EquipmentKind.Frame, frameId) : null;
        var mount = new ProbeMount(pool, gathering, frame);
        var probes = setup.Probes.Items.Select(mount.Build).Where(probe => probe is not null).Select(probe => probe!).OrderBy(probe => probe.Station);
        if (setup.Probes.IsBroken) gathering.Stop(Obstacle.Reported(setup.Probes.Span, setup.Probes.Path));
        if (setup.Beams.IsBroken) gathering.Stop(Obstacle.Reported(setup.Beams.Span, setup.Beams.Path));
        return new Pass(
            setup.Name, setup.Pass.IsKnown ? setup.Pass.Value : null,
            gathering.Allow(setup.ScanningSurface, technique.Component.ScanningSurface.Or(Surface.Outside)),
            new PositioningTolerance(gathering.AllowLength(setup.OffsetTolerance), new Angle(gathering.AllowLength(setup.SkewTolerance).Millimetres)),
            [.. probes.ToImmutableArray()], [.. setup.Beams.Items.Select(beam => BeamBuilder.Build(beam, setup, gathering)).ToImmutableArray()],
            AcquisitionBuilder.Build(technique, setup, pool, gathering));
    }

    private static Length ToLength(Quantity quantity) => new(quantity.InBase);

    private static Length? ToLength(Quantity? quantity) => quantity is { } known ? ToLength(known) : null;
}
