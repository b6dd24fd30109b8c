using System.Buffers;
using System.Collections.Immutable;
using System.Text.Json;
using NodaTime;

namespace Farhold.WayOut.Plans;

/// <summary>Writes a plan as the JSON that <see cref="PlanReader"/> reads back; notes are not kept.</summary>
public static class PlanWriter
{
    public static JsonText Write(Plan plan)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(buffer, new JsonWriterOptions { Indented = true }))
            Write(json, plan);
        return new(buffer.WrittenMemory);
    }

    private static void Write(Utf8JsonWriter json, Plan plan)
    {
        json.WriteStartObject();
        Text(json, "id", plan.Id);
        Text(json, "title", plan.Title);
        json.WriteString("start", WrittenInstant.Write(plan.Start));
        if (plan.From is { } from)
        {
            json.WriteStartObject("from");
            json.WriteNumber("lat", from.LatDeg);
            json.WriteNumber("lon", from.LonDeg);
            json.WriteEndObject();
        }

        Text(json, "timeZone", plan.TimeZone?.Id);
        json.WriteNumber("correlation", plan.Correlation);
        json.WriteNumber("weather", plan.Weather);
        json.WriteNumber("lambda", plan.Lambda);
        Legs(json, plan.Legs);
        json.WriteEndObject();
    }

    private static void Legs(Utf8JsonWriter json, ImmutableArray<Leg> legs)
    {
        json.WriteStartArray("legs");
        foreach (var leg in legs)
        {
            json.WriteStartObject();
            Text(json, "name", leg.Name);
            if (leg is Choice { IsElse: true } either)
                Either(json, either);
            else if (leg is Choice choice)
                Ways(json, choice);
            else
                Travelled(json, (Travel)leg);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Ways(Utf8JsonWriter json, Choice choice)
    {
        json.WriteStartArray(
            choice.Kind switch
            {
                ChoiceKind.Branches => "branches",
                ChoiceKind.First => "first",
                _ => "all",
            }
        );
        foreach (var way in choice.Ways)
            One(json, way, choice.Kind != ChoiceKind.All);
        json.WriteEndArray();
    }

    /// <summary>What is waited for or tried, and what then.</summary>
    private static void Either(Utf8JsonWriter json, Choice choice)
    {
        json.WritePropertyName(choice.Kind == ChoiceKind.Try ? "try" : "waitFor");
        One(json, choice.Ways[0], likely: true);
        if (choice.Until is { } until)
            Time(json, "until", until);
        if (choice.Closes is ThreePoint exact && exact.Low == exact.High)
            Time(json, "closes", exact.Low);
        else if (choice.Closes is { } closes)
        {
            json.WriteStartObject("closes");
            Times(json, closes);
            json.WriteEndObject();
        }

        if (!choice.Ways[1].Legs.IsEmpty)
        {
            json.WritePropertyName("onward");
            One(json, choice.Ways[1], likely: false);
        }

        if (choice.Ways[2].Legs.IsEmpty)
            return;
        json.WritePropertyName("otherwise");
        One(json, choice.Ways[2], likely: false);
    }

    private static void One(Utf8JsonWriter json, Way way, bool likely)
    {
        json.WriteStartObject();
        Text(json, "name", way.Name);
        if (likely)
            json.WriteNumber("probability", way.Probability);
        Legs(json, way.Legs);
        json.WriteEndObject();
    }

    private static void Travelled(Utf8JsonWriter json, Travel leg)
    {
        json.WriteString("mode", TravelReader.Word(leg.Mode));
        if (leg.Extent is Measured ground)
            Ground(json, leg.Mode, ground);
        else
            Times(json, leg.Extent);
        if (leg.Dark == DarkRule.Stop)
            json.WriteString("dark", "stop");
        if (leg.Window == FlightWindow.Daylight)
            json.WriteString("window", "daylight");
        if (leg.Hold is { } hold)
        {
            json.WriteStartObject("hold");
            json.WriteNumber("probability", hold.Probability);
            Three(json, hold.Time);
            json.WriteEndObject();
        }
    }

    // A measured track is written by its name, not its figures: the file stays the truth.
    private static void Ground(Utf8JsonWriter json, TravelMode mode, Measured ground)
    {
        Text(json, "track", ground.Track);
        if (ground.Track is null && ground.Stretch is { } stretch)
        {
            json.WriteNumber("distanceKm", stretch.DistanceKm);
            json.WriteNumber("ascentM", stretch.AscentM);
            json.WriteNumber("descentM", stretch.DescentM);
        }

        Text(json, "terrain", ground.Surface?.Id);
        Text(json, "rule", ground.Rule?.Id);
        if (ground.SnowCm > 0)
            json.WriteNumber("snowCm", ground.SnowCm);
        if (ground.Spread is { } spread)
            json.WriteNumber("spread", spread);
        if (ground.SpeedKmh is { } speed)
            json.WriteNumber("speedKmh", speed);
        if (ground.Bearers is { } bearers)
            json.WriteNumber("bearers", bearers);
        if (ground.Wheel)
            json.WriteBoolean("wheel", true);
        if (ground.RopePitches > 0)
            json.WriteNumber("ropePitches", ground.RopePitches);
        if (mode == TravelMode.Carry)
            json.WriteBoolean("packaging", ground.Packaging);
        if (ground.Joining is { } joining)
        {
            json.WriteStartObject("joining");
            json.WriteNumber("bearers", joining.Bearers);
            Times(json, joining.Time);
            json.WriteEndObject();
        }

        if (ground.Halts is { } halts)
        {
            json.WriteStartObject("halts");
            Time(json, "every", halts.Every);
            Time(json, "for", halts.For);
            json.WriteEndObject();
        }
    }

    private static void Times(Utf8JsonWriter json, Extent time)
    {
        switch (time)
        {
            case ThreePoint three:
                Three(json, three);
                break;
            case Percentiles tenths:
                Time(json, "p10", tenths.P10);
                if (tenths.P50 is { } middle)
                    Time(json, "p50", middle);
                Time(json, "p90", tenths.P90);
                break;
        }
    }

    private static void Three(Utf8JsonWriter json, ThreePoint three)
    {
        Time(json, "low", three.Low);
        Time(json, "likely", three.Likely);
        Time(json, "high", three.High);
    }

    /// <summary>Minutes where the seconds don't come out whole, so that nothing is lost.</summary>
    private static void Time(Utf8JsonWriter json, string name, Duration time)
    {
        if (time == Duration.FromSeconds(Math.Round(time.TotalSeconds)))
            json.WriteString(name, IsoSpan.WriteNearest(time));
        else
            json.WriteNumber(name, time.TotalMinutes);
    }

    private static void Text(Utf8JsonWriter json, string name, string? value)
    {
        if (value is not null)
            json.WriteString(name, value);
    }
}
