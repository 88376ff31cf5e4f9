using HeapText.Agronomy.Heap;
using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using NodaTime;

namespace HeapText.Dialog.Tests.Engine;

public sealed class ReminderTests
{
    private static readonly Duration Day = Duration.FromDays(1);

    /// <summary>Common practice, no source: a first turning, one on each of the next two days, then weekly, four in
    /// all.</summary>
    [Fact]
    public void Turnings_DoneOnTheirDay_FollowTheMethod()
    {
        var talker = Talker.WithHeap();
        List<LocalDate> days = [];
        while (talker.Heap.Step == HeapStep.Turning)
        {
            talker.Now = talker.NextDue!.Value;
            talker.Wake().Hear("1", "1", "3", "turned");
            days.Add(talker.Heap.LastTurned!.Value);
        }

        var built = talker.Heap.BuiltOn!.Value;
        Assert.Equal([3, 4, 5, 12], days.Select(day => Period.DaysBetween(built, day)));
    }

    [Fact]
    public void Turnings_OfAnOfficesOwnMethod_FollowItsFigures()
    {
        var method = HeapMethods.Usual with { TurnDays = [5, 15] };
        var talker = Talker.WithHeap(method: method);

        talker.Pass(5 * Day);
        talker.Hear("turned");

        Assert.Equal(talker.Heap.BuiltOn!.Value.PlusDays(15), talker.Heap.Due);
    }

    [Theory]
    [InlineData("cannot turn today, there is smoke from the heap")]
    [InlineData("cannot turn today, my child is sick")]
    public void Delay_ForAnAlarm_IsTakenAfterTheUrgentAdvice(string text)
    {
        var talker = Talker.WithHeap();
        talker.Pass(3 * Day);

        talker.Hear(text);

        Assert.Equal(ConcernReason.Urgent, talker.Farmer!.Concern!.Reason);
        Assert.Contains("clinic", talker.Says[0].Text, StringComparison.Ordinal);
        Assert.Contains("ask again", talker.Says[^1].Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("cannot turn today, am sick")]
    [InlineData("siwezi leo, naumwa")]
    public void Delay_OfWhoIsIll_IsNoAlarm(string text)
    {
        var talker = Talker.WithHeap();
        talker.Pass(3 * Day);

        talker.Hear(text);

        Assert.Null(talker.Farmer!.Concern);
        Assert.Single(talker.Says);
    }

    [Fact]
    public void Reminder_OnATurningDay_ComesAtTheFarmersHourWithItsCautionFirst()
    {
        var talker = Talker.WithHeap();

        var said = talker.Pass(3 * Day);

        Assert.Equal(2, said.Count);
        Assert.All(said, s => Assert.Equal(new LocalTime(7, 0), Local(s.At, Talker.Zone).TimeOfDay));
        Assert.Contains("can burn", said[0].Message.Text, StringComparison.Ordinal);
        Assert.Contains("Leave a rod", said[1].Message.Text, StringComparison.Ordinal);
        Assert.All(said, s => Assert.Equal(Priority.Reminder, s.Message.Priority));
    }

    [Theory]
    [InlineData(23)]
    [InlineData(3)]
    [InlineData(19)]
    public void Reminder_ServiceDownUntilANightHour_WaitsForTheFarmersHour(int hourOfReturn)
    {
        var talker = Talker.WithHeap();
        talker.Now = At(talker.Heap.Due!.Value.PlusDays(1), hourOfReturn);

        talker.Wake();

        Assert.Empty(talker.Says);
        var wakes = Local(talker.NextDue!.Value, Talker.Zone);
        Assert.Equal(new LocalTime(7, 0), wakes.TimeOfDay);
        Assert.True(talker.NextDue > talker.Now);
    }

    [Fact]
    public void Reminder_ServiceDownPastTheDay_IsNotSentAsIfItWereToday()
    {
        var talker = Talker.WithHeap();
        talker.Now = At(talker.Heap.Due!.Value.PlusDays(2), 10);

        talker.Wake();

        Assert.Contains("has waited since Thursday 5 March", talker.Says[0].Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Reminder_ExpiresOnTheEveningOfItsDay()
    {
        var talker = Talker.WithHeap();

        var said = talker.Pass(3 * Day);

        Assert.All(said, s => Assert.Equal(At(new LocalDate(2026, 3, 5), 19), s.Message.ExpiresAt));
    }

    [Fact]
    public void Reminder_WokenTwice_IsSaidOnce()
    {
        var talker = Talker.WithHeap();
        talker.Pass(3 * Day);

        talker.Wake();

        Assert.Empty(talker.Says);
    }

    /// <summary>Zones with a gap, an overlap or a changed offset: tz database, as shipped with NodaTime.</summary>
    [Theory]
    [InlineData("Africa/Cairo", "2026-04-20")] // clock forward in the night of 24 April
    [InlineData("Africa/Cairo", "2026-10-26")] // clock back in the night of 30 October
    [InlineData("Africa/Casablanca", "2026-02-12")] // back for Ramadan
    [InlineData("Africa/Juba", "2021-01-28")] // offset changed on 1 February 2021
    [InlineData("America/Asuncion", "2026-03-20")]
    public void Reminders_AcrossAChangeOfTheClock_ComeOncePerLocalDate(string zone, string start)
    {
        var at = At(NodaTime.Text.LocalDatePattern.Iso.Parse(start).GetValueOrThrow(), 9, zone);
        var talker = new Talker(zone) { Now = at }.Hear(Talker.ToABuiltHeap);

        var said = talker.Pass(40 * Day);

        var dates = said.Select(s => Local(s.At, zone)).ToList();
        Assert.All(dates, local => Assert.Equal(7, local.Hour));
        var reminders = said.Where(s => s.Message.Text.StartsWith("Turn your heap", StringComparison.Ordinal)
                || s.Message.Text.StartsWith("Your heap was to be turned", StringComparison.Ordinal))
            .Select(s => Local(s.At, zone).Date).ToList();
        Assert.NotEmpty(reminders);
        Assert.Equal(reminders.Distinct(), reminders);
    }

    private static LocalDateTime Local(Instant at, string zone) =>
        at.InZone(DateTimeZoneProviders.Tzdb[zone]).LocalDateTime;

    private static Instant At(LocalDate day, int hour, string zone = Talker.Zone) =>
        (day + new LocalTime(hour, 0)).InZoneLeniently(DateTimeZoneProviders.Tzdb[zone]).ToInstant();
}
