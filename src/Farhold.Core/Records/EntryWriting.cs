using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using NodaTime;

namespace Farhold.Records;

/// <summary>Makes new entries, as the line that goes to disk.</summary>
public static class EntryWriting
{
    /// <summary>Letters of all scripts stay readable in the file; what JSON has to escape is escaped.</summary>
    private static readonly JsonWriterOptions Plainly = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <exception cref="ArgumentException">The entry says something the record does not accept, such as a number out of range.</exception>
    public static Entry Write(EntryId id, Happened happened, Instant recorded, string by, Payload payload)
    {
        var json = Json(w =>
        {
            w.WriteString("id", id.ToString());
            Envelope(w, happened, recorded, by, payload);
        });
        return new EntryReader().Read(json, "new entry", 1) switch
        {
            Read<Entry>.Usable usable => usable.Value,
            Read<Entry>.Refused refused =>
                throw new ArgumentException(string.Join("; ", refused.Refusals.Select(r => r.Reason)), nameof(payload)),
            _ => throw new UnreachableException(),
        };
    }

    /// <summary>The entry without its id, for a store that numbers it as it writes.</summary>
    /// <param name="practice">Marks the line as belonging to a practice casualty.</param>
    /// <exception cref="ArgumentException">As for <see cref="Write(EntryId, Happened, Instant, string, Payload)"/>.</exception>
    public static string Body(Happened happened, Instant recorded, string by, bool practice, Payload payload)
    {
        _ = Write(new("check", 1), happened, recorded, by, payload);
        return Encoding.UTF8.GetString(Json(w =>
        {
            Envelope(w, happened, recorded, by, payload);
            if (practice)
                w.WriteBoolean("practice", true);
        }));
    }

    /// <summary>Writes when something happened: an instant, or an object of earliest and latest.</summary>
    public static void Write(Utf8JsonWriter w, string name, Happened happened)
    {
        if (happened.IsInstant)
        {
            w.WriteString(name, WrittenInstant.Write(happened.Earliest));
            return;
        }

        w.WriteStartObject(name);
        w.WriteString("earliest", WrittenInstant.Write(happened.Earliest));
        w.WriteString("latest", WrittenInstant.Write(happened.Latest));
        w.WriteEndObject();
    }

    private static byte[] Json(Action<Utf8JsonWriter> members)
    {
        using var stream = new MemoryStream(256);
        using (var w = new Utf8JsonWriter(stream, Plainly))
        {
            w.WriteStartObject();
            members(w);
            w.WriteEndObject();
        }

        return stream.ToArray();
    }

    private static void Envelope(Utf8JsonWriter w, Happened happened, Instant recorded, string by, Payload payload)
    {
        Write(w, "happened", happened);
        w.WriteString("recorded", WrittenInstant.Write(recorded));
        w.WriteString("by", by);
        w.WriteString("kind", payload is Payload.OfNewerVersion other ? other.Kind : Kinds.Wire(Kinds.Of(payload)));
        Fields(w, payload);
    }

