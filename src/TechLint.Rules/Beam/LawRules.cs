using TechLint.Model.Techniques;
using TechLint.Rules.Registry;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Rules.Beam;

/// <summary>The laws of every beam over the cases of every examination, for rules that ask whether a beam exists.</summary>
internal static class LawRules
{
    /// <summary>For each beam the laws with a given fault, with the case in which they have it; a beam that has them in several cases comes once.</summary>
    public static IEnumerable<(BeamSetting Setting, BeamStudy Beam, CaseStudy Case, LawStudy[] Laws)> Faulty(TechniqueContext context, params LawFault[] faults)
    {
        foreach (var link in context.Linked.Examinations)
        {
            if (context.StudyOf(link) is not { } study) continue;
            var told = new HashSet<string>(StringComparer.Ordinal);
            foreach (var one in study.Cases)
            {
                foreach (var pass in one.Passes)
                {
                    var setup = link.Setups.First(member => member.Name == pass.Pass.Id);
                    foreach (var beam in pass.Beams)
                    {
                        LawStudy[] laws = [.. beam.Laws.Where(law => faults.Contains(law.Fault))];
                        if (laws.Length == 0 || !told.Add($"{setup.Path}/{beam.Beam.Id}")) continue;
                        if (setup.Beams.Items.FirstOrDefault(setting => setting.Name == beam.Beam.Id) is { } found) yield return (found, beam, one, laws);
                    }
                }
            }
        }
    }

    /// <summary>Some law of a beam does not exist: a rule of this family says so, and what follows from the others waits until it is mended.</summary>
    public static bool IsFaulty(Study study, string passId, string beamId) => study.Cases
        .SelectMany(one => one.Passes).Where(pass => pass.Pass.Id == passId)
        .SelectMany(pass => pass.Beams).Any(beam => beam.Beam.Id == beamId && beam.Laws.Any(law => law.Fault != LawFault.None));

    /// <summary>The key that states the angles, or the beam itself.</summary>
    public static (Syntax.TextSpan Span, string Path) AnglePlace(BeamSetting beam)
    {
        foreach (var key in new[] { "angles", "angle" })
        {
            if (beam.Map.Band(key) is { IsKnown: true } angles) return (angles.Span, angles.Path);
        }

        return (beam.Id.IsKnown ? beam.Id.Span : beam.Map.Span, beam.Map.Path);
    }
}
