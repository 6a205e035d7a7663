namespace AxisSim.Core.Stepping.Jobs;

/// <summary>What a team's blocks have in common.</summary>
/// <param name="Features">Parts of the law.</param>
/// <param name="Terms">Slow terms.</param>
/// <param name="StepSeconds">Step, s.</param>
/// <param name="Shared">Whether all lanes have one command, disturbances and plan.</param>
/// <param name="OwnDecays">Whether the decays of a split step differ from lane to lane or block to block.</param>
internal readonly record struct LaneJob(LaneFeatures Features, LaneTerms Terms, double StepSeconds, bool Shared, bool OwnDecays);
