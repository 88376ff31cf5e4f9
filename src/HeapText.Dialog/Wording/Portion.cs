using System.Runtime.Serialization;

namespace HeapText.Dialog.Wording;

/// <summary>An amount of a material in a local measure.</summary>
[DataContract]
public sealed record Portion(
    [property: DataMember(Order = 0)] string Material,
    [property: DataMember(Order = 1)] decimal Amount,
    [property: DataMember(Order = 2)] string Measure);
