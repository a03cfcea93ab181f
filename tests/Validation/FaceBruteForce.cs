using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Coverage;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Faces;
using TechLint.Ultrasonics.Studies;
using TechLint.Ultrasonics.Welds;

namespace TechLint.Tests.Validation;

/// <summary>The definition of a served face, place by place with vectors in the plane; sight lines are taken as they are, the rest is made anew.</summary>
internal static class FaceBruteForce
{
    public sealed record Shares(double Beam, double Corner, double Tandem, double[] Legs, double WorstBeam);

    /// <summary>Percent of a face's length that rays, corner echoes and tandem pairs from one side serve (each where no surer one does).</summary>
    public static Shares Of(Examination examination, double thickness, double? diameter, Side face, Side from, double every, double step = 0)
    {
        var outline = WeldOutline.At(examination.Weld.Preparation, thickness);
        var (whole, beam, corner, tandem, worst) = (0.0, 0.0, 0.0, 0.0, 0.0);
        var legs = new double[10];
        foreach (var piece in face == Side.Left ? outline.Left : outline.Right)
        {
            var length = LengthOf(piece);
            var cells = (int)Math.Ceiling(length / every);
            for (var cell = 0; cell < cells; cell++)
            {
                var share = (cell + 0.5) / cells;
                var size = length / cells;
                whole += size;
                var best = double.PositiveInfinity;
                var mask = 0;
                var (hasCorner, hasTandem) = (false, false);
                foreach (var pass in examination.Passes)
                {
                    var section = PassSection.Of(examination, pass, new(thickness), diameter is { } d ? new(d) : null)!;
                    var place = new Place(section, piece, share, face, step, examination.FusionFaceIncidence.Radians);
                    place.Look(from, ref best, ref mask, ref hasCorner, ref hasTandem);
                }

                if (mask != 0)
                {
                    beam += size;
                    worst = Math.Max(worst, best);
                    for (var leg = 1; leg < legs.Length; leg++) legs[leg] += (mask >> leg & 1) != 0 ? size : 0;
                }
                else if (hasTandem)
                {
                    tandem += size;
                }
                else if (hasCorner)
                {
                    corner += size;
                }
            }
        }

        return new Shares(100 * beam / whole, 100 * corner / whole, 100 * tandem / whole, [.. legs.Select(leg => 100 * leg / whole)], worst * 180 / Math.PI);
    }

    private static double LengthOf(FacePiece piece)
    {
        // By many chords.
        var sum = 0.0;
        var (y, z, _, _) = FacePoint.At(piece, 0);
        for (var step = 1; step <= 500; step++)
        {
            var (nextY, nextZ, _, _) = FacePoint.At(piece, step / 500.0);
            sum += Math.Sqrt(((nextY - y) * (nextY - y)) + ((nextZ - z) * (nextZ - z)));
            (y, z) = (nextY, nextZ);
        }

        return sum;
    }

    private sealed class Place
    {
        private readonly PassSection section;
        private readonly PlaneRays rays;
        private readonly double y;
        private readonly double z;
        private readonly bool isRight;
        private readonly double normalX;
        private readonly double normalY;
        private readonly double tolerance;
        private readonly Side face;
        private readonly bool opensOuter;
        private readonly bool opensInner;

        public Place(PassSection section, FacePiece piece, double share, Side face, double step, double tolerance)
        {
            this.section = section;
            this.tolerance = tolerance;
            this.face = face;
            rays = new PlaneRays(section.Thickness, section.Rays.IsCurved ? section.OutsideDiameter!.Value / 2 : 0, section.IsInside, step);
            (y, z, _, _) = FacePoint.At(piece, share);
            isRight = face == Side.Right;

            // The normal from two places close by.
            var (beforeY, beforeZ, _, _) = FacePoint.At(piece, share - 1e-6);
            var (afterY, afterZ, _, _) = FacePoint.At(piece, share + 1e-6);
            var (x1, y1) = rays.Place(beforeY, beforeZ, isRight);
            var (x2, y2) = rays.Place(afterY, afterZ, isRight);
            var size = Math.Sqrt(((x2 - x1) * (x2 - x1)) + ((y2 - y1) * (y2 - y1)));
            (normalX, normalY) = ((y2 - y1) / size, -(x2 - x1) / size);
            opensOuter = piece.From.Z.Millimetres < 1e-6;
            opensInner = piece.To.Z.Millimetres > section.Thickness - 1e-6;
        }

