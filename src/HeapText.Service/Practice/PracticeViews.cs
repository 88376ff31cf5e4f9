namespace HeapText.Service.Practice;

/// <summary>A message a practice phone got.</summary>
internal sealed record MessageView(
    long N, string Id, string To, string Text, string Encoding, int Segments, string At);

/// <summary>A message on a practice phone's screen; way is "in" from the phone or "out" to it.</summary>
internal sealed record ThreadMessage(long N, string Way, string Text, string Encoding, int Segments, string At);

/// <summary>The practice time.</summary>
internal sealed record ClockReading(string Now);

/// <summary>What a text takes on a phone; most is the units the segments hold.</summary>
internal sealed record TextMeasure(string Encoding, int Units, int Segments, int Most);

/// <summary>When something falls due next.</summary>
internal sealed record NextWake(string? At);

/// <summary>A farmer who waits for the trainer.</summary>
internal sealed record ConcernRow(
    string Number, string? Village, string Reason, string Since, IEnumerable<WaitingWord> Words);

/// <summary>A word of a farmer's that nobody knew.</summary>
internal sealed record WaitingWord(string District, string Language, string Word);

/// <summary>A material by which a word can be explained.</summary>
internal sealed record MaterialView(string Key, string Name, bool Refused);

/// <summary>A word as it is understood from now on; no material when it is passed over.</summary>
internal sealed record ExplainedWord(string District, string Word, string? Material);

/// <summary>The groups that can be joined, and their time zone by its tz database name.</summary>
internal sealed record VillageView(string Zone, IEnumerable<GroupView> Groups);

/// <summary>A group by the code that joins it.</summary>
internal sealed record GroupView(int Code, string Name);
