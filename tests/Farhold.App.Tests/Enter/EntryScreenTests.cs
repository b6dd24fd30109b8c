namespace Farhold.App.Tests.Enter;

public class EntryScreenTests : CareTest
{
    public static TheoryData<Kind> Made => [.. EntryForms.Made.Except([Kind.SignsTaken])];

    [Theory, MemberData(nameof(Made))]
    public async Task Every_kind_can_be_logged_from_its_form(Kind kind)
    {
        await TightAsync();
        if (kind == Kind.QuestionTaken)
            await LogAsync(1, new Payload.QuestionAsked("duty doctor", "May we try?"));
        var before = State.Of(kind).Length;
        var form = Show<EntryScreen>((nameof(EntryScreen.KindName), Kinds.Wire(kind)));
        foreach (
            var field in EntryForms
                .Of(kind)
                .Where(f => f.Wire is not ("region" or "note" or "earliest" or "latest" or "wound" or "tourniquet" or "answers"))
        )
            Fill(form, field);
        if (kind == Kind.QuestionTaken)
            Choose(form, Texts.FieldAnswers, "duty doctor: May we try?");
        Tap(form, "Log entry");
        if (form.FindAll("button").Any(b => Text(b) == Texts.AskBackYes))
            Tap(form, Texts.AskBackYes); // sevens are no likely age, mass or amount
        Assert.Empty(form.FindAll("[role=alert]"));
        Assert.Equal(before + 1, State.Of(kind).Length);
    }

    [Fact]
    public async Task A_form_whose_address_becomes_another_kinds_is_that_kinds_form()
    {
        await TightAsync();
        var form = Show<EntryScreen>((nameof(EntryScreen.KindName), "note"));
        form.FindComponent<EntryScreen>().Render(p => p.Add(s => s.KindName, "bleeding.checked"));
        Assert.Equal("Bleeding now?", Text(form.Find("h1")));
    }

    [Fact]
    public void Only_rules_corrections_and_withdrawals_have_no_form_of_this_kind() =>
        Assert.Equal(
            [Kind.RulesStated, Kind.EntryAmended, Kind.EntryWithdrawn, Kind.OfNewerVersion],
            Enum.GetValues<Kind>().Except(EntryForms.Made)
        );

    [Fact]
    public async Task What_is_missing_is_said_beside_the_button_that_logs()
    {
        await TightAsync();
        var form = Show<EntryScreen>((nameof(EntryScreen.KindName), "advice.received"));
        Tap(form, "Log entry");
        Assert.Equal(["Still missing: From whom", "Still missing: What was said"], form.FindAll(".dock [role=alert] li").Select(Text));
    }

    [Fact]
    public async Task An_incomplete_form_says_what_is_missing_and_logs_nothing()
    {
        await TightAsync();
        var before = Desk.Record!.Count;
        var form = Show<EntryScreen>((nameof(EntryScreen.KindName), "bleeding.checked"));
        Tap(form, "Log entry");
        Assert.Contains("bleeding", Text(form.Find("[role=alert]")), StringComparison.OrdinalIgnoreCase);
        Assert.Equal(before, Desk.Record.Count);
    }

    [Fact]
    public async Task An_open_form_keeps_a_newer_build_from_starting()
    {
        await TightAsync();
        Show<EntryScreen>((nameof(EntryScreen.KindName), "note"));
        Assert.True(Session.FormOpen);
    }

    [Theory]
    [InlineData(null, null)]
    [InlineData("Allows an attempt", true)]
    [InlineData("Forbids an attempt", false)]
    public async Task Advice_says_whether_it_allows_an_attempt_or_nothing_of_it(string? said, bool? allows)
    {
        await TightAsync();
        var form = Show<EntryScreen>((nameof(EntryScreen.KindName), "advice.received"));
        Write(form, "From whom", "duty doctor");
        Write(form, "What was said", "keep her warm");
        if (said is not null)
            Choose(form, "About an attempt", said);
        Tap(form, "Log entry");
        var advice = Last<Payload.AdviceReceived>();
        Assert.Equal(allows, advice.Allows.IsDefault ? null : advice.Allows.Contains("attempt"));
    }

