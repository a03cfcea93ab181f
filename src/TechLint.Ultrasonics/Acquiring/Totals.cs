using System.Collections.Immutable;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Ultrasonics.Acquiring;

/// <summary>Passes of one examination are scanned one after the other: time (s) and data (10⁶ bytes) are summed in the order of the passes.</summary>
internal static class Totals
{
    public static AcquisitionTotals Of(ImmutableArray<PassStudy> passes)
    {
        double? time = passes.IsEmpty ? null : 0;
        double? size = time;
        foreach (var pass in passes)
        {
            time += pass.Acquisition.ScanTime?.Seconds;
            size += pass.Acquisition.DataSize?.Megabytes;
        }

        return new AcquisitionTotals(
            time is { } seconds ? Duration.FromSeconds(seconds) : null, size is { } megabytes ? new DataSize(megabytes) : null);
    }
}
