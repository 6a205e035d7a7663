namespace AxisSim.Files.Units;

/// <summary>Finds the number at the start of a text: sign, digits, decimal point, exponent; ASCII only.</summary>
internal static class NumberText
{
    /// <summary>Length of the number at the start; 0 when there is none.</summary>
    public static int Length(string text)
    {
        int i = text.Length > 0 && text[0] is '+' or '-' ? 1 : 0;
        int digits = Digits(text, ref i);
        if (i < text.Length && text[i] == '.')
        {
            i++;
            digits += Digits(text, ref i);
        }

        return digits == 0 ? 0 : WithExponent(text, i);
    }

    /// <summary>Whether the text is one of the words for an infinite or undefined number.</summary>
    public static bool LooksNotFinite(string text)
    {
        string word = text.TrimStart('+', '-').Split(' ', '\t')[0];
        return word.StartsWith("nan", StringComparison.OrdinalIgnoreCase) || word.StartsWith("inf", StringComparison.OrdinalIgnoreCase) || word.StartsWith('∞');
    }

    /// <summary>Whether a comma and a digit follow the number.</summary>
    public static bool HasDecimalComma(string text, int end) => end + 1 < text.Length && text[end] is ',' or '٫' && char.IsDigit(text[end + 1]);

    /// <summary>The same text with a decimal point, or without the commas when there are several.</summary>
    public static string WithoutComma(string text)
    {
        bool decimalComma = text.Count(c => c == ',') == 1 && !text.Contains('.', StringComparison.Ordinal);
        return decimalComma ? text.Replace(',', '.') : text.Replace(",", "", StringComparison.Ordinal);
    }

    private static int WithExponent(string text, int i)
    {
        if (i < text.Length && text[i] is 'e' or 'E')
        {
            int j = i + 1;
            if (j < text.Length && text[j] is '+' or '-')
            {
                j++;
            }

            if (Digits(text, ref j) > 0)
            {
                return j;
            }
        }

        return i;
    }

    private static int Digits(string text, ref int i)
    {
        int start = i;
        while (i < text.Length && char.IsAsciiDigit(text[i]))
        {
            i++;
        }

        return i - start;
    }
}
