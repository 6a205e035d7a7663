using AxisSim.Core.Controllers;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Studies;
using AxisSim.Report.Text;

namespace AxisSim.Report.Sheets;

/// <summary>The numbers to type into a user's own controller, with what they stand for and what the move does with them.</summary>
internal static class TypedRows
{
    private const int Digits = 6;

    /// <summary>The part of the sheet.</summary>
    public static SheetTyped Of(TypedInput typed, IReadOnlyList<string> names) => new(
        $"Numbers to type into {typed.Controller}",
        [.. Settings(typed)],
        $"Simulated with {(typed.Axes.Count > 1 ? "both axes" : "the axis")} as typed: {typed.Verdict}",
        [.. Results(typed)],
        [.. Notes(typed, names)]);

    /// <summary>A warning when the numbers fail where the settings that they stand for do not; null otherwise.</summary>
    public static string? Warning(TypedInput? typed) => typed is null or { Arrives: true } ? null
        : typed.Results.Count == 0 ? $"DO NOT TYPE THE NUMBERS FOR {typed.Controller}: with them the move cannot be simulated."
        : $"DO NOT TYPE THE NUMBERS FOR {typed.Controller}: rounded as it takes them, the move fails.";

    private static IEnumerable<SheetRow> Settings(TypedInput typed)
    {
        // A setting of one axis alone stands once, with nothing for the other.
        string[] settings = [.. typed.Axes.SelectMany(axis => axis.Numbers).Select(number => number.Scale.Name).Distinct()];
        foreach (string setting in settings)
        {
            TypedNumber?[] numbers = [.. typed.Axes.Select(axis => axis.Numbers.FirstOrDefault(number => number.Scale.Name == setting))];
            ControllerScale scale = numbers.OfType<TypedNumber>().First().Scale;
            yield return new(
                $"{setting} ({Words(scale.Quantity)})",
                $"1 is {Value(scale, scale.Unit)}{(scale.ZeroText.Length > 0 ? $", 0 is {scale.ZeroText}" : "")}",
                [.. numbers.Select(number => number is null ? "" : $"{Say.Number(number.Number, 9)} ({Value(number.Scale, number.Value)}{(number.Fit == TypedFit.OtherSide ? ", see below" : "")})")]);
        }
    }

    private static IEnumerable<SheetRow> Results(TypedInput typed)
    {
        if (typed.Results.Count == 0)
        {
            yield break;
        }

        SheetRow Row(string name, string unit, Func<AxisResult, string> value) => new(name, unit, [.. typed.Results.Select(value)]);
        yield return Row("Verdict", "", result => result.Outcome.Verdict is MoveEnd.Arrives ? "arrives and settles" : Rows.Failed(result.Outcome.Verdict));
        yield return Row("Load factor", "", result => SettingRows.Factor(result.Outcome.LoadFactor));
        yield return Row("Slew of the mount", "s", result => Say.Number(result.Outcome.SlewSeconds));
        yield return Row("Winding, without end; its limit", "degC", result => $"{Heat(result.Outcome.Power.ContinuousCelsius)}; {Say.Number(Math.Round(result.Outcome.Power.LimitCelsius))}");
    }

    private static IEnumerable<string> Notes(TypedInput typed, IReadOnlyList<string> names)
    {
        ControllerQuantity[] rounded = [.. typed.Axes.SelectMany(axis => axis.Numbers).Where(number => number.Fit != TypedFit.Exact).Select(number => number.Scale.Quantity).Distinct()];
        string[] sides = [.. rounded.Select(Side).Distinct()];
        if (sides.Length > 0)
        {
            yield return $"Rounded to the safe side: {string.Join("; ", sides)}. That is no promise, for a slower slew may meet a resonance that a faster one passes: what counts is the run above.";
        }

        for (int i = 0; i < typed.Axes.Count; i++)
        {
            foreach (TypedNumber number in typed.Axes[i].Numbers.Where(number => number.Fit == TypedFit.OtherSide))
            {
                string wanted = double.IsFinite(number.Wanted) ? $"{Value(number.Scale, number.Wanted)} {(number.Scale.Quantity == ControllerQuantity.Changeover ? "is" : "are")} wanted" : "no changeover is wanted";
                yield return $"{names[i]}, {number.Scale.Name}: {wanted}, and the controller takes no number on the safe side of it. {Say.Number(number.Number, 9)} is the nearest on the other.";
            }
        }
    }

    private static string Side(ControllerQuantity quantity) => quantity switch
    {
        ControllerQuantity.SlewRate => "a slew rate down (less speed leaves more torque)",
        ControllerQuantity.StartRate => "a start rate down (a smaller jump)",
        ControllerQuantity.RampTime => "a ramp time up (a gentler ramp)",
        ControllerQuantity.RampDistance => "a ramp distance up (a gentler ramp)",
        ControllerQuantity.Acceleration => "an acceleration down",
        ControllerQuantity.Changeover => "a changeover to the nearest that leaves the slew stepped as simulated (neither way is safer by itself)",
        ControllerQuantity.CurrentFallDelay => "a delay up (the current falls only once the axis rests)",
        _ => "a current up, for what holds must go on holding, but not above the rated current, for heat; where up is above it, down",
    };

    private static string Words(ControllerQuantity quantity) => quantity switch
    {
        ControllerQuantity.SlewRate => "slew rate",
        ControllerQuantity.StartRate => "start rate",
        ControllerQuantity.RampTime => "ramp time",
        ControllerQuantity.Acceleration => "acceleration",
        ControllerQuantity.RampDistance => "ramp distance",
        ControllerQuantity.Changeover => "changeover",
        ControllerQuantity.SlewCurrent => "slew current",
        ControllerQuantity.TrackingCurrent => "tracking current",
        ControllerQuantity.HoldingCurrent => "holding current",
        ControllerQuantity.TrackingShare => "tracking over slew current",
        ControllerQuantity.HoldingShare => "holding over slew current",
        _ => "delay to the lower current",
    };

    private static string Value(ControllerScale scale, double value) => scale.UnitName.Length > 0 ? Say.With(scale.InUnit(value), scale.UnitName, Digits) : Say.Number(scale.InUnit(value), Digits);

    private static string Heat(double celsius) => double.IsFinite(celsius) ? Say.Number(Math.Round(celsius)) : "runs away";
}
