using AxisSim.Cli.Text.Moves;
using AxisSim.Core.Gearing;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Studies;
using AxisSim.Report.Sheets;
using AxisSim.Tests.Unit.Report.Pages;

namespace AxisSim.Tests.Invented;

/// <summary>Sheets of invented results, so that they change only when words or layout do.</summary>
internal static class SampleSheets
{
    private const double Degree = Math.PI / 180.0;

    /// <summary>The input of a sheet on invented results.</summary>
    public static SheetInput Of(MoveReport report, Func<AxisModel, AxisModel>? change = null) => new()
    {
        Name = report.Name,
        Site = "Harrow Fell Observatory",
        Program = "axissim 1.2.3",
        Sha256 = new string('a', 64),
        Settings = report.Laid.Settings,
        Date = ShippedReports.Day,
        Verdict = VerdictText.OfMount(report.Results),
        Setup = report.Setup,
        LatitudeRadians = report.LatitudeRadians,
        Axes = [.. report.Results.Select(result => Axis(report, result, change ?? (model => model)))],
    };

    /// <summary>A train of several stages, one of them a decimal number, and a start rate.</summary>
    public static AxisModel Intricate(AxisModel model) => model with
    {
        EncoderCounts = 72000.0,
        Motion = model.Motion with { StartRateRadiansPerSecond = 0.1 * Degree },
        Train = model.Train with
        {
            ClutchNewtonMetres = 45.0,
            BacklashRadians = 25.0 / 3600.0 * Degree,
            Stages =
            [
                new GearStage { Name = "planetary", DrivenTeeth = 5.1818, DrivingTeeth = 1, BacklashRadians = 0.5 * Degree },
                new GearStage { Name = "belt", DrivenTeeth = 60, DrivingTeeth = 14, BacklashRadians = 0.2 * Degree },
            ],
        },
    };

    private static SheetAxis Axis(MoveReport report, AxisResult result, Func<AxisModel, AxisModel> change)
    {
        AxisOutcome slow = result.Outcome with { Verdict = MoveEnd.Arrives, Loss = null, Settling = new Settling(0.0, null, 0.0, null, 1e-5, 0.0, 0.0, false), Power = result.Outcome.Power with { PeakSupplyAmperes = 0.8765 } };
        return new SheetAxis(
            change(report.Setup.Axis(result.Outcome.Axis)),
            result,
            [
                new SlewStage(0.25, 0.75 * Degree, 0.375 * Degree, 95.333, slow),
                new SlewStage(0.5, 1.5 * Degree, 0.75 * Degree, 48.667, slow),
                new SlewStage(1.0, 3.0 * Degree, 1.5 * Degree, 25.333, result.Outcome),
            ]);
    }
}
