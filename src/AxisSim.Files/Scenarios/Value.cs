using AxisSim.Files.Units;

namespace AxisSim.Files.Scenarios;

/// <summary>A value that has been understood.</summary>
/// <param name="Number">SI value, number, driven teeth of a ratio, or 1 and 0 for true and false.</param>
/// <param name="Text">Text or chosen word.</param>
/// <param name="Place">Where a rate is meant.</param>
/// <param name="Second">Driving teeth of a ratio.</param>
/// <param name="Rms">Whether an rms current was converted to its peak.</param>
internal readonly record struct Value(double Number, string Text = "", RatePlace Place = RatePlace.Axis, double Second = 1.0, bool Rms = false);
