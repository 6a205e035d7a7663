namespace AxisSim.Core.Mount;

/// <summary>Friction of an axis' bearings and seals.</summary>
public sealed record AxisBearings
{
    private readonly double? _breakaway;

    /// <summary>Dry friction while turning, N m.</summary>
    public double CoulombNewtonMetres { get; init; }

    /// <summary>Dry friction to be overcome from rest, N m; not below the running friction, and equal to it where it is not given.</summary>
    public double BreakawayNewtonMetres
    {
        get => _breakaway ?? CoulombNewtonMetres;
        init => _breakaway = value;
    }

    /// <summary>Viscous friction, N m s/rad.</summary>
    public double ViscousNewtonMetreSecondsPerRadian { get; init; }
}

/// <summary>A payload that is not rigid: a part of the axis inertia sits on a spring.</summary>
public sealed record FlexiblePayload
{
    /// <summary>Frequency of that part with the axis held, Hz.</summary>
    public required double FrequencyHertz { get; init; }

    /// <summary>Damping ratio of that mode.</summary>
    public double DampingRatio { get; init; } = 0.02;

    /// <summary>Share of the axis' inertia that is on the spring, 0 to 1 (exclusive).</summary>
    public double InertiaShare { get; init; } = 0.5;
}
