using System.Collections.Immutable;
using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Acquiring;
using TechLint.Ultrasonics.Coverage;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;

namespace TechLint.Ultrasonics.Fields;

/// <summary>
/// The pulse-echo amplitude of one beam over the section, dB below its greatest value: see <see cref="FieldSum"/> for what is added up. The greatest over the
/// beam's allowed legs (and, without <paramref name="Law"/>, over its laws); windows and reinforcement are not looked at.
/// </summary>
/// <param name="Beam">The beam's id.</param>
/// <param name="Law">The law's angle in the part; null for the greatest over all laws.</param>
/// <param name="Y">Columns, across the weld along the outer surface.</param>
/// <param name="Z">Rows, below the outer surface.</param>
/// <param name="Levels">Row by row.</param>
/// <param name="NotComputed">Why there is no map, or null.</param>
public sealed record FieldMap(
    string Beam, Angle? Law, ImmutableArray<Length> Y, ImmutableArray<Length> Z, ImmutableArray<Level> Levels, string? NotComputed)
{
    private const int Columns = 200;
    private const int Rows = 100;

    /// <summary>Two angles that a technique tells apart differ by more, deg.</summary>
    private const double SameAngle = 0.01;

    internal static FieldMap None(string beam, string reason) => new(beam, null, [], [], [], reason);

    /// <param name="section">The pass at one case.</param>
    /// <param name="beamId">The beam.</param>
    /// <param name="choice">Which law.</param>
    internal static FieldMap Of(PassSection section, string beamId, LawChoice choice)
    {
        if (section.Pass.Beams.FirstOrDefault(one => string.Equals(one.Id, beamId, StringComparison.Ordinal)) is not { } beam) return None(beamId, "there is no such beam");
        if (Pulses.ProbeAt(section.Pass, beam.From) is not { } probe) return None(beamId, "the beam has no probe that sends and receives");
        var laws = LawGeometry.Of(section, probe, beam);
        var (source, reason) = FieldSource.Of(section, probe, beam, laws);
        if (source is null) return None(beamId, reason ?? "");
        ImmutableArray<Law> sound = [.. laws.Where(law => law.Sight is not null)];
        ImmutableArray<Law> asked = choice.All ? sound
            : choice.Angle is { } angle ? [.. sound.Where(law => Math.Abs(law.Study.Angle.Degrees - angle.Degrees) < SameAngle)]
            : [sound[sound.Length / 2]];
        if (asked.IsEmpty) return None(beamId, "the beam has no law of this angle");

        var curved = section.Rays.IsCurved ? section.OutsideDiameter : null;
        var frame = new PassFrame(section.Thickness, curved, section.Pass.ScanningSurface);
        var volume = VolumeRectangle.Of(section.Examination.Weld, section.Examination.Volume, section.Thickness, curved, section.IsInside);
        var exits = asked.Select(law => law.Sight!.ExitY * frame.ToOuter).ToArray();
        var (fromY, toY) = (Math.Min(volume.FromY, exits.Min()), Math.Max(volume.ToY, exits.Max()));
        ImmutableArray<Length> y = [.. Enumerable.Range(0, Columns).Select(column => new Length(fromY + ((toY - fromY) * (column + 0.5) / Columns)))];
        ImmutableArray<Length> z = [.. Enumerable.Range(0, Rows).Select(row => new Length(section.Thickness * (row + 0.5) / Rows))];

        FieldLaw[] fields = [.. asked.Select(source.LawOf)];
        var sum = new FieldSum(source);
        var echoes = new double[Rows * Columns];
        for (var leg = 1; leg <= LastLeg(asked[0]); leg++)
        {
            if (!asked[0].Sight!.Allows(leg)) continue;
            for (var row = 0; row < Rows; row++)
            {
                sum.Forget();
                for (var column = 0; column < Columns; column++)
                {
                    if (!sum.TryMove(source.Forward(y[column].Millimetres / frame.ToOuter), frame.DepthAt(z[row].Millimetres), leg)) continue;
                    ref var echo = ref echoes[(row * Columns) + column];
                    foreach (var field in fields) echo = Math.Max(echo, sum.Of(field).Echo);
                }
            }
        }

        var greatest = echoes.Max();
        return !(greatest > 0)
            ? None(beamId, "no sound of this beam reaches the section")
            : new FieldMap(beamId, choice.All ? null : asked[0].Study.Angle, y, z, [.. echoes.Select(echo => FieldSum.Decibels(echo, greatest))], null);
    }

    internal static int LastLeg(Law law) => 32 - System.Numerics.BitOperations.LeadingZeroCount((uint)law.Sight!.LegMask);
}

/// <summary>Which law of a beam: one angle, all of them, or (neither) the one in the middle.</summary>
/// <param name="Angle">In the part.</param>
/// <param name="All">The greatest over all laws.</param>
public readonly record struct LawChoice(Angle? Angle, bool All);
