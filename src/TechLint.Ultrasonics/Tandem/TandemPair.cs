using TechLint.Ultrasonics.Acquiring;
using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Rays;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Ultrasonics.Tandem;

/// <summary>Two probes one behind the other in a section: their spacing, where their axes cross, the zone they serve. mm and rad.</summary>
internal sealed class TandemPair
{
    private const int Samples = 96;
    private const int Halvings = 40;

    private TandemPair(TandemStudy study, TandemSight sight)
    {
        Study = study;
        Sight = sight;
    }

    public TandemStudy Study { get; }

    public TandemSight Sight { get; }

    /// <summary>The pair at its stated places, or why there is none.</summary>
    /// <param name="section">Where.</param>
    /// <param name="beam">The tandem beam.</param>
    /// <param name="leftError">Moves the left probes away from the weld where positive.</param>
    /// <param name="rightError">Moves the right ones.</param>
    /// <param name="skewError">Turns both probes.</param>
    public static (TandemPair? Pair, string? NotComputed) Of(
        PassSection section, Beam beam, double leftError = 0, double rightError = 0, double skewError = 0)
    {
        if (Pulses.ProbeAt(section.Pass, beam.Transmit) is not { } sender || Pulses.ProbeAt(section.Pass, beam.Receive) is not { } receiver)
        {
            return (null, "a probe of the pair is missing");
        }

        if (sender.Side != receiver.Side) return (null, "the probes of the tandem pair stand on different sides of the weld");
        if (sender.Station == receiver.Station) return (null, "the pair transmits and receives with one probe");
        var sent = LawGeometry.Of(section, sender, beam, skewError);
        var received = LawGeometry.Of(section, receiver, beam, skewError);
        if (sent.IsEmpty || received.IsEmpty) return (null, "no angle is stated for an array of the pair");
        var fault = sent[0].Study.Fault != LawFault.None ? sent[0].Study.Fault : received[0].Study.Fault;
        if (fault != LawFault.None) return (null, LawFaultText.Of(fault));
        if (sent[0].Sight is not { } one || received[0].Sight is not { } other) return (null, LawFaultText.Of(LawFault.Geometry));
        if (one.Direction != other.Direction) return (null, "the beams of the tandem pair look away from one another");
        var error = PassSights.Outward(sender.Side, sender.Side == Side.Left ? leftError : rightError);
        one = one with { ExitY = one.ExitY + error };
        other = other with { ExitY = other.ExitY + error };
        var oneIsFront = (one.ExitY - other.ExitY) * one.Direction > 0;
        return (Build(section, beam, oneIsFront ? other : one, oneIsFront ? one : other), null);
    }

    /// <summary>Why some tandem pair of the examination cannot be worked out at its thinnest wall; null where all can.</summary>
    public static string? Missing(Examination examination)
    {
        if ((examination.Thickness.From ?? examination.Thickness.To) is not { } thickness) return null;
        var diameter = examination.OutsideDiameter is { } band ? band.From ?? band.To : null;
        foreach (var pass in examination.Passes)
        {
            if (PassSection.Of(examination, pass, thickness, diameter) is not { } section) continue;
            foreach (var beam in pass.Beams)
            {
                if (beam.Scan == ScanKind.Tandem && Of(section, beam).NotComputed is { } reason) return reason;
            }
        }

        return null;
    }

    private static TandemPair Build(PassSection section, Beam beam, SightLine rear, SightLine front)
    {
        var wall = section.Thickness;
        var (zoneFrom, zoneTo) = (beam.ZoneFrom.At(wall), beam.ZoneTo.At(wall));
        var sight = new TandemSight(section, rear, front, zoneFrom, zoneTo);
        var spacing = (front.ExitY - rear.ExitY) * front.Direction;
        var (depth, y) = Crossing(section.Rays, rear, front, spacing);
        var (servedFrom, servedTo) = double.IsNaN(depth) ? (double.NaN, double.NaN)
            : (Edge(sight, y, depth, 0), Edge(sight, y, depth, wall));
        var forZone = TandemFormulas.SpacingFor(section.Rays, (zoneFrom + zoneTo) / 2, (rear.Angle + front.Angle) / 2);
        return new TandemPair(
            new TandemStudy(
                new Length(spacing), new Length(depth), new Length(y), new Length(servedFrom), new Length(servedTo), new Length(forZone),
                new Length(spacing - forZone)),
            sight);
    }

    /// <summary>The deeper the place, the farther ahead is the front axis and the nearer the rear one's second leg: they meet once, if at all.</summary>
    private static (double Depth, double Y) Crossing(SectionRays rays, SightLine rear, SightLine front, double spacing)
    {
        var (low, high) = (0.0, rays.Thickness);
        if (!(Apart(low) >= 0 && Apart(high) <= 0)) return (double.NaN, double.NaN);
        for (var step = 0; step < Halvings; step++)
        {
            var middle = (low + high) / 2;
            if (Apart(middle) >= 0) low = middle;
            else high = middle;
        }

        var depth = (low + high) / 2;
        rays.TryReach(front.Angle, depth, 1, out var advance, out _);
        return (depth, front.ExitY + (front.Direction * advance));

        double Apart(double z) =>
            rays.TryReach(rear.Angle, z, 2, out var back, out _) && rays.TryReach(front.Angle, z, 1, out var ahead, out _)
                ? back - ahead - spacing
                : double.NaN;
    }

    /// <summary>How far towards an end of the wall the pair serves without a gap; NaN where it does not serve where the axes cross (reinforcement, window).</summary>
    private static double Edge(TandemSight sight, double y, double start, double end)
    {
        if (!sight.Serves(y, start)) return double.NaN;
        var inside = start;
        for (var sample = 1; sample <= Samples; sample++)
        {
            var depth = start + ((end - start) * sample / Samples);
            if (sight.Serves(y, depth))
            {
                inside = depth;
                continue;
            }

            var outside = depth;
            for (var step = 0; step < Halvings; step++)
            {
                var middle = (inside + outside) / 2;
                if (sight.Serves(y, middle)) inside = middle;
                else outside = middle;
            }

            break;
        }

        return inside;
    }
}
