using System.Collections.Immutable;
using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Contact;
using TechLint.Ultrasonics.Delays;
using TechLint.Ultrasonics.Drifts;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Reflection;

namespace TechLint.Ultrasonics.Studies;

/// <summary>What is shown of a beam's laws, with what a study adds to them: bounces at once, for they cost nothing; delays, rock, temperature and the level of a grating lobe when asked for.</summary>
internal static class LawStudies
{
    public static ImmutableArray<LawStudy> Of(PassSection section, MountedProbe probe, Beam beam, ImmutableArray<Law> laws)
    {
        var speeds = section.SpeedsOn(probe.Side);
        var studies = ImmutableArray.CreateBuilder<LawStudy>(laws.Length);
        foreach (var law in laws)
        {
            studies.Add(law.Study with
            {
                Legs = LegReflections.Of(law.Study.Legs, beam.Wave, speeds),
                Focal = DelayWork.Of(section, probe, beam, law),
                Rock = RockWork.Of(section, probe, beam, law),
                GratingLobeWork = law.Study.GratingLobeAngle is null ? null : new(() => LobeLevel(section, probe, beam, law)),
            });
        }

        return studies.MoveToImmutable();
    }

    private static Level? LobeLevel(PassSection section, MountedProbe probe, Beam beam, Law law) =>
        LawGeometry.GratingLobeLevel(section, probe, beam, law) is var level && double.IsNaN(level) ? null : new Level(level);

    /// <summary>Null for a beam without laws.</summary>
    public static TemperatureStudy? Drift(PassSection section, MountedProbe probe, Beam beam, ImmutableArray<Law> laws) =>
        laws.IsEmpty ? null : TemperatureWork.Of(section, probe, beam, laws);
}
