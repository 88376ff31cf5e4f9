namespace HeapText.Service.Verbs;

/// <summary>How a verb ends.</summary>
internal static class ExitCodes
{
    public const int Done = 0;

    /// <summary>The input or the settings are wrong; said on standard error.</summary>
    public const int BadInput = 1;

    /// <summary>The command line is wrong; said on standard error.</summary>
    public const int WrongUse = 2;
}