        public void Look(Side from, ref double best, ref int mask, ref bool hasCorner, ref bool hasTandem)
        {
            foreach (var beam in section.Pass.Beams)
            {
                if (beam.Scan == ScanKind.Tandem)
                {
                    var sender = section.Pass.Probes.First(probe => probe.Station == beam.Transmit);
                    var receiver = section.Pass.Probes.First(probe => probe.Station == beam.Receive);
                    var depth = section.IsInside ? section.Thickness - z : z;
                    if (FacePass.SideOf(section, sender) != from || depth < beam.ZoneFrom.At(section.Thickness) || depth > beam.ZoneTo.At(section.Thickness)) continue;
                    foreach (var sent in LinesOf(sender, beam))
                    {
                        foreach (var received in LinesOf(receiver, beam))
                            hasTandem |= IsPair(sent, 1, received, 2, 0) || IsPair(sent, 2, received, 1, 0);
                    }

                    continue;
                }

                var probe = section.Pass.Probes.First(one => one.Station == beam.From);
                if (FacePass.SideOf(section, probe) != from) continue;
                foreach (var line in LinesOf(probe, beam))
                {
                    for (var leg = 1; leg <= 4; leg++)
                    {
                        if (line.Allows(leg))
                        {
                            foreach (var (_, hit) in Seen(line, leg, 0))
                            {
                                if (hit.Path < line.PathFrom || hit.Path > line.PathTo) continue;
                                var incidence = Off(hit.DirectionX, hit.DirectionY);
                                best = Math.Min(best, incidence);
                                if (incidence <= tolerance) mask |= 1 << leg;
                            }
                        }

                        if (!line.Allows(leg) && !line.Allows(leg + 1)) continue;
                        var atInner = (leg & 1) == 1 != section.IsInside;
                        hasCorner |= IsPair(line, leg, line, leg + 1, from == face && (atInner ? opensInner : opensOuter) ? leg : 0);
                    }
                }
            }
        }

        private IEnumerable<SightLine> LinesOf(MountedProbe probe, Beam beam) =>
            LawGeometry.Of(section, probe, beam).Select(law => law.Sight).OfType<SightLine>();

        private bool IsPair(SightLine one, int leg, SightLine other, int otherLeg, int free)
        {
            foreach (var (_, first) in Seen(one, leg, 0))
            {
                foreach (var (_, second) in Seen(other, otherLeg, free))
                {
                    var path = (first.Path + second.Path) / 2;
                    if (path >= one.PathFrom && path <= one.PathTo
                        && Off(first.DirectionX + second.DirectionX, first.DirectionY + second.DirectionY) <= tolerance) return true;
                }
            }

            return false;
        }

        private IEnumerable<(double Launch, PlaneRays.Hit Hit)> Seen(SightLine line, int leg, int free)
        {
            foreach (var (launch, hit) in rays.Through(line.ExitY, line.Direction, line.Angle, leg, y, z, isRight))
            {
                var off = launch - line.Angle;
                if (Math.Abs(hit.Path * Math.Sin(off)) > line.Width.At(hit.Path * Math.Cos(off)) / 2) continue;
                var isBroken = false;
                for (var bounce = 1; bounce < leg; bounce++)
                {
                    var atInner = (bounce & 1) == 1 != section.IsInside;
                    var metal = atInner ? section.Examination.Weld.Root : section.Examination.Weld.Cap;
                    isBroken |= bounce != free && MirrorGap.Of(metal) is { } gap && hit.Bounces[bounce] > gap.From && hit.Bounces[bounce] < gap.To;
                }

                if (!isBroken) yield return (launch, hit);
            }
        }

        private double Off(double dx, double dy) =>
            Math.Acos(Math.Min(1, Math.Abs((dx * normalX) + (dy * normalY)) / Math.Sqrt((dx * dx) + (dy * dy))));
    }
}
