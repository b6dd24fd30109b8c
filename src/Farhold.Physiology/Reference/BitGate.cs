using System.Collections.Immutable;

namespace Farhold.Physiology.Reference;

/// <summary>Whether this platform works the model out to the bit, as the one that the hashes were made on.</summary>
/// <remarks>
/// A test holds it on x64. A page in WebAssembly calls <see cref="Differing"/> and shows what it gives: nothing, where all is equal. Where
/// something differs, a recording made elsewhere is said to be "recomputed on another build" and compared at 1e-6.
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

    /// <summary>The courses worked out, one at a time so that a page can breathe between them.</summary>
    public static IEnumerable<string> Names => Expected.Select(e => e.Course);

    /// <summary>Courses whose bits are others here; empty on a platform that agrees.</summary>
    public static ImmutableArray<string> Differing() => [.. Names.Where(n => !Agrees(n))];

    /// <exception cref="InvalidOperationException">No course has this name.</exception>
    public static bool Agrees(string course) => Expected.Single(e => e.Course == course).Hash == Hash(course);

    /// <exception cref="InvalidOperationException">No course has this name.</exception>
    public static ulong Hash(string course)
    {
        var hash = BitHash.Start;
        var end = Courses.All.Single(c => c.Id == course).Run(Models.ByNumber(1), 60, now => hash = BitHash.Add(hash, now.State));
        return BitHash.Add(hash, end.Time);
    }
}
