using System.Collections.Immutable;
using TechLint.Ultrasonics.Acquiring;
using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Coverage;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Ultrasonics.Fields;

/// <summary>
/// The share of the examined rectangle where a beam is loud enough. A place P counts where for some sound beam, some law l of it and some allowed leg, by an unbroken path inside the
/// recorded window: <c>E_l(P) ≥ max(O(s), B(s)) − N dB</c>. E is the simulated echo of a small reflector at P (<see cref="FieldSum"/>), s the sound path from the exit point of l's
/// middle element to P. O(s) is the measure of the beam's own laws: the greatest echo of the same reflector on an axis at the same path s in the part, over l itself and all laws
/// whose axis at s lies in an allowed leg and inside the window, so that a steep law that hardly leaves the wedge does not count as seeing beside one that does. B(s) is the measure of the
/// wedge: the same on the axis of the loudest law to which the beam's middle aperture can be steered through that wedge (<see cref="BestSteering"/>), asked for or not, so that a beam does not
/// count as seeing because it is alone. A single element cannot be steered: its own axis is both. Diffraction pairs play no part.
/// </summary>
/// <remarks>
/// Places are the middles of cells of at most <see cref="CellStep"/> (coarser beyond <see cref="MostCells"/> cells); the share errs by about half the cells on its border. The
/// probes stand at their stated places. An instrument that corrects gain angle by angle may set a quiet law as high as a loud one; its noise rises with it.
/// </remarks>
/// <param name="Within">Of the rectangle, within N dB of both measures; NaN where not computed.</param>
/// <param name="WithinOwnLaws">Of the rectangle, within N dB of the measure of the beam's own laws alone.</param>
/// <param name="Drop">N, as a negative level.</param>
/// <param name="NotComputed">Why there is no figure, or null.</param>
public sealed record FieldCoverage(Share Within, Share WithinOwnLaws, Level Drop, string? NotComputed)
{
    /// <summary>mm.</summary>
    internal const double CellStep = 0.5;
    internal const int MostCells = 20_000;

    /// <summary>
    /// Places on an axis lie this far apart (mm) up to <see cref="EvenTo"/> steps, then <see cref="AxisGrowth"/> of their path; the level between them is read by a straight line.
    /// </summary>
    private const double AxisStep = 1;
    private const int EvenTo = 50;
    private const double AxisGrowth = 1.03;

    internal static FieldCoverage Of(Examination examination, Length thickness, Length? outsideDiameter)
    {
        var drop = examination.SensitivityDrop;
        var passes = new List<(PassSection Section, PassFrame Frame, ImmutableArray<BeamField> Beams)>();
        double? curved = null;
        foreach (var pass in examination.Passes)
        {
            if (PassSection.Of(examination, pass, thickness, outsideDiameter) is not { } section) return None(drop, PassWork.ImpossibleWall);
            if (section.Rays.IsCurved) curved = section.OutsideDiameter;
            var (beams, reason) = BeamField.AllOf(section);
            if (reason is not null) return None(drop, reason);
            passes.Add((section, new PassFrame(section.Thickness, section.Rays.IsCurved ? section.OutsideDiameter : null, pass.ScanningSurface), beams));
        }

        if (passes.All(pass => pass.Beams.IsEmpty)) return None(drop, "there is no sound beam");
        var fromInside = examination.Passes.All(pass => pass.ScanningSurface == Surface.Inside);
        var volume = VolumeRectangle.Of(examination.Weld, examination.Volume, thickness.Millimetres, curved, fromInside);
        var (width, height) = (volume.ToY - volume.FromY, volume.ToZ - volume.FromZ);
        if (!(width > 0) || !(height > 0)) return None(drop, "the examined volume has no size");
        var step = Math.Max(CellStep, Math.Sqrt(width * height / MostCells));
        var (columns, rows) = ((int)Math.Ceiling(width / step), (int)Math.Ceiling(height / step));
        var weighed = 0.0;
        var (within, withinOwn) = (0.0, 0.0);
        for (var row = 0; row < rows; row++)
        {
            var z = volume.FromZ + (height * (row + 0.5) / rows);
            foreach (var (_, _, beams) in passes)
            {
                foreach (var beam in beams) beam.Forget();
            }

            for (var column = 0; column < columns; column++)
            {
                var y = volume.FromY + (width * (column + 0.5) / columns);
                weighed++;
                var best = Sight.None;
                foreach (var (_, frame, beams) in passes)
                {
                    foreach (var beam in beams)
                    {
                        if (best != Sight.Full) best = (Sight)Math.Max((int)best, (int)beam.SightOf(y / frame.ToOuter, frame.DepthAt(z), drop.Decibels));
                    }
                }

                if (best == Sight.Full) within++;
                if (best != Sight.None) withinOwn++;
            }
        }

        return new FieldCoverage(new Share(100 * within / weighed), new Share(100 * withinOwn / weighed), drop, null);
    }

