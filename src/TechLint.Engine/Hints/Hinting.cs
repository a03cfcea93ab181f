using System.Collections.Immutable;
using TechLint.Engine.Navigating;
using TechLint.Model.Documents;
using TechLint.Model.Examinations;
using TechLint.Syntax;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Engine.Hints;

/// <summary>Computed numbers to be shown in the text: from the same studies as the findings.</summary>
public static class Hinting
{
    public static ImmutableArray<ComputedHint> Hints(Snapshot snapshot, string path, TextSpan within, CancellationToken cancellation)
    {
        if (snapshot.LinkedOf(path) is not { } linked) return [];
        var hints = ImmutableArray.CreateBuilder<ComputedHint>();
        foreach (var link in linked.Examinations)
        {
            cancellation.ThrowIfCancellationRequested();
            if (link.Examination is not { } examination || !link.Setups.Any(setup => Meets(setup.Map.Span, within))) continue;
            var study = snapshot.StudyOf(examination);
            var walls = ComputedMeaning.Ends(study).ToArray();
            foreach (var setup in link.Setups)
            {
                var pass = walls[0].Passes.FirstOrDefault(one => one.Pass.Id == setup.Id.Value);
                if (pass is null) continue;
                foreach (var beam in setup.Beams.Items)
                {
                    if (pass.Beams.FirstOrDefault(one => one.Beam.Id == beam.Id.Value) is { } found) Add(beam.Id.Span, OfBeam(found, beam.Name, walls));
                }

                foreach (var probe in setup.Probes.Items)
                {
                    var beams = pass.Beams.Where(one => one.Beam.From is { } from && probe.Station.IsKnown && from == probe.Station.Value);
                    var laws = beams.SelectMany(Sound).ToArray();
                    if (probe.IndexOffset.IsKnown && laws.Length > 0) Add(probe.IndexOffset.Span, ("exit " + Range(laws, law => law.ExitY.Millimetres), "Exit points across the weld, from its centreline"));
                }

                if (setup.Acquisition.Text("speed") is { IsMissing: false, Span: var speed } && pass.Acquisition.SpeedAtMost is { } most)
                {
                    Add(speed, ($"at most {ComputedMeaning.Number(most.MillimetresPerSecond, 1)} mm/s", "Greatest speed without losing lines"));
                }

                if (setup.Id.IsKnown) Add(setup.Id.Span, (ComputedMeaning.Coverage(study), "Worst case over thickness, diameter and positioning tolerance"));
            }
        }

        return [.. hints.OrderBy(hint => hint.Offset)];

        void Add(TextSpan span, (string Text, string Tooltip) hint)
        {
            if (hint.Text.Length > 0 && within.Touches(span.End)) hints.Add(new ComputedHint(span.End, hint.Text, hint.Tooltip));
        }
    }

    /// <summary>Where a setup's figures may be shown: the text alone tells it, nothing is computed.</summary>
    public static ImmutableArray<LensPlace> Lenses(Snapshot snapshot, string path) => snapshot.TreeOf(path) is not { } tree ? []
        : [.. NameIndex.Of(tree).Uses.Where(use => use.Kind == NameKind.Setup && use.IsDefinition).Select(use => new LensPlace(use.Span, use.Name))];

    /// <summary>Coverage and greatest speed of a setup; null where there is no such setup any more.</summary>
    public static string? Figures(Snapshot snapshot, string path, string setup)
    {
        if (LinkOf(snapshot, path, setup) is not { } link) return null;
        if (link.Examination is not { } examination) return "not computed: " + ReasonOf(link);
        var study = snapshot.StudyOf(examination);
        var acquisition = study.Cases[0].Passes.FirstOrDefault(pass => pass.Pass.Id == setup)?.Acquisition;
        var speed = acquisition?.SpeedAtMost is { } most ? $"speed at most {ComputedMeaning.Number(most.MillimetresPerSecond, 1)} mm/s" : "greatest speed is not computed";
        return ComputedMeaning.Coverage(study) + "; " + speed;
    }

