namespace TechLint.Ultrasonics.Beams;

/// <summary>
/// A sound law as coverage needs it, in the pass's own frame and projected into the section: mm and rad.
/// Only laws without a fault become sight lines; reinforcement that ends a leg is the reader's to look for.
/// </summary>
/// <param name="ExitY">Where it enters the part, from the weld centreline along the scanning surface; left is negative.</param>
/// <param name="Direction">+1 where the beam points to +y (probe on the left), −1 to −y.</param>
/// <param name="Angle">From the local normal, in the section (a skewed beam's projection), never negative.</param>
/// <param name="Width">Full pulse-echo -6 dB width at a path along the section.</param>
/// <param name="LegMask">Bit k−1 set where leg k may see.</param>
/// <param name="PathFrom">Recorded window, as a path along the section from the exit point.</param>
/// <param name="PathTo">Its end; positive infinity where none is stated.</param>
internal sealed record SightLine(
    double ExitY, int Direction, double Angle, BeamWidth Width, int LegMask, double PathFrom, double PathTo)
{
    /// <summary>Over a step between misaligned edges: the leg in which it crosses the step; 0 where there is none (see <c>Misalignment</c>).</summary>
    public int StepLeg { get; init; }

    /// <summary>Over a step: where it truly enters the part. <see cref="ExitY"/> is then where it would for the section beyond the step.</summary>
    public double StartY { get; init; }

    /// <summary>Over a step on a curved section: how much flatter it truly enters than <see cref="Angle"/>, which is the virtual exit point's; rad.</summary>
    public double StartTurn { get; init; }

    public bool Allows(int leg) => (LegMask & (1 << (leg - 1))) != 0;

    /// <summary>From where a bounce counts: those before a step lie on the near side's surfaces.</summary>
    public double ExitOfBounce(int bounce) => bounce < StepLeg ? StartY : ExitY;

    /// <summary>What is added to a launch from <see cref="ExitY"/> for the launch that makes a bounce, rad.</summary>
    public double TurnOfBounce(int bounce) => bounce < StepLeg ? StartTurn : 0;
}
