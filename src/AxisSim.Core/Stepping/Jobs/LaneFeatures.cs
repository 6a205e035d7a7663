namespace AxisSim.Core.Stepping.Jobs;

/// <summary>A part of the law that is compiled in or left out.</summary>
internal interface ISwitch
{
    static abstract bool On { get; }
}

internal readonly struct With : ISwitch
{
    public static bool On => true;
}

internal readonly struct Without : ISwitch
{
    public static bool On => false;
}

/// <summary>What a group of lanes needs besides the bare drive train; each part costs time only where it is asked for.</summary>
/// <param name="Shaft">Elastic stages before the worm.</param>
/// <param name="Payload">A flexible payload.</param>
/// <param name="Power">Sagging supply, warming windings, or somebody who looks at currents and powers.</param>
/// <param name="Pose">The other axis moves: gravity and inertia change with it.</param>
internal readonly record struct LaneFeatures(bool Shaft, bool Payload, bool Power, bool Pose);
