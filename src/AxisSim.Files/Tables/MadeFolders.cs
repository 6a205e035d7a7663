namespace AxisSim.Files.Tables;

/// <summary>Folders that were made for a file, to be taken back when the file does not come.</summary>
internal sealed class MadeFolders
{
    private const int Attempts = 5;
    private readonly List<string> made = [];

    /// <summary>Makes a folder with all that is missing above it; after a failure nothing of it stays.</summary>
    public static MadeFolders Make(string folder)
    {
        var folders = new MadeFolders();
        for (string? place = folder; place is not null && !Directory.Exists(place); place = Path.GetDirectoryName(place))
        {
            folders.made.Add(place);
        }

        for (int attempt = 1; ; attempt++)
        {
            try
            {
                Directory.CreateDirectory(folder);
                return folders;
            }
            catch (DirectoryNotFoundException) when (attempt < Attempts)
            {
                // Another run, which shares the folder above, has just taken that one back.
            }
            catch (Exception error) when (error is IOException or UnauthorizedAccessException or NotSupportedException or ArgumentException)
            {
                folders.TakeBack();
                throw;
            }
        }
    }

    /// <summary>Removes those that are empty, the innermost first.</summary>
    public void TakeBack()
    {
        foreach (string folder in made)
        {
            try
            {
                if (Directory.Exists(folder))
                {
                    Directory.Delete(folder);
                }
            }
            catch (Exception error) when (error is IOException or UnauthorizedAccessException)
            {
                // Something else is in it by now.
                return;
            }
        }
    }
}
