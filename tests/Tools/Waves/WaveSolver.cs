using System.Numerics;

namespace TechLint.Tests.Tools.Waves;

/// <summary>
/// Plane-strain (P-SV) elastic waves by velocity and stress on a staggered grid (Virieux, Geophysics 51 (1986) 889), fourth order in space
/// (Levander, Geophysics 53 (1988) 1425; second order within a step of a surface), second order in time, single precision. With z downwards, s along the
/// arc of the outside, g = R/r, c = 1/r (plate: 1 and 0), τ = σ_zs:
/// <code>
/// ρ ∂t vz  = ∂z σzz + g ∂s τ − c (σzz − σss)       ∂t σzz = (λ+2μ) ∂z vz + λ (g ∂s vs − c vz)
/// ρ ∂t vs  = ∂z τ + g ∂s σss − 2 c τ               ∂t σss = λ ∂z vz + (λ+2μ) (g ∂s vs − c vz)
///                                                  ∂t τ   = μ (g ∂s vz + ∂z vs + c vs)
/// </code>
/// Free surfaces: σzz mirrored with its sign turned about what is imposed there (0 or a traction), τ as imposed. A slipping interface (thin couplant
/// between two solids): τ = 0 on its row, vz continuous with the mean density, vs free to jump. Edges: Cerjan's sponge (Geophysics 50 (1985) 705).
/// </summary>
internal sealed class WaveSolver
{
    private const float Near = 9f / 8;
    private const float Far = -1f / 24;

    /// <summary>Strength of the sponge at its outer edge, per step.</summary>
    private const double SpongeStrength = 0.045;

    private const int Margin = 2;

    private readonly WaveGrid grid;
    private readonly int stride;
    private readonly int workers;
    private readonly float[] alongVelocity;
    private readonly float[] downVelocity;
    private readonly float[] alongStress;
    private readonly float[] downStress;
    private readonly float[] shear;
    private readonly float[] columnDamping;

    public WaveSolver(WaveGrid grid, int workers)
    {
        this.grid = grid;
        this.workers = workers;
        var lanes = Vector<float>.Count;
        stride = (((grid.Columns + lanes - 1) / lanes) + 1) * lanes;
        var size = (grid.Rows + 1) * stride;
        (alongVelocity, downVelocity, alongStress, downStress, shear) = (new float[size], new float[size], new float[size], new float[size], new float[size]);
        columnDamping = new float[stride];
        for (var column = 0; column < stride; column++) columnDamping[column] = (float)Damping(Math.Min(column, grid.Columns - 1 - column));
        UpperTraction = new float[stride];
        UpperShear = new float[stride];
    }

    /// <summary>σzz imposed on the upper surface, at whole columns.</summary>
    public float[] UpperTraction { get; }

    /// <summary>τ imposed on the upper surface, at columns and a half.</summary>
    public float[] UpperShear { get; }

    /// <summary>vz of the upper surface, at whole columns.</summary>
    public ReadOnlySpan<float> UpperVelocity => downVelocity.AsSpan(0, grid.Columns);

    public void Step()
    {
        Over(grid.Rows + 1, row =>
        {
            if (row < grid.Rows) StepAlongVelocity(row);
            StepDownVelocity(row);
        });
        Over(grid.Rows + 1, row =>
        {
            if (row < grid.Rows) StepNormalStresses(row);
            StepShear(row);
        });
    }

    /// <summary>Adds to both normal stresses about a place (an explosive line source), spread over its four nodes.</summary>
    public void Explode(double arc, double depth, double amount)
    {
        var (x, z) = ((arc - grid.FromArc) / grid.Step, ((depth - grid.FromDepth) / grid.Step) - 0.5);
        var (column, row) = ((int)Math.Floor(x), (int)Math.Floor(z));
        var (right, down) = (x - column, z - row);
        Add(row, column, (1 - right) * (1 - down) * amount);
        Add(row, column + 1, right * (1 - down) * amount);
        Add(row + 1, column, (1 - right) * down * amount);
        Add(row + 1, column + 1, right * down * amount);
    }

    /// <summary>Adds the square of the rotation (transverse waves alone have one) to a map of rows × columns, at columns and a half.</summary>
    public void AddRotation(double[][] map) => Over(grid.Rows, row =>
    {
        if (row < 1) return;
        var (stretch, curvature) = (grid.Stretch(row), grid.Curvature(row));
        var (here, above) = (row * stride, (row - 1) * stride);
        for (var column = Margin; column < grid.Columns - Margin; column++)
        {
            var turn = (stretch * (downVelocity[here + column + 1] - downVelocity[here + column]))
                - (alongVelocity[here + column] - alongVelocity[above + column])
                + (0.5 * curvature * grid.Step * (alongVelocity[here + column] + alongVelocity[above + column]));
            map[row][column] += turn * turn;
        }
    });