    private static FieldCoverage None(Level drop, string reason) => new(new Share(double.NaN), new Share(double.NaN), drop, reason);

    /// <summary>How a place is met.</summary>
    internal enum Sight
    {
        None,

        /// <summary>Loud enough beside the beam's own laws, not beside what the wedge can do.</summary>
        OwnLaws,

        /// <summary>Beside both.</summary>
        Full,
    }

    /// <summary>One beam: its laws' fields, and how loud the loudest axis is at each path.</summary>
    internal sealed class BeamField
    {
        private readonly FieldSum sum;
        private readonly ImmutableArray<FieldLaw> laws;
        private readonly double[] loudest;
        private readonly double[][] axes;
        private readonly double[] ofWedge;

        /// <summary>The law that met the last place: the first to be asked at the next one, which spares asking most of the others.</summary>
        private int lastLaw;

        private BeamField(FieldSource source, ImmutableArray<FieldLaw> laws, IEnumerable<FieldLaw> steered, double greatestPath)
        {
            (sum, this.laws) = (new FieldSum(source), laws);
            var steps = (int)Math.Ceiling(PlaceOf(greatestPath)) + 2;
            loudest = new double[steps];
            loudest.AsSpan().Fill(FieldSum.Silence);
            ofWedge = new double[steps];
            ofWedge.AsSpan().Fill(FieldSum.Silence);
            foreach (var law in steered)
            {
                sum.Forget();
                for (var step = 0; step < steps; step++) ofWedge[step] = Math.Max(ofWedge[step], AxisLevel(law, PathOf(step)).Level);
            }

            axes = [.. laws.Select(_ => new double[steps])];
            for (var index = 0; index < axes.Length; index++)
            {
                sum.Forget();
                for (var step = 0; step < steps; step++)
                {
                    var (level, isSeen) = AxisLevel(laws[index], PathOf(step));
                    axes[index][step] = level;
                    if (isSeen) loudest[step] = Math.Max(loudest[step], level);
                }
            }
        }

        public static (ImmutableArray<BeamField> Beams, string? Reason) AllOf(PassSection section)
        {
            var fields = ImmutableArray.CreateBuilder<BeamField>();
            foreach (var beam in section.Pass.Beams)
            {
                if (beam.Scan is not (ScanKind.Sectorial or ScanKind.Linear or ScanKind.Fixed) || Pulses.ProbeAt(section.Pass, beam.From) is not { } probe) continue;
                var all = LawGeometry.Of(section, probe, beam);
                if (!all.Any(law => law.Sight is not null)) continue;
                var (source, reason) = FieldSource.Of(section, probe, beam, all);
                if (source is null) return ([], $"{beam.Id}: {reason}");
                ImmutableArray<Law> sound = [.. all.Where(law => law.Sight is not null)];
                var steered = BestSteering.Laws(section, probe, beam, sound).Select(source.LawOf);
                fields.Add(new BeamField(source, [.. sound.Select(source.LawOf)], steered, sound.Max(law => GreatestPath(section, law))));
            }

            return (fields.ToImmutable(), null);
        }

        public void Forget() => sum.Forget();

