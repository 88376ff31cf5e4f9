using CsCheck;
using HeapText.Agronomy.Forecasting;
using HeapText.Agronomy.Heap;

namespace HeapText.Agronomy.Tests.Forecasting;

public class HeapForecastProperties
{
    private const int Few = 100;
    private const double Rounding = 1e-12;

    [Fact]
    public void Mass_OfAnyRun_IsConserved() => Gen.Select(RandomHeaps.Any, RandomHeaps.OneOf(Member.All)).Sample(
        (request, member) =>
        {
            var start = HeapStart.From(request);
            var heap = new HeapRun(start, member, request.AmbientC);
            for (var day = 0; day < request.Days; day++)
            {
                if (request.TurnDays.Contains(day)) heap.Turn(waters: true);
                heap.PassDay();
            }

            var given = start.Dry + heap.WaterGiven;
            var found = heap.Dry + heap.Water + heap.DryLost + heap.WaterLost;
            Assert.True(Math.Abs(given - found) < 1e-9 * given, $"{given} {found}");
        },
        iter: Few);

    [Fact]
    public void Forecast_OfAnyHeap_StaysWithinBounds() => RandomHeaps.Any.Sample(request =>
    {
        var days = HeapForecast.Run(request).Days;

        Assert.Equal(Enumerable.Range(0, request.Days + 1), days.Select(day => day.Day));
        Assert.All(days, day =>
        {
            Assert.InRange(day.CoreC, request.AmbientC - 5, 85);
            Assert.InRange(day.CoreC, day.CoreLowC + 4.9, day.CoreHighC - 4.9);
            Assert.InRange(day.MoisturePercent, 0, 100);
        });
        Assert.All(days.Zip(days.Skip(1)), pair =>
        {
            Assert.True(pair.Second.DryKg <= pair.First.DryKg * (1 + Rounding));
            Assert.True(pair.Second.VolumeLitres <= pair.First.VolumeLitres * (1 + Rounding));
        });
    }, iter: Few);

    [Fact]
    public void Forecast_OnTheFirstDay_IsTheHeapAsBuilt() => RandomHeaps.Any.Sample(request =>
    {
        var first = HeapForecast.Run(request).Days[0];

        var (dry, mass) = (request.Parts.Sum(part => part.DryKg), request.Parts.Sum(part => part.MassKg));
        Assert.Equal(request.AmbientC, first.CoreC, 0.051);
        Assert.Equal(dry, first.DryKg, 1e-6);
        Assert.Equal(100 * (1 - (dry / (mass + request.WaterLitres))), first.MoisturePercent, 1e-6);
    }, iter: Few);

    [Fact]
    public void Water_PouredOnAtBuilding_NeverLowersMoistureOfThatDay() =>
        Gen.Select(RandomHeaps.Any, Gen.Double[0, 300]).Sample((request, more) =>
        {
            var wetter = request with { WaterLitres = request.WaterLitres + more };

            Assert.True(HeapForecast.Run(wetter).Days[0].MoisturePercent
                >= HeapForecast.Run(request).Days[0].MoisturePercent);
        }, iter: Few);

    [Fact]
    public void Parts_InAnyOrder_GiveTheSameForecast() =>
        Gen.Select(RandomHeaps.Any, Gen.Int).Sample((request, seed) =>
        {
            var parts = request.Parts.ToArray();
            new Random(seed).Shuffle(parts);

            var (forecast, other) = (HeapForecast.Run(request), HeapForecast.Run(request with { Parts = parts }));

            Assert.Equal(forecast.Days, other.Days);
            Assert.Equal(forecast.ReadyDay, other.ReadyDay);
        }, iter: Few);

    [Fact]
    public void Heap_TwiceAsLarge_IsNotColderAtItsPeak() => Gen.Select(RandomHeaps.Any, RandomHeaps.OneOf(Member.All))
        .Sample((request, member) =>
        {
            var larger = request with
            {
                Parts = [.. request.Parts.Select(part => part with { MassKg = 2 * part.MassKg })],
                WaterLitres = 2 * request.WaterLitres,
            };

            var (peak, other) = (PeakOf(request, member), PeakOf(larger, member));
            // Of one run, not of the forecast: its likely peak is the middle of runs that peak on different days. Where
            // nothing rots any more, how far a run shoots over is chance; and a larger heap may dry out sooner.
            const double little = 5;
            Assert.True(other >= Math.Min(peak, Parameters.HottestC) - little, $"{peak} {other}");
        }, iter: Few);

    [Fact]
    public void Check_OfMoreHeat_NeverLowersTheTemperatureOfItsDay() =>
        Gen.Select(RandomHeaps.Any, Gen.Int[0, 60], Gen.Enum<RodKind>()).Sample((request, day, rod) =>
        {
            var core = Enum.GetValues<Heat>().Order().Select(heat => HeapForecast.Run(request with
            {
                Checks = [new FieldCheck(day, heat, null, rod)],
            }).Days[day].CoreC).ToList();

            Assert.Equal(core.OrderDescending(), core);
        }, iter: Few);

    [Fact]
    public void Checks_InAnyNumber_KeepTheForecastWhole() =>
        Gen.Select(RandomHeaps.Any, RandomHeaps.Check.Array[0, 30]).Sample((request, checks) =>
        {
            var forecast = HeapForecast.Run(request with { Checks = checks });

            Assert.All(forecast.Days, day => Assert.True(double.IsFinite(day.CoreC + day.DryKg + day.VolumeLitres)));
            Assert.True(forecast.ReadyDay.Early is null || forecast.ReadyDay.Early >= 30);
            Assert.True((forecast.ReadyDay.Early ?? 999) <= (forecast.ReadyDay.Likely ?? 999));
            Assert.True((forecast.ReadyDay.Likely ?? 999) <= (forecast.ReadyDay.Late ?? 999));
        }, iter: Few);

    private static double PeakOf(ForecastRequest request, Member member) =>
        HeapHistory.Of(HeapStart.From(request), member, request, request.Days).Days.Max(day => day.CoreC);
}
