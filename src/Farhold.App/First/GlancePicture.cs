using System.Collections.Immutable;
using NodaTime;

namespace Farhold.App.First;

/// <summary>The last picture of one casualty, shown from plain HTML before the app is up (wwwroot/first.js).</summary>
/// <param name="At">Of when the picture is; it is marked with this time.</param>
/// <param name="Cautions">Whole sentences.</param>
/// <remarks>
/// Kept on the phone as <c>{"v":1,"words":{…},"casualties":[{"id","alias","practice","at","limbs":[{"limb","limbText",
/// "verdict","verdictText","tightenedEarliest","tightenedLatest","limit"?}],"cautions":[…]}]}</c>; times are milliseconds
/// since the Unix epoch, texts are plain text in the carer's language, no HTML.
/// </remarks>
public sealed record GlancePicture(
    string Casualty,
    string Alias,
    bool Practice,
    Instant At,
    ImmutableArray<GlanceLimb> Limbs,
    ImmutableArray<string> Cautions
);

/// <param name="Limb">Wire name, such as <c>left-leg</c>.</param>
/// <param name="Verdict">Wire name, such as <c>check-first</c>.</param>
/// <param name="FirstTightened">The clock counts on from here.</param>
/// <param name="Limit">The earliest time the limit can pass; null: there is none.</param>
public sealed record GlanceLimb(string Limb, string LimbText, string Verdict, string VerdictText, Happened FirstTightened, Instant? Limit);