        /// <summary>How a place in the pass frame is met.</summary>
        public Sight SightOf(double y, double depth, double drop)
        {
            var mask = laws[0].Law.Sight!.LegMask;
            var best = Sight.None;
            for (var leg = 1; mask >> (leg - 1) != 0; leg++)
            {
                if ((mask & (1 << (leg - 1))) == 0 || !sum.TryMove(sum.Source.Forward(y), depth, leg)) continue;
                var start = lastLaw;
                for (var step = 0; step < laws.Length; step++)
                {
                    var index = (start + step) % laws.Length;
                    var law = laws[index];
                    ref readonly var middle = ref sum.Term(law.Middle);
                    if (!(middle.PartPath > 0) || !InWindow(law.Law.Sight!, middle)) continue;
                    var level = Decibels(sum.Of(law).Echo) - drop;
                    if (level < OwnMeasure(index, middle.PartPath) || !sum.Source.IsUnbroken(middle, leg)) continue;
                    best = Sight.OwnLaws;
                    if (level < WedgeMeasure(middle.PartPath)) continue;
                    lastLaw = index;
                    return Sight.Full;
                }
            }

            return best;
        }

        /// <summary>O of a law at a path, dB on the field's own scale: the loudest axis that may see there, and never less than its own.</summary>
        public double OwnMeasure(int law, double path) => Math.Max(Between(loudest, path), Between(axes[law], path));

        /// <summary>B at a path, same scale; silence where nothing can be steered.</summary>
        public double WedgeMeasure(double path) => Between(ofWedge, path);

        /// <summary>The path of a step; the exit point itself is no place of a field.</summary>
        private static double PathOf(int step) => step == 0 ? AxisStep / 2 : AxisStep * (step <= EvenTo ? step : EvenTo * Math.Pow(AxisGrowth, step - EvenTo));

        private static double PlaceOf(double path)
        {
            var even = path / AxisStep;
            return even <= EvenTo ? even : EvenTo + (Math.Log(even / EvenTo) / Math.Log(AxisGrowth));
        }

        private static double Between(double[] levels, double path)
        {
            var place = Math.Clamp(PlaceOf(path), 0, levels.Length - 1);
            var index = Math.Min((int)place, levels.Length - 2);
            return levels[index] + ((place - index) * (levels[index + 1] - levels[index]));
        }

        /// <summary>The echo on a law's own axis at a path, same scale.</summary>
        public double Axis(int law, double path)
        {
            sum.Forget();
            return AxisLevel(laws[law], path).Level;
        }

        // The window is kept as a path of the section's projection.
        private bool InWindow(SightLine sight, in FieldSource.Term middle)
        {
            var path = middle.PartPath * Math.Sqrt(1 - Math.Pow(middle.PartSine * Math.Sin(sum.Source.BeamSkew), 2));
            return path >= sight.PathFrom && path <= sight.PathTo;
        }

        private (double Level, bool IsSeen) AxisLevel(FieldLaw law, double path)
        {
            if (sum.Source.PlaceOn(law.Law, path) is not { } place || !sum.TryMove(place.Forward, place.Depth, place.Leg)) return (FieldSum.Silence, false);
            return (Decibels(sum.Of(law).Echo), law.Law.Sight!.Allows(place.Leg) && InWindow(law.Law.Sight, sum.Term(law.Middle)));
        }

        private static double Decibels(double amplitude) => FieldSum.Decibels(amplitude, 1).Decibels;

        private static double GreatestPath(PassSection section, Law law) =>
            section.Rays.TryReach(Math.Abs(law.Ray.PartAngle), (FieldMap.LastLeg(law) & 1) == 1 ? section.Thickness : 0, FieldMap.LastLeg(law), out _, out var path)
                ? Math.Min(path, law.Sight!.PathTo is var end && double.IsFinite(end) ? end * LongestProjection : path)
                : 0;

        /// <summary>A window of a skewed beam is a path of the projection, which is shorter.</summary>
        private const double LongestProjection = 2;
    }
}
