using System.Globalization;
using System.Numerics;
using System.Text;
using TechLint.Tests.Unit.Ultrasonics;
using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Fields;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Tests.Validation;

/// <summary>One place where the width model is held to a simulated field.</summary>
/// <param name="Beam">Which beam, in words.</param>
/// <param name="At">Distance in N (unfocused) or in F (focused).</param>
/// <param name="Model">mm.</param>
/// <param name="Simulated">Full width about the axis within 6 dB (echo) of the greatest echo at that path, mm; NaN where the axis itself lies below that, and nearer than one aperture to the source or the exit point, where there is no beam yet.</param>
internal sealed record WidthPlace(string Beam, double At, double Model, double Simulated)
{
    public double Ratio => Model / Simulated;

    /// <summary>How many effective apertures the place lies behind the exit point; set through the wedge.</summary>
    public double Apertures { get; init; }
}

/// <summary>
/// The echo -6 dB widths of the model over those of simulated fields: line sources in one medium, summed with their phases (nothing of the product's code), and the product's field
/// through the wedge. The pages' tables are made here.
/// </summary>
internal static class WidthTables
{
    public static readonly double[] InNearFields = [0.5, 1, 1.2, 1.5, 2, 3, 5];
    public static readonly double[] InFoci = [0.5, 0.7, 0.85, 1, 1.2, 1.5, 2];
    public static readonly double[] Foci = [0.3, 0.5, 0.8];

    private const int Sources = 400;
    private const double Degree = Math.PI / 180;
    private static readonly (double Aperture, double Wavelength)[] Strips = [(8, 0.65), (16, 0.65), (10, 1.2), (10, 0.4)];

    public static List<WidthPlace> Unfocused() => [.. Strips.SelectMany(strip => InNearFields.Select(times =>
    {
        var path = times * strip.Aperture * strip.Aperture / (4 * strip.Wavelength);
        return new WidthPlace($"A = {strip.Aperture} mm, λ = {strip.Wavelength} mm", times, new BeamWidth(strip.Aperture, strip.Wavelength, 0).At(path), path >= strip.Aperture ? OfStrip(strip.Aperture, strip.Wavelength, path, 0) : double.NaN);
    }))];

    public static List<WidthPlace> Focused(double focusInNearFields) => [.. Strips.SelectMany(strip => InFoci.Select(times =>
    {
        var focus = focusInNearFields * strip.Aperture * strip.Aperture / (4 * strip.Wavelength);
        return new WidthPlace(
            $"A = {strip.Aperture} mm, λ = {strip.Wavelength} mm", times, new BeamWidth(strip.Aperture, strip.Wavelength, 0, focus).At(times * focus),
            times * focus >= strip.Aperture ? OfStrip(strip.Aperture, strip.Wavelength, times * focus, focus) : double.NaN);
    }))];

    /// <summary>Through the wedge, distances counted as the model counts them: the wedge's equivalent in the part and the path together.</summary>
    /// <param name="focusInNearFields">0 for none.</param>
    public static List<WidthPlace> ThroughWedge(double focusInNearFields)
    {
        var places = new List<WidthPlace>();
        foreach (var (elements, degrees) in new[] { (16, 45.0), (16, 60.0), (32, 45.0), (32, 60.0) })
        {
            var angle = new Angle(degrees);
            var beam = Given.Sector with { Scan = ScanKind.Fixed, Angles = new AngleSweep(angle, angle, new Angle(1)), Aperture = new Aperture(1, elements, elements, 1), Legs = [1] };
            var section = Given.Section(Given.Examination(Given.Pass(new(Given.ArrayProbe()), beam)), 600);
            var plain = LawGeometry.Of(section, section.Pass.Probes[0], beam)[0];
            var aperture = plain.Study.EffectiveAperture.Millimetres;
            var wavelength = Given.Transverse / 5000;
            var nearField = aperture * aperture / (4 * wavelength);
            var lead = plain.Ray.WedgePath * Given.Polystyrene / Given.Transverse * plain.Ray.Squeeze * plain.Ray.Squeeze;
            var focus = (focusInNearFields * nearField) - lead;
            if (focusInNearFields > 0 && !(focus > 0)) continue;
            if (focusInNearFields > 0) beam = beam with { Focus = new Focus(FocusKind.Path, new Length(focus)) };
            var law = LawGeometry.Of(section, section.Pass.Probes[0], beam)[0];
            var (source, reason) = FieldSource.Of(section, section.Pass.Probes[0], beam, [law]);
            if (source is null) throw new InvalidOperationException(reason);
            foreach (var times in focusInNearFields > 0 ? InFoci : InNearFields)
            {
                var path = (times * (focusInNearFields > 0 ? focus + lead : nearField)) - lead;
                places.Add(new WidthPlace(
                    string.Create(CultureInfo.InvariantCulture, $"{elements} elements, {degrees} deg"), times, law.Width.At(path), path >= aperture ? OfField(source, law, path) : double.NaN) { Apertures = path / aperture });
            }
        }

        return places;
    }

