namespace AxisSim.Core.Stepping.Jobs;

/// <summary>Which slow terms a team of lanes has at all.</summary>
/// <param name="Outside">Gravity or wind.</param>
/// <param name="Inertia">The other axis moves, so inertia (or the centrifugal torque of its turning) counts.</param>
/// <param name="Error">Periodic error.</param>
/// <param name="SecondHarmonic">Its second harmonic.</param>
/// <param name="Runout">Runout of the wheel.</param>
/// <param name="Heat">Windings that warm.</param>
internal readonly record struct LaneTerms(bool Outside, bool Inertia, bool Error, bool SecondHarmonic, bool Runout, bool Heat);