    private static void Fields(Utf8JsonWriter w, Payload payload)
    {
        switch (payload)
        {
            case Payload.CasualtyOpened p:
                Text(w, "casualty", p.Casualty);
                w.WriteString("alias", p.Alias);
                Word(w, "sex", p.Sex);
                Number(w, "ageYears", p.AgeYears);
                Number(w, "massKg", p.MassKg);
                Texts(w, "allergies", p.Allergies);
                Texts(w, "medicines", p.Medicines);
                Text(w, "history", p.History);
                break;
            case Payload.WoundFound p:
                w.WriteString("wound", p.Wound);
                Word(w, "limb", p.Limb);
                Word(w, "region", p.Region);
                Word<WoundNature>(w, "nature", p.Nature);
                Text(w, "note", p.Note);
                break;
            case Payload.TourniquetTightened p:
                w.WriteString("tourniquet", p.Tourniquet);
                Word<Limb>(w, "limb", p.Limb);
                Text(w, "place", p.Place);
                Word(w, "make", p.Make);
                Text(w, "wound", p.Wound);
                Word(w, "why", p.Why);
                break;
            case Payload.TourniquetSlackened p:
                w.WriteString("tourniquet", p.Tourniquet);
                break;
            case Payload.TourniquetRemoved p:
                w.WriteString("tourniquet", p.Tourniquet);
                break;
            case Payload.WoundPacked p:
                w.WriteString("wound", p.Wound);
                Word<PackingMaterial>(w, "material", p.Material);
                break;
            case Payload.PressureHeld p:
                w.WriteString("wound", p.Wound);
                Number(w, "minutes", p.Minutes);
                break;
            case Payload.DressingApplied p:
                w.WriteString("wound", p.Wound);
                Word<DressingKind>(w, "dressing", p.Dressing);
                break;
            case Payload.BleedingChecked p:
                w.WriteString("wound", p.Wound);
                Word<Bleeding>(w, "bleeding", p.Bleeding);
                break;
            case Payload.AttemptStarted p:
                w.WriteString("wound", p.Wound);
                w.WriteString("tourniquet", p.Tourniquet);
                break;
            case Payload.AttemptEnded p:
                w.WriteString("wound", p.Wound);
                w.WriteString("tourniquet", p.Tourniquet);
                Word<AttemptOutcome>(w, "outcome", p.Outcome);
                Text(w, "note", p.Note);
                break;
            case Payload.SignsTaken p:
                Signs(w, p);
                break;
            case Payload.WatchStated p:
                w.WriteBoolean("able", p.Able);
                Word(w, "who", p.Who);
                break;
            case Payload.SuppliesStated p:
                w.WriteString("item", p.Item);
                w.WriteNumber("count", p.Count);
                break;
            case Payload.DrugGiven p:
                w.WriteString("drug", p.Drug);
                Number(w, "amount", p.Amount);
                w.WriteString("unit", p.Unit);
                w.WriteString("route", p.Route);
                Text(w, "note", p.Note);
                break;
            case Payload.FluidGiven p:
                Word<Fluid>(w, "fluid", p.Fluid);
                Number(w, "millilitres", p.Millilitres);
                w.WriteString("route", p.Route);
                break;
            case Payload.UrineMeasured p:
                Number(w, "millilitres", p.Millilitres);
                break;
            case Payload.TaskDone p:
                w.WriteString("task", p.Task);
                Text(w, "note", p.Note);
                break;
            case Payload.HelpExpected p:
                Word(w, "care", p.Care);
                Time(w, "likely", p.Likely);
                Time(w, "earliest", p.Earliest);
                Time(w, "latest", p.Latest);
                Text(w, "basis", p.Basis);
                Text(w, "plan", p.Plan);
                break;
            case Payload.AdviceReceived p:
                w.WriteString("from", p.From);
                w.WriteString("text", p.Text);
                Texts(w, "allows", p.Allows);
                Text(w, "answers", p.Answers?.ToString());
                Time(w, "until", p.Until);
                Flag(w, "readBack", p.ReadBack);
                break;
            case Payload.CasualtyLookedOver p:
                Flag(w, "bleedingElsewhere", p.BleedingElsewhere);
                Flag(w, "trunkWound", p.TrunkWound);
                Flag(w, "breathingHard", p.BreathingHard);
                Flag(w, "veryCold", p.VeryCold);
                Flag(w, "bloodThinner", p.BloodThinner);
                break;
            case Payload.RegionLooked p:
                Word(w, "limb", p.Limb);
                Word(w, "region", p.Region);
                Word<LookFound>(w, "found", p.Found);
                Text(w, "note", p.Note);
                break;
            case Payload.ContactTried p:
                w.WriteBoolean("reached", p.Reached);
                Text(w, "who", p.Who);
                Text(w, "how", p.How);
                break;
            case Payload.QuestionAsked p:
                w.WriteString("to", p.To);
                w.WriteString("text", p.Text);
                break;
            case Payload.CasualtyMoved p:
                Word<Movement>(w, "how", p.How);
                Word<MovePhase>(w, "phase", p.Phase);
                Text(w, "note", p.Note);
                break;
            case Payload.PositionNoted p:
                Number(w, "lat", p.Lat);
                Number(w, "lon", p.Lon);
                Number(w, "accuracyM", p.AccuracyM);
                Number(w, "altitudeM", p.AltitudeM);
                break;
            case Payload.OutcomeReported p:
                w.WriteString("from", p.From);
                Flag(w, "survived", p.Survived);
                Word(w, "limb", p.Limb);
                Word(w, "limbOutcome", p.LimbOutcome);
                Text(w, "note", p.Note);
                break;
            case Payload.RulesStated p:
                w.WriteString("rules", p.Rules);
                w.WriteString("hash", p.Hash);
                Text(w, "local", p.Local);
                Text(w, "localHash", p.LocalHash);
                Word(w, "standing", p.Standing);
                Text(w, "issuer", p.Issuer);
                Text(w, "reason", p.Reason);
                Time(w, "until", p.Until);
                Texts(w, "loosened", p.Loosened);
                break;
            case Payload.NoteWritten p:
                w.WriteString("text", p.Text);
                break;
            case Payload.EntryAmended p:
                w.WriteString("target", p.Target.ToString());
                w.WritePropertyName("replace");
                w.WriteRawValue(p.Replace.Utf8.Span);
                break;
            case Payload.EntryWithdrawn p:
                w.WriteString("target", p.Target.ToString());
                w.WriteString("reason", p.Reason);
                break;
            case Payload.CareEnded p:
                Word<CareEnd>(w, "how", p.How);
                Text(w, "to", p.To);
                Text(w, "note", p.Note);
                break;
            case Payload.OfNewerVersion:
                break;
            default:
                throw new UnreachableException();
        }
    }

