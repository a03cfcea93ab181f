using System.Numerics;
using TechLint.Ultrasonics.Beams;
using TechLint.Ultrasonics.Examinations;
using TechLint.Ultrasonics.Quantities;

namespace TechLint.Ultrasonics.Reflection;

/// <summary>
/// A plane wave at a free surface: how much of its energy goes on as the same wave, and how much as the other one.
/// </summary>
/// <remarks>
/// <para>With θT, θL the angles of the two waves from the normal (<c>sin θL / cL = sin θT / cT</c>) and κ = cL/cT, displacement amplitudes for one of 1:</para>
/// <para><c>X = sin 2θT sin 2θL, Y = κ² cos² 2θT, D = X + Y</c>; same wave, either way in: <c>(X − Y)/D</c>;
/// transverse to longitudinal: <c>−κ sin 4θT / D</c>; longitudinal to transverse: <c>2κ sin 2θL cos 2θT / D</c>.</para>
/// <para>Energy across the surface goes with <c>c cos θ |amplitude|²</c>; what is kept is the square of the same wave's amplitude, and both add to 1. Beyond the
/// critical angle <c>sin θT > cT/cL</c> cos θL is imaginary, the longitudinal wave only clings to the surface, and all is kept.</para>
/// <para>Range: an isotropic elastic half-space, no load on its surface (air or thin couplant behind), plane waves, roughness and curvature large against the wavelength;
/// a real beam is a bundle of angles, so that its loss near the critical angle is spread over some degrees. Transverse means polarised in the plane of incidence, as
/// angle probes send it. Source: J. D. Achenbach, Wave Propagation in Elastic Solids, 5.5 and 5.6; B. A. Auld, Acoustic Fields and Waves in Solids, vol. 2 (from memory;
/// held to the traction-free conditions themselves, to energy and to published zeros in tests/Validation).</para>
/// </remarks>
public static class FreeSurface
{
    /// <summary>The incidence of a transverse wave beyond which no longitudinal one leaves the surface: <c>sin θ = cT/cL</c>; 33.36 deg for 5920 and 3255 m/s.</summary>
    public static Angle? CriticalAngle(Speed longitudinal, Speed transverse) => Refraction.CriticalAngle(transverse, longitudinal);

    /// <summary>Null where a speed is no speed, the longitudinal wave is not the faster by more than the root of two (no such solid), or the incidence is not from 0 to 90 deg.</summary>
    /// <param name="wave">The wave that comes.</param>
    /// <param name="incidence">From the surface's normal.</param>
    /// <param name="longitudinal">Speed in the part.</param>
    /// <param name="transverse">Speed in the part.</param>
    public static Reflected? Of(Wave wave, Angle incidence, Speed longitudinal, Speed transverse)
    {
        var (fast, slow) = (longitudinal.MetresPerSecond, transverse.MetresPerSecond);
        var ratio = fast / slow;
        if (!(slow > 0) || !(ratio > Math.Sqrt(2)) || !double.IsFinite(ratio) || !(incidence.Degrees is >= 0 and <= RightAngle)) return null;
        var own = Amplitudes(wave, incidence.Radians, ratio).Own;
        var kept = Math.Min(1, (own.Real * own.Real) + (own.Imaginary * own.Imaginary));
        var other = wave == Wave.Transverse
            ? Refraction.Through(incidence.Radians, slow, fast)
            : Refraction.Through(incidence.Radians, fast, slow);
        return new Reflected(
            wave == Wave.Transverse ? Wave.Longitudinal : Wave.Transverse, double.IsNaN(other) ? null : Angle.FromRadians(other), new Share(100 * kept));
    }

    /// <summary>Displacement amplitudes of both reflected waves; those of the clinging wave beyond the critical angle carry nothing away.</summary>
    internal static (Complex Own, Complex Other) Amplitudes(Wave wave, double incidence, double ratio)
    {
        var slowSine = wave == Wave.Transverse ? Math.Sin(incidence) : Math.Sin(incidence) / ratio;
        var slowCosine = wave == Wave.Transverse ? Math.Cos(incidence) : Math.Sqrt(1 - (slowSine * slowSine));
        var fastSine = wave == Wave.Transverse ? ratio * slowSine : Math.Sin(incidence);
        var fastCosine = wave == Wave.Longitudinal ? Math.Cos(incidence)
            : fastSine <= 1 ? new Complex(Math.Sqrt(1 - (fastSine * fastSine)), 0)
            : new Complex(0, Math.Sqrt((fastSine * fastSine) - 1));
        var doubled = (slowCosine * slowCosine) - (slowSine * slowSine);
        var x = 2 * slowSine * slowCosine * 2 * fastSine * fastCosine;
        var y = ratio * ratio * doubled * doubled;
        var sum = x + y;
        var other = wave == Wave.Transverse
            ? -ratio * 4 * slowSine * slowCosine * doubled / sum
            : 2 * ratio * 2 * fastSine * fastCosine * doubled / sum;
        return ((x - y) / sum, other);
    }

    private const double RightAngle = 90;
}

/// <summary>What a free surface makes of a wave.</summary>
/// <param name="Other">The wave that it is changed into.</param>
/// <param name="OtherAngle">Of that wave from the normal; null beyond the critical angle, where none leaves.</param>
/// <param name="Kept">Share of the energy that goes on as the same wave.</param>
public readonly record struct Reflected(Wave Other, Angle? OtherAngle, Share Kept)
{
    /// <summary>Share of the energy that goes on as the other wave.</summary>
    public Share Converted => new(100 - Kept.Percent);
}
