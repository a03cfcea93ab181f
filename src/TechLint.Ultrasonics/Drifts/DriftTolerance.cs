using TechLint.Ultrasonics.Acquiring;
using TechLint.Ultrasonics.Coverage;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Materials;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Ultrasonics.Drifts;

/// <summary>
/// How far the speeds of an examination may stand from the stated ones, as shares, either way: in the part what the check of velocity lets pass plus
/// <c>|drift| ΔT / v</c>, in the wedge <c>|drift| ΔT / v</c>, with ΔT the permitted difference between block and part and the drifts of
/// <see cref="MaterialDrifts"/>; the greatest over the sound beams stands for all. Part and wedge are taken as independent, though one temperature moves both: cautious.
/// </summary>
internal static class DriftTolerance
{
    private const string ImageOrTandem = "what drifts of speed do to total-focusing images and tandem pairs is not computed";
    private const string Dual = "what drifts of speed do to a dual probe's beams is not computed";

    public static (SpeedErrors Speeds, string? NotComputed) Of(Examination examination)
    {
        var velocity = Math.Abs(examination.VelocityTolerance.Fraction);
        var warming = new TemperatureDifference(Math.Abs(examination.BlockToPart.Kelvins));
        var (inPart, inWedge) = (0.0, 0.0);
        if (velocity == 0 && warming.Kelvins == 0) return (default, null);
        foreach (var pass in examination.Passes)
        {
            foreach (var beam in pass.Beams)
            {
                if (beam.Scan is ScanKind.TotalFocusing or ScanKind.Tandem) return (default, ImageOrTandem);
                if (beam.Scan is not (ScanKind.Sectorial or ScanKind.Linear or ScanKind.Fixed) || Pulses.ProbeAt(pass, beam.From) is not { } probe) continue;
                if (probe.Transducer.IsDual) return (default, Dual);
                if (warming.Kelvins == 0) continue;
                if (MaterialDrifts.Find(probe.Wedge.Material) is not { } wedge) return (default, TemperatureWork.Unknown(probe.Wedge.Material));
                inWedge = Math.Max(inWedge, Share(wedge.Longitudinal, probe.Wedge.Longitudinal, warming));

                // A beam crosses into the other parent metal.
                foreach (var speeds in (ReadOnlySpan<SoundSpeeds>)[examination.Part.Left, examination.Part.Right])
                {
                    if (MaterialDrifts.Find(speeds.Material)?.Of(beam.Wave) is not { } drift) return (default, TemperatureWork.Unknown(speeds.Material));
                    inPart = Math.Max(inPart, Share(drift, beam.Wave == Wave.Transverse ? speeds.Transverse : speeds.Longitudinal, warming));
                }
            }
        }

        return (new SpeedErrors(velocity + inPart, inWedge), null);
    }

    private static double Share(SpeedDrift drift, Speed? speed, TemperatureDifference warming) => speed is { MetresPerSecond: > 0 } known
        ? Math.Abs(drift.MetresPerSecondPerKelvin * warming.Kelvins) / known.MetresPerSecond
        : 0;
}
