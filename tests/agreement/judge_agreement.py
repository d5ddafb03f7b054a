#!/usr/bin/env python3
"""Our judge and the outside checker, which share no code, give the same verdict on the same layouts.

usage: judge_agreement.py JUDGE SHARED [--random N]
JUDGE is the program that judges many files (tests/tools/judge_main.cpp), SHARED the folder that holds
tools/check_layout.py and tools/planted.py (BOLTWRIGHT_SHARED in the environment goes before it). Exit 77: skipped, since
that folder or shapely is not there.

Layouts: what planted.py cut its jobs from, jobs made by hand, deliberate faults in them, and random changes from a fixed
seed. A verdict is right or wrong; a file that breaks the format is wrong.
"""
import copy, importlib.util, json, os, pathlib, random, subprocess, sys, tempfile

sys.dont_write_bytecode = True
HERE = pathlib.Path(__file__).parent
sys.path.insert(0, str(HERE))
FAMILIES = ("plain", "turnable", "stripes", "drop", "trapezoids", "remnant", "trim", "short")


def skip(why):
    print(f"skipped: {why}")
    sys.exit(77)


def module(path, name):
    if not path.exists(): skip(f"{path.name} is not there")
    spec = importlib.util.spec_from_file_location(name, path)
    made = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(made)
    return made


class Case:
    def __init__(self, name, job, expected=None):
        self.name, self.text, self.expected = name, json.dumps(job, ensure_ascii=False), expected

    def outside(self, checker):
        """As the outside checker's own command line answers."""
        caught = (ValueError, KeyError, IndexError, TypeError, AttributeError, ArithmeticError, checker.GEOSException, checker.Bad)
        try: found = checker.check(json.loads(self.text))
        except caught as e: return 2, f"{type(e).__name__}: {e}"
        return (1, " | ".join(found)) if found else (0, "")


def judged(judge, cases):
    """Our verdicts, all in one run."""
    with tempfile.TemporaryDirectory() as folder:
        names = [f"{folder}/{k}.boltwright" for k in range(len(cases))]
        for name, case in zip(names, cases): pathlib.Path(name).write_text(case.text, encoding="utf-8")
        out = subprocess.run([judge, "-"], input="\n".join(names) + "\n", capture_output=True, text=True, check=True).stdout
    lines = [line.split("\t", 1) for line in out.splitlines()]
    assert len(lines) == len(cases), f"{len(lines)} verdicts on {len(cases)} files"
    return [(int(code), text) for code, text in lines]


def planted_cases(planted):
    for family in FAMILIES:
        for n in (3, 8, 20, 45):
            for seed in (1, 2, 3):
                job, answer, layout = planted.make(family, n, str(seed), 6)
                yield Case(f"planted {family} {n} {seed}", {**job, "layouts": [layout]}, "wrong" if family == "short" else "right")


def hand_made_cases(checker):
    import deliberate_faults, right_jobs
    jobs = right_jobs.all_right(checker)
    for name, job in jobs.items(): yield Case(name, job, "right")
    for name, where, change in deliberate_faults.FAULTS: yield Case(f"{where}: {name}", right_jobs.changed(jobs[where], change), "wrong")
    for name, where, change in deliberate_faults.HARMLESS: yield Case(f"{where}: {name}", right_jobs.changed(jobs[where], change), "right")


def different_cases(checker):
    """Cases in which the outside checker is known to differ, with our verdict."""
    import deliberate_faults, right_jobs
    jobs = right_jobs.all_right(checker)
    for name, where, change, ours, reason in deliberate_faults.DIFFERENT:
        yield Case(f"{where}: {name} ({reason})", right_jobs.changed(jobs[where], change), ours)


