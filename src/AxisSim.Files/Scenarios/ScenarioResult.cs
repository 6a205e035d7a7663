namespace AxisSim.Files.Scenarios;

/// <summary>What reading a scenario gave.</summary>
/// <param name="Scenario">The scenario; null exactly when a problem is an error.</param>
/// <param name="Problems">All problems of the file by line, then what is missing altogether, then those of the settings; notes may come with a scenario.</param>
public sealed record ScenarioResult(Scenario? Scenario, IReadOnlyList<Problem> Problems);
