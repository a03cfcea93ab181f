namespace TechLint.Ultrasonics.Examinations;

/// <summary>
/// The way of sound that an image supposes: one wave a leg, from the array to the point and back again. Written with letters in the order of travel,
/// <c>TT-T</c>: transverse down, transverse up from the opposite surface to the point, and transverse straight back. Between two legs of one way the
/// sound is mirrored at a surface; where their waves differ it is converted there.
/// </summary>
/// <param name="Transmit">Waves from the array to the point, in order of travel; at least one.</param>
/// <param name="Receive">Waves from the point to the array, in order of travel; at least one.</param>
public sealed record ImagingPath(EquatableArray<Wave> Transmit, EquatableArray<Wave> Receive)
{
    /// <summary>More mirrors than two lose too much sound to make an image; the schema says the same.</summary>
    public const int MostLegs = 3;

    private const char Between = '-';

    /// <summary>Null where the text is no imaging path: L or T, one to three times, a hyphen, and again.</summary>
    public static ImagingPath? TryParse(string text)
    {
        var halves = text.Split(Between);
        return halves.Length == 2 && Waves(halves[0]) is { } transmit && Waves(halves[1]) is { } receive ? new ImagingPath(transmit, receive) : null;
    }

    public override string ToString() => $"{Letters(Transmit)}{Between}{Letters(Receive)}";

    private static EquatableArray<Wave>? Waves(string letters) =>
        letters.Length is >= 1 and <= MostLegs && letters.All(letter => letter is 'L' or 'T')
            ? [.. letters.Select(letter => letter == 'L' ? Wave.Longitudinal : Wave.Transverse)]
            : null;

    private static string Letters(EquatableArray<Wave> waves) => string.Concat(waves.Select(wave => wave == Wave.Longitudinal ? 'L' : 'T'));
}