class Shaker:
    """Changes something of a job at random: a number by a little or a lot, a word for another, an entry gone or twice."""
    WORDS = {"turn": [0, 45, 90, 135, 180, 225, 270, 315], "way": ["one", "two"], "up": ["roll", "across"], "centre": ["across", "up", "both"],
             "run": ["up-roll", "down-roll", "railroad", "either", "bias"], "where": ["any", "balanced"],
             "kind": ["trim", "stretcher", "seam", "turn", "uncentre", "other_cloth"], "state": ["planned", "locked", "cut"],
             "edge": ["bottom", "right", "top", "left"], "edge_to": ["bottom", "right", "top", "left"]}
    COUNTS = ("copy", "copy_to", "piece", "of", "count", "most")

    def __init__(self, seed, checker):
        self.rng, self.checker = random.Random(seed), checker

    def places(self, value, path=()):
        """Every place in the job, as the container and the key in it."""
        for key in list(value) if isinstance(value, dict) else range(len(value)):
            yield value, key, path
            if isinstance(value[key], (dict, list)): yield from self.places(value[key], path + (key,))

    def step(self, tick):
        """A few ticks, a sixteenth of an inch, a quarter, or anything. (2 ticks on two sides make 4 exactly: see DIFFERENT.)"""
        r = self.rng
        return r.choice([r.choice([1, 3, 20, 40, 508, 2032]), r.randint(1, 500000)]) * r.choice([-1, 1]) / tick

    def shake(self, job):
        r, tick = self.rng, self.checker.TICK[job["unit"]]
        spots = [(v, k) for v, k, path in self.places(job) if v is not job["layouts"] and k not in ("boltwright", "unit", "layouts", "job", "id", "name", "mark", "title", "note", "made_by", "notes")]
        layout = [(v, k) for v, k, path in self.places(job["layouts"][-1])]
        where, key = r.choice(layout if r.random() < 0.6 else spots)
        value = where[key]
        if isinstance(value, bool): where[key] = not value
        elif isinstance(where, dict) and key in self.WORDS: where[key] = r.choice(self.WORDS[key])
        elif key in self.COUNTS: where[key] = max(1, value + r.choice([-1, 1]))
        elif isinstance(value, (int, float)): where[key] = round(value + self.step(tick), 6)
        elif key in ("panel", "from", "to") and isinstance(value, str): where[key] = r.choice(job.get("panels") or [{"id": "nobody"}])["id"]
        elif isinstance(where, list) and isinstance(value, dict):
            if r.random() < 0.5: del where[key]
            else: where.append(copy.deepcopy(value))
        elif isinstance(where, dict) and r.random() < 0.5: del where[key]


def random_cases(checker, planted, count):
    import right_jobs
    shaker = Shaker("boltwright", checker)
    jobs = list(right_jobs.all_right(checker).values())
    for family in FAMILIES[:-1]:
        job, answer, layout = planted.make(family, 8, "1", 6)
        jobs.append({**job, "layouts": [layout]})
    for k in range(count):
        job = copy.deepcopy(jobs[k % 3 if k % 2 else 3 + k // 2 % 7])
        for _ in range(shaker.rng.choice([1, 1, 1, 2, 3])): shaker.shake(job)
        yield Case(f"random {k}", job)


def main(argv):
    shared = pathlib.Path(os.environ.get("BOLTWRIGHT_SHARED", argv[1]))
    if not (shared / "tools" / "check_layout.py").exists(): skip("the outside checker (tools/check_layout.py of the shared folder) is not there")
    try: import shapely
    except ImportError: skip("shapely is not there (Debian: python3-shapely)")
    checker, planted = module(shared / "tools" / "check_layout.py", "check_layout"), module(shared / "tools" / "planted.py", "planted")
    count = int(argv[argv.index("--random") + 1]) if "--random" in argv else 1500
    same = list(planted_cases(planted)) + list(hand_made_cases(checker)) + list(random_cases(checker, planted, count))
    different = list(different_cases(checker))

    wrong, told = 0, {"right": 0, "wrong": 0}
    for k, (case, (ours, text)) in enumerate(zip(same + different, judged(argv[0], same + different))):
        theirs, their_text = case.outside(checker)
        told["wrong" if theirs else "right"] += 1
        verdicts = ["wrong" if code else "right" for code in (ours, theirs)]
        if k >= len(same):
            if verdicts[0] == verdicts[1]: print(f"note: no longer different: {case.name}")
            verdicts.pop()
        if len(set(verdicts) | ({case.expected} if case.expected else set())) == 1: continue
        wrong += 1
        print(f"{case.name}: expected {case.expected or 'the same from both'}\n  ours    {ours} {text}\n  outside {theirs} {their_text}")
        if "--keep" in argv: pathlib.Path(argv[argv.index("--keep") + 1], f"{wrong}.boltwright").write_text(case.text)
    print(f"{len(same)} layouts judged alike, {len(different)} known to differ; the outside checker calls {told['right']} right and "
          f"{told['wrong']} wrong; {wrong} verdicts not as expected")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
