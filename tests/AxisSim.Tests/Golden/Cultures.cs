using System.Globalization;

namespace AxisSim.Tests.Golden;

/// <summary>Runs code under cultures that write numbers, digits and case differently.</summary>
internal static class Cultures
{
    public static TheoryData<string> Names => ["", "fr-FR", "de-DE", "ar-SA", "tr-TR"];

    public static T Under<T>(string culture, Func<T> code)
    {
        CultureInfo before = CultureInfo.CurrentCulture, beforeUi = CultureInfo.CurrentUICulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo(culture);
            return code();
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
            CultureInfo.CurrentUICulture = beforeUi;
        }
    }
}
