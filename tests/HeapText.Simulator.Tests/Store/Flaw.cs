namespace HeapText.Simulator.Tests.Store;

/// <summary>Ways in which a store could be wrong, to prove that the rules notice.</summary>
internal enum Flaw
{
    None,

    /// <summary>A message that had its effect is not remembered.</summary>
    ForgetsSeen,

    /// <summary>Now and then a farmer who is to be reminded is dropped from the due list.</summary>
    DropsDue,

    /// <summary>Who was claimed is off the due list, even if the claimer dies.</summary>
    ForgetsClaimed,

    /// <summary>A message that comes again has a new id.</summary>
    RenamesRetries,

    /// <summary>Now and then a commit is acknowledged and not kept.</summary>
    LosesCommits,

    /// <summary>A turn that started from an older record overwrites the newer one.</summary>
    IgnoresVersions,

    /// <summary>The newest message of a farmer goes first.</summary>
    LosesOrder,

    /// <summary>What was taken for sending never comes again.</summary>
    ForgetsTaken,
}
