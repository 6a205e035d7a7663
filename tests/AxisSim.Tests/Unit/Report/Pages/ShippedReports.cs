using System.Collections.Concurrent;
using AxisSim.Cli.Output;
using AxisSim.Core.Stepping;
using AxisSim.Core.Studies;
using AxisSim.Files.Scenarios;
using AxisSim.Report.Pages;
using AxisSim.Tests.Docs;

namespace AxisSim.Tests.Unit.Report.Pages;

/// <summary>Reports of the shipped scenarios, each simulated once however many tests ask for it.</summary>
internal static class ShippedReports
{
    public static readonly DateOnly Day = new(2026, 3, 20);

    private static readonly ConcurrentDictionary<string, Lazy<(Scenario Scenario, ReportPage Page)>> s_made = new();

    public static TheoryData<string> Names => [.. Repository.Scenarios.Select(path => Path.GetFileNameWithoutExtension(path))];

    public static ReportPage Page(string name) => Of(name).Page;

    public static (Scenario Scenario, ReportPage Page) Of(string name) => s_made.GetOrAdd(name, key => new(() => Make(Shipped.Read(key), key))).Value;

    public static (Scenario Scenario, ReportPage Page) Make(Scenario scenario, string name)
    {
        AxisResult[] results = [.. AxisNames.Of(scenario.Setup).Select(axis => MoveStudy.Run(scenario.Setup, axis, new MoveOptions()))];
        IReadOnlyList<SlewStage>[] slews = [.. results.Select(result => PowerOnStudy.Slews(scenario.Setup, result, StepChoice.DefaultSeconds))];
        return (scenario, ReportFiles.Content(scenario, MoveWork.Report(scenario, $"scenarios/{name}.toml", StepChoice.DefaultSeconds, results), slews, TypedWork.Of(scenario, results, CancellationToken.None), Day));
    }
}
