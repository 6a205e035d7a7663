namespace AxisSim.Files.Tables;

/// <summary>Keeps a spreadsheet from taking a text of a table for a formula.</summary>
/// <remarks>
/// A cell of text that begins with <c>=</c>, <c>+</c>, <c>-</c> or <c>@</c> gets an apostrophe before it, which spreadsheets take as "text" (a common practice; from memory).
/// A text that begins like that behind apostrophes of its own gets one more, so that taking one away always gives back what was written.
/// Numbers are cells of numbers and stay as they are: -1.5 is no formula.
/// </remarks>
internal static class FormulaGuard
{
    private const char Guard = '\'';

    /// <summary>A text as it is written into a cell.</summary>
    public static string Put(string text) => LooksLikeFormula(text) ? Guard + text : text;

    /// <summary>A text as it was before it was written into a cell.</summary>
    public static string Take(string cell) => cell.Length > 0 && cell[0] == Guard && LooksLikeFormula(cell) ? cell[1..] : cell;

    private static bool LooksLikeFormula(string text) => text.AsSpan().TrimStart(Guard) is [var first, ..] && first is '=' or '+' or '-' or '@';
}
