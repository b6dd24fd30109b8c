using System.Diagnostics;
using System.Net;

namespace Farhold.Sync.Tests.Hub;

/// <summary>The hub as a process, killed while phones send without pause: nothing that it acknowledged is lost, none doubled.</summary>
/// <remarks>A killed process loses nothing that the system had taken over; that a commit is on the disk, SqliteStoreTests assert.</remarks>
public sealed class KillTests
{
    private const int Phones = 3;

    /// <summary>A machine with other work may answer little before the first kill.</summary>
    private const int Enough = 5,
        MostLives = 20;

    [Fact]
    public async Task Nothing_acknowledged_is_lost_when_the_hub_is_killed()
    {
        var place = new HubOverLoopback(); // only for its folder and port
        await using var clearing = place;
        var phones = Enumerable.Range(0, Phones).Select(i => new Side($"phone{i}") { Hint = Head.Empty }).ToArray();
        foreach (var phone in phones)
            phone.Write("first");
        var casualties = new string[Phones];
        var acknowledged = new int[Phones];
        var random = new Random(3);
        for (var life = 0; life < Math.Max(2, Cases.Of(5)) || (acknowledged.Min() <= Enough && life < MostLives); life++)
        {
            using var hub = Start(place);
            try
            {
                await UpAsync(place.Port);
                if (life == 0)
                    for (var i = 0; i < Phones; i++)
                    {
                        using var client = new PhoneClient(phones[i], place);
                        await client.FindAsync();
                        casualties[i] = client.Casualty;
                    }

                using var end = new CancellationTokenSource();
                var sending = phones.Select((phone, i) => SendAsync(phone, i, end.Token)).ToArray();
                await Task.Delay(random.Next(300, 1_200), TestContext.Current.CancellationToken);
                hub.Kill();
                await end.CancelAsync();
                await Task.WhenAll(sending);
            }
            finally
            {
                hub.Kill();
                await hub.WaitForExitAsync(TestContext.Current.CancellationToken);
            }
        }

        Assert.All(acknowledged, a => Assert.True(a > Enough, $"only {a} acknowledged"));
        await place.StartAgainAsync();
        for (var i = 0; i < Phones; i++)
        {
            var anew = new Side("anew") { Hint = null };
            using var known = new PhoneClient(phones[i], place);
            using var client = new PhoneClient(anew, place, signer: await known.SignerAsync()) { Casualty = casualties[i] };
            Assert.Equal(HttpStatusCode.OK, await client.SyncAsync());
            Assert.InRange(anew.Lines.Count, acknowledged[i], phones[i].Lines.Count);
            Assert.Equal(anew.Lines.Count, anew.Lines.Vector[$"phone{i}"].Length); // each once, without a gap
            Assert.Equal(anew.Lines.Count, phones[i].Lines.Confirmed($"phone{i}", anew.Lines.Vector)); // the very lines
        }

        async Task SendAsync(Side phone, int i, CancellationToken stop)
        {
            using var client = new PhoneClient(phone, place) { Casualty = casualties[i] };
            while (!stop.IsCancellationRequested)
            {
                phone.Write("one more");
                try
                {
                    if (await client.SyncAsync() == HttpStatusCode.OK)
                        acknowledged[i] = Math.Max(acknowledged[i], phone.Hint!.Have[$"phone{i}"].Length);
                    else
                        await Task.Delay(100, CancellationToken.None); // asked too often
                }
                catch (Exception e) when (e is HttpRequestException or IOException)
                {
                    return;
                }
            }
        }
    }

    private static Process Start(HubOverLoopback place)
    {
        var start = new ProcessStartInfo("dotnet")
        {
            RedirectStandardOutput = true,
            ArgumentList =
            {
                Path.Combine(AppContext.BaseDirectory, "Farhold.Hub.dll"),
                "--app",
                place.Options.AppFolder,
                "--urls",
                place.Options.Listen,
                "--records",
                place.Options.Sync!.Folder,
            },
        };
        return Process.Start(start)!;
    }

    internal static async Task UpAsync(int port)
    {
        using var client = new HttpClient();
        for (var tries = 0; ; tries++)
            try
            {
                using var answer = await client.GetAsync(new Uri($"http://127.0.0.1:{port}/"));
                return;
            }
            catch (HttpRequestException) when (tries < 600)
            {
                await Task.Delay(100);
            }
    }
}
