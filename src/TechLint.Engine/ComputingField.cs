using TechLint.Model.Documents;
using TechLint.Model.Shape;
using TechLint.Ultrasonics.Fields;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Engine;

/// <param name="Beam">The beam's id, or SETUP/BEAM where several setups have one of that id.</param>
/// <param name="Law">Which of its laws.</param>
/// <param name="Thickness">The wall; null for the thinnest that the setup serves.</param>
/// <param name="OutsideDiameter">Null for the least that the setup serves.</param>
public sealed record FieldRequest(string Beam, LawChoice Law, Length? Thickness, Length? OutsideDiameter);

/// <summary>The field of one beam at one case.</summary>
/// <param name="Setup">The setup's id.</param>
/// <param name="Thickness">The wall.</param>
/// <param name="OutsideDiameter">Null for a flat part.</param>
/// <param name="Map">The map, or why there is none.</param>
public sealed record ComputedField(string Setup, Length Thickness, Length? OutsideDiameter, FieldMap Map);

/// <summary>Finds the beam that a field is asked of.</summary>
public static class ComputingField
{
    /// <summary>Null where the file holds no technique that can be read that far.</summary>
    public static ComputedField? Of(Snapshot snapshot, string path, FieldRequest request)
    {
        if (snapshot.TreeOf(path) is not { } tree || FormatKinds.Of(path) != FormatKind.Technique || tree.Root is null) return null;
        var computed = Computing.Setups(snapshot, path, request.Thickness, request.OutsideDiameter);
        if (computed is null) return null;
        var parts = request.Beam.Split('/', 2);
        var (setupAsked, beam) = parts.Length == 2 ? (parts[0], parts[1]) : (null, parts[0]);
        var found = computed.Setups
            .Where(setup => setup.Cases.Length > 0 && (setupAsked is null || string.Equals(setup.Id, setupAsked, StringComparison.Ordinal)))
            .Where(setup => setup.Cases[0].Passes.Any(pass =>
                string.Equals(pass.Pass.Id, setup.Id, StringComparison.Ordinal) && pass.Beams.Any(one => string.Equals(one.Beam.Id, beam, StringComparison.Ordinal))))
            .ToArray();
        if (found.Length != 1)
        {
            var reason = found.Length == 0 ? "there is no such beam here" : $"several setups have such a beam: name one as {found[0].Id}/{beam}";
            return new ComputedField("", new Length(double.NaN), null, new FieldMap(request.Beam, null, [], [], [], reason));
        }

        var place = found[0].Cases.OrderBy(one => one.Thickness.Millimetres).ThenBy(one => one.OutsideDiameter?.Millimetres ?? double.PositiveInfinity).First();
        var linked = TechniqueLinker.Link(BoundDocument.Of(tree), snapshot);
        foreach (var link in linked.Examinations)
        {
            if (link.Examination is not { } examination || !link.Setups.Any(setup => string.Equals(setup.Name, found[0].Id, StringComparison.Ordinal))) continue;
            if (!examination.Passes.Any(pass => string.Equals(pass.Id, found[0].Id, StringComparison.Ordinal))) continue;
            var map = snapshot.StudyOf(examination).FieldOf(found[0].Id, beam, place.Thickness, place.OutsideDiameter, request.Law);
            return new ComputedField(found[0].Id, place.Thickness, place.OutsideDiameter, map);
        }

        return null;
    }
}
