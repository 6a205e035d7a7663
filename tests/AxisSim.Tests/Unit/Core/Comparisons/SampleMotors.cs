using AxisSim.Core.Comparisons;
using AxisSim.Files.Motors;

namespace AxisSim.Tests.Unit.Core.Comparisons;

/// <summary>Motors of the shipped catalogue.</summary>
internal static class SampleMotors
{
    public static string File { get; } = Repository.PathOf("catalogues", "motors.csv");

    public static IReadOnlyList<MotorChoice> All { get; } = MotorTable.ReadFile(File).Motors;

    public static MotorChoice Of(string name) => All.Single(motor => motor.Name == name);
}
