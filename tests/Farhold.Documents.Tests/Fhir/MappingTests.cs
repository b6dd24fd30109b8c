using CsCheck;
using Farhold.Documents.Fhir;
using Farhold.Tests;
using Hl7.Fhir.Model;
using Period = Hl7.Fhir.Model.Period;

namespace Farhold.Documents.Tests.Fhir;

/// <summary>What an entry becomes: the value, the time, the code and what became of it later.</summary>
public class MappingTests
{
    private const string Loinc = "http://loinc.org";

    [Fact]
    public void The_document_names_the_program_and_its_version() =>
        Assert.Contains(
            $"made with {Product.Named}.",
            One<Composition>(Write(1, "02:10", new Payload.NoteWritten("calm"))).Text!.Div,
            StringComparison.Ordinal
        );

    [Fact]
    public void A_heart_rate_has_its_loinc_code_ucum_unit_and_time()
    {
        var sign = One<Observation>(Write(1, "02:10", new Payload.SignsTaken { HeartRate = 128 }));
        Assert.Equal((Loinc, "8867-4"), (sign.Code.Coding[0].System, sign.Code.Coding[0].Code));
        var value = Assert.IsType<Quantity>(sign.Value);
        Assert.Equal((128m, "http://unitsofmeasure.org", "/min"), (value.Value, value.System, value.Code));
        Assert.Equal("2031-05-04T02:10:00Z", Assert.IsType<FhirDateTime>(sign.Effective).Value);
        Assert.Equal(ObservationStatus.Final, sign.Status);
    }

    [Fact]
    public void A_time_known_as_a_range_is_a_period_and_a_note_says_what_is_meant()
    {
        var done = One<Procedure>(
            EntryWriting.Write(
                new("a7k3", 1),
                new(Some.At("01:50"), Some.At("02:20")),
                Some.At("02:42"),
                "Ane",
                new Payload.TourniquetTightened("t1", Limb.LeftLeg)
            )
        );
        var period = Assert.IsType<Period>(done.Performed);
        Assert.Equal(("2031-05-04T01:50:00Z", "2031-05-04T02:20:00Z"), (period.Start, period.End));
        Assert.Contains(done.Note, n => n.Text!.Contains("at some time between", StringComparison.Ordinal));
    }

    [Fact]
    public void A_corrected_value_is_the_corrected_one_and_says_so()
    {
        var entries = new[]
        {
            Write(1, "02:10", new Payload.SignsTaken { HeartRate = 188 }),
            Write(2, "02:20", new Payload.EntryAmended(new("a7k3", 1), JsonText.Of("""{"heartRate":88}"""))),
        };
        var sign = One<Observation>(entries);
        Assert.Equal((ObservationStatus.Corrected, 88m), (sign.Status, ((Quantity)sign.Value!).Value));
        var update = All<Provenance>(entries).Single(p => p.Activity!.Coding[0].Code == "UPDATE");
        Assert.Equal("urn:uuid:" + sign.Id, update.Target[0].Reference);
        Assert.Equal(
            "urn:uuid:" + All<Provenance>(entries).Single(p => p.Activity!.Coding[0].Code == "CREATE").Id,
            update.Entity[0].What!.Reference
        );
    }

    [Fact]
    public void What_was_withdrawn_is_entered_in_error_with_the_reason()
    {
        var entries = new[]
        {
            Write(1, "02:10", new Payload.FluidGiven(Fluid.OralWater, 300, "mouth")),
            Write(2, "02:11", new Payload.WoundFound("w1", Limb.LeftLeg, null, WoundNature.Bleeding)),
            Write(3, "02:20", new Payload.EntryWithdrawn(new("a7k3", 1), "entered twice")),
            Write(4, "02:20", new Payload.EntryWithdrawn(new("a7k3", 2), "wrong limb")),
        };
        Assert.Equal(
            MedicationAdministration.MedicationAdministrationStatusCodes.EnteredInError,
            One<MedicationAdministration>(entries).Status
        );
        var wound = One<Hl7.Fhir.Model.Condition>(entries);
        Assert.Equal("entered-in-error", wound.VerificationStatus!.Coding[0].Code);
        Assert.Null(wound.ClinicalStatus);
        Assert.Equal(
            ["entered twice", "wrong limb"],
            All<Provenance>(entries).Where(p => p.Activity!.Coding[0].Code == "NULLIFY").Select(p => p.Reason[0].Text!)
        );
    }

