using System.Globalization;
using System.Text;
using AxisSim.Core.Motors;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Reductions;
using AxisSim.Core.Sky;

namespace AxisSim.Tests.Docs;

/// <summary>An answer of the lesson: worked on paper, and by the program.</summary>
/// <param name="Question">Number of the question.</param>
/// <param name="What">What was asked.</param>
/// <param name="Paper">From two or three digits, as worked in docs/lesson-reduction.md.</param>
/// <param name="Program">The program's figure.</param>
/// <param name="Unit">Unit of both.</param>
/// <param name="Said">How the page says it where it works it on paper; its last number is the answer.</param>
internal sealed record LessonAnswer(int Question, string What, double Paper, double Program, string Unit, string Said);

/// <summary>The tables of docs/lesson-reduction.md.</summary>
internal static class LessonTable
{
    private const double Margin = ReductionOptions.DefaultMarginShare;
    private const double Degree = Math.PI / 180.0;
    private const double Arcsecond = Degree / 3600.0;

    private static readonly string[] s_scenarios = ["heavy-reflector", "heavy-reflector-stalls", "heavy-reflector-rescued", "light-refractor", "nominal", "nominal-opposing", "two-stage-newtonian"];

    private static readonly Lazy<IReadOnlyList<LessonAnswer>> s_all = new(All);

    public static IReadOnlyList<LessonAnswer> Results => s_all.Value;

    /// <summary>Paper against program.</summary>
    public static string Answers()
    {
        var text = new StringBuilder("| question | what | on paper | program | unit |\n|---|---|---|---|---|\n");
        foreach (LessonAnswer answer in Results)
        {
            text.Append(CultureInfo.InvariantCulture, $"| {answer.Question} | {answer.What} | {Digits(answer.Paper)} | {Digits(answer.Program)} | {answer.Unit} |\n");
        }

        return text.ToString();
    }

    /// <summary>How near the reductions of the shipped scenarios lie to the match.</summary>
    public static string Scenarios()
    {
        var text = new StringBuilder();
        text.Append("| scenario, polar axis | reduction | sqrt(JL/Jm) | match with load and loss | own over match | acceleration of the greatest | of that, asked for | does on paper |\n|---|---|---|---|---|---|---|---|\n");
        foreach (string name in s_scenarios)
        {
            MountSetup setup = Shipped.Read(name).Setup;
            AxisModel model = setup.Axis(MountAxis.Polar);
            ReductionMatch match = ReductionMatch.Of(setup, MountAxis.Polar, Margin);
            ReductionWindow window = ReductionWindow.Of(setup, MountAxis.Polar, Margin);
            double own = model.Train.TotalRatio, here = match.Acceleration(own);
            string share = here > 0.0 ? Percent(here / match.Acceleration(match.OptimumRatio)) : "none to spare";
            string asked = here > 0.0 ? Percent(model.Motion.PeakAcceleration / here) : "more than there is";
            string does = window.Least <= window.Most ? string.Create(CultureInfo.InvariantCulture, $"{Digits(window.Least)} to {Digits(window.Most)}") : "none";
            text.Append(CultureInfo.InvariantCulture, $"| {name} | {own:0} | {match.TextbookRatio:0} | {match.OptimumRatio:0} | {own / match.OptimumRatio:0.00} | {share} | {asked} | {does} |\n");
        }

        return text.ToString();
    }

