using TechLint.Ultrasonics.Examinations;

namespace TechLint.Ultrasonics.Beams;

/// <summary>Where an array's elements sit in their wedge.</summary>
internal static class ElementPlaces
{
    /// <summary>
    /// Centre of an element, mm: u along the contact plane from the sole's centre, forward positive, and height above it. The array rises towards the front:
    /// <c>u = L/2 − b ± k p cos slope</c>, <c>h = h1 ± k p sin slope</c>, + where elements count from the rear, − where they count from the front.
    /// </summary>
    /// <param name="steps">k: pitches from element 1; a half for a place between two elements.</param>
    /// <param name="pitch">p, mm.</param>
    /// <param name="slope">Of the array, rad.</param>
    /// <param name="first">Element 1.</param>
    /// <param name="wedge">Which way the elements count.</param>
    /// <param name="half">L/2, mm.</param>
    public static (double Place, double Height) At(double steps, double pitch, double slope, ElementPlace first, Wedge wedge, double half)
    {
        var towardsFront = (wedge.ElementOneAtFront ? -1 : 1) * steps * pitch;
        return (half - (first.BehindFront.Millimetres - (towardsFront * Math.Cos(slope))), first.Height.Millimetres + (towardsFront * Math.Sin(slope)));
    }
}
