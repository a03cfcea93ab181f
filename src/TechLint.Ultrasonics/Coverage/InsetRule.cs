using TechLint.Ultrasonics.Examinations;

namespace TechLint.Ultrasonics.Coverage;

/// <summary>
/// What of a search may be settled by drawing the stretches of a side in or out instead of moving its probes (see <see cref="CoverageInput.LeftInset"/>). A probe that
/// moves by e takes its stretches along, and its bounces; what reinforcement may cut off on the way is what it cuts when it is e wider at either side, what it may
/// let through what it does when e narrower.
/// </summary>
/// <param name="MovesAsOne">All sound of a side keeps its shape when the side's probes err: whole though drawn in means whole at every error.</param>
internal readonly record struct InsetRule(bool MovesAsOne)
{
    public static readonly InsetRule None = new(false);

    /// <summary>Some of the probes that a search moves see from the left; a side that does not move needs not be let out.</summary>
    public bool MovesLeft { get; init; } = true;

    public bool MovesRight { get; init; } = true;

    /// <summary>Incomplete though let out means incomplete for every lesser move: only sound moves, no diffraction pair with it.</summary>
    public bool CanRuleOut { get; init; }

    /// <summary>The section as the least that every error up to the tolerance leaves of it; pairs and images, which see otherwise at each, do not count.</summary>
    public static CoverageInput DrawnIn(CoverageInput input, double tolerance)
    {
        if (!(tolerance > 0)) return input;
        var step = OnOuter(input, tolerance);
        return input with
        {
            LeftInset = step, RightInset = step, Cap = Widened(input.Cap, step), Root = Widened(input.Root, step),
            Passes = [.. input.Passes.Select(pass => pass with { Pairs = [], PairsWhenAsked = null, Images = [] })],
        };
    }

    /// <summary>The section as the most that moves up to this reach can make of it.</summary>
    public CoverageInput LetOut(CoverageInput input, double reach)
    {
        var step = OnOuter(input, reach);
        return input with
        {
            LeftInset = MovesLeft ? -step : 0, RightInset = MovesRight ? -step : 0, Cap = Widened(input.Cap, -step), Root = Widened(input.Root, -step),
        };
    }

    /// <summary>A move on the inner surface of a pipe counts by the ratio of the radii on the outer one.</summary>
    private static double OnOuter(CoverageInput input, double move) =>
        input.OutsideDiameter is { } diameter && input.Passes.Any(pass => pass.ScanningSurface == Surface.Inside)
            ? move * diameter / (diameter - (2 * input.Thickness))
            : move;

    private static MirrorGap? Widened(MirrorGap? gap, double step) =>
        gap is { } known && known.To - known.From > -2 * step ? new MirrorGap(known.From - step, known.To + step) : null;
}
