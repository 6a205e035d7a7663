using System.Globalization;
using AxisSim.Core.Drives;
using AxisSim.Core.Mount;
using AxisSim.Core.Sky;
using AxisSim.Core.Stepping;
using AxisSim.Files.Keys;

namespace AxisSim.Files.Scenarios;

/// <summary>Whether an axis can be stepped at all: figures may be good one by one and together give a motion too fast for any step.</summary>
internal static class StepChecks
{
    private const double MicrofaradsPerFarad = 1e6;

    /// <summary>Reports each axis that cannot.</summary>
    public static void Report(MountSetup setup, ValueSet values)
    {
        foreach (string key in ScenarioKeys.Axes.Where(axis => LikeAxis.Has(values.Document, axis)))
        {
            MountAxis axis = key == "polar" ? MountAxis.Polar : MountAxis.Declination;
            StepChoice choice = StepChoice.For(setup, axis, StepChoice.DefaultSeconds);
            if (!choice.Workable && !ReportBus(setup.Axis(axis).Drive, choice, values, key))
            {
                values.Problems.Error(
                    new Spot(0, 0),
                    key,
                    $"figures that swing or decay too fast for the shortest step: {choice.Reason}",
                    "an axis whose fastest motion a step of 0.1 us can follow",
                    "figures of a real motor and train: look at holding_torque, rated_current, inductance, rotor_inertia, viscous, damping, the inertias of stages and worm, and stiffness");
            }
        }
    }

    /// <summary>True when it is the supply's capacitor that no step can follow.</summary>
    private static bool ReportBus(ChopperDrive drive, StepChoice choice, ValueSet values, string axis)
    {
        double share = SupplyLaw.GreatestRate(drive) * choice.StepSeconds / StepChoice.GreatestModeRadians;
        if (!(share > 1.0))
        {
            return false;
        }

        // A key that was left out is told where its section begins.
        string path = $"{axis}.drive.bus_capacitance";
        string least = (Math.Ceiling(share * drive.BusCapacitanceFarads * MicrofaradsPerFarad * 10.0) / 10.0).ToString("G6", CultureInfo.InvariantCulture) + " uF";
        Entry entry = values.Written(path) ? values.EntryOf(path) : new Entry(path, EntryKind.Text, ScenarioKeys.Find(path)!.Default!, values.Document.File, 0, 0);
        values.Problems.Error(
            entry,
            $"{entry.Shown}, which the phase currents would charge or empty within the shortest step",
            $"at least {least} at this current and supply voltage",
            ValueSet.Fix(entry, ScenarioKeys.Find(path)!, $"\"{least}\""));
        return true;
    }
}
