namespace AxisSim.Core.Mount;

/// <summary>What acts on the mount besides gravity and its motors.</summary>
public sealed record Disturbances
{
    /// <summary>Steady wind speed, m/s; its sign is that of the torque about both axes.</summary>
    public double WindMetresPerSecond { get; init; }

    /// <summary>Air density, kg/m3.</summary>
    public double AirDensityKilogramsPerCubicMetre { get; init; } = 1.225;

    /// <summary>Drag coefficient of the payload.</summary>
    public double DragCoefficient { get; init; } = 1.2;

    /// <summary>Area that the wind meets, m2.</summary>
    public double AreaSquareMetres { get; init; }

    /// <summary>Lever of the wind's force about the axis, m.</summary>
    public double LeverMetres { get; init; }

    /// <summary>Speed that a single 1-cosine gust adds, m/s.</summary>
    public double GustMetresPerSecond { get; init; }

    /// <summary>Start of the gust, s from the start of the move.</summary>
    public double GustStartSeconds { get; init; }

    /// <summary>Duration of the gust, s.</summary>
    public double GustSeconds { get; init; } = 1.0;

    /// <summary>Turbulence: standard deviation over mean speed.</summary>
    public double TurbulenceIntensity { get; init; }

    /// <summary>Turbulence length scale, m.</summary>
    public double TurbulenceLengthMetres { get; init; } = 30.0;

    /// <summary>Seed of the turbulence.</summary>
    public int TurbulenceSeed { get; init; } = 1;

    /// <summary>Factor on the friction of bearings and worm for cold grease; 1 at room temperature.</summary>
    public double ColdGreaseFactor { get; init; } = 1.0;

    /// <summary>Ambient temperature, degrees Celsius.</summary>
    public double AmbientCelsius { get; init; } = 20.0;

    /// <summary>
    /// Small torque pulses at the rotor while it moves: 1 % of the holding torque, 1 ms long, every 20 ms, alternating in sign.
    /// They make a move that balances on the edge of losing sync fall over, as a real one would.
    /// </summary>
    public bool SyncProbe { get; init; } = true;
}