    private static void Signs(Utf8JsonWriter w, Payload.SignsTaken p)
    {
        Number(w, "heartRate", p.HeartRate);
        Number(w, "breathRate", p.BreathRate);
        Number(w, "systolic", p.Systolic);
        Number(w, "diastolic", p.Diastolic);
        Number(w, "spo2", p.Spo2);
        Number(w, "temperatureC", p.TemperatureC);
        Word(w, "mental", p.Mental);
        if (p.Gcs is { } gcs)
        {
            w.WriteStartObject("gcs");
            Number(w, "eye", gcs.Eye);
            Number(w, "verbal", gcs.Verbal);
            Number(w, "motor", gcs.Motor);
            w.WriteEndObject();
        }

        Flag(w, "dizzy", p.Dizzy);
        Flag(w, "pale", p.Pale);
        Flag(w, "cool", p.Cool);
        Flag(w, "clammy", p.Clammy);
        Word(w, "radialPulse", p.RadialPulse);
        Number(w, "capillaryRefillS", p.CapillaryRefillS);
        Number(w, "pain", p.Pain);
        if (p.DistalPulse is { } pulses)
        {
            w.WriteStartObject("distalPulse");
            foreach (var (limb, pulse) in pulses)
                w.WriteString(Wire.Word(limb), Wire.Word(pulse));
            w.WriteEndObject();
        }

        Flag(w, "onOxygen", p.OnOxygen);
        Flag(w, "noPressureCuff", p.NoPressureCuff);
    }

    private static void Text(Utf8JsonWriter w, string name, string? value)
    {
        if (value is not null)
            w.WriteString(name, value);
    }

    private static void Texts(Utf8JsonWriter w, string name, ImmutableArray<string> values)
    {
        if (values.IsDefault)
            return;
        w.WriteStartArray(name);
        foreach (var value in values)
            w.WriteStringValue(value);
        w.WriteEndArray();
    }

    private static void Flag(Utf8JsonWriter w, string name, bool? value)
    {
        if (value is { } known)
            w.WriteBoolean(name, known);
    }

    private static void Number(Utf8JsonWriter w, string name, double? value)
    {
        if (value is not { } known)
            return;
        w.WritePropertyName(name);
        w.WriteRawValue(known.ToString("R", CultureInfo.InvariantCulture));
    }

    private static void Word<T>(Utf8JsonWriter w, string name, T? value)
        where T : struct, Enum
    {
        if (value is { } known)
            w.WriteString(name, Wire.Word(known));
    }

    private static void Time(Utf8JsonWriter w, string name, Instant? value)
    {
        if (value is { } known)
            w.WriteString(name, WrittenInstant.Write(known));
    }
}