    [Fact]
    public void A_pressure_that_was_only_felt_says_that_the_other_side_was_not_measured()
    {
        var sign = One<Observation>(Write(1, "02:10", new Payload.SignsTaken { Systolic = 90 }));
        Assert.Equal(("8480-6", 90m), (sign.Component[0].Code.Coding[0].Code, ((Quantity)sign.Component[0].Value!).Value));
        Assert.Null(sign.Component[1].Value);
        Assert.Equal("not-performed", sign.Component[1].DataAbsentReason!.Coding[0].Code);
    }

    [Fact]
    public void Beginning_and_end_of_an_attempt_are_one_procedure()
    {
        var attempt = One<Procedure>(
            Write(1, "03:24", new Payload.AttemptStarted("w1", "t2")),
            Write(2, "03:44", new Payload.AttemptEnded("w1", "t2", AttemptOutcome.Bled, "soaked through"))
        );
        var period = Assert.IsType<Period>(attempt.Performed);
        Assert.Equal(("2031-05-04T03:24:00Z", "2031-05-04T03:44:00Z"), (period.Start, period.End));
        Assert.Equal((EventStatus.Completed, "bled"), (attempt.Status, attempt.Outcome!.Coding[0].Code));
        Assert.Equal(EventStatus.InProgress, One<Procedure>(Write(1, "03:24", new Payload.AttemptStarted("w1", "t2"))).Status);
    }

    [Fact]
    public void Every_kind_that_makes_resources_stands_in_one_section() =>
        Gens.AnyPayload.Sample(
            what =>
                Assert.Equal(
                    what is Payload.CasualtyOpened or Payload.EntryAmended or Payload.EntryWithdrawn ? 0 : 1,
                    Sections.Parts.Count(p => p.Holds(what))
                ),
            iter: 3_000
        );

    [Fact]
    public void Every_kind_comes_back_from_its_document() =>
        Gens
            .AnyPayload.Array[10]
            .Sample(
                said =>
                {
                    var record = new CareRecord(said.Select((what, i) => Write(i + 1, "02:10", what)), []);
                    var read = Assert
                        .IsType<Read<FhirRecord>.Usable>(
                            FhirReader.Read(FhirDocument.Write(record, ShippedRules.Book, Some.At("12:00")), "x", ShippedRules.Book)
                        )
                        .Value;
                    Assert.Equal(record.Entries.Select(e => e.Json), read.Record.Entries.Select(e => e.Json));
                    Assert.Empty(read.Differences);
                },
                iter: Gens.Cases(200)
            );

    [Fact]
    public void Advice_is_an_answer_to_the_question_it_was_asked()
    {
        var messages = All<Communication>(
            Write(1, "02:10", new Payload.QuestionAsked("Dr Vann", "May we try?")),
            Write(2, "02:30", new Payload.AdviceReceived("Dr Vann", "Yes.", ["attempt"], new EntryId("a7k3", 1), Some.At("04:30"), true))
        );
        var (question, answer) = (messages[0], messages[1]);
        Assert.Equal("urn:uuid:" + question.Id, Assert.Single(answer.InResponseTo).Reference);
        Assert.Equal(question.Recipient[0].Reference, answer.Sender!.Reference);
        Assert.Contains(answer.Note, n => n.Text == "Holds until 2031-05-04 04:30 UTC.");
        Assert.Contains(answer.Note, n => n.Text == "Read back, and agreed.");
    }

    [Fact]
    public void A_question_that_somebody_is_on_is_said_in_response_to_it()
    {
        var messages = All<Communication>(
            Write(1, "02:10", new Payload.QuestionAsked("Dr Vann", "May we try?")),
            Write(2, "02:14", new Payload.QuestionTaken(new EntryId("a7k3", 1)))
        );
        Assert.Equal("urn:uuid:" + messages[0].Id, Assert.Single(messages[1].InResponseTo).Reference);
        Assert.Contains(messages[1].Note, n => n.Text == "About entry a7k3-1.");
    }

