using System.Collections.Immutable;
using System.Diagnostics;
using NodaTime;

namespace Farhold.Records;

public abstract partial record Payload
{
    /// <summary>By which rules this device judged from then on. Counted in no verdict.</summary>
    /// <param name="Rules">Id and version of the protocol.</param>
    /// <param name="Hash">SHA-256 of its file.</param>
    /// <param name="Local">Id and version of the local protocol over it; null where there is none, or an unsigned one.</param>
    /// <param name="LocalHash">SHA-256 of its file; null where there is none.</param>
    /// <param name="Issuer">Who signed it, by name and digits.</param>
    /// <param name="Reason">Why one that nobody has proven was used.</param>
    /// <param name="Until">When that ends.</param>
    /// <param name="Loosened">One sentence for everything that the local protocol loosened; default where nothing is.</param>
    public sealed record RulesStated(
        string Rules,
        string Hash,
        string? Local = null,
        string? LocalHash = null,
        Standing? Standing = null,
        string? Issuer = null,
        string? Reason = null,
        Instant? Until = null,
        ImmutableArray<string> Loosened = default
    ) : Payload
    {
        internal override Kind OfKind => Records.Kind.RulesStated;

        /// <summary>The same rules, whatever reason was given for them.</summary>
        public bool SameRules(RulesStated other) =>
            (Rules, Hash, Local, LocalHash, Standing) == (other.Rules, other.Hash, other.Local, other.LocalHash, other.Standing);

        internal static RulesStated Through(FieldCodec f, RulesStated? p) =>
            new(
                f.RequiredText(Field.Rules, p?.Rules),
                f.RequiredName(Field.Hash, p?.Hash),
                f.Text(Field.Local, p?.Local),
                f.Name(Field.LocalHash, p?.LocalHash),
                f.Word(Field.Standing, p?.Standing),
                f.Text(Field.Issuer, p?.Issuer),
                f.Text(Field.Reason, p?.Reason),
                f.Time(Field.Until, p?.Until),
                f.Texts(Field.Loosened, p?.Loosened ?? default)
            );

        internal override string Said(DateTimeZone? zone) =>
            RecordTexts.RulesInForce(Rules, FileHash.Short(Hash))
            + Standing switch
            {
                null => RecordTexts.RulesNoLocal,
                Signatures.Standing.Unsigned => RecordTexts.RulesUnsigned(FileHash.Short(LocalHash ?? "")),
                Signatures.Standing.Verified => RecordTexts.RulesSigned(Local ?? "", FileHash.Short(LocalHash ?? ""), Issuer ?? ""),
                Signatures.Standing.Expired => RecordTexts.RulesExpired(Local ?? "", FileHash.Short(LocalHash ?? "")),
                Signatures.Standing.Emergency => RecordTexts.RulesUnproven(
                    Local ?? "",
                    FileHash.Short(LocalHash ?? ""),
                    EntryText.NobodyHasProven,
                    Until is { } until ? RecordTexts.RulesUntil(Say.Time(until, zone)) : "",
                    Reason ?? ""
                ),
                _ => throw new UnreachableException(),
            }
            + (Loosened.IsDefaultOrEmpty ? "" : RecordTexts.RulesLoosened(string.Join("; ", Loosened)));
    }
}
