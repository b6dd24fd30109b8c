using System.Globalization;
using System.Text;
using Farhold.Hub.Tests.Harness;
using Farhold.Xml;
using Microsoft.Playwright;

namespace Farhold.Hub.Tests;

/// <summary>What reads tracks in the browser against what reads them on the command line.</summary>
public class TrackReadingTests(Browser browser) : PhoneTest(browser)
{
    private const string Broken = "From here on the file is not readable XML";

    private static readonly string Cases = Path.Combine(Published.Root, "tests", "Farhold.Tests", "cases", "gpx");

    [Fact]
    public async Task Both_make_the_same_of_every_file_of_the_tests()
    {
        foreach (var file in Directory.GetFiles(Cases, "*.gpx").Order(StringComparer.Ordinal))
            await AgreeAsync(Path.GetFileName(file), await File.ReadAllBytesAsync(file, TestContext.Current.CancellationToken));
    }

    private static readonly string[] Texts =
    [
        "",
        " ",
        "\n\n",
        "<?xml version='1.0'?>\n\n",
        "<!-- a -->\n\n",
        "<?a b",
        "a\nb\n<gpx/>",
        "<gpx/>\n\nab\nc\n",
        "<gpx/>\n&amp;\n",
        "<",
        "<gpx",
        "<gpx>",
        "<gpx/>",
        "<gpx></gpx",
        "<gpx/><gpx/>",
        "<gpx/>x",
        "x<gpx/>",
        " <gpx/>",
        " <?xml version='1.0'?><gpx/>",
        Track("<name>a &amp; b &lt;&gt;&quot;&apos; &#65;&#x42; &#xA0;</name>"),
        Track("<name>a & b</name>\n<x>;</x>"),
        Track("<name>a &\nb;</name>"),
        Track("<name>&nbsp;</name>"),
        Track("<name>&;</name>"),
        Track("<name>&#0;</name>"),
        Track("<name>&#xFFFF;</name>"),
        Track("<name>a]]>b</name>"),
        Track("<name> <![CDATA[ a <b> ]]> <!-- c --> d <?e f?> </name>"),
        Track("<name><!-- a -- b --></name>"),
        Track("<name><![CDATA[ a"),
        Track("<!-- a"),
        Track("<name>" + new string('n', 300) + "</name>"),
        Track("<name>\u0001</name>"),
        Track("<name>\uFFFE</name>"),
        Track("<name>\U0001F3D4</name>"),
        Track("<a b='1' b='2'/>"),
        Track("<a b=1/>"),
        Track("<a b='1'c='2'/>"),
        Track("<a b='<'/>"),
        Track("<a b='&x;'/>"),
        Track("<a></b>"),
        Track("<1/>"),
        Track("<p:a/>"),
        Track("<p:a xmlns:p='u'/>"),
        Track("<p:a xmlns:p=''/>"),
        Track("<a xmlns:p='u' xmlns:q='u' p:b='1' q:b='2'/>"),
        Track("<a:b:c/>"),
        Track("<a b\n=\r\n'1'\r/>\r\n<trkpt\r\nlat='146'\rlon='8'/>"),
        "<gpx>\r<trk>\r\n<trkseg>\n\r<trkpt lat='x' lon='8'/></trkseg></trk></gpx>",
        "<g:gpx xmlns:g='http://www.topografix.com/GPX/1/1'><g:trk><g:trkseg><g:trkpt g:lat='1' lat='46' lon='8'/><g:trkpt lat='47' "
            + "lon='8'/></g:trkseg></g:trk></g:gpx>",
        "<?xml version='1.0' standalone='yes'?>" + Track(""),
        "<?xml version='1.1'?>" + Track(""),
        "<?xml version='2.0'?>" + Track(""),
        "<?xml version='1.0' encoding='UTF-16'?>" + Track(""),
        "<?xml version='1.0' encoding='utf-8'?>\n" + Track(""),
        "<?xml version='1.0' encoding='windows-1252'?>" + Track(""),
        "<?xml version='1.0' encoding='no such'?>" + Track(""),
        "<?xml version='1.0' encoding='UTF-8'" + Track(""),
        "<!DOCTYPE gpx>" + Track(""),
        "<!doctype gpx>" + Track(""),
        "<!DOCTYPE gpx [<!ENTITY a 'b'>",
        Track("<!DOCTYPE gpx>"),
        "<gpx><trk><trkseg>\n" + string.Concat(Enumerable.Range(0, 70).Select(i => "<a>\n")),
    ];

