using System.Collections.Immutable;

namespace Farhold.Physiology.Reference;

/// <summary>Whether this platform works the model out to the bit, as the one that the hashes were made on.</summary>
/// <remarks>
/// Tests hold it on x64 and in a browser, where the page that says how far a rehearsal can be trusted works it out by
/// <see cref="InPieces"/>.
/// </remarks>
public static class BitGate
{
    /// <summary>Hashes of model 1, of all states at the start, each minute and the end.</summary>
    private static readonly ImmutableArray<(string Course, ulong Hash)> Expected =
    [
        ("R01_rest_24h", 0x53DDAD11D9673BBE),
        ("R02_donor_1000mL", 0x8DE940FB19F638AC),
        ("R04_exsanguination", 0xEF019179A58B67AE),
        ("R05_tourniquet_blood_conversion", 0xEB8CBCC67D696F5C),
        ("R06_torso_crystalloid", 0xD192E3109E55168A),
        ("R07_tourniquet_6h_release", 0x981E8F09B4DAD3FE),
        ("R09_loose_tourniquet_venous", 0x43C97B22F187F11B),
        ("R10_age66_betablock_30pct", 0x709F87F1615BB562),
    ];

    public static IEnumerable<string> Names => Expected.Select(e => e.Course);

    /// <summary>All courses one after the other, in pieces of a minute of the scene, so that a page can breathe between them.</summary>
    /// <returns>After each piece: how many courses are worked out, and how many of them have other bits here.</returns>
    public static IEnumerable<(int Done, int Differing)> InPieces()
    {
        var (done, differing) = (0, 0);
        foreach (var (course, expected) in Expected)
        {
            var hash = BitHash.Start;
            foreach (var soFar in Hashes(course))
            {
                hash = soFar;
                yield return (done, differing);
            }

            done++;
            differing += hash == expected ? 0 : 1;
            yield return (done, differing);
        }
    }

    /// <exception cref="InvalidOperationException">No course has this name.</exception>
    public static bool Agrees(string course) => Expected.Single(e => e.Course == course).Hash == Hash(course);

    /// <exception cref="InvalidOperationException">No course has this name.</exception>
    public static ulong Hash(string course) => Hashes(course).Last();

    /// <summary>After each piece; the last one is of the whole course, with the time of its end.</summary>
    private static IEnumerable<ulong> Hashes(string course)
    {
        var (hash, time) = (BitHash.Start, 0.0);
        foreach (var now in Courses.All.Single(c => c.Id == course).Pieces(Models.ByNumber(1), 60))
        {
            (hash, time) = (BitHash.Add(hash, now.State), now.Time);
            yield return hash;
        }

        yield return BitHash.Add(hash, time);
    }
}