    private static List<LessonAnswer> All()
    {
        MountSetup heavy = Shipped.Read("heavy-reflector").Setup, light = Shipped.Read("light-refractor").Setup;
        var heavyLaw = new ReductionLaw(heavy, MountAxis.Polar, Margin);
        var lightLaw = new ReductionLaw(light, MountAxis.Polar, Margin);
        ReductionWindow window = ReductionWindow.Of(heavy, MountAxis.Polar, Margin);
        AxisModel model = heavy.Axis(MountAxis.Polar);
        const double rate = 17.7 * Degree, ratio = 216.0;
        double speed = rate * ratio;
        double pullOut = PullOutLaw.OnDrive(model.Motor, model.Drive, false, model.Drive.SupplyVolts, speed) / (1.0 + Margin);
        return
        [
            new(1, "match without load and loss, sqrt(7.16/3.8e-6)", Math.Sqrt(7.16 / 3.8e-6), heavyLaw.Match.TextbookRatio, "", "sqrt(7.16/3.8e-6) = 1373"),
            new(1, "match with 1.76 N m and 40 % efficiency", 35.3 + Math.Sqrt((35.3 * 35.3) + (7.01 / (0.403 * 3.8e-6))), heavyLaw.Match.OptimumRatio, "", "35.3 + sqrt(35.3^2 + 7.01/(0.403 x 3.8e-6)) = 2175"),
            new(2, "greatest acceleration at 216", (10.78 - 1.76) / (0.071 + 7.01) / Degree, heavyLaw.Match.Acceleration(ratio) / Degree, "deg/s^2", "9.02/7.08 = 1.27 rad/s^2 = 73"),
            new(2, "share of it that is asked for", 100.0 * 2.67 / 73.0, 100.0 * model.Motion.PeakAcceleration / heavyLaw.Match.Acceleration(ratio), "%", "The file asks for 2.67 deg/s^2, 3.66"),
            new(3, "friction lag at 216", (0.0138 + 0.004) / 0.1655 / 100.0 / 216.0 / Arcsecond, heavyLaw.FrictionLag(216.0) / Arcsecond, "arcsec", "over 100 teeth and 216: 5.0 urad or 1.03"),
            new(3, "friction lag at 108", (0.0276 + 0.004) / 0.1655 / 100.0 / 108.0 / Arcsecond, heavyLaw.FrictionLag(108.0) / Arcsecond, "arcsec", "At 108 it is 3.65"),
            new(4, "reduction up to which 3 deg/s can be pulsed", 100e3 / 64.0 / 400.0 * 360.0 / 3.0, window.MostByPulses, "", "3 deg/s is 1/120 turn a second, so 469"),
            new(4, "torque at 17.7 deg/s, over 1.3", ((0.1838 * 16.3 / 46.8) - (0.0338 * 66.7 * 3.3 / 2190.0) - 0.0046) / 1.3 * 1000.0, pullOut * 1000.0, "mN m", "less the motor's own friction 0.0046, over 1.3: 43.0"),
            new(4, "torque needed there, at the end of the ramp", ((1.81 + (7.08 * 0.2745)) / 87.1) * 1000.0, Need(heavyLaw, rate, ratio) * 1000.0, "mN m", "= 3.75 N m, over 87.1: 43.1"),
            new(5, "match of the light refractor", 2.70 + Math.Sqrt((2.70 * 2.70) + (0.652 / (0.407 * 2.6e-5))), lightLaw.Match.OptimumRatio, "", "2.70 + sqrt(2.70^2 + 0.652/(0.407 x 2.6e-5)) = 251"),
            new(5, "its acceleration at 720, of the greatest", 100.0 * 1614.0 / 2599.0, 100.0 * lightLaw.Match.Acceleration(720.0) / lightLaw.Match.Acceleration(lightLaw.Match.OptimumRatio), "%", "1614 of 2599 deg/s^2 are left there, 62"),
        ];
    }

    /// <summary>The torque whose acceleration at the reduction is that of the ramp to a rate: the law is linear in the torque.</summary>
    private static double Need(ReductionLaw law, double rate, double ratio)
    {
        MountSetup heavy = Shipped.Read("heavy-reflector").Setup;
        AxisModel model = heavy.Axis(MountAxis.Polar);
        double asked = (model.Motion with { SlewRateRadiansPerSecond = rate }).PeakAcceleration;
        ReductionMatch here = law.Match with { LoadTorqueNewtonMetres = new SteadyLoad(heavy, MountAxis.Polar).Torque(rate) };
        double none = (here with { MotorTorqueNewtonMetres = 0.0 }).Acceleration(ratio), one = (here with { MotorTorqueNewtonMetres = 1.0 }).Acceleration(ratio);
        return (asked - none) / (one - none);
    }

    private static string Percent(double share) => string.Create(CultureInfo.InvariantCulture, $"{(share >= 1.0 ? (100.0 * share).ToString("0", CultureInfo.InvariantCulture) : (100.0 * share).ToString("G2", CultureInfo.InvariantCulture))} %");

    private static string Digits(double value) => value >= 100.0 ? value.ToString("0", CultureInfo.InvariantCulture) : value.ToString("G3", CultureInfo.InvariantCulture);
}
