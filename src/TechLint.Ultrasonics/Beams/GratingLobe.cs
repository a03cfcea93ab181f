namespace TechLint.Ultrasonics.Beams;

/// <summary>Where an array of pitch p, steered by β from its normal, repeats its main beam: <c>sin βg = sin β ± m λw/p</c>.</summary>
internal static class GratingLobe
{
    /// <summary>
    /// The lobe's direction from the array's normal that lies nearest to it, where an element is loudest, among those that
    /// <paramref name="enters"/> accepts; NaN where none.
    /// </summary>
    /// <param name="steering">β, rad.</param>
    /// <param name="wavelengthPerPitch">λw/p.</param>
    /// <param name="enters">Whether a direction from the array's normal gets into the part.</param>
    public static double Nearest(double steering, double wavelengthPerPitch, Func<double, bool> enters)
    {
        var nearest = double.NaN;
        if (!(wavelengthPerPitch > SmallestRatio)) return nearest;
        var main = Math.Sin(steering);

        // |sin| ≤ 1 bounds the order on either side.
        var last = (int)Math.Ceiling(2 / wavelengthPerPitch);
        for (var order = -last; order <= last; order++)
        {
            var sine = main + (order * wavelengthPerPitch);
            if (order == 0 || Math.Abs(sine) > 1) continue;
            var angle = Math.Asin(sine);
            if (!(Math.Abs(angle) >= Math.Abs(nearest)) && enters(angle)) nearest = angle;
        }

        return nearest;
    }

    /// <summary>Below a hundredth of a wavelength per pitch it is no array but a typing slip: thousands of orders, none of use.</summary>
    private const double SmallestRatio = 0.01;
}