    /// <summary>All of a setup's figures, a line each: both sides' coverage, its beams, what taking the data asks.</summary>
    public static string? AllFigures(Snapshot snapshot, string path, string setup)
    {
        if (LinkOf(snapshot, path, setup) is not { } link) return null;
        if (link.Examination is not { } examination) return $"{setup}: not computed: {ReasonOf(link)}";
        var study = snapshot.StudyOf(examination);
        var lines = new List<string> { $"Setup {setup}: {ComputedMeaning.Coverage(study)}" };
        if (study.Coverage is { NotComputed: null, Result: var seen })
        {
            lines.Add($"from the left {ComputedMeaning.Number(seen.Left.Percent, 1)} %, from the right {ComputedMeaning.Number(seen.Right.Percent, 1)} %, from both {ComputedMeaning.Number(seen.BothSides.Percent, 1)} %");
        }

        lines.AddRange(ComputedMeaning.Of(snapshot, path, $"setups/{setup}/acquisition"));
        foreach (var beam in study.Cases[0].Passes.Where(pass => pass.Pass.Id == setup).SelectMany(pass => pass.Beams))
        {
            lines.AddRange(ComputedMeaning.Of(snapshot, path, $"setups/{setup}/beams/{beam.Beam.Id}").Select(line => line.Contains(beam.Beam.Id, StringComparison.Ordinal) ? line : $"{beam.Beam.Id}: {line}"));
        }

        return string.Join('\n', lines);
    }

    private static ExaminationLink? LinkOf(Snapshot snapshot, string path, string setup) =>
        snapshot.LinkedOf(path)?.Examinations.FirstOrDefault(link => link.Setups.Any(one => one.Id.IsKnown && one.Id.Value == setup));

    private static string ReasonOf(ExaminationLink link) => link.Obstacle?.Sentence ?? "something that it rests on is missing or broken";

    /// <summary>Half and full skip at the walls' ends, near field of the laws that exist; a pair's separation.</summary>
    private static (string Text, string Tooltip) OfBeam(BeamStudy beam, string id, CaseStudy[] walls)
    {
        if (beam.Tofd is { } pair) return ($"separation {ComputedMeaning.Mm(pair.ProbeCentreSeparation)}, beams cross at {ComputedMeaning.Mm(pair.IntersectionDepth)}", "Between the index points");
        var laws = Sound(beam).ToArray();
        if (laws.Length == 0) return ("", "");
        var all = walls.SelectMany(wall => wall.Passes).SelectMany(pass => pass.Beams).Where(one => one.Beam.Id == id).SelectMany(Sound).ToArray();
        var text = "half skip " + Skip(all, 1);
        if (all.Any(law => law.Legs.Length > 1)) text += ", full " + Skip(all, 2);
        return (text + ", near field " + Range(laws, law => law.NearField.Millimetres), "From the exit point, over the walls and angles of the technique");
    }

    private static string Skip(IEnumerable<LawStudy> laws, int leg) => Range(
        laws.Where(law => law.Legs.Length >= leg), law => Math.Abs(law.Legs[leg - 1].EndY.Millimetres - law.ExitY.Millimetres));

    private static IEnumerable<LawStudy> Sound(BeamStudy beam) => beam.Laws.Where(law => law.Fault == LawFault.None);

    private static string Range(IEnumerable<LawStudy> laws, Func<LawStudy, double> of)
    {
        var values = laws.Select(of).Where(double.IsFinite).ToArray();
        if (values.Length == 0) return "unknown";
        var (least, most) = (ComputedMeaning.Number(values.Min(), 1), ComputedMeaning.Number(values.Max(), 1));
        return least == most ? $"{least} mm" : $"{least} to {most} mm";
    }

    private static bool Meets(TextSpan one, TextSpan other) => one.Start <= other.End && other.Start <= one.End;
}