    [Fact]
    public void A_look_over_the_casualty_says_only_what_was_looked_at()
    {
        var looks = All<Observation>(Write(1, "02:10", new Payload.CasualtyLookedOver(BleedingElsewhere: true, VeryCold: false)));
        Assert.Equal(
            [("bleedingElsewhere", (bool?)true), ("veryCold", false)],
            looks.Select(l => (l.Code.Coding[0].Code!, ((FhirBoolean)l.Value!).Value))
        );
        Assert.Equal("unknown", One<Observation>(Write(1, "02:10", new Payload.CasualtyLookedOver())).DataAbsentReason!.Coding[0].Code);
    }

    [Fact]
    public void A_position_has_its_degrees_and_metres()
    {
        var place = One<Observation>(Write(1, "02:10", new Payload.PositionNoted(-45.125, 168.5, 20, 1040)));
        Assert.Equal(
            [("latitude", -45.125m, "deg"), ("longitude", 168.5m, "deg"), ("accuracy", 20m, "m"), ("altitude", 1040m, "m")],
            place.Component.Select(c => (c.Code.Coding[0].Code!, ((Quantity)c.Value!).Value!.Value, ((Quantity)c.Value).Code!))
        );
    }

    [Fact]
    public void A_death_reported_later_is_the_patients()
    {
        Entry[] entries =
        [
            Write(1, "02:10", new Payload.CareEnded(CareEnd.HandedOver)),
            Write(2, "09:00", new Payload.OutcomeReported("the ward", false, Limb.LeftLeg, LimbFate.Lost)),
        ];
        Assert.True(((FhirBoolean)One<Patient>(entries).Deceased!).Value);
        Assert.Equal(
            2,
            All<Observation>(entries)
                .Count(o =>
                    o.Performer[0].Reference == "urn:uuid:" + All<Practitioner>(entries).Single(p => p.Name[0].Text == "the ward").Id
                )
        );
    }

    [Fact]
    public void An_identity_across_devices_is_an_identifier_of_the_patient() =>
        Assert.Contains(
            One<Patient>(Write(1, "02:10", new Payload.CasualtyOpened("Runa", Casualty: "4ovs6zt3mbqe5dxhcwkn2rjayu"))).Identifier,
            i => i.Value == "4ovs6zt3mbqe5dxhcwkn2rjayu"
        );

    [Fact]
    public void Nothing_is_said_of_a_casualty_that_nobody_recorded()
    {
        var patient = One<Patient>(Write(1, "02:10", new Payload.NoteWritten("cold")));
        Assert.Null(patient.Gender);
        Assert.Null(patient.BirthDate);
        Assert.Null(patient.Deceased);
        Assert.Null(patient.Name[0].Text);
        Assert.Equal("unknown", ((Code)patient.Name[0].Extension[0].Value!).Value);
    }

    [Fact]
    public void Asked_for_allergies_with_none_is_told_apart_from_not_asked()
    {
        string Reason(Payload.CasualtyOpened opened) =>
            All<Composition>(Write(1, "02:10", opened)).Single().Section.Single(s => s.Title == "Allergies").EmptyReason!.Coding[0].Code!;
        Assert.Equal("nilknown", Reason(new("Runa", Allergies: [])));
        Assert.Equal("unavailable", Reason(new("Runa")));
    }

    private static Entry Write(int number, string at, Payload what) =>
        EntryWriting.Write(new("a7k3", number), Happened.At(Some.At(at)), Some.At(at), "Ane", what);

    private static T One<T>(params Entry[] entries)
        where T : Resource => Assert.Single(All<T>(entries));

    private static T[] All<T>(params Entry[] entries)
        where T : Resource =>
        [.. FhirDocument.Of(new(entries, []), ShippedRules.Book, Some.At("12:00")).Entry.Select(e => e.Resource).OfType<T>()];
}
