using AxisSim.Core.Batches;
using AxisSim.Core.Questions;
using AxisSim.Core.Studies;
using AxisSim.Report.Sheets;
using AxisSim.Tests.Invented;

namespace AxisSim.Tests.Unit.Report.Sheets;

/// <summary>How near the edge is in slew rate, in the few words of a sheet.</summary>
public sealed class RateRoomTests
{
    private const double Degree = Math.PI / 180.0;

    [Fact]
    public void An_edge_above() => Assert.Equal(("3.2", ""), Told((1.0, true), (3.0, true), (3.2, true), (3.3, false)));

    [Fact]
    public void No_edge_up_to_the_end_of_the_search() => Assert.Equal(("at least 6.5", ""), Told((1.0, true), (3.0, true), (6.5, true)));

    [Fact]
    public void A_band_below() => Assert.Equal(("4", "1 to 1.5; 2.5"), Told((0.5, true), (1.0, false), (1.5, false), (2.0, true), (2.5, false), (3.0, true), (4.0, true), (5.0, false)));

    [Fact]
    public void A_move_that_fails() => Assert.Equal(("1.5 only", ""), Told((1.0, true), (1.5, true), (1.6, false), (3.0, false)));

    [Fact]
    public void Nothing_arrives() => Assert.Equal(("none does", ""), Told((1.0, false), (3.0, false)));

    // The sample turns at 3 deg/s.
    private static (string Reach, string Bands) Told(params (double Rate, bool Arrives)[] answers)
    {
        AxisResult result = SampleReports.Arriving().Results[0];
        int bad = Array.FindIndex(answers, answer => !answer.Arrives), good = Array.FindLastIndex(answers, bad < 0 ? answers.Length - 1 : Math.Max(0, bad - 1), answer => answer.Arrives);
        var bands = new List<RateStretch>();
        int last = Array.FindLastIndex(answers, answer => answer.Arrives);
        for (int i = 0; i < last; i++)
        {
            int from = i;
            while (!answers[i].Arrives)
            {
                i++;
            }

            if (i > from)
            {
                bands.Add(new RateStretch(answers[from].Rate * Degree, answers[i - 1].Rate * Degree));
            }
        }

        GreatestRate rates = new()
        {
            RampSeconds = 2.0, RateRadiansPerSecond = good < 0 ? double.NaN : answers[good].Rate * Degree, Cap = bad < 0 ? Limit.PulseRate : null, TopRadiansPerSecond = 6.6 * Degree, TopLimit = Limit.PulseRate,
            Tried = answers.Length, FailingBands = bands, Answers = [.. answers.Select(answer => (answer.Rate * Degree, answer.Arrives ? BatchEnd.Arrives : BatchEnd.Stalls))],
        };
        var axis = new SheetAxis(SampleReports.Model(), result with { Rates = rates }, []);
        Assert.Equal(3.0 * Degree, axis.Model.Motion.SlewRateRadiansPerSecond, 9);
        return (RateRoom.Reach(axis), RateRoom.Bands(axis));
    }
}
