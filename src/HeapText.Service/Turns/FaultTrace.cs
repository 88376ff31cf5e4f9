using System.Diagnostics;

namespace HeapText.Service.Turns;

/// <summary>Where a fault arose, without its message: that may quote what a farmer wrote.</summary>
internal static class FaultTrace
{
    /// <summary>Kind and place of the fault and of those that caused it.</summary>
    public static string Of(Exception fault)
    {
        var kinds = new List<string>();
        for (var one = fault; one is not null; one = one.InnerException)
            kinds.Add($"{one.GetType().FullName}{Environment.NewLine}{new StackTrace(one, fNeedFileInfo: true)}");
        return string.Join("caused by ", kinds);
    }
}
