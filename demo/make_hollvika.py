"""Writes hollvika.jsonl: three days in a hut on an invented island, as the phones of an invented party would have logged them."""
import datetime as dt
import json
import pathlib

START = dt.datetime(2033, 6, 6, 12, 0)  # midnight of 7 June by the island's clock, UTC+12
said = []


def at(day, clock, minutes=0):
    hours, mins = clock.split(":")
    return START + dt.timedelta(days=day, hours=int(hours), minutes=int(mins) + minutes)


def say(when, by, kind, **fields):
    said.append((when, by, kind, fields))
    return fields


def each(begin, end, minutes):
    while begin < end:
        yield begin
        begin += dt.timedelta(minutes=minutes)


def iso(when):
    return when.strftime("%Y-%m-%dT%H:%M:%SZ")


def local(when):
    return (when - START) / dt.timedelta(hours=1)


RELEASED, END = at(0, "16:36"), at(3, "14:20")
WATCH = ["Mika", "Jon", "Runa"]


def who(when):
    return WATCH[int((local(when) - 14) // 4) % 3]


def night(when):
    return local(when) % 24 < 6 or local(when) % 24 >= 22


def signs(when, ask):
    hour = local(when)
    fever = 57 <= hour < 78  # from nine in the morning of the third day
    early = hour < 15
    rate = 112 if early else 104 - int((hour - 57) / 3) if fever else 84 + int(when.minute / 15) + int(hour) % 5
    found = dict(heartRate=rate, breathRate=24 if early else 18 if fever else 15, mental="alert", dizzy=early, pale=early,
                 cool=early, clammy=False, radialPulse="weak" if early else "strong", noPressureCuff=True)
    if not early:
        found["distalPulse"] = {"right-leg": "present" if when > RELEASED else "absent"}
    if ask:
        found["pain"] = 6 if hour < 17 else 5 if fever else 3
        found["temperatureC"] = 36.3 if early else 38.6 if fever and hour < 70 else 37.9 if fever else 37.5 if hour > 40 else 36.8
    say(when, who(when), "signs.taken", **found)


def help_by(when, earliest, likely, latest):
    say(when, who(when), "help.expected", care="surgery", likely=iso(likely), earliest=iso(earliest), latest=iso(latest),
        basis="radio, coast station: lifeboat, then the hospital on the mainland")


def look_over(when, by, **found):
    nothing = dict(bleedingElsewhere=False, trunkWound=False, breathingHard=False, veryCold=False)
    say(when, by, "casualty.looked-over", **nothing, **found)


# The first hours.
say(at(0, "14:05"), "Mika", "wound.found", wound="w1", limb="right-leg", nature="bleeding", note="axe went through the calf, chopping wood")
say(at(0, "14:06"), "Mika", "tourniquet.tightened", tourniquet="t1", limb="right-leg", place="high-thigh", make="windlass", wound="w1")
say(at(0, "14:10"), "Mika", "casualty.opened", alias="Signe", sex="female", ageYears=41, massKg=66)
say(at(0, "14:11"), "Mika", "bleeding.checked", wound="w1", bleeding="none")
say(at(0, "14:25"), "Jon", "supplies.stated", item="haemostatic-gauze", count=2)
say(at(0, "14:25"), "Jon", "supplies.stated", item="pressure-dressing", count=3)
help_by(at(0, "14:30"), at(1, "18:00"), at(3, "12:00"), at(3, "20:00"))
say(at(0, "14:35"), "Mika", "watch.stated", able=False)
look_over(at(0, "14:40"), "Mika", bloodThinner=False)
say(at(0, "15:20"), "Jon", "contact.tried", reached=False, who="duty doctor", how="radio, only noise")
for when in each(at(0, "14:15"), RELEASED, 15):
    signs(when, when.minute == 15)
    say(when + dt.timedelta(minutes=2), who(when), "bleeding.checked", wound="w1", bleeding="none")
say(at(0, "16:06"), "Jon", "contact.tried", reached=True, who="duty doctor", how="radio, coast station patched him through")
question = say(at(0, "16:08"), "Jon", "question.asked", to="duty doctor, by radio",
               text="Two hours on now. Dry, no shock, all of us here. May we try to let go of it?")
say(at(0, "16:10"), "Jon", "watch.stated", able=True, who="other")
look_over(at(0, "16:13"), "Mika")
say(at(0, "16:18"), "Jon", "advice.received", answers=question, readBack=True, allows=["attempt"],
    **{"from": "duty doctor, by radio", "text": "Try it now, with drink going in. Count the urine every hour and keep me posted."})
say(at(0, "16:20"), "Jon", "task.done", task="before-release.right-leg")
say(at(0, "16:21"), "Jon", "fluid.given", fluid="oral-rehydration", millilitres=300, route="mouth")
say(at(0, "16:22"), "Mika", "attempt.started", wound="w1", tourniquet="t1")
say(at(0, "16:24"), "Mika", "wound.packed", wound="w1", material="haemostatic-gauze")
say(at(0, "16:29"), "Mika", "pressure.held", wound="w1", minutes=4)
say(at(0, "16:31"), "Mika", "dressing.applied", wound="w1", dressing="pressure")
say(RELEASED, "Mika", "tourniquet.slackened", tourniquet="t1")
say(at(0, "16:40"), "Mika", "bleeding.checked", wound="w1", bleeding="oozing")
say(at(0, "16:53"), "Mika", "bleeding.checked", wound="w1", bleeding="none")
say(at(0, "16:54"), "Mika", "attempt.ended", wound="w1", tourniquet="t1", outcome="held")

# After the release: closely for two hours, then by the hour.
STEADY = at(0, "19:00")
for when in [*each(at(0, "16:45"), STEADY, 15), *each(STEADY, END, 60)]:
    signs(when, when < STEADY or not night(when) or local(when) % 24 == 2)
for when in [*each(at(0, "17:00"), STEADY, 10), *each(STEADY, END, 60)]:
    say(when + dt.timedelta(minutes=3), who(when), "bleeding.checked", wound="w1", bleeding="none")
for when in [*each(at(0, "16:48"), STEADY, 15), *each(STEADY, RELEASED + dt.timedelta(hours=24), 240)]:
    say(when, who(when), "task.done", task="release-heart.right-leg")
for when in [*each(at(0, "16:50"), STEADY, 30), *each(STEADY + dt.timedelta(minutes=5), RELEASED + dt.timedelta(hours=48), 120)]:
    say(when, who(when), "task.done", task="release-limb.right-leg")
for when in each(at(0, "17:20"), RELEASED + dt.timedelta(hours=24), 60):
    say(when, who(when), "fluid.given", fluid="oral-rehydration", millilitres=150 if night(when) else 250, route="mouth")
for when in each(at(0, "16:42"), RELEASED + dt.timedelta(hours=48), 60):
    if night(when) and int(local(when)) % 2:
        continue
    hours = 2 if night(when) else 1
    say(when, who(when), "urine.measured", millilitres=60 if when < at(0, "21:00") else 130 * hours)
say(at(0, "20:50"), "Jon", "advice.received",
    **{"from": "duty doctor, by radio", "text": "Too little urine: a mug every half hour until it is 100 ml an hour."})
say(at(0, "20:52"), "Jon", "fluid.given", fluid="oral-rehydration", millilitres=500, route="mouth")

# The days and nights in the hut.
for when in each(at(0, "15:00"), END, 120):
    say(when + dt.timedelta(minutes=6), who(when), "task.done", task="warmth")
for when in each(at(0, "16:00"), END, 120):
    say(when + dt.timedelta(minutes=8), who(when), "task.done", task="position")
for when in each(at(0, "18:00"), END, 240):
    say(when + dt.timedelta(minutes=10), who(when), "task.done", task="mouth")
for day in range(4):
    for clock, task in [("06:20", "skin"), ("06:25", "wound"), ("14:15", "skin"), ("14:18", "wound"), ("21:40", "skin"), ("21:45", "wound"),
                        ("07:00", "food"), ("11:00", "food"), ("15:00", "food"), ("19:00", "food"), ("21:50", "food")]:
        if at(0, "20:00") < at(day, clock) < END:
            say(at(day, clock), who(at(day, clock)), "task.done", task=task)
    for clock in ["06:05", "08:00", "10:00", "12:00", "14:00", "16:00", "18:00", "20:00", "21:55"]:
        if RELEASED + dt.timedelta(hours=24) < at(day, clock) < END:
            say(at(day, clock), who(at(day, clock)), "fluid.given", fluid="oral-water", millilitres=250, route="mouth")
    for clock in ["06:10", "10:10", "14:12", "18:10", "21:52"]:
        if at(0, "17:00") < at(day, clock) < END:
            help_by(at(day, clock), at(2, "12:00") if day < 2 else at(3, "10:00"), at(3, "12:00"), at(3, "20:00"))
for when in each(RELEASED + dt.timedelta(hours=49), END, 240):
    say(when, who(when), "urine.measured", millilitres=260)
say(at(2, "09:20"), "Runa", "note", text="Red and hot a hand round the dressing, smells.")
say(at(2, "09:30"), "Runa", "advice.received",
    **{"from": "duty doctor, by radio", "text": "Start the antibiotic you carry. Draw round the redness and report every four hours."})
say(at(2, "09:40"), "Runa", "drug.given", drug="cefalexin", amount=500, unit="mg", route="mouth", note="as the duty doctor said")
say(at(3, "13:40"), "Mika", "casualty.moved", how="carried", phase="about-to",
    note="down to the landing; Jon and Runa carry, Mika keeps the dressing in sight")
say(at(3, "13:52"), "Mika", "casualty.moved", how="carried", phase="moved")
say(at(3, "13:53"), "Mika", "bleeding.checked", wound="w1", bleeding="none")
say(END, "Mika", "care.ended", how="handed-over", to="lifeboat crew")

said.sort(key=lambda s: s[0])
numbers = {"Mika": 0, "Jon": 0, "Runa": 0}
devices = {"Mika": "h4vm", "Jon": "j2kd", "Runa": "r9tw"}
ids = {}
with (pathlib.Path(__file__).parent / "hollvika.jsonl").open("w", encoding="utf-8") as out:
    for when, by, kind, fields in said:
        numbers[by] += 1
        ids[id(fields)] = f"{devices[by]}-{numbers[by]}"
        if "answers" in fields:
            fields["answers"] = ids[id(fields["answers"])]
        entry = {"id": ids[id(fields)], "happened": iso(when), "recorded": iso(when), "by": by, "kind": kind, **fields}
        out.write(json.dumps(entry, ensure_ascii=False, separators=(",", ":")) + "\n")
