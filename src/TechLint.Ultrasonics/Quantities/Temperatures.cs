namespace TechLint.Ultrasonics.Quantities;

/// <summary>A temperature, in degC.</summary>
public readonly record struct Temperature(double DegreesCelsius);

/// <summary>A difference between temperatures, in K.</summary>
public readonly record struct TemperatureDifference(double Kelvins);

/// <summary>How a speed of sound changes with temperature, in m/s per K.</summary>
public readonly record struct SpeedDrift(double MetresPerSecondPerKelvin)
{
    /// <summary>The speed after a drift of temperature.</summary>
    public Speed After(Speed speed, TemperatureDifference drift) => new(speed.MetresPerSecond + (MetresPerSecondPerKelvin * drift.Kelvins));
}
