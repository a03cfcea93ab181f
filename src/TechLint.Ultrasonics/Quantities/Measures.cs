namespace TechLint.Ultrasonics.Quantities;

// What crosses a project boundary: a double that knows its unit. Built from a Quantity with one rounding.

/// <summary>A distance, in mm.</summary>
public readonly record struct Length(double Millimetres) : IComparable<Length>
{
    public static readonly Length Zero;

    public int CompareTo(Length other) => Millimetres.CompareTo(other.Millimetres);

    public static bool operator <(Length left, Length right) => left.Millimetres < right.Millimetres;

    public static bool operator >(Length left, Length right) => left.Millimetres > right.Millimetres;

    public static bool operator <=(Length left, Length right) => left.Millimetres <= right.Millimetres;

    public static bool operator >=(Length left, Length right) => left.Millimetres >= right.Millimetres;
}

/// <summary>An angle, in deg.</summary>
public readonly record struct Angle(double Degrees)
{
    public double Radians => Degrees * (Math.PI / 180);

    public static Angle FromRadians(double radians) => new(radians * (180 / Math.PI));
}

/// <summary>A speed of sound or of scanning, in m/s.</summary>
public readonly record struct Speed(double MetresPerSecond)
{
    public double MillimetresPerMicrosecond => MetresPerSecond / 1000;

    public double MillimetresPerSecond => MetresPerSecond * 1000;

    public static Speed FromMillimetresPerSecond(double value) => new(value / 1000);
}

/// <summary>A frequency or rate, in MHz.</summary>
public readonly record struct Frequency(double Megahertz)
{
    public double Hertz => Megahertz * 1e6;
}

/// <summary>A time, in us.</summary>
public readonly record struct Duration(double Microseconds)
{
    public double Seconds => Microseconds / 1e6;

    public static Duration FromSeconds(double value) => new(value * 1e6);
}

/// <summary>A level, in dB.</summary>
public readonly record struct Level(double Decibels);

/// <summary>A share, in %.</summary>
public readonly record struct Share(double Percent)
{
    public double Fraction => Percent / 100;
}

/// <summary>A flow of data, in MB/s of 10^6 bytes.</summary>
public readonly record struct DataRate(double MegabytesPerSecond);

/// <summary>An amount of data, in MB of 10^6 bytes.</summary>
public readonly record struct DataSize(double Megabytes);

/// <summary>A band with both ends included; an end that is null is open.</summary>
public readonly record struct Band<T>(T? From, T? To) where T : struct;