    /// <summary>All tables as docs/physics-fields.md has them.</summary>
    public static string Page()
    {
        var text = new StringBuilder();
        text.Append("Line sources in one medium, continuous wave:\n\n").Append(Markdown("N", Unfocused()));
        foreach (var focus in Foci) text.Append(CultureInfo.InvariantCulture, $"\nIn one medium, focused at F = {focus} N:\n\n").Append(Markdown("F", Focused(focus)));
        text.Append("\nThrough the wedge (5 MHz, 70 % bandwidth, elements of 0.5 mm pitch on a 36 deg wedge), unfocused:\n\n").Append(Markdown("N", ThroughWedge(0)));
        foreach (var focus in Foci) text.Append(CultureInfo.InvariantCulture, $"\nThrough the wedge, focused at F = {focus} N:\n\n").Append(Markdown("F", ThroughWedge(focus)));
        return text.ToString();
    }

    public static string Markdown(string distance, IReadOnlyList<WidthPlace> places)
    {
        var columns = places.Select(place => place.At).Distinct().ToArray();
        var text = new StringBuilder();
        text.Append("| Beam |").AppendJoin("|", columns.Select(at => string.Create(CultureInfo.InvariantCulture, $" {at} {distance} "))).Append("|\n");
        text.Append("|---|").AppendJoin("|", columns.Select(_ => "---")).Append("|\n");
        foreach (var row in places.GroupBy(place => place.Beam))
        {
            text.Append("| ").Append(row.Key).Append(" |")
                .AppendJoin("|", row.Select(place => double.IsNaN(place.Ratio) ? " - " : string.Create(CultureInfo.InvariantCulture, $" {place.Ratio:0.00} "))).Append("|\n");
        }

        return text.ToString();
    }

    /// <summary>Echo amplitudes on a circle about the exit point.</summary>
    private static double OfField(FieldSource source, Law law, double path)
    {
        var field = source.LawOf(law);
        var sum = new FieldSum(source);
        return Width(path, off =>
        {
            var turned = law.Ray.PartAngle + off;
            if (turned >= Math.PI / 2 || !sum.TryMove(law.Ray.ExitArc + (path * Math.Sin(turned)), path * Math.Cos(turned), 1)) return 0;
            return sum.Of(field).Echo;
        });
    }

    /// <summary>A strip of line sources in one medium, focused by delays; the echo is the square of the pressure.</summary>
    private static double OfStrip(double aperture, double wavelength, double path, double focus) => Width(path, angle =>
    {
        var (x, z) = (path * Math.Sin(angle), path * Math.Cos(angle));
        var sum = Complex.Zero;
        for (var index = 0; index < Sources; index++)
        {
            var place = aperture * (((index + 0.5) / Sources) - 0.5);
            var distance = Math.Sqrt(((x - place) * (x - place)) + (z * z));
            var delay = focus > 0 ? Math.Sqrt((focus * focus) + (place * place)) - focus : 0;
            sum += Complex.FromPolarCoordinates(1 / Math.Sqrt(distance), 2 * Math.PI * (distance - delay) / wavelength);
        }

        return sum.Magnitude * sum.Magnitude;
    });

    /// <summary>From the axis out to where the echo first falls to half the greatest on the circle, both ways, across the axis.</summary>
    private static double Width(double path, Func<double, double> echo)
    {
        const double step = 0.1 * Degree;
        const int steps = 450;
        var half = Enumerable.Range(-steps, (2 * steps) + 1).Max(index => echo(index * step)) / 2;
        return echo(0) < half ? double.NaN : path * (Math.Tan(Edge(1)) + Math.Tan(Edge(-1)));

        double Edge(int sign)
        {
            var index = 1;
            while (index < steps && echo(sign * index * step) >= half) index++;
            var (inside, outside) = ((index - 1) * step, index * step);
            for (var halving = 0; halving < 30; halving++)
            {
                var middle = (inside + outside) / 2;
                if (echo(sign * middle) >= half) inside = middle;
                else outside = middle;
            }

            return inside;
        }
    }
}
