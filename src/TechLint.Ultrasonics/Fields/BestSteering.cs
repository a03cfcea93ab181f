using System.Collections.Immutable;
using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Ultrasonics.Fields;

/// <summary>
/// The laws to which an aperture could be steered through its wedge: what a beam is measured by beside its own laws. Angles in the part every <see cref="Step"/> up to
/// <see cref="Steepest"/>, on the side of the beam, of its wave and with its focus, as far as they leave through the sole and (transverse waves) lie beyond the first critical angle.
/// The aperture is that of the beam's middle law.
/// </summary>
/// <remarks>Single elements are not steered: none. Tests hold that half the step changes the loudest level by less than 0.1 dB.</remarks>
internal static class BestSteering
{
    /// <summary>deg.</summary>
    public const double Step = 2;

    /// <summary>deg; beyond it a beam creeps along the surface and is no bulk wave any more (common practice).</summary>
    public const double Steepest = 80;

    public static IEnumerable<Law> Laws(PassSection section, MountedProbe probe, Beam beam, ImmutableArray<Law> own)
    {
        if (probe.Transducer.Elements <= 1 || own.IsEmpty) return [];
        var middle = own[own.Length / 2];
        var side = middle.Ray.PartAngle < 0 ? -1 : 1;
        var count = beam.Aperture?.Count ?? probe.Transducer.Elements;
        var first = middle.Study.FirstElement;
        var steered = beam with
        {
            Scan = ScanKind.Sectorial, Angles = new AngleSweep(default, new Angle(side * Steepest), new Angle(Step)),
            Aperture = new Aperture(first, count, first + count - 1, 1),
        };
        return LawGeometry.Of(section, probe, steered).Where(law => law.Sight is not null);
    }
}
