using System.Text;
using AxisSim.Cli.Text.Comparisons;
using AxisSim.Core.Comparisons;
using AxisSim.Files.Motors;
using AxisSim.Files.Tables;
using AxisSim.Tests.Invented;
using CsCheck;

namespace AxisSim.Tests.Unit.Files.Tables;

/// <summary>Texts in tables are never formulas, and come back as they were.</summary>
public sealed class FormulaGuardTests
{
    [Theory]
    [InlineData("=1+1", "'=1+1")]
    [InlineData("+17", "'+17")]
    [InlineData("-17 long", "'-17 long")]
    [InlineData("@sum", "'@sum")]
    [InlineData("'=1", "''=1")]
    [InlineData("17 long", "17 long")]
    [InlineData("'17", "'17")]
    [InlineData("''", "''")]
    [InlineData("", "")]
    public void A_text_that_looks_like_a_formula_stands_behind_an_apostrophe(string text, string cell)
    {
        Assert.Equal(cell, FormulaGuard.Put(text));
        Assert.Equal(text, FormulaGuard.Take(cell));
    }

    [Fact]
    public void Every_text_comes_back_and_no_guarded_one_begins_like_a_formula() =>
        Gen.String[Gen.Char["'=+-@a1 "], 0, 6].Sample(text =>
        {
            string cell = FormulaGuard.Put(text);
            return FormulaGuard.Take(cell) == text && (cell.Length == 0 || !"=+-@".Contains(cell[0], StringComparison.Ordinal));
        });

    [Fact]
    public void A_comparison_guards_its_names_and_leaves_its_numbers()
    {
        ComparisonReport report = SampleComparisons.EveryFate();
        CandidateResult[] results = [.. report.Results.Select(Renamed)];
        using var stream = new MemoryStream();
        ComparisonCsv.Write(stream, report.Axes, results);
        string[] lines = Encoding.UTF8.GetString(stream.ToArray()).TrimEnd('\n').Split('\n');
        Assert.All(lines.Skip(1), line => Assert.Contains(",'=1+1,'-17,", line, StringComparison.Ordinal));
        Assert.All(lines.Skip(1), line => Assert.Single(line.Split(','), cell => cell.StartsWith("'=", StringComparison.Ordinal)));
        Assert.DoesNotContain("'0", string.Concat(lines), StringComparison.Ordinal);
    }

    [Fact]
    public void A_name_taken_from_such_a_table_is_the_motors_again()
    {
        const string Head = "name,frame,steps_per_revolution,holding_torque_n_m,rated_current_a,resistance_ohm,inductance_mh,rotor_inertia_g_cm2\n", Rest = ",200,0.4,1.5,1.5,3,60\n";
        MotorChoice plain = Assert.Single(MotorTable.ReadText(Head + "=1+1,-17" + Rest, "m.csv").Motors), guarded = Assert.Single(MotorTable.ReadText(Head + "'=1+1,'-17" + Rest, "m.csv").Motors);
        Assert.Equal(("=1+1", "-17"), (plain.Name, plain.Frame));
        Assert.Equal(plain, guarded);
    }

    private static CandidateResult Renamed(CandidateResult result) =>
        result with { Candidate = result.Candidate with { Motor = result.Candidate.Motor with { Name = "=1+1", Frame = "-17" } } };
}