    private void Add(int row, int column, double amount)
    {
        alongStress[(row * stride) + column] += (float)amount;
        downStress[(row * stride) + column] += (float)amount;
    }

    private void Over(int rows, Action<int> work)
    {
        // Rows are independent: the split changes nothing in the figures.
        Parallel.For(0, workers, new ParallelOptions { MaxDegreeOfParallelism = workers }, worker =>
        {
            for (var row = rows * worker / workers; row < rows * (worker + 1) / workers; row++) work(row);
        });
    }

    private double Damping(double fromEdge) =>
        fromEdge >= grid.Sponge ? 1 : Math.Exp(-SpongeStrength * Math.Pow((grid.Sponge - fromEdge) / grid.Sponge, 2));

    private float RowDamping(double row) => grid.SpongeAllRound ? (float)Damping(Math.Min(row, grid.Rows - row)) : 1;

    /// <summary>Differences of fourth order reach over two rows: not within one of a surface or an interface.</summary>
    private (float Near, float Far) Order(double row)
    {
        var reach = Math.Min(row, grid.Rows - row);
        if (grid.Interface >= 0) reach = Math.Min(reach, Math.Abs(row - grid.Interface));
        return reach < 1.75 ? (1, 0) : (Near, Far);
    }

    private void StepAlongVelocity(int row)
    {
        var (near, far) = Order(row + 0.5);
        var factor = (float)(grid.TimeStep / (grid.At(row + 0.5).Density * grid.Step));
        var stretch = (float)grid.Stretch(row + 0.5);
        var curve = (float)(grid.Curvature(row + 0.5) * grid.Step);
        var (near2, far2, rowDamping) = (Near * stretch, Far * stretch, RowDamping(row + 0.5));
        var own = row * stride;
        var (above, below) = (own, own + stride);
        var (above2, below2) = (far == 0 ? above : above - stride, far == 0 ? below : below + stride);
        for (var at = Margin; at < grid.Columns - Margin; at += Vector<float>.Count)
        {
            var (upper, lower) = (V(shear, above + at), V(shear, below + at));
            var change = (near * (lower - upper)) + (far * (V(shear, below2 + at) - V(shear, above2 + at)))
                + (near2 * (V(alongStress, own + at + 1) - V(alongStress, own + at))) + (far2 * (V(alongStress, own + at + 2) - V(alongStress, own + at - 1)))
                - (curve * (upper + lower));
            Keep(alongVelocity, own, at, (V(alongVelocity, own + at) + (factor * change)) * V(columnDamping, at) * rowDamping);
        }
    }

    private void StepDownVelocity(int row)
    {
        var own = row * stride;
        var density = row == grid.Interface ? (grid.At(row - 0.5).Density + grid.At(row + 0.5).Density) / 2 : grid.At(row).Density;
        var factor = (float)(grid.TimeStep / (density * grid.Step));
        var stretch = (float)grid.Stretch(row);
        var (near2, far2, rowDamping) = (Near * stretch, Far * stretch, RowDamping(row));
        var curve = (float)(grid.Curvature(row) * grid.Step);
        var isTop = row == 0;
        if (isTop || row == grid.Rows)
        {
            var (inner, second) = isTop ? (own, own + stride) : (own - stride, own - (2 * stride));
            var sign = isTop ? 2f : -2f;
            for (var at = Margin; at < grid.Columns - Margin; at += Vector<float>.Count)
            {
                var imposed = isTop ? V(UpperTraction, at) : Vector<float>.Zero;
                var along = (1.5f * V(alongStress, inner + at)) - (0.5f * V(alongStress, second + at));
                var change = (sign * (V(downStress, inner + at) - imposed)) - (curve * (imposed - along))
                    + (near2 * (V(shear, own + at) - V(shear, own + at - 1))) + (far2 * (V(shear, own + at + 1) - V(shear, own + at - 2)));
                Keep(downVelocity, own, at, (V(downVelocity, own + at) + (factor * change)) * V(columnDamping, at) * rowDamping);
            }

            return;
        }

        var (near, far) = Order(row);
        var (above, below) = (own - stride, own);
        var (above2, below2) = (far == 0 ? above : above - stride, far == 0 ? below : below + stride);
        for (var at = Margin; at < grid.Columns - Margin; at += Vector<float>.Count)
        {
            var (upper, lower) = (V(downStress, above + at), V(downStress, below + at));
            var change = (near * (lower - upper)) + (far * (V(downStress, below2 + at) - V(downStress, above2 + at)))
                + (near2 * (V(shear, own + at) - V(shear, own + at - 1))) + (far2 * (V(shear, own + at + 1) - V(shear, own + at - 2)))
                - (0.5f * curve * (upper + lower - V(alongStress, above + at) - V(alongStress, below + at)));
            Keep(downVelocity, own, at, (V(downVelocity, own + at) + (factor * change)) * V(columnDamping, at) * rowDamping);
        }
    }

