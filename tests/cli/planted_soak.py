#!/usr/bin/env python3
"""Plans jobs whose best answer is known, checks every layout twice, and says how near the planner came.

usage: planted_soak.py [--families plain,drop] [--n 12,24,40] [--seeds 1-5] [--seconds S | --steps N] [--threads N]
                       [--plan-seed N] [--verbose]
families: plain turnable stripes drop trapezoids remnant trim short
Jobs come from tools/planted.py in the shared folder. On a bolt the figure is length over the known best; on remnants
how many were found; where cloth is short (trim), what was trimmed in all over what the job was cut from; for jobs that
cannot fit, how many were proved, and how long the remnant would have to be over the least proved, the worst of them. Not part of the usual tests: it takes as long as
you give it. Exit 1: a layout was not right, or a bound was above the known best.
"""
import argparse, collections, json, pathlib, subprocess, sys, tempfile, time

sys.path.insert(0, str(pathlib.Path(__file__).parent))
from boltwright import SHARED, outside_check, run

def numbers(text):
    out = []
    for part in text.split(","):
        low, _, high = part.partition("-")
        out += range(int(low), int(high or low) + 1)
    return out


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--families", default="plain,turnable,stripes,drop,trapezoids")
    parser.add_argument("--n", default="12,24,40")
    parser.add_argument("--seeds", default="1-3")
    parser.add_argument("--seconds", type=float, default=10)
    parser.add_argument("--steps", type=int)
    parser.add_argument("--threads", type=int)
    parser.add_argument("--plan-seed", type=int)
    parser.add_argument("--verbose", action="store_true")
    given = parser.parse_args()
    maker = SHARED / "tools" / "planted.py"
    if not maker.exists(): sys.exit(f"{maker} is not there; set BOLTWRIGHT_SHARED")

    wrong, rows = [], collections.defaultdict(list)
    with tempfile.TemporaryDirectory(prefix="boltwright-") as folder:
        folder = pathlib.Path(folder)
        for family in given.families.split(","):
            for n in numbers(given.n):
                for seed in numbers(given.seeds):
                    name = f"{family} {n} {seed}"
                    job = folder / f"{family}-{n}-{seed}.boltwright"
                    made = subprocess.run([sys.executable, str(maker), family, str(n), str(seed), "--answer", str(folder / "answer")],
                                          capture_output=True, text=True, check=True)
                    job.write_text(made.stdout)
                    best = json.loads((folder / "answer").read_text())
                    limit = ["--steps", given.steps] if given.steps else ["--seconds", given.seconds]
                    more = [x for key in ("threads", "plan_seed") if getattr(given, key)
                            for x in (f"--{key.removeprefix('plan_')}", getattr(given, key))]
                    start = time.monotonic()
                    answer = run("plan", job, *limit, *more, "--json")
                    took = time.monotonic() - start
                    if answer.returncode not in (0, 1):
                        wrong.append(f"{name}: exit {answer.returncode}: {answer.stderr.strip()}")
                        continue
                    said = json.loads(answer.stdout)
                    row = {"fits": said["fits"], "proved": said["proved"], "seconds": took}
                    if said["fits"]:
                        if family == "short": wrong.append(f"{name}: fits, and it cannot")
                        mine = run("check", job)
                        if mine.returncode: wrong.append(f"{name}: our check: {mine.stdout.strip()}")
                        faults = outside_check(job)
                        if faults is None: sys.exit("the outside checker needs python3-shapely")
                        if faults: wrong.append(f"{name}: outside check: {faults[:3]}")
                        if "trimmed" in best:
                            trims = [c["from"] - c["to"] for c in said["conceded"] if c["kind"] == "trim"]
                            if len(trims) < len(said["conceded"]): wrong.append(f"{name}: gives up what has no leave")
                            row["trimmed"] = sum(trims) / best["trimmed"]
                        if "length" in best:
                            cloth, = said["cloths"]
                            row["ratio"] = cloth["length"] / best["length"]
                            row["bound"] = cloth["bound"] / best["length"]
                            if row["bound"] > 1 + 1e-9: wrong.append(f"{name}: bound {cloth['bound']} above the known best {best['length']}")
                    elif family == "short":
                        # How long the remnant would have to be, over the least that is proved: 1 is the best there is.
                        if said["more"]:
                            ys = [y for _, y in json.loads(made.stdout)["cloths"][0]["remnants"][0]["outline"]]
                            there = max(ys) - min(ys)
                            row["longer"] = (there + said["more"][0]["more"]) / (there + said["more"][0]["at_least"])
                        else: wrong.append(f"{name}: not said how much more would do")
                    if not said["fits"] and said["proved"] and family != "short": wrong.append(f"{name}: proved not to fit, and it does")
                    rows[family, n].append(row)
                    if given.verbose: print(name, {k: round(v, 4) if isinstance(v, float) else v for k, v in row.items()}, flush=True)

    mean = lambda values: sum(values) / len(values) if values else float("nan")
    print(f"{'family':<11}{'n':>4}{'jobs':>6}{'found':>7}{'proved':>8}{'length/best':>13}{'worst':>8}{'bound/best':>12}{'trimmed':>9}{'worst':>7}{'longer':>9}{'slowest':>9}")
    for (family, n), group in rows.items():
        ratios = [row["ratio"] for row in group if "ratio" in row]
        bounds = [row["bound"] for row in group if "bound" in row]
        trimmed = [row["trimmed"] for row in group if "trimmed" in row]
        longer = max((row["longer"] for row in group if "longer" in row), default=float("nan"))
        print(f"{family:<11}{n:>4}{len(group):>6}{sum(r['fits'] for r in group):>7}{sum(r['proved'] for r in group):>8}"
              f"{mean(ratios):>13.4f}{max(ratios, default=float('nan')):>8.3f}{mean(bounds):>12.4f}"
              f"{mean(trimmed):>9.3f}{max(trimmed, default=float('nan')):>7.2f}{longer:>9.4f}{max(r['seconds'] for r in group):>8.1f}s")
    for line in wrong: print("WRONG", line)
    return 1 if wrong else 0


if __name__ == "__main__": sys.exit(main())
