using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Ultrasonics.Beams;

/// <summary>How many laws a beam has, and which. One count serves the laws and the pulses.</summary>
internal static class LawCount
{
    /// <summary>More than any instrument holds; a step of nearly nothing must not fill the memory.</summary>
    public const int Most = 4096;

    /// <summary>A step that ends this close to the sweep's end has reached it (decimal steps are not exact in binary).</summary>
    private const double StepSlack = 1e-9;

    /// <summary>Null where the sweep or the walk makes no sense.</summary>
    public static int? Of(Beam beam, Transducer transducer)
    {
        if (transducer.Elements <= 1) return 1;
        return beam.Scan switch
        {
            ScanKind.Sectorial => beam.Angles is { } sweep ? OfSweep(sweep) : null,
            ScanKind.Linear => OfWalk(beam, transducer),
            _ => 1,
        };
    }

    /// <summary>Both ends included, the last step shortened.</summary>
    public static int? OfSweep(AngleSweep sweep)
    {
        var span = Math.Abs(sweep.To.Degrees - sweep.From.Degrees);
        if (span == 0) return 1;
        var steps = Math.Ceiling((span / sweep.Step.Degrees) - StepSlack);
        return steps is >= 1 and < Most ? (int)steps + 1 : null;
    }

    public static Angle AngleAt(AngleSweep sweep, int index)
    {
        var span = sweep.To.Degrees - sweep.From.Degrees;
        var reached = index * sweep.Step.Degrees;
        return reached >= Math.Abs(span) - StepSlack ? sweep.To : new Angle(sweep.From.Degrees + (span < 0 ? -reached : reached));
    }

    public static (int First, int Count) FirstAperture(Beam beam, Transducer transducer) =>
        beam.Aperture is { } aperture ? (aperture.First, aperture.Count) : (1, transducer.Elements);

    public static (int First, int Count) Aperture(Beam beam, Transducer transducer, int index) =>
        beam.Aperture is { } aperture ? (aperture.First + (index * aperture.Step), aperture.Count) : (1, transducer.Elements);

    private static int? OfWalk(Beam beam, Transducer transducer)
    {
        if (beam.Aperture is not { } aperture) return 1;
        var way = (long)aperture.Last - (aperture.First + (long)aperture.Count - 1);
        if (way <= 0) return 1;
        if (aperture.Step < 1) return null;
        var count = (way / aperture.Step) + 1;
        return count <= Most ? (int)count : null;
    }
}
