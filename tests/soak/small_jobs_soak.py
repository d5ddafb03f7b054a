#!/usr/bin/env python3
"""Plans thousands of small random jobs and looks at every layout with both judges.

usage: small_jobs_soak.py PLANNER RECORD [--jobs N] [--from SEED] [--steps N] [--seconds S] [--keep FOLDER]
PLANNER is the program that plans many files (tests/tools/planner_main.cpp; ninja planner). RECORD is a file with a line a
job: the soak goes on where it ended before, and its last line says how many were done. Each job is planned with one
thread and with two, which must give the same layout, as steps promise; the layout must be right by our check and by the
outside one, which shares no code with it. Wrong ones are kept in FOLDER (default: wrong, beside RECORD). Exit 1: something
was wrong.

A job has up to seven panels: any shape, turns, motif places, copies alike or mirrored, flow, hidden, pieces, on a bolt or
remnants, plain or patterned, with flaws, gaps and allowances, in all units.
"""
import argparse, collections, importlib.util, json, pathlib, random, subprocess, sys, tempfile, time

sys.dont_write_bytecode = True
sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1] / "cli"))
from boltwright import SHARED


def outside_checker():
    path = SHARED / "tools" / "check_layout.py"
    if not path.exists(): sys.exit(f"{path} is not there; set BOLTWRIGHT_SHARED")
    spec = importlib.util.spec_from_file_location("check_layout", path)
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)   # needs shapely
    return module


def shape(r, largest):
    w, h = r.randint(3, largest), r.randint(3, largest)
    kind = r.random()
    if kind < 0.75: return {"kind": "rectangle", "across": w, "up": h}
    if kind < 0.9:
        top = max(2, w - r.randint(-3, 3))
        return {"kind": "trapezoid", "bottom": w, "top": top, "up": h, "shift": r.choice([0, 0, 1, -1.5])}
    points = [[0, 0], [w, 0], [w + r.choice([0, 1]), h], [w / 2, h + r.choice([0, 2, -1])], [0, h]]
    return {"kind": "polygon", "points": points}


def panel(r, i, largest, patterned):
    p = {"id": f"p{i}", "shape": shape(r, largest)}
    if r.random() < 0.3: p["count"] = r.randint(2, 3)
    rectangle = p["shape"]["kind"] == "rectangle"
    if r.random() < 0.5: p["allow"] = r.choice([0.5, 1, 1.25])
    elif rectangle and r.random() < 0.3: p["allow"] = {"top": 1, "left": 0.5}
    if r.random() < 0.3: p["run"] = r.choice(["up-roll", "down-roll", "railroad", "either", "either"])
    elif r.random() < 0.03: p["run"] = "bias"
    if patterned and p.get("run") != "bias" and r.random() < 0.5:
        p["motif"] = {"centre": r.choice(patterned)}
        if r.random() < 0.3: p["motif"]["at"] = [2, 1.5]
    if patterned and p.get("count", 1) > 1 and r.random() < 0.3: p["alike"] = True
    if p.get("count", 1) > 1 and r.random() < 0.3: p["mirror"] = True
    if r.random() < 0.08: p["hidden"] = True
    if rectangle and r.random() < 0.1:
        p["shape"]["across"] = largest * 2
        p["pieces"] = {"most": 3, "seam": 0.5, "shortest": 3, "match": bool(patterned) and r.random() < 0.3}
    return p


def flaw(r, width, height):
    x, y, w, h = r.uniform(0, width), r.uniform(0, height), r.uniform(0.5, 3), r.uniform(0.5, 3)
    x, y, w, h = (round(v * 8) / 8 for v in (x, y, w + 0.2, h + 0.2))
    outline = [[x, y], [x + w, y], [x + w, y + h], [x, y + h]] if r.random() < 0.7 else [[x, y], [x + w, y], [x, y + h]]
    return {"outline": outline, "note": "made"}


