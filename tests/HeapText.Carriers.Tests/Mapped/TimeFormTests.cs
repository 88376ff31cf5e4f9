using HeapText.Carriers.Mapped;
using NodaTime;

namespace HeapText.Carriers.Tests.Mapped;

public sealed class TimeFormTests
{
    [Theory]
    [InlineData("rfc3339", "2026-03-02T09:00:00+03:00")]
    [InlineData("unix-seconds", "1772431200")]
    [InlineData("unix-milliseconds", "1772431200000")]
    [InlineData("pattern:dd.MM.yyyy HH:mm", " 02.03.2026 09:00 ")]
    public void Read_TimeInItsForm_IsThatMoment(string form, string text) =>
        Assert.Equal(Instant.FromUtc(2026, 3, 2, 6, 0), Form(form).Read(text));

    [Theory]
    [InlineData("rfc3339", "9999-12-31T23:59:59-18:00")]
    [InlineData("rfc3339", "0001-01-01T00:00:00+18:00")]
    [InlineData("unix-seconds", "-1")]
    [InlineData("unix-seconds", "99999999999999999999")]
    [InlineData("unix-milliseconds", "9223372036854775807")]
    [InlineData("pattern:dd.MM.uuuu HH:mm", "31.12.9999 23:59")]
    [InlineData("pattern:dd.MM.uuuu HH:mm", "01.01.-9998 00:00")]
    public void Read_MomentNoClockShows_IsNone(string form, string text) => Assert.Null(Form(form).Read(text));

    private static TimeForm Form(string text) =>
        TimeForm.Parse(text, DateTimeZone.ForOffset(Offset.FromHours(3)), out var fault)
        ?? throw new InvalidOperationException(fault);
}
