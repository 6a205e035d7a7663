using AxisSim.Core.Mount;

namespace AxisSim.Core.Envelopes;

/// <summary>One question: how fast may this mount slew with this ramp?</summary>
/// <param name="Setup">The mount and its move; slew rate and ramp of the axis are replaced.</param>
/// <param name="RampSeconds">Ramp time, s.</param>
/// <param name="AlsoTryRadiansPerSecond">A rate that is tried in any case, such as the one in use, rad/s; rounded down to the resolution. Null for none.</param>
/// <param name="LeastRadiansPerSecond">No rate below this is tried, rad/s.</param>
public sealed record EnvelopeCase(MountSetup Setup, double RampSeconds, double? AlsoTryRadiansPerSecond = null, double LeastRadiansPerSecond = 0.0);
