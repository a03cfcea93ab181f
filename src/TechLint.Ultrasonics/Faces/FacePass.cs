using System.Collections.Immutable;
using TechLint.Ultrasonics.Acquiring;
using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Coverage;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Studies;
using TechLint.Ultrasonics.Tofd;
using TechLint.Ultrasonics.Welds;

namespace TechLint.Ultrasonics.Faces;

/// <summary>Where in the range the faces are looked at; mm and rad.</summary>
/// <param name="Misalignment">How much deeper the right edge lies than the left one.</param>
internal readonly record struct FacePlaceInRange(
    double Thickness, double? OutsideDiameter, double LeftError = 0, double RightError = 0, double SkewError = 0, double Misalignment = 0);

/// <summary>Sends and receives of a tandem pair, law by law, and the depths of its zone below the scanning surface.</summary>
internal sealed record FaceTandem(Side From, ImmutableArray<FaceLine> Sent, ImmutableArray<FaceLine> Received, double ZoneFrom, double ZoneTo);

/// <summary>One pass as one fusion face sees it: the laws from each side (left and right of the common frame), its tandem and diffraction pairs.</summary>
internal sealed class FacePass
{
    private FacePass(
        PassSection section, FaceRays rays, ImmutableArray<FaceLine> fromLeft, ImmutableArray<FaceLine> fromRight, ImmutableArray<FaceTandem> tandems,
        ImmutableArray<TofdSight> pairs)
    {
        Section = section;
        Rays = rays;
        FromLeft = fromLeft;
        FromRight = fromRight;
        Tandems = tandems;
        Pairs = pairs;
    }

    public PassSection Section { get; }

    public FaceRays Rays { get; }

    public ImmutableArray<FaceLine> FromLeft { get; }

    public ImmutableArray<FaceLine> FromRight { get; }

    public ImmutableArray<FaceTandem> Tandems { get; }

    public ImmutableArray<TofdSight> Pairs { get; }

    /// <param name="section">The pass at one case.</param>
    /// <param name="face">The face that is looked at; it moves with its edge.</param>
    /// <param name="place">How the probes stand.</param>
    public static FacePass Of(PassSection section, Side face, FacePlaceInRange place)
    {
        var frame = new PassFrame(section.Thickness, section.Rays.IsCurved ? section.OutsideDiameter : null, section.Pass.ScanningSurface);
        var weld = section.Examination.Weld;
        var rays = new FaceRays(
            section.Rays, frame.NearGap(MirrorGap.Of(weld.Cap), MirrorGap.Of(weld.Root)), frame.FarGap(MirrorGap.Of(weld.Cap), MirrorGap.Of(weld.Root)));
        var (left, right) = (ImmutableArray.CreateBuilder<FaceLine>(), ImmutableArray.CreateBuilder<FaceLine>());
        var tandems = ImmutableArray.CreateBuilder<FaceTandem>();
        var pairs = ImmutableArray.CreateBuilder<TofdSight>();
        foreach (var beam in section.Pass.Beams)
        {
            switch (beam.Scan)
            {
                case ScanKind.Sectorial or ScanKind.Linear or ScanKind.Fixed when Pulses.ProbeAt(section.Pass, beam.From) is { } probe:
                    (SideOf(section, probe) == Side.Left ? left : right).AddRange(Laws(section, probe, beam, face, place));
                    break;
                case ScanKind.Tandem when Pulses.ProbeAt(section.Pass, beam.Transmit) is { } sender && Pulses.ProbeAt(section.Pass, beam.Receive) is { } receiver
                    && sender.Side == receiver.Side:
                    tandems.Add(new FaceTandem(
                        SideOf(section, sender), [.. Laws(section, sender, beam, face, place)], [.. Laws(section, receiver, beam, face, place)],
                        beam.ZoneFrom.At(section.Thickness), beam.ZoneTo.At(section.Thickness)));
                    break;
                case ScanKind.Tofd when TofdPair.Of(section, beam, Within(place.LeftError, section), Within(place.RightError, section)).Pair is { } pair:
                    pairs.Add(pair.Sight);
                    break;
            }
        }

        return new FacePass(section, rays, left.ToImmutable(), right.ToImmutable(), tandems.ToImmutable(), pairs.ToImmutable());
    }

    /// <summary>Left and right of the common frame: a pass from inside sees them the other way round.</summary>
    public static Side SideOf(PassSection section, MountedProbe probe) =>
        probe.Side == Side.Left != section.IsInside ? Side.Left : Side.Right;

    private static IEnumerable<FaceLine> Laws(PassSection section, MountedProbe probe, Beam beam, Side face, FacePlaceInRange place)
    {
        var skewError = Limited(place.SkewError, section.Pass.Tolerance.Skew.Radians);
        var error = Within(probe.Side == Side.Left ? place.LeftError : place.RightError, section);
        var skew = probe.Skew.Radians + skewError + beam.Skew.Radians;
        foreach (var law in LawGeometry.Of(section, probe, beam, skewError))
        {
            if (law.Sight is not { } line) continue;
            if (error != 0) line = line with { ExitY = line.ExitY + PassSights.Outward(probe.Side, error) };
            if (place.Misalignment != 0 && SideOf(section, probe) != face)
            {
                if (Misalignment.Beyond(line, section.Rays, place.Misalignment) is not { } beyond) continue;
                line = beyond;
            }

            var across = Math.Sin(law.Ray.PartAngle) * Math.Sin(skew);
            yield return new FaceLine(line, Math.Sqrt(1 - (across * across)));
        }
    }

    private static double Within(double error, PassSection section) => Limited(error, section.Pass.Tolerance.IndexOffset.Millimetres);

    /// <summary>A pass that holds its place better than the worst one errs by no more than its own tolerance.</summary>
    private static double Limited(double error, double tolerance) => Math.Abs(error) <= tolerance ? error : Math.CopySign(tolerance, error);
}
