using System.Runtime.Serialization;
using HeapText.Dialog.Engine;
using NodaTime;

namespace HeapText.Dialog.Screens;

/// <summary>Where the last session on a dialled screen stands. Small unless a long answer is being read.</summary>
/// <remarks>The order numbers are the stored format: never reuse or change one; add new ones at the end.</remarks>
[DataContract]
public sealed record ScreenTalk
{
    /// <summary>After this an answer that was not read to its end is dropped.</summary>
    public static readonly Duration Kept = Duration.FromDays(1);

    /// <summary>Stands for the gateway's id of the session: the first 8 bytes of its SHA-256.</summary>
    [DataMember(Order = 0)] public required long Session { get; init; }

    /// <summary>The last step that was taken.</summary>
    [DataMember(Order = 1)] public required int Step { get; init; }

    /// <summary>When it was taken.</summary>
    [DataMember(Order = 2)] public required Instant At { get; init; }

    /// <summary>What the screen shows.</summary>
    [DataMember(Order = 3)] public ScreenView View { get; init; }

    /// <summary>Page of it, from 0.</summary>
    [DataMember(Order = 4)] public int Page { get; init; }

    /// <summary>What is being read page by page, before the open question; empty when it fitted one screen.</summary>
    [DataMember(Order = 5)] public IReadOnlyList<string> Reading { get; init; } = [];

    /// <summary>True when no question follows what is being read.</summary>
    [DataMember(Order = 6)] public bool Ends { get; init; }

    /// <summary>The question that the screen showed: a bare number answers no other.</summary>
    [DataMember(Order = 7)] public Stage Asked { get; init; }

    /// <summary>The heap which that question is about.</summary>
    [DataMember(Order = 8)] public int AskedOf { get; init; }
}

/// <summary>What a screen shows. The numbers are stored: add new ones at the end.</summary>
public enum ScreenView
{
    /// <summary>The open question, after what was said before it.</summary>
    Question = 0,
    Menu = 1,

    /// <summary>What to tell of the heap.</summary>
    Check = 2,
    Heat = 3,
    Smell = 4,
    Squeeze = 5,
    Pests = 6,
    Help = 7,
    Settings = 8,
    Languages = 9,

    /// <summary>Whether texts are really to stop.</summary>
    Stop = 10,

    /// <summary>The session has ended.</summary>
    Closed = 11,
}
