namespace TechLint.Tests.Tools.Waves;

/// <summary>
/// A layered strip: columns along the upper surface (step <c>Step</c> in mm of its arc), rows downwards. With a radius it is a piece of a ring whose
/// upper surface is the outside, and the grid is polar, so that both surfaces lie on grid lines.
/// </summary>
/// <param name="Columns">Nodes along the surface.</param>
/// <param name="Rows">Layers of normal stress, half a step below the rows of vertical velocity.</param>
/// <param name="Step">Spacing in both directions (along the arc at the outside).</param>
/// <param name="FromArc">Arc of column 0.</param>
/// <param name="FromDepth">Depth of row 0.</param>
/// <param name="Radius">Outside radius; 0 for a plate.</param>
/// <param name="Upper">The solid above depth 0 (a wedge); null where the strip starts there.</param>
/// <param name="Lower">The solid below depth 0.</param>
/// <param name="Sponge">Nodes of absorbing edge: both ends; top and bottom too where <c>SpongeAllRound</c>.</param>
/// <param name="SpongeAllRound">No free surface above and below.</param>
internal sealed record WaveGrid(
    int Columns, int Rows, double Step, double FromArc, double FromDepth, double Radius, Solid? Upper, Solid Lower, int Sponge, bool SpongeAllRound)
{
    /// <summary>Greatest part of the stability limit that a time step takes.</summary>
    private const double Courant = 0.9;

    /// <summary>Sum of the coefficients 9/8 and 1/24 of the difference of fourth order.</summary>
    private const double FourthOrderSum = 7.0 / 6;

    /// <summary>Row of vertical velocity and shear stress on which the two solids touch; -1 without an upper one.</summary>
    public int Interface => Upper is null ? -1 : (int)Math.Round(-FromDepth / Step);

    public double TimeStep
    {
        get
        {
            var fastest = Math.Max(Upper?.Longitudinal ?? 0, Lower.Longitudinal);
            var squeeze = Stretch(Rows);
            return Courant / (fastest * FourthOrderSum * Math.Sqrt(1 + (squeeze * squeeze)) / Step);
        }
    }

    /// <summary>Arc at the outside over arc at this row (row may be a half).</summary>
    public double Stretch(double row) => Radius > 0 ? Radius / (Radius - (row * Step)) : 1;

    /// <summary>1/r at this row; 0 in a plate.</summary>
    public double Curvature(double row) => Radius > 0 ? 1 / (Radius - (row * Step)) : 0;

    public Solid At(double row) => Upper is { } upper && row < Interface ? upper : Lower;
}
