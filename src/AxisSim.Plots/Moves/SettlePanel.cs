using AxisSim.Core.Outcomes;
using AxisSim.Plots.Drawing;
using OxyPlot;
using static System.FormattableString;

namespace AxisSim.Plots.Moves;

/// <summary>Close-up of the settling: the error about its final rest from the end of the slew on, a few tolerances high.</summary>
internal static class SettlePanel
{
    private const double Height = 210;

    /// <summary>Least height either way, in tolerances: the band is seen to be left and entered.</summary>
    private const double LeastTolerances = 2.0;

    /// <summary>Greatest height either way, in tolerances: the band stays thick enough to judge by.</summary>
    private const double MostTolerances = 6.0;

    private const double LeastSeconds = 1.5;

    /// <summary>Makes the panel; null when the run ends with the slew.</summary>
    public static Panel? Create(MoveData data)
    {
        CloseUp errors = data.Trace.Settling;
        double[] last = [.. errors.Least.Where(double.IsFinite)];
        if (last.Length < 2)
        {
            return null;
        }

        double end = data.Outcome.SlewSeconds;
        Settling? settling = data.Outcome.Settling;

        // The errors of the close-up are without periodic error; where the axis rests, and whether that is on target, is told with it.
        double periodic = settling is null ? 0.0 : data.Outcome.Offset.PeriodicRadians, rest = settling?.RestRadians ?? last[^1], final = rest - periodic;
        double observed = errors.ToSeconds[^1] - end;
        double shown = settling?.AgainstRestSeconds is double settle ? Math.Min(observed, Math.Max(LeastSeconds, 2.5 * settle)) : observed;

        Stroke aboutRest = Stroke.Of(errors, 1.0, final).After(end);
        double largest = aboutRest.Y.Where((e, i) => double.IsFinite(e) && aboutRest.X[i] <= shown).Select(Math.Abs).DefaultIfEmpty(0).Max();
        double tolerance = settling?.ToleranceRadians ?? 0;
        double half = tolerance > 0 ? Math.Clamp(1.15 * largest, LeastTolerances * tolerance, MostTolerances * tolerance) : Math.Max(1.15 * largest, 1e-9);
        AngleUnit unit = AngleUnit.For(half);

        // The error about the command is drawn where it fits, and where it is another line.
        double offset = Math.Abs(rest) < half && Math.Abs(rest) > 0.02 * half ? rest : 0;

        PlotFrame frame = new(new Span(0, shown), new Span((-half + Math.Min(0, offset)) * unit.PerRadian, (half + Math.Max(0, offset)) * unit.PerRadian), Sheet.PlotWidth, Height);
        PlotModel model = Panel.NewModel(frame, "Error, " + unit.Name, "Time from the end of the slew, s");
        List<LegendEntry> legend = [new("about the final rest", Looks.AxisError)];
        if (tolerance > 0)
        {
            double shownTolerance = tolerance * unit.PerRadian;
            model.Annotations.Add(Marks.Belt(Looks.SettleBand, -shownTolerance, shownTolerance));
            legend.Add(new(Invariant($"settle band \u00b1{shownTolerance:0.###} {unit.Name}"), Looks.SettleBand));
        }

        model.Annotations.Add(Marks.Zero());
        List<DataPoint> about = Decimation.Line(frame, aboutRest.X, MoveData.Scaled(aboutRest.Y, unit.PerRadian)), command = [];
        if (offset != 0)
        {
            Stroke aboutCommand = Stroke.Of(errors, unit.PerRadian, -periodic).After(end);
            command = Decimation.Line(frame, aboutCommand.X, aboutCommand.Y);
            model.Series.Add(Marks.Line(Looks.CommandError, command));
            legend.Insert(1, new("about the command", Looks.CommandError));
        }

        model.Series.Add(Marks.Line(Looks.AxisError, about));
        if (settling?.AgainstRestSeconds is double seconds && seconds <= shown)
        {
            model.Annotations.Add(Marks.Upright(Looks.Settled, seconds));
            model.Annotations.Add(TimePanels.NoteBeside(frame, Invariant($"settled {seconds:0.00} s after the slew"), seconds, about, command));
        }
        else if (settling is not null)
        {
            model.Annotations.Add(TimePanels.NoteBeside(frame, Invariant($"not settled within {observed:0.0} s"), frame.X.To, about, command));
        }

        return new Panel("Close-up of the settling, with the periodic error as it ends: it rests " + Offset(rest * data.Direction), legend, model, Height);
    }

    /// <summary>Where the axis rests, in words.</summary>
    private static string Offset(double finalRadians)
    {
        AngleUnit unit = AngleUnit.For(finalRadians);
        double value = Math.Abs(finalRadians) * unit.PerRadian;
        return value < 0.005 ? "at the command" : Invariant($"{value:0.00} {unit.Name} {(finalRadians > 0 ? "beyond" : "short of")} the command");
    }
}