def make(seed):
    r = random.Random(f"small-{seed}")
    width = r.choice([20, 27, 36, 54])
    cloth = {"id": "body", "name": "Body", "way": r.choice(["one", "two"]), "up": r.choice(["roll", "roll", "roll", "across"])}
    patterned = []
    kind = r.random()
    if kind < 0.45:
        cloth["pattern"] = {"motif": [r.choice([0, 2.25]), r.choice([0, 3])]}
        if kind < 0.35: cloth["pattern"]["across"] = r.choice([3, 4.5, 6.75])
        if kind > 0.12: cloth["pattern"]["along"] = r.choice([3, 5, 9])
        if "across" in cloth["pattern"] and "along" in cloth["pattern"]:
            along = cloth["pattern"]["along"]
            cloth["pattern"]["drop"] = r.choice([0, along / 2, along / 4])
            patterned = ["across", "up", "both"]
        else: patterned = ["across" if "across" in cloth["pattern"] else "up"]
    if r.random() < 0.7:
        cloth["bolt"] = {"width": width, "square": r.choice([0, 1])}
        if r.random() < 0.3: cloth["bolt"]["length"] = r.choice([40, 80, 200])
        if r.random() < 0.3: cloth["bolt"]["flaws"] = [flaw(r, width, 40) for _ in range(r.randint(1, 2))]
        cloth["selvage"] = r.choice([0, 0.5])
    else:
        cloth["edge"] = r.choice([0, 0, 0.25])
        cloth["remnants"] = []
        for name in "AB"[:r.randint(1, 2)]:
            w, h = r.choice([24, 36, 54]), r.choice([30, 45, 60])
            outline = [[0, 0], [w, 0], [w, h], [0, h]]
            if r.random() < 0.3: outline = [[0, 0], [w, 0], [w, h / 2], [w / 2, h / 2], [w / 2, h], [0, h]]
            elif r.random() < 0.2: outline = [[0, 0], [w, 2], [w - 3, h], [1, h - 1]]
            remnant = {"id": name, "outline": outline, "lot": r.choice(["", "1"])}
            if patterned and r.random() < 0.5: remnant["motif"] = [1.5, 2]
            if r.random() < 0.3: remnant["flaws"] = [flaw(r, w, h)]
            cloth["remnants"].append(remnant)
    largest = width // 2 - 2
    job = {"boltwright": 1, "unit": r.choice(["in", "in", "cm"]), "job": {"title": f"soak {seed}"}, "cloths": [cloth],
           "gap": r.choice([0, 0, 0.25, 0.5]), "panels": [panel(r, i, largest, patterned) for i in range(r.randint(1, 7))]}
    if patterned and len(job["panels"]) > 1 and r.random() < 0.3:
        a, b = r.sample(job["panels"], 2)
        if all(p["shape"]["kind"] == "rectangle" and "run" not in p and "pieces" not in p for p in (a, b)):
            job["flow"] = [{"from": a["id"], "edge": "top", "to": b["id"], "edge_to": "bottom", "lost": r.choice([0, 0, 1])}]
    return job


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("planner")
    parser.add_argument("record", type=pathlib.Path)
    parser.add_argument("--jobs", type=int, default=10000)
    parser.add_argument("--from", dest="first", type=int, default=1)
    parser.add_argument("--steps", type=int, default=300)
    parser.add_argument("--seconds", type=float, default=1e9)
    parser.add_argument("--keep", type=pathlib.Path)
    given = parser.parse_args()
    checker, keep = outside_checker(), given.keep or given.record.parent / "wrong"
    before = [line.split("\t") for line in given.record.read_text().splitlines()] if given.record.exists() else []
    done = {int(line[0]): line[1] for line in before}
    answers = collections.Counter(answer.split()[0] for answer in done.values())
    wrong = [f"{seed}: {answer}" for seed, answer in done.items() if "WRONG" in answer]
    end = time.monotonic() + given.seconds
    planner = subprocess.Popen([given.planner], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True)
    with tempfile.TemporaryDirectory(prefix="boltwright-") as folder, given.record.open("a") as record:
        for seed in range(given.first, given.first + given.jobs):
            if seed in done: continue
            if time.monotonic() > end: break
            file = pathlib.Path(folder) / "job.boltwright"
            asked = json.dumps(make(seed), indent=1)
            file.write_text(asked)
            planner.stdin.write(f"{given.steps} {file}\n")
            planner.stdin.flush()
            answer = planner.stdout.readline().strip() or "stopped"
            faults = []
            if answer.startswith("fits"):
                try: faults = checker.check(json.loads(file.read_text()))
                except Exception as fault: faults = [f"{type(fault).__name__}: {fault}"]
            # What a job asks for may be impossible, and that is said in a line; anything else in a line is a fault.
            if faults: answer += f" outside {faults[:3]}"
            if answer not in ("fits", "cannot", "not-found") and not answer.startswith("input "):
                answer = answer.split()[0] + " WRONG " + answer
                wrong.append(f"{seed}: {answer}")
                keep.mkdir(exist_ok=True)
                (keep / f"{seed}.boltwright").write_text(asked)
            answers[answer.split()[0]] += 1
            record.write(f"{seed}\t{answer}\n")
            record.flush()
            if answer.startswith("stopped"):
                planner = subprocess.Popen([given.planner], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True)
    planner.stdin.close()
    for line in wrong: print("WRONG", line)
    print(f"{sum(answers.values())} jobs:", ", ".join(f"{count} {answer}" for answer, count in answers.items()) + f"; {len(wrong)} wrong")
    return 1 if wrong else 0


if __name__ == "__main__": sys.exit(main())
