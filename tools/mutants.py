"""Runs the tests over the mutants that tools/mutate made; prints the score and what lived.

Arguments: names of files (Judge.cs ...), or --sample N for N of all, drawn alike each time; with THREADS=1 one at a time.
"""
import json, os, random, subprocess, sys, threading, queue

OUT = "artifacts/mutants"
LAWS = ["Laws.*", "Fuzz.FuzzTests", "Verdicts.TruthTableTests", "Verdicts.ReplayTests", "Protocols.SchemaTests", "Records.RecordSchemaTests"]


def named(option):
    return [word for name in LAWS for word in (option, f"Farhold.Tests.{name}")]


# What a mutant has to live through: tests of examples, then the laws, then the command line's, which hold whole texts.
STAGES = [["bin/Farhold.Tests", *named("-class-")], ["bin/Farhold.Tests", *named("-class")], ["cli/Farhold.Cli.Tests"]]


def run(mutant, stage):
    env = dict(os.environ, STRYKER_MUTANT_ID_CONTROL_VAR="MUTANT", MUTANT=mutant, FARHOLD_CASES="5", FARHOLD_FUZZ="50")
    program, *options = STAGES[stage]
    try:
        done = subprocess.run([f"{OUT}/{program}", "-stopOnFail", *options],
                              env=env, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, timeout=600)
    except subprocess.TimeoutExpired:
        return "Timeout"
    return "Survived" if done.returncode == 0 else "Killed"


report = json.load(open(f"{OUT}/report.json"))
known = {}
if os.path.exists(f"{OUT}/results.jsonl"):
    known = {r["id"]: r for r in map(json.loads, open(f"{OUT}/results.jsonl"))}
sample = int(sys.argv[2]) if sys.argv[1:2] == ["--sample"] else None
chosen = set() if sample else set(sys.argv[1:])
every = [(path, file["source"].split("\n"), mutant) for path, file in sorted(report["files"].items()) for mutant in file["mutants"]
         if mutant["status"] not in ("CompileError", "Ignored") and (not chosen or os.path.basename(path) in chosen)]
print(f"{len(every)} mutants")
if sample:
    random.Random(1).shuffle(every)
work = queue.Queue()
for path, source, mutant in every[:sample]:
    if known.get(mutant["id"], {}).get("status") in (None, "Survived") and known.get(mutant["id"], {}).get("stages", 0) < len(STAGES):
        work.put((path, source, mutant))
total, lock = work.qsize(), threading.Lock()


def go_on(results):
    while True:
        try:
            path, source, mutant = work.get_nowait()
        except queue.Empty:
            return
        status, stage = "Survived", known.get(mutant["id"], {}).get("stages", 0)
        while status == "Survived" and stage < len(STAGES):
            status, stage = run(mutant["id"], stage), stage + 1
        line = mutant["location"]["start"]["line"]
        with lock:
            known[mutant["id"]] = {"id": mutant["id"], "file": os.path.basename(path), "line": line, "what": mutant["mutatorName"],
                                   "code": source[line - 1].strip(), "becomes": mutant.get("replacement", ""), "status": status, "stages": stage}
            results.write(json.dumps(known[mutant["id"]]) + "\n")
            results.flush()
            print(f"\r{total - work.qsize()} of {total}", end="", file=sys.stderr)


with open(f"{OUT}/results.jsonl", "a") as results:
    threads = [threading.Thread(target=go_on, args=(results,)) for _ in range(int(os.environ.get("THREADS") or os.cpu_count() or 1))]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
files = sorted({r["file"] for r in known.values()})
for file in files + [None]:
    of = [r for r in known.values() if file in (None, r["file"])]
    dead = sum(r["status"] != "Survived" for r in of)
    print(f"{file or 'all'}: {dead} of {len(of)}, {100 * dead / max(1, len(of)):.1f} %")
for r in known.values():
    if r["status"] == "Survived":
        print(f"{r['file']}:{r['line']} {r['what']}: {r['code']} => {r['becomes'][:100]}")
