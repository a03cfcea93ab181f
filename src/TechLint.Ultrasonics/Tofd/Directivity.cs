namespace TechLint.Ultrasonics.Tofd;

/// <summary>
/// How loud one probe of a diffraction pair is in a direction of the part, one way, relative to its axis: the far-field
/// pattern of its element in the wedge, looked up at the wedge angle that refracts there.
/// </summary>
/// <remarks>
/// Round element <c>2 J1(x)/x</c>, strip <c>sin x / x</c>, <c>x = π D (sin β' − sin β)/λw</c> with β from the element's own normal
/// (0 for a single element). Main lobe only: past its first zero a direction counts as silent. The transmission through the
/// interface and the diffraction at the tip are left out: both are the same for all probes of one angle.
/// </remarks>
internal readonly struct Directivity
{
    /// <summary>First zero of J1.</summary>
    private const double FirstRoundZero = 3.8317059702075125;

    /// <summary>Terms of the power series of 2 J1(x)/x that leave less than 1e-9 up to its first zero.</summary>
    private const int SeriesTerms = 16;

    private readonly bool isRound;
    private readonly double scale;
    private readonly double speedRatio;
    private readonly double wedgeAngle;
    private readonly double steering;
    private readonly double sineOfSteering;

    /// <param name="size">Diameter, or length in the plane of incidence.</param>
    /// <param name="isRound">A round element.</param>
    /// <param name="wedgeWavelength">λw.</param>
    /// <param name="speedRatio">vw / v.</param>
    /// <param name="wedgeAngle">α of the axis.</param>
    /// <param name="steering">β of the axis.</param>
    public Directivity(double size, bool isRound, double wedgeWavelength, double speedRatio, double wedgeAngle, double steering)
    {
        this.isRound = isRound;
        scale = Math.PI * size / wedgeWavelength;
        this.speedRatio = speedRatio;
        this.wedgeAngle = wedgeAngle;
        this.steering = steering;
        sineOfSteering = Math.Sin(steering);
    }

    /// <summary>At an angle in the part from the local normal, positive towards the beam.</summary>
    public double At(double angle)
    {
        var sine = speedRatio * Math.Sin(angle);
        if (!(Math.Abs(sine) <= 1)) return 0;
        return Pattern(Math.Abs(scale * (Math.Sin(Math.Asin(sine) - wedgeAngle + steering) - sineOfSteering)), isRound);
    }

    /// <summary>2 J1(x)/x, or sin x / x, as far as the first zero; 0 beyond.</summary>
    internal static double Pattern(double x, bool isRound)
    {
        if (!isRound) return x >= Math.PI ? 0 : x == 0 ? 1 : Math.Sin(x) / x;
        if (x >= FirstRoundZero) return 0;
        var square = x * x / 4;
        var (term, sum) = (1.0, 1.0);
        for (var k = 1; k <= SeriesTerms; k++)
        {
            term *= -square / (k * (k + 1));
            sum += term;
        }

        return sum;
    }
}
