using TechLint.Ultrasonics.Drifts;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Reports.Compute;

/// <summary>Terms of the format for what a study speaks of, and the reasons why a number is not there.</summary>
internal static class Words
{
    public static string Of(Side side) => side == Side.Left ? "left" : "right";

    public static string Of(Wave wave) => wave == Wave.Transverse ? "transverse" : "longitudinal";

    /// <summary>Why a shift is no number though it is known; null where it is one.</summary>
    public static string? NotRefracted(AngleShift? shift) =>
        shift is { } known && !double.IsFinite(known.Shift.Degrees) ? "a law is no longer refracted into the part" : null;

    public static string Of(ScanKind scan) => scan switch
    {
        ScanKind.Sectorial => "sectorial",
        ScanKind.Linear => "linear",
        ScanKind.Fixed => "fixed",
        ScanKind.Tofd => "tofd",
        ScanKind.Tandem => "tandem",
        ScanKind.TotalFocusing => "total-focusing",
        ScanKind.CouplingMonitor => "coupling-monitor",
        _ => "lamination",
    };

    public static string? Of(LawFault fault) => fault switch
    {
        LawFault.None => null,
        LawFault.NotRefracted => "no wave of this kind leaves the wedge at this angle",
        LawFault.BelowFirstCritical => "the angle lies below the first critical angle",
        LawFault.OutsideWedge => "the beam leaves the wedge beside its sole",
        LawFault.OutsideArray => "the aperture reaches beyond the array",
        LawFault.UnknownSpeed => "a speed of sound is not known",
        _ => "the geometry gives no such beam",
    };

    /// <summary>Why a beam has no figures; null where it has.</summary>
    public static string? WhyNot(BeamStudy beam) => beam.NotComputed ?? (beam.Wavelength is null ? "a speed of sound is not known" : null);

    /// <summary>Why some figure of the acquisition is missing; null where none is.</summary>
    public static string? WhyNot(AcquisitionStudy study, Acquisition? stated)
    {
        if (study is { PulsesPerPosition: not null, SpeedAtMost: not null, ScanLength: not null, ScanTime: not null, DataRate: not null, DataSize: not null }
            and { PulseRateAtMost: not null, AmbiguityPath: not null, Lines: not null, StepsPerIncrement: not null, SpeedAtMostForData: not null })
        {
            return null;
        }

        if (stated is null) return "no acquisition is stated";
        List<string> missing = [];
        if (stated.Increment is null) missing.Add("increment");
        if (stated.Speed is null) missing.Add("speed");
        if (stated.PulseRate is null) missing.Add("pulse-rate");
        if (stated.DigitisingRate is null) missing.Add("digitising-rate");
        if (study.StepsPerIncrement is null && stated.EncoderResolution is null) missing.Add("resolution of the encoder");
        if (study.SpeedAtMostForData is null && stated.InstrumentDataRateAtMost is null) missing.Add("data-rate-at-most of the instrument");
        if (study.ScanLength is null && stated.WeldLength is null) missing.Add("length of the weld");
        return missing.Count > 0 ? "not stated: " + string.Join(", ", missing) : "what is stated does not give it";
    }

    /// <summary>The part of a case that belongs to one setup.</summary>
    public static PassStudy? PassOf(CaseStudy study, string setup) =>
        study.Passes.FirstOrDefault(pass => string.Equals(pass.Pass.Id, setup, StringComparison.Ordinal));
}
