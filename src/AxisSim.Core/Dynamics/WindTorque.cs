using AxisSim.Core.Mount;

namespace AxisSim.Core.Dynamics;

/// <summary>Torque of the wind about an axis as a function of time alone, so the same for any step.</summary>
/// <remarks>
/// <para><c>T = q Cd A r</c>, <c>q = rho V |V| / 2</c>: rho air density (kg/m3), Cd drag coefficient, A area (m2), r lever (m),
/// <c>V = mean + gust + turbulence</c> (m/s, signed; a positive speed turns the axis towards greater angles).</para>
/// <para>Gust: <c>(Vg/2)(1 - cos(2 pi (t - t0)/D))</c> for D seconds from t0 (the one-minus-cosine gust of MIL-F-8785C, up and down again).
/// Turbulence: <see cref="DrydenTurbulence"/>. Validity: a bluff body small beside the gusts; quasi-steady; drag does not change with the pose.</para>
/// </remarks>
internal sealed class WindTorque
{
    private readonly Disturbances wind;
    private readonly double torquePerPressure;
    private readonly DrydenTurbulence? turbulence;

    /// <summary>The wind of a set of disturbances.</summary>
    public WindTorque(Disturbances disturbances)
    {
        wind = disturbances;
        torquePerPressure = TorquePerPressure(disturbances);
        IsZero = Calm(disturbances);
        if (disturbances.WindMetresPerSecond != 0.0 && disturbances.TurbulenceIntensity > 0.0)
        {
            turbulence = new(
                disturbances.WindMetresPerSecond, disturbances.TurbulenceIntensity, disturbances.TurbulenceLengthMetres, disturbances.TurbulenceSeed);
        }
    }

    /// <summary>Whether there is no torque at any time.</summary>
    public bool IsZero { get; }

    /// <summary>Whether disturbances have no wind torque at any time.</summary>
    public static bool Calm(Disturbances disturbances) =>
        TorquePerPressure(disturbances) == 0.0 || (disturbances.WindMetresPerSecond == 0.0 && disturbances.GustMetresPerSecond == 0.0);

    /// <summary>Whether the torque is the same at all times.</summary>
    public bool IsSteady => IsZero || (wind.GustMetresPerSecond == 0.0 && turbulence is null);

    /// <summary>Dynamic pressure with the sign of the speed, Pa: <c>rho V |V| / 2</c>.</summary>
    public static double Pressure(double densityKilogramsPerCubicMetre, double metresPerSecond) =>
        densityKilogramsPerCubicMetre * metresPerSecond * Math.Abs(metresPerSecond) / 2.0;

    /// <summary>Wind speed at a time from the start of the move, m/s.</summary>
    [System.Runtime.CompilerServices.MethodImpl(System.Runtime.CompilerServices.MethodImplOptions.AggressiveOptimization)]
    public double SpeedAt(double seconds)
    {
        double sinceGust = seconds - wind.GustStartSeconds;
        double gust = sinceGust > 0.0 && sinceGust < wind.GustSeconds
            ? wind.GustMetresPerSecond / 2.0 * (1.0 - Math.Cos(2.0 * Math.PI * sinceGust / wind.GustSeconds))
            : 0.0;
        return wind.WindMetresPerSecond + gust + (turbulence?.At(seconds) ?? 0.0);
    }

    /// <summary>Torque at a time from the start of the move, N m.</summary>
    [System.Runtime.CompilerServices.MethodImpl(System.Runtime.CompilerServices.MethodImplOptions.AggressiveOptimization)]
    public double At(double seconds) =>
        IsZero ? 0.0 : torquePerPressure * Pressure(wind.AirDensityKilogramsPerCubicMetre, SpeedAt(seconds));

    private static double TorquePerPressure(Disturbances disturbances) => disturbances.DragCoefficient * disturbances.AreaSquareMetres * disturbances.LeverMetres;
}
