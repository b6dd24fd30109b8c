using CsCheck;

namespace Farhold.Tests.WayOut.Reach;

public class ReachLawsTests
{
    private const int Trials = 150;

    private static readonly Gen<string> Time = Gen.Select(
        Gen.Int[1, 60],
        Gen.Int[0, 60],
        Gen.Int[0, 200],
        (low, more, most) => $"{{\"low\":{low},\"likely\":{low + more},\"high\":{low + more + most}}}"
    );

    private static readonly Gen<string> Exit = Gen.Select(
        Gen.Int[0, 100],
        Gen.Int[1, 60],
        Gen.Int[0, 500],
        Time,
        (at, km, down, onward) =>
            FormattableString.Invariant(
                $"{{\"at\":{SomeRoute.Place(at / 10.0)},\"distanceKm\":{km / 10.0},\"descentM\":{Math.Min(down, 50 * km)},\"onward\":{onward}}}"
            )
    );

    private static readonly Gen<string> PickUp = Gen.Select(
        Gen.Int[0, 100],
        Gen.Double[0, 1],
        Time,
        Time,
        (at, probability, wait, onward) =>
            FormattableString.Invariant(
                $"{{\"mode\":\"vehicle\",\"at\":{SomeRoute.Place(at / 10.0)},\"probability\":{probability:F3},\"wait\":{wait},\"onward\":{onward}}}"
            )
    );

    /// <summary>What a route has besides its exits.</summary>
    private static readonly Gen<string> Rest = Gen.Select(
        Gen.Bool,
        Gen.Bool,
        PickUp,
        Time,
        Time,
        Gen.Double[0, 1],
        (carry, stop, pick, call, onward, rho) =>
            FormattableString.Invariant(
                $"\"track\":\"a.gpx\",\"start\":\"2031-05-04T14:00:00Z\",\"spacingM\":1000,\"correlation\":{rho:F2},"
            )
            + (carry ? "\"mode\":\"carry\",\"bearers\":8," : "\"mode\":\"walk\",")
            + (stop ? "\"dark\":\"stop\"," : "")
            + $"\"call\":[{call}],\"end\":{{\"onward\":{onward}}},\"pickUps\":[{pick}]"
    );

    /// <summary>
    /// With pick-ups that are sure to come: what a party does where one fails is chosen by its own P90, which these laws don't bind.
    /// </summary>
    private static readonly Gen<string> Sure = Rest.Select(route =>
        System.Text.RegularExpressions.Regex.Replace(route, "\"probability\":[0-9.]+", "\"probability\":1")
    );

    private static ReachProfile Profile(string route, Darkness darkness) =>
        SomeRoute.Profile("{" + route + "}", darkness: darkness, trials: Trials);

    private static double Late(ReachPoint point) => point.P90?.TotalSeconds ?? double.PositiveInfinity;

    [Fact]
    public void One_more_exit_never_makes_any_point_later() =>
        Gen.Select(Sure, Exit, Exit)
            .Sample(
                (route, one, two) =>
                {
                    var few = Profile($"{route},\"exits\":[{one}]", SomePlan.Nights);
                    var more = Profile($"{route},\"exits\":[{one},{two}]", SomePlan.Nights);
                    Assert.All(few.Points.Zip(more.Points), pair => Assert.True(Late(pair.Second) <= Late(pair.First) + 1e-6));
                },
                iter: 60
            );

    [Fact]
    public void A_shorter_exit_never_makes_any_point_later() =>
        Gen.Select(Sure, Exit, Gen.Int[1, 20])
            .Sample(
                (route, one, less) =>
                {
                    var far = Profile(
                        $"{route},\"exits\":[{one.Replace("\"descentM\"", $"\"ascentM\":{less},\"descentM\"", StringComparison.Ordinal)}]",
                        SomePlan.Nights
                    );
                    var near = Profile($"{route},\"exits\":[{one}]", SomePlan.Nights);
                    Assert.All(far.Points.Zip(near.Points), pair => Assert.True(Late(pair.Second) <= Late(pair.First) + 1e-6));
                },
                iter: 40
            );

    [Fact]
    public void An_exit_moved_nearer_to_the_start_never_makes_the_start_later() =>
        Gen.Select(Sure, Gen.Int[1, 100], Gen.Int[1, 100])
            .Sample(
                (route, a, b) =>
                {
                    ReachProfile At(int tenths) =>
                        Profile(
                            $"{route},\"exits\":[{{\"at\":{SomeRoute.Place(tenths / 10.0)},\"low\":10,\"likely\":20,\"high\":60}}]",
                            SomePlan.Nights
                        );
                    Assert.True(Late(At(Math.Min(a, b)).Points[0]) <= Late(At(Math.Max(a, b)).Points[0]) + 1e-6);
                },
                iter: 40
            );

    [Fact]
    public void Darkness_never_makes_any_point_sooner() =>
        Gen.Select(Rest, Sure, Exit, Gen.Int[0, 23], Gen.Int[1, 14])
            .Sample(
                (unsure, route, one, dusk, hours) =>
                {
                    foreach (var text in new[] { unsure, $"{route},\"exits\":[{one}]" })
                    {
                        var (light, dark) = (Profile(text, SomeRoute.NoNight), Profile(text, SomePlan.NightsFrom(dusk, hours)));
                        Assert.All(light.Points.Zip(dark.Points), pair => Assert.True(Late(pair.First) <= Late(pair.Second) + 1e-6));
                    }
                },
                iter: 50
            );

    [Fact]
    public void Quantiles_without_sorting_are_those_of_the_sorted() =>
        Gen.Select(Gen.Double[0, 10].Array[1, 60], Gen.Int[0, 3], Gen.Double[0.01, 0.99])
            .Sample(
                (some, never, p) =>
                {
                    double[] figures = [.. some.Select(s => Math.Round(s)), .. Enumerable.Repeat(double.PositiveInfinity, never)];
                    double[] sorted = [.. figures.Order()];
                    Assert.Equal(QuantileEstimate.Of(sorted, p).Value, Farhold.WayOut.Reach.Select.Quantile(figures, p));
                },
                iter: 2000
            );
}