    [Fact]
    public async Task What_the_carer_says_is_right_before_logging_is_asked_back_no_more()
    {
        await TightAsync();
        var form = Show<EntryScreen>((nameof(EntryScreen.KindName), "casualty.opened"));
        foreach (var field in EntryForms.Of(Kind.CasualtyOpened).Where(f => f.Wire is "alias" or "ageYears" or "massKg"))
            Fill(form, field); // seven years, and seven kilograms
        Tap(form, "Log entry");
        Assert.Empty(State.Of(Kind.TaskDone));
        Tap(form, Texts.AskBackYes);
        var opened = State.Of(Kind.CasualtyOpened)[^1].Id;
        Assert.Equal(
            [Question.TaskOf(opened, "ageYears"), Question.TaskOf(opened, "massKg")],
            State.Of(Kind.TaskDone).Select(d => d.As<Payload.TaskDone>().Task)
        );
        Assert.All(Questions.In(State, Now), q => Assert.True(q.Believed));
    }

    [Fact]
    public void A_form_for_help_asks_first_what_kind_of_help_it_is() => Assert.Equal("care", EntryForms.Of(Kind.HelpExpected)[0].Wire);

    [Fact]
    public async Task Advice_names_the_question_it_answers()
    {
        await TightAsync();
        await LogAsync(2, new Payload.QuestionAsked("duty doctor", "May we try?"));
        var form = Show<EntryScreen>((nameof(EntryScreen.KindName), "advice.received"));
        Write(form, "From whom", "duty doctor");
        Write(form, "What was said", "wait");
        Choose(form, "Answers which question", "duty doctor: May we try?");
        Tap(form, "Log entry");
        Assert.Equal(State.Of(Kind.QuestionAsked)[^1].Id, Last<Payload.AdviceReceived>().Answers);
    }

    [Fact]
    public async Task A_place_in_the_south_and_west_can_be_typed()
    {
        await TightAsync();
        var form = Show<EntryScreen>((nameof(EntryScreen.KindName), "position.noted"));
        Key(form, "Latitude, minus in the south", "45.12345");
        Key(form, "Longitude, minus in the west", "168.54321");
        Tap(form, "Log entry");
        Assert.Equal(new Payload.PositionNoted(-45.12345, -168.54321), Last<Payload.PositionNoted>());

        static void Key(IRenderedComponent<Frame> form, string label, string digits)
        {
            form.FindAll("button").Single(b => Text(b).StartsWith(label + " ", StringComparison.Ordinal)).Click();
            form.FindAll(".pad").Single(p => p.GetAttribute("aria-label") == label).QuerySelector("[aria-label='Plus or minus']")!.Click();
            foreach (var digit in digits)
                form.FindAll(".pad")
                    .Single(p => p.GetAttribute("aria-label") == label)
                    .QuerySelectorAll("button")
                    .Single(b => Text(b) == digit.ToString() || (digit == '.' && Text(b) == "."))
                    .Click();
        }
    }

    private static void Fill(IRenderedComponent<Frame> form, FormField field)
    {
        switch (field)
        {
            case FormField.Word word:
                Choose(form, Label(field), word.Button(word.Words[0], Farhold.App.Words.Texts.In("en")));
                break;
            case FormField.Flag:
                Choose(form, Label(field), "Yes");
                break;
            case FormField.Allows:
                Choose(form, Label(field), "Allows an attempt");
                break;
            case FormField.Number:
                form.FindAll("button").Single(b => Text(b).StartsWith(Label(field) + " ", StringComparison.Ordinal)).Click();
                Tap(form, "7", Label(field));
                break;
            case FormField.Time:
                form.FindAll("fieldset")
                    .Single(f => Text(f.QuerySelector("legend")!) == Label(field))
                    .QuerySelectorAll("button")
                    .Single(b => Text(b) == "in 4 h")
                    .Click();
                break;
            case FormField.Lines:
                Write(form, Label(field) + ", one on a line", "one\ntwo");
                break;
            case FormField.Text { Wire: "drug" or "unit" or "route" }
                when form.FindAll("fieldset legend").Any(l => Text(l) == Label(field)):
                Choose(form, Label(field), "Other");
                Write(form, Label(field) + ", typed", "something");
                break;
            case FormField.Text:
                Write(form, Label(field), "something");
                break;
            default:
                Assert.Fail($"No way to fill in {field}");
                break;
        }
    }

    private static string Label(FormField field) => field.Label(Farhold.App.Words.Texts.In("en"));
}
