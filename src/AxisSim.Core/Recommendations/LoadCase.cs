using AxisSim.Core.Batches;
using AxisSim.Core.Mount;
using AxisSim.Core.Questions;
using AxisSim.Core.Stepping.Jobs;

namespace AxisSim.Core.Recommendations;

/// <summary>A move together with a way in which the mount may differ from its scenario.</summary>
/// <param name="Move">The move.</param>
/// <param name="Factors">The difference.</param>
public sealed record LoadCase(CheckMove Move, ToleranceFactors Factors)
{
    /// <summary>The run with settings and with inertia, imbalance and friction times a factor on top.</summary>
    internal BatchCase With(MountSetup setup, AxisSettings settings, double loadFactor, double mostRadians = double.PositiveInfinity)
    {
        MountSetup own = Move.Shortened(mostRadians).Apply(settings.Apply(setup, Move.Axis));
        return new BatchCase(Factors.Apply(own, Move.Axis).Loaded(Move.Axis, loadFactor), Move.Axis);
    }
}
