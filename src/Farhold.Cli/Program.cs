using System.Text;
using Farhold.Cli;
using Spectre.Console.Cli;

Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
Console.Out.NewLine = "\n";

args = Verbs.Asked(args);
if (args is ["--version"])
{
    var rules = Opened.Shipped.Protocol;
    Console.Out.WriteLine($"farhold {Product.Version}, protocol {rules.Id} {rules.Version} ({FileHash.Short(rules.Hash)})");
    return 0;
}

var app = new CommandApp();
app.Configure(config =>
{
    var verbs = new Verbs(config);
    config.SetApplicationName("farhold");
    config.UseStrictParsing();
    config.Settings.Registrar.RegisterInstance(TimeProvider.System);
    config.SetExceptionHandler(
        (fault, _) =>
            ErrorOutput.Plainly(
                ErrorOutput.Sentence(fault)
                    + (
                        fault is CommandParseException && args is [var typed, ..] && verbs.Meant(typed) is { } meant
                            ? $" Did you mean {meant}?"
                            : ""
                    )
            )
    );
    verbs
        .Add<TellCommand>("tell")
        .WithDescription("Say for every limb what to do next, and why.")
        .WithExample("tell", "demo/skarvedal.jsonl", "--at", "2031-05-04T03:23:00Z");
    verbs
        .Add<ReplayCommand>("replay")
        .WithDescription("List every instant at which the answer changed, and what changed it.")
        .WithExample("replay", "demo/skarvedal.jsonl");
    verbs
        .Add<LookBackCommand>("lookback")
        .WithDescription("Look back over a record: delays, gaps, verdicts against what was done, and what was heard later.")
        .WithExample("lookback", "demo/skarvedal.jsonl", "--zone", "Europe/Oslo");
    verbs
        .Add<CheckCommand>("check")
        .WithDescription(
            "Check any file of Farhold (record, protocol, plan, route, trip, kit list, signature, document, track), with line and "
                + "column of every fault."
        )
        .WithExample("check", "demo/skarvedal.jsonl");
    verbs
        .Add<SignCommand>("sign")
        .WithDescription("Sign a local protocol, after saying all that it changes.")
        .WithExample(
            "sign",
            "demo/skarvedal-local.json",
            "--key",
            "skarvedal.key",
            "--serial",
            "2",
            "--from",
            "2031-01-10T00:00:00Z",
            "--until",
            "2032-11-01T00:00:00Z"
        );
    Keys.Add(config);
    verbs
        .Add<LogCommand>("log")
        .WithDescription("Print the record as a log, corrections and withdrawals beside what they are about.")
        .WithExample("log", "demo/skarvedal.jsonl");
    verbs
        .Add<DrawCommand>("draw")
        .WithDescription("Draw the limb line as a picture (SVG or PNG).")
        .WithExample("draw", "demo/skarvedal.jsonl", "-o", "leg.png", "--at", "2031-05-04T03:23:00Z", "--width", "1000");
    verbs
        .Add<DueCommand>("due")
        .WithDescription("List what has to be done when, and warning signs.")
        .WithExample("due", "demo/skarvedal.jsonl", "--at", "2031-05-04T06:10:00Z");
    verbs
        .Add<DoseCommand>("dose")
        .WithDescription(
            "Say whether a drug may be given now, and how much; only what a signed local protocol with a named authority orders."
        )
        .WithExample(
            "dose",
            "demo/skarvedal.jsonl",
            "paracetamol",
            "--local",
            "demo/skarvedal-local.json",
            "--issuer",
            "demo/skarvedal.issuer",
            "--at",
            "2031-05-04T06:10:00Z"
        );
    verbs
        .Add<SuppliesCommand>("supplies")
        .WithDescription("Say how long what is in the pack lasts, against when help comes, and what to save.")
        .WithExample("supplies", "demo/skarvedal.jsonl", "--at", "2031-05-04T06:10:00Z", "--party", "3");
    verbs
        .Add<PrepareCommand>("prepare")
        .WithDescription("Check a trip before it begins: what is missing, what nobody said, what is ready.")
        .WithExample(
            "prepare",
            "demo/skarvedal.trip.json",
            "--route",
            "demo/skarvedal.route.json",
            "--local",
            "demo/skarvedal-local.json",
            "--issuer",
            "demo/skarvedal.issuer",
            "--at",
            "2031-05-03T06:00:00Z"
        );
    verbs
        .Add<FhirCommand>("fhir")
        .WithDescription("Write the record as a FHIR R4 document, or read such a document back (--read).")
        .WithExample("fhir", "demo/skarvedal.jsonl", "-o", "bundle.json");
    verbs
        .Add<CardCommand>("card")
        .WithDescription("Print the card that goes with the casualty (PDF).")
        .WithExample("card", "demo/skarvedal.jsonl", "-o", "card.pdf", "--zone", "Europe/Oslo");
    verbs
        .Add<WayCommand>("way")
        .WithDescription("Forecast when higher care is reached by a plan, and the chances before each limb's limits.")
        .WithExample("way", "demo/skarvedal.plan.json", "--record", "demo/skarvedal.jsonl", "--at", "2031-05-04T03:23:00Z");
    verbs
        .Add<ReachCommand>("reach")
        .WithDescription("Tell how far from higher care a planned route leads, and draw it (SVG, GPX or GeoJSON).")
        .WithExample("reach", "demo/skarvedal.route.json", "-o", "reach.svg");
    verbs
        .Add<SayCommand>("say")
        .WithDescription("Word the record for handing over by voice: MIST, ATMIST, SBAR, nine-line or a script for a bad radio.")
        .WithExample("say", "demo/skarvedal.jsonl", "--form", "sbar", "--zone", "Europe/Oslo", "--at", "2031-05-04T08:30:00Z");
    verbs
        .Add<AskCommand>("ask")
        .WithDescription("Word a call for advice: one question, the picture that matters to it, and what you do if nobody answers.")
        .WithExample("ask", "demo/skarvedal.jsonl", "--from", "Ane", "--zone", "Europe/Oslo", "--at", "2031-05-04T03:23:00Z");
    verbs
        .Add<MessageCommand>("message")
        .WithDescription("Put the most important facts into one short message of 160 characters, or read such messages back.")
        .WithExample("message", "demo/skarvedal.jsonl", "--at", "2031-05-04T08:30:00Z");
    verbs
        .Add<RehearseCommand>("rehearse")
        .WithDescription("Run a scenario with an invented casualty by a file of acts. Practice: never a prediction.")
        .WithExample(
            "rehearse",
            "scenarios/held-at-once.scenario.json",
            "--acts",
            "scenarios/held-at-once.acts.jsonl",
            "--truth",
            "held.truth.jsonl"
        );
    verbs
        .Add<DebriefCommand>("debrief")
        .WithDescription("Look back over a rehearsal: delays, remarks, the casualty's course, one thing to practise.")
        .WithExample(
            "debrief",
            "held.jsonl",
            "--truth",
            "held.truth.jsonl",
            "--scenario",
            "scenarios/held-at-once.scenario.json",
            "--what-if",
            "haemostatic"
        );
    verbs
        .Add<SignsCommand>("signs")
        .WithDescription("Tell the signs, or print them all as a table for a spreadsheet.")
        .WithExample("signs", "demo/skarvedal.jsonl", "--csv");
    verbs
        .Add<StudyCommand>("study")
        .WithDescription("Compare policies over invented casualties: when does an attempt pay? No guidance for anybody who is hurt.")
        .WithExample("study", "studies/when-to-attempt.study.json", "-o", "when-to-attempt")
        .WithExample("study", "studies/when-to-attempt.study.json", "--part", "17/200", "-o", "parts")
        .WithExample("study", "studies/when-to-attempt.study.json", "--join", "parts", "-o", "when-to-attempt");
    verbs
        .Add<RebleedCommand>("rebleed")
        .WithDescription("Print what a bleed costs an invented casualty, by how soon the tourniquet is tight again.")
        .WithExample("rebleed", "--csv");
});

// A dash alone is taken for a nameless option, so it gets its name before it is parsed.
return app.Run(args.Select(a => a == "-" ? Files.StandardInput : a));
