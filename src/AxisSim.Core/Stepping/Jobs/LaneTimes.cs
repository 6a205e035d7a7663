using System.Runtime.CompilerServices;

namespace AxisSim.Core.Stepping.Jobs;

/// <summary>Times of the steps of a block, and the sync probe in them, which all lanes that have one share.</summary>
internal readonly ref struct LaneTimes
{
    private readonly long _first;
    private readonly double _step;
    private readonly ReadOnlySpan<double> _probe;

    /// <param name="first">Number of the block's first step.</param>
    /// <param name="stepSeconds">Step, s.</param>
    /// <param name="probe">Mean of a unit probe over each step; empty where no lane has one.</param>
    public LaneTimes(long first, double stepSeconds, ReadOnlySpan<double> probe)
    {
        _first = first;
        _step = stepSeconds;
        _probe = probe;
    }

    /// <summary>Start of a step of the block, s; that of the step after its last is its end.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public double Start(int step) => (_first + step) * _step;

    /// <summary>Mean of a unit probe over a step.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public double Probe(int step) => _probe.IsEmpty ? 0.0 : _probe[step];
}
