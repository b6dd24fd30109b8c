using System.Buffers;
using System.Buffers.Binary;
using System.Collections.Immutable;
using System.Diagnostics;
using System.Runtime.InteropServices;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using NodaTime;

namespace Farhold.Rehearsal.Runs;

/// <summary>A line of the truth of a rehearsal: what truly was, which no screen of a trainee shows before the end.</summary>
/// <remarks>Times are in seconds from the scenario's start, at which the trainee arrives; below 0 before it.</remarks>
public abstract record TruthLine
{
    private TruthLine(double at) => At = at;

    public double At { get; }

    /// <summary>The first line.</summary>
    /// <param name="Scenario">SHA-256 of its file.</param>
    /// <param name="StepS">Of the model, in seconds.</param>
    public sealed record Header(double At, int Version, int Model, string Scenario, ulong Seed, double StepS) : TruthLine(At);

    /// <summary>The trainee set about an act, which may have had to wait for their hands.</summary>
    /// <param name="By">Who did it, where several treat; null: nobody said.</param>
    public sealed record ActAsked(double At, AskedAct Act, string? By = null) : TruthLine(At);

    /// <param name="By">As for an act.</param>
    public sealed record LookAsked(double At, LookKind Look, string? Wound, string? By = null) : TruthLine(At);

    /// <summary>Who leads had an inject happen, whatever time or condition it was written for.</summary>
    public sealed record InjectAsked(double At, string Inject) : TruthLine(At);

    /// <summary>Who leads set what looks show from then on; with no sign, they show the truth again.</summary>
    public sealed record ShowAsked(double At, SignOverride Show) : TruthLine(At);

    /// <summary>From a moment of the wall's clock on, time passed so fast; written only where somebody leads.</summary>
    /// <param name="Rate">Times as fast as the wall; 0 while it stands.</param>
    public sealed record Paced(double At, Instant Wall, double Rate) : TruthLine(At);

    /// <param name="Sha256">Of the entry's line in the record.</param>
    public sealed record Logged(double At, Kind Kind, string Sha256) : TruthLine(At);

    /// <summary>An act began, whoever does it.</summary>
    public sealed record Began(double At, Act Act, double Until) : TruthLine(At);

    public sealed record Injected(double At, string Inject) : TruthLine(At);

    public sealed record Drawn(double At, string Name, double Value) : TruthLine(At);

    /// <param name="Asked">When the look began.</param>
    public sealed record Looked(double At, LookKind Look, string? Wound, double Asked, string Shown, string True) : TruthLine(At);

    /// <summary>What lay on a wound gave way.</summary>
    public sealed record Failed(double At, string Wound) : TruthLine(At);

    public sealed record Arrested(double At) : TruthLine(At);

    /// <summary>The whole state, as the model's slots list it.</summary>
    public sealed record Key(double At, ImmutableArray<double> State) : TruthLine(At);

    /// <summary>The last line of a rehearsal that came to its end.</summary>
    public sealed record Ended(double At, string Why) : TruthLine(At);

    /// <summary>One JSON object, without the line's end.</summary>
    public string Json()
    {
        var buffer = new ArrayBufferWriter<byte>(256);
        using (var w = new Utf8JsonWriter(buffer, new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
        {
            w.WriteStartObject();
            w.WriteNumber("at", At);
            Members(w);
            w.WriteEndObject();
        }

        return Encoding.UTF8.GetString(buffer.WrittenSpan);
    }

    private void Members(Utf8JsonWriter w)
    {
        switch (this)
        {
            case Header header:
                w.WriteNumber("truth", header.Version);
                w.WriteNumber("model", header.Model);
                w.WriteString("scenarioSha256", header.Scenario);
                w.WriteNumber("seed", header.Seed);
                w.WriteNumber("stepS", header.StepS);
                break;
            case ActAsked asked:
                w.WriteStartObject("asked");
                ActFields.Write(w, asked.Act.Act);
                if (asked.Act.Minutes is { } minutes)
                    w.WriteNumber("minutes", minutes);
                if (asked.By is not null)
                    w.WriteString("by", asked.By);
                w.WriteEndObject();
                break;
            case InjectAsked asked:
                w.WriteStartObject("asked");
                w.WriteString("inject", asked.Inject);
                w.WriteEndObject();
                break;
            case ShowAsked asked:
                w.WriteStartObject("asked");
                w.WriteStartObject("show");
                ShowFields.Write(w, asked.Show);
                w.WriteEndObject();
                w.WriteEndObject();
                break;
            case Paced paced:
                w.WriteStartObject("asked");
                w.WriteString("wall", WrittenInstant.Write(paced.Wall));
                w.WriteNumber("rate", paced.Rate);
                w.WriteEndObject();
                break;
            case LookAsked asked:
                w.WriteStartObject("asked");
                w.WriteString("look", Wire.Word(asked.Look));
                if (asked.Wound is not null)
                    w.WriteString("wound", asked.Wound);
                if (asked.By is not null)
                    w.WriteString("by", asked.By);
                w.WriteEndObject();
                break;
            case Logged logged:
                w.WriteString("logged", Kinds.Wire(logged.Kind));
                w.WriteString("sha256", logged.Sha256);
                break;
            case Began began:
                w.WriteStartObject("began");
                ActFields.Write(w, began.Act);
                w.WriteEndObject();
                w.WriteNumber("until", began.Until);
                break;
            case Injected injected:
                w.WriteString("inject", injected.Inject);
                break;
            case Drawn drawn:
                w.WriteString("draw", drawn.Name);
                w.WriteNumber("value", drawn.Value);
                break;
            case Looked looked:
                w.WriteString("look", Wire.Word(looked.Look));
                if (looked.Wound is not null)
                    w.WriteString("wound", looked.Wound);
                w.WriteNumber("askedAt", looked.Asked);
                w.WriteString("shown", looked.Shown);
                w.WriteString("true", looked.True);
                break;
            case Failed failed:
                w.WriteString("failed", failed.Wound);
                break;
            case Arrested:
                w.WriteBoolean("arrested", true);
                break;
            case Key key:
                w.WriteString("key", Convert.ToBase64String(Bytes(key.State)));
                break;
            case Ended ended:
                w.WriteString("ended", ended.Why);
                break;
            default:
                throw new UnreachableException();
        }
    }

    private static byte[] Bytes(ImmutableArray<double> state)
    {
        var bytes = new byte[sizeof(double) * state.Length];
        for (var i = 0; i < state.Length; i++)
            BinaryPrimitives.WriteDoubleLittleEndian(bytes.AsSpan(sizeof(double) * i), state[i]);
        return bytes;
    }
}

/// <summary>What a look shows, as text: in truth files, and on the command line.</summary>
public static class ShownText
{
    public static string Write(Shown shown) =>
        shown switch
        {
            Shown.Number(var value) => Say.Number(value),
            Shown.Pressures(var systolic, var diastolic) => $"{Say.Number(systolic)}/{Say.Number(diastolic)}",
            Shown.Answers(_, Confused: true) => Wire.Word(Mental.Confused),
            Shown.Answers(var to, _) => Wire.Word(to),
            Shown.Bleeds(var seen) => Wire.Word(seen),
            Shown.Pulses(var felt) => Wire.Word(felt),
            Shown.Says(var yes) => yes ? "yes" : "no",
            Shown.Skin(var pale, var cool, var clammy) => string.Join(
                ' ',
                pale ? "pale" : "rosy",
                cool ? "cool" : "warm",
                clammy ? "clammy" : "dry"
            ),
            Shown.CannotTell => "cannot-tell",
            _ => throw new UnreachableException(),
        };
}