    private void StepNormalStresses(int row)
    {
        var solid = grid.At(row + 0.5);
        var (near, far) = Order(row + 0.5);
        var scale = grid.TimeStep / grid.Step;
        var (lame, both) = ((float)(scale * solid.Lame), (float)(scale * (solid.Lame + (2 * solid.Rigidity))));
        var stretch = (float)grid.Stretch(row + 0.5);
        var (near2, far2, rowDamping) = (Near * stretch, Far * stretch, RowDamping(row + 0.5));
        var halfCurve = (float)(0.5 * grid.Curvature(row + 0.5) * grid.Step);
        var own = row * stride;
        var (above, below) = (own, own + stride);
        var (above2, below2) = (far == 0 ? above : above - stride, far == 0 ? below : below + stride);
        for (var at = Margin; at < grid.Columns - Margin; at += Vector<float>.Count)
        {
            var (upper, lower) = (V(downVelocity, above + at), V(downVelocity, below + at));
            var down = (near * (lower - upper)) + (far * (V(downVelocity, below2 + at) - V(downVelocity, above2 + at)));
            var along = (near2 * (V(alongVelocity, own + at) - V(alongVelocity, own + at - 1)))
                + (far2 * (V(alongVelocity, own + at + 1) - V(alongVelocity, own + at - 2))) - (halfCurve * (upper + lower));
            var damping = V(columnDamping, at) * rowDamping;
            Keep(downStress, own, at, (V(downStress, own + at) + (both * down) + (lame * along)) * damping);
            Keep(alongStress, own, at, (V(alongStress, own + at) + (lame * down) + (both * along)) * damping);
        }
    }

    private void StepShear(int row)
    {
        var own = row * stride;
        if (row == 0 || row == grid.Rows || row == grid.Interface)
        {
            if (row == 0) UpperShear.CopyTo(shear, 0);
            return;
        }

        var (near, far) = Order(row);
        var factor = (float)(grid.TimeStep / grid.Step * grid.At(row).Rigidity);
        var stretch = (float)grid.Stretch(row);
        var (near2, far2, rowDamping) = (Near * stretch, Far * stretch, RowDamping(row));
        var halfCurve = (float)(0.5 * grid.Curvature(row) * grid.Step);
        var (above, below) = (own - stride, own);
        var (above2, below2) = (far == 0 ? above : above - stride, far == 0 ? below : below + stride);
        for (var at = Margin; at < grid.Columns - Margin; at += Vector<float>.Count)
        {
            var (upper, lower) = (V(alongVelocity, above + at), V(alongVelocity, below + at));
            var change = (near * (lower - upper)) + (far * (V(alongVelocity, below2 + at) - V(alongVelocity, above2 + at)))
                + (near2 * (V(downVelocity, own + at + 1) - V(downVelocity, own + at))) + (far2 * (V(downVelocity, own + at + 2) - V(downVelocity, own + at - 1)))
                + (halfCurve * (upper + lower));
            Keep(shear, own, at, (V(shear, own + at) + (factor * change)) * V(columnDamping, at) * rowDamping);
        }
    }

    private static Vector<float> V(float[] values, int at) => new(values, at);

    /// <summary>Lanes beyond the last column stay nothing: they are the rigid rim behind the sponge.</summary>
    private void Keep(float[] values, int row, int at, Vector<float> result)
    {
        if (at + Vector<float>.Count <= grid.Columns - Margin)
        {
            result.CopyTo(values, row + at);
            return;
        }

        for (var lane = 0; at + lane < grid.Columns - Margin; lane++) values[row + at + lane] = result[lane];
    }
}