    [Fact]
    public async Task Both_make_the_same_of_every_oddity_of_xml()
    {
        foreach (var text in Texts)
            await AgreeAsync(text, Encoding.UTF8.GetBytes(text));
    }

    [Fact]
    public async Task Both_read_the_same_encodings()
    {
        foreach (var name in new[] { "utf-8", "utf-16", "utf-16BE", "utf-32", "iso-8859-1", "us-ascii" })
        foreach (var mark in new[] { true, false })
        foreach (var declared in new[] { $"<?xml version=\"1.0\" encoding=\"{name}\"?>\r\n", "" })
        {
            var encoding = Encoding.GetEncoding(name);
            byte[] bytes = [.. mark ? encoding.GetPreamble() : [], .. encoding.GetBytes(declared + Track("<name>Skarvedal, Überø</name>"))];
            await AgreeAsync($"{name} {mark} {declared.Length > 0}", bytes);
        }
    }

    /// <summary>Cut anywhere or with a byte changed: nothing half-read comes through, and both say so.</summary>
    [Fact]
    public async Task Both_refuse_the_same_of_what_is_damaged()
    {
        var chance = new Random(1);
        foreach (var name in new[] { "some-missing.gpx", "nested-extensions.gpx" })
        {
            var whole = await File.ReadAllBytesAsync(Path.Combine(Cases, name), TestContext.Current.CancellationToken);
            for (var i = 0; i < 60; i++)
            {
                await AgreeAsync($"{name} cut", whole[..chance.Next(whole.Length)]);
                var changed = whole.ToArray();
                var (at, to) = (chance.Next(whole.Length), chance.Next(256));
                changed[at] = (byte)to;
                await AgreeAsync($"{name} with {to} at {at}", changed);
            }
        }
    }

    [Fact]
    public async Task A_track_of_10_MB_is_read_while_the_page_stays_awake_and_can_be_stopped()
    {
        var text = new StringBuilder("<gpx version=\"1.1\" xmlns=\"http://www.topografix.com/GPX/1/1\"><trk><name>long</name><trkseg>\n");
        for (var i = 0; text.Length < 10_000_000; i++)
            text.Append(
                CultureInfo.InvariantCulture,
                $"  <trkpt lat=\"{46 + (i * 1e-5):F6}\" lon=\"8.000000\">\n    <ele>{900 + (i % 7)}</ele>\n    "
                    + $"<time>2031-05-04T{i / 3600 % 24:00}:{i / 60 % 60:00}:{i % 60:00}Z</time>\n  </trkpt>\n"
            );
        var bytes = Encoding.UTF8.GetBytes(text.Append("</trkseg></trk></gpx>").ToString());
        await LoadAsync("long.gpx", bytes);
        var reading = Page.GetByText("Reading the track. It counts only once it is read whole.");
        await Assertions.Expect(reading).ToBeVisibleAsync();
        await Page.Button("Stop").TapAsync();
        await Assertions.Expect(reading).ToHaveCountAsync(0);
        await Assertions.Expect(Page.Button("Keep this stage")).ToHaveCountAsync(0);

        await LoadAsync("long.gpx", bytes, open: false);
        await Assertions.Expect(Page.Button("Keep this stage")).ToBeVisibleAsync();
    }

