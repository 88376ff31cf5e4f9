using HeapText.Carriers.Smpp.Wire;
using NodaTime;

namespace HeapText.Carriers.Tests.Smpp.Wire;

/// <summary>Values worked out by hand from SMPP 3.4, section 7.1.1.</summary>
public sealed class SmppTimeTests
{
    private static readonly Instant Now = Instant.FromUtc(2026, 2, 11, 6, 30, 15);

    [Fact]
    public void Validity_Absolute_IsUtcWithoutParts() =>
        Assert.Equal("260211160005000+", SmppTime.Validity(
            Instant.FromUtc(2026, 2, 11, 16, 0, 5) + Duration.FromMilliseconds(900), Now, SmppTimeForm.Absolute));

    [Theory]
    [InlineData(34_185, "000000092945000R")]
    [InlineData(90_061, "000001010101000R")]
    [InlineData(31 * 86_400, "000030235959000R")]
    [InlineData(1, "000000000001000R")]
    [InlineData(0, "000000000001000R")]
    [InlineData(-60, "000000000001000R")]
    public void Validity_Relative_IsDaysHoursMinutesSecondsFromNow(int seconds, string written) =>
        Assert.Equal(written, SmppTime.Validity(Now + Duration.FromSeconds(seconds), Now, SmppTimeForm.Relative));
}
