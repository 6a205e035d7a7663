#:project ../src/AxisSim.Core
#:property PublishAot=false

// One move of a polar axis, and how far its slew rate and ramp are from failing. Run it with: dotnet run -c Release samples/move-and-map.cs
// A person's fingers, a motor's winding and a drive's terminals are not in the model: keep clear of a moving mount, and wire it with the power off.
using System.Globalization;
using AxisSim.Core.Drives;
using AxisSim.Core.Gearing;
using AxisSim.Core.Maps;
using AxisSim.Core.Motors;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Payloads;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;

CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
const double Degree = Math.PI / 180.0, Arcsecond = Degree / 3600.0;

// A mount of Harrow Fell Observatory: SI units and radians, the unit in every name.
var axis = new AxisModel
{
    Motor = new StepperMotor { StepsPerRevolution = 200, HoldingTorqueNewtonMetres = 0.26, RatedCurrentAmperes = 1.5, ResistanceOhms = 1.5, InductanceHenries = 3e-3, RotorInertiaKilogramSquareMetres = 6e-6 },
    Drive = new ChopperDrive { SupplyVolts = 12, SlewCurrentAmperes = 1.4, TrackingCurrentAmperes = 1.0, HoldingCurrentAmperes = 0.7, MicrostepsPerFullStep = 64, GivenDampingNewtonMetreSecondsPerRadian = 1e-4 },
    Train = new GearTrain
    {
        Stages = [new GearStage { Name = "belt", DrivenTeeth = 60, DrivingTeeth = 12, Efficiency = 0.97 }],
        Worm = new WormStage { WheelTeeth = 144, LeadAngleRadians = 3.5 * Degree, FrictionCoefficient = 0.08 },
        BacklashRadians = 30 * Arcsecond,
        StiffnessNewtonMetresPerRadian = 2e4,
    },
    Bearings = new AxisBearings { CoulombNewtonMetres = 0.8 },
    Motion = new AxisMotion { SlewRateRadiansPerSecond = 3 * Degree, Ramp = Ramp.OfSeconds(2) },
};
var mount = new MountSetup
{
    Polar = axis,
    Load = MountLoadBuilder.FromLumped(new LumpedLoad(45.0, -60.0, 0.0), null, 54.4 * Degree),
    Move = new MoveSettings { Start = new MountPose(0, 0), End = new MountPose(30 * Degree, 0), SettleToleranceRadians = 2 * Arcsecond },
    Disturbances = new Disturbances(),
};

AxisOutcome move = MoveStudy.Run(mount, MountAxis.Polar, new MoveOptions()).Outcome;
Console.WriteLine($"30 deg at 3 deg/s: {move.Verdict}, within 2 arcsec {move.Settling?.AgainstRestSeconds:0.00} s after the slew of {move.SlewSeconds:0.00} s, load factor {move.LoadFactor?.Value:0.00}");

// The same move over a small plane of rates and ramps.
double[] rates = [2, 4, 6, 8, 10, 12], ramps = [0.25, 0.5, 1, 2];
var cells = new MapCells(rates.Length, ramps.Length, MapMetric.Outcome);
MapStudy.Run(cells, new MapOptions
{
    Axes = [MountAxis.Polar],
    Full = true,
    Setup = place => mount with { Polar = axis with { Motion = new AxisMotion { SlewRateRadiansPerSecond = rates[place / ramps.Length] * Degree, Ramp = Ramp.OfSeconds(ramps[place % ramps.Length]) } } },
});
Console.WriteLine("ramp, s  " + string.Concat(rates.Select(rate => $"{rate + " deg/s",-14}")).TrimEnd());
for (int row = 0; row < ramps.Length; row++)
{
    Console.WriteLine($"{ramps[row],-9}" + string.Concat(rates.Select((_, column) => $"{cells.End(cells.Place(column, row)),-14}")).TrimEnd());
}
