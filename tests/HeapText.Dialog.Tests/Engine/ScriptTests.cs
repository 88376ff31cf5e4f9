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

            ## Reading in context

            A bare number, yes or no answers the question that is open. When that was asked a day ago or more, by a
            reminder or otherwise, the answer may be meant for something else: the question is asked again, and the
            next answer counts. Words that carry their own meaning ("turned", "2 sacks straw") count at any time, and
            so does what is to be texted when something is done: BUILT, or 1 once the stock is brought.

            A report that names its heap ("heap 2 is hot") is of that heap; else it is asked which, where it matters.

            ## Words for several materials, and words nobody knows

            A word that may mean several materials is never guessed. It is listed under `ambiguous` in words.yml, or
            it is a slip as near to two. The farmer is asked which (AskingWhich), by number or word; the stock is
            completed with the amount and measure already told. A word for what was asked for, or is in the recipe
            already, needs no question.

            A word that stands like a material and that nobody knows is left out of the recipe. The farmer is told so,
            and the trainer's list shows the word (`UnknownWord`). The trainer explains it once, as a material, as one
            that never goes in, or as nothing: `heaptext word add`, or the list on the practice page. From then on all
            farmers of the district are understood, as if the word stood in words.yml. Who waited is told; stock still
            being taken is completed with it. A district is what the setting `Groups:41:District` names; a group
            without it is a district of its own.

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
