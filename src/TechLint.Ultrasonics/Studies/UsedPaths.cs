using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Coverage;
using TechLint.Ultrasonics.Examinations;

namespace TechLint.Ultrasonics.Studies;

/// <summary>The stretch of sound path that a law spends inside the examined volume, in allowed legs and within its window; mm from the exit point.</summary>
internal static class UsedPaths
{
    /// <summary>Depths looked at in each leg: the ends are known to this part of a leg.</summary>
    private const int StepsPerLeg = 400;

    public static (double From, double To)? Of(PassSection section, SightLine line)
    {
        var curved = section.Rays.IsCurved ? section.OutsideDiameter : null;
        var frame = new PassFrame(section.Thickness, curved, section.Pass.ScanningSurface);
        var volume = VolumeRectangle.Of(section.Examination.Weld, section.Examination.Volume, section.Thickness, curved, section.Pass.ScanningSurface == Surface.Inside);
        var least = double.PositiveInfinity;
        var greatest = double.NegativeInfinity;
        for (var leg = 1; line.LegMask >> (leg - 1) != 0; leg++)
        {
            if (!line.Allows(leg)) continue;
            for (var step = 0; step <= StepsPerLeg; step++)
            {
                var outerZ = volume.FromZ + ((volume.ToZ - volume.FromZ) * step / StepsPerLeg);
                if (!section.Rays.TryReach(line.Angle, frame.DepthAt(outerZ), leg, out var advance, out var path)) continue;
                if (path < line.PathFrom || path > line.PathTo) continue;
                var y = frame.ToOuter * (line.ExitY + (line.Direction * advance));
                if (y < volume.FromY || y > volume.ToY) continue;
                least = Math.Min(least, path);
                greatest = Math.Max(greatest, path);
            }
        }

        return greatest >= least ? (least, greatest) : null;
    }
}