    [Theory]
    [InlineData("billion-laughs.gpx", "document type (DOCTYPE)")]
    [InlineData("external-entity.gpx", "document type (DOCTYPE)")]
    [InlineData("deep", "nested more than 64 deep")]
    [InlineData("huge name", "not readable XML")]
    public async Task What_is_made_to_do_harm_is_refused(string name, string why)
    {
        var asked = new List<string>();
        Page.Request += (_, request) => asked.Add(request.Url);
        await LoadAsync(
            name + ".gpx",
            name switch
            {
                "deep" => Encoding.UTF8.GetBytes("<gpx>" + string.Concat(Enumerable.Repeat("<a>", 3_000_000))),
                "huge name" => Encoding.UTF8.GetBytes("<gpx><" + new string('a', 10_000_000)),
                _ => await File.ReadAllBytesAsync(Path.Combine(Cases, name), TestContext.Current.CancellationToken),
            }
        );
        await Assertions.Expect(Page.Locator("main [role=alert]")).ToContainTextAsync(why);
        Assert.All(asked, url => Assert.StartsWith(Server.Address, url, StringComparison.Ordinal));
        Assert.DoesNotContain(asked, url => url.Contains("passwd", StringComparison.Ordinal));
    }

    private static string Track(string more) =>
        $"<gpx xmlns='http://www.topografix.com/GPX/1/1'><trk>{more}<trkseg>\n<trkpt lat='46' lon='8'><ele>900</ele></trkpt>\n<trkpt "
        + $"lat='46.001' lon='8'/></trkseg></trk></gpx>";

    private async Task LoadAsync(string name, byte[] content, bool open = true)
    {
        if (open)
        {
            await Page.ReadCautionsAsync();
            await Page.OpenCasualtyAsync("Tor");
            await Page.GoToAsync("Way out");
            await Page.GetByText("Load a plan or a track").TapAsync();
        }

        await Page.GetByLabel("Plan (JSON) with its tracks, or one GPX track")
            .SetInputFilesAsync(
                new FilePayload
                {
                    Name = name,
                    MimeType = "application/gpx+xml",
                    Buffer = content,
                }
            );
    }

    private async Task AgreeAsync(string name, byte[] content)
    {
        await Page.EvaluateAsync("async () => { globalThis.xml ??= await import('./xml.js'); await xml.ready(); }");
        var here = await Task.Run(
            () => Gpx.Parse(content, name, bytes => new FedXmlNodes(bytes, new PageFeed(Page))),
            TestContext.Current.CancellationToken
        );
        switch ((XmlTracks.Parse(content, name), here))
        {
            case (Read<Track>.Usable(var there), Read<Track>.Usable(var track)):
                Assert.Equal((name, there.Name), (name, track.Name));
                Assert.Equal(there.Segments.Select(s => s.Points.Length), track.Segments.Select(s => s.Points.Length));
                Assert.Equal(there.Points, track.Points);
                Assert.Equal(there.Waypoints.AsEnumerable(), track.Waypoints);
                Assert.Equal(there.Warnings.AsEnumerable(), track.Warnings);
                break;
            case (Read<Track>.Refused(var there), Read<Track>.Refused(var why)):
                Assert.Equal((name, Told(there)), (name, Told(why)));
                break;
            case var (there, different):
                Assert.Fail($"{name}: {Told(there)} there, {Told(different)} here");
                break;
        }
    }

    /// <summary>Where XML breaks the two agree in the line; the column is that of the character one of them stumbles over.</summary>
    private static string Told(Refusal refusal) =>
        refusal.Reason.StartsWith(Broken, StringComparison.Ordinal)
        || refusal.Reason.StartsWith("The file is not XML", StringComparison.Ordinal)
            ? $"{refusal.File}:{refusal.Line} {refusal.Reason}"
            : refusal.ToString();

    private static string Told(IEnumerable<Refusal> refusals) => string.Join("; ", refusals.Select(Told));

    private static string Told(Read<Track> read) => read is Read<Track>.Refused(var why) ? Told(why) : "usable";

    /// <summary>The script in the page, fed from here.</summary>
    private sealed class PageFeed : IXmlFeed
    {
        private readonly IPage page;

        public PageFeed(IPage page)
        {
            this.page = page;
            page.EvaluateAsync("() => { globalThis.feed = xml.open(); }").GetAwaiter().GetResult();
        }

        public string Take(string text, bool isLast) =>
            page.EvaluateAsync<string>("([text, isLast]) => xml.take(feed, text, isLast)", new object[] { text, isLast })
                .GetAwaiter()
                .GetResult();

        public void Dispose() { }
    }
}
