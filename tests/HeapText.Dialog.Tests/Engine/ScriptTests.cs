using HeapText.Dialog.Engine;

namespace HeapText.Dialog.Tests.Engine;

public sealed class ScriptTests
{
    [Fact]
    public void Script_Drawn_IsWhatTheDocsShow()
    {
        var path = Repository.Path("docs", "dialogs.md");
        var wanted = $"""
            # The conversation

            Drawn from the table in `src/HeapText.Dialog/Engine/Script.cs`; a test compares the two.
            A stage is the question that is open; a cue is what happened.

            ```mermaid
            {Script.Drawing().Trim()}
            ```

            At any time, once a farmer has joined:

            | on | to |
            | --- | --- |
            {Script.AtAnyTimeRows().Trim()}

            STOP and START keep the stage: the farmer comes back to the open question.

            """;

        if (Environment.GetEnvironmentVariable("HEAPTEXT_ACCEPT") == "1") File.WriteAllText(path, wanted);
        else Assert.Equal(wanted, File.ReadAllText(path));
    }

    [Fact]
    public void Next_CueTheTableDoesNotHave_Throws() =>
        Assert.Throws<InvalidOperationException>(() => Script.Next(Stage.Stranger, Cue.HeatWanted));

    [Fact]
    public void Next_AtAnyTimeCue_IsAllowedInEveryJoinedStage()
    {
        var joined = Enum.GetValues<Stage>().Where(s => s is not (Stage.Stranger or Stage.AskingConsent));

        Assert.All(joined, stage => Assert.Equal(Stage.AskingHeat, Script.Next(stage, Cue.HeatWanted)));
    }
}
