namespace AxisSim.Files.Scenarios;

/// <summary>An item of a list as a settings file has it.</summary>
/// <param name="File">The settings file.</param>
/// <param name="Spot">Where the item begins.</param>
/// <param name="Whole">Whether it has all that an item needs, so that it can be one more where the scenario has none of its name.</param>
internal sealed record OfferedItem(string File, Spot Spot, bool Whole);
