"""Every number on the chalk list, recomputed from the job file by separate code, and its order tried out by a plain
simulation of the table.

usage: chalk_list_matches_the_job.py PAPER_PAGES [COUNT]      COUNT: how many random jobs (default 40)
"""
import csv, math, pathlib, re, subprocess, sys, tempfile
from fractions import Fraction as F
from job_on_cloth import Job

CLOSE = 0.02  # mm: whole ticks, mitres, the bias
WORDS = {0: "top up the roll", 90: "top to the left selvage", 180: "top down the roll", 270: "top to the right selvage",
         45: "bias: top up the roll, leaning left", 315: "bias: top up the roll, leaning right",
         135: "bias: top down the roll, leaning left", 225: "bias: top down the roll, leaning right"}


def extent(ring, axis): return max(p[axis] for p in ring) - min(p[axis] for p in ring)
def near(a, b): return abs(a - b) <= CLOSE


def sheet_low(job, cut):
    """The corner that a sheet is measured from."""
    cloth = job.cloths[job.cloth_of(cut)]
    if "bolt" in cloth: return (0, 0)
    outline = next(r for r in cloth["remnants"] if r["id"] == cut["on"])["outline"]
    return tuple(min(job.mm(p[k]) for p in outline) for k in (0, 1))


def motif_of(job, cut):
    cloth = job.cloths[job.cloth_of(cut)]
    pattern = cloth.get("pattern")
    if not pattern: return None
    at = pattern.get("motif", [0, 0])
    if cut.get("on"): at = next(r for r in cloth["remnants"] if r["id"] == cut["on"]).get("motif", at)
    size = lambda k: job.mm(pattern[k]) if k in pattern else None
    return size("across"), size("along"), job.mm(pattern.get("drop", 0)), (job.mm(at[0]), job.mm(at[1]))


def first_whole(start, step, edge):
    """The first whose middle lies past the edge by a quarter of its repeat: a stripe half as wide as that is whole there."""
    return next(k for k in range(-2000, 2001) if start + k * step - step / 4 >= edge - CLOSE)


def counted(words):
    """A number told in words, those before the first whole one as "2 before the first"."""
    number, *rest = words.strip().split()
    return 1 - int(number) if rest[:3] == ["before", "the", "first"] else int(number)


def check_seat(job, cut, row, low):
    """The seat names a motif that is there: counted off from the first whole one past selvage or cut end, the corner's
    distance from it is the one said; and the list says where that first one lies."""
    across, along, drop, (mx, my) = motif_of(job, cut)
    x0, y0 = min(p[0] for p in job.on_cloth(cut)), min(p[1] for p in job.on_cloth(cut))
    words = row["motif"].removeprefix("the ")
    column = line = None
    if words.startswith("motif "): column, line = (counted(part) for part in words.removeprefix("motif ").split(" across, "))
    elif "selvage" in words: column = counted(words.removeprefix("stripe "))
    else: line = counted(words.removeprefix("stripe "))
    unit, cloth = job.data["unit"], job.cloths[job.cloth_of(cut)]
    bolt = cloth.get("bolt")
    kept = (job.mm(cloth.get("selvage", 0)), job.mm(bolt.get("square", 0))) if bolt else (job.mm(cloth.get("edge", 0)),) * 2
    said = re.findall(r"(?:lies|from) ([0-9][0-9./ ]*) (?:in|cm|mm)\b", row["counted from"])
    i = first = 0
    if column is not None:
        first = first_whole(mx, across, low[0] + kept[0])
        i = first + column - 1
        assert near(job.mm(row[f"from motif across ({unit})"]), x0 - (mx + i * across)), (row, i)
        assert said[0] == spoken_mm(unit, mx + first * across - low[0]), row
    if line is not None:
        drop = drop if column is not None else 0
        start = lambda c: my + c * drop
        y = start(i) + (first_whole(start(i), along, low[1] + kept[1]) + line - 1) * along
        assert near(job.mm(row[f"from motif along ({unit})"]), y0 - y), (row, y0 - y)
        assert said[-1] == spoken_mm(unit, start(first) + first_whole(start(first), along, low[1] + kept[1]) * along - low[1]), row
    assert len(said) == (column is not None) + (line is not None), row


def spoken(job, length):
    """Inches to the nearest sixteenth, centimetres to a tenth, millimetres whole; halves away from zero."""
    return spoken_mm(job.data["unit"], job.mm(length))


def spoken_mm(unit, length):
    mm = F(str(round(length, 6)))
    if unit == "mm": return str(int(mm + F(1, 2)))
    if unit == "cm":
        tenths = int(mm + F(1, 2))
        return f"{tenths // 10}" + (f".{tenths % 10}" if tenths % 10 else "")
    sixteenths = int(mm / F(254, 10) * 16 + F(1, 2))
    whole, part = divmod(sixteenths, 16)
    fraction = F(part, 16)
    return " ".join(w for w in (str(whole) if whole or not part else "", str(fraction) if part else "") if w)


def at_back(job, panel, cuts):
    """Said of a strip four times as long as deep, not to be balanced, whose first piece is three fifths of it or more."""
    own = job.cut_outline({**panel, "pieces": {}}, {**cuts[0], "of": 1, "piece": 1, "length": None})
    sides = sorted((extent(own, 0), extent(own, 1)))
    if panel["pieces"].get("where", "any") != "any" or sides[1] < 4 * sides[0]: return None
    cuts = sorted(cuts, key=lambda cut: cut.get("piece", 1))
    if job.mm(cuts[0]["length"]) - job.mm(panel["pieces"].get("seam", 0)) < 0.6 * sides[1] - 0.01: return None
    return "joined at the back, out of sight: " + " and ".join(f"{spoken(job, cut['length'])} {job.data['unit']}" for cut in cuts)


def words_of(job, gone):
    """What was given up, in the trade's words."""
    panel = job.panels[gone["panel"]]
    mine = [c for c in job.layout["cuts"] if (c["panel"], c.get("copy", 1)) == (gone["panel"], gone.get("copy", 1))]
    edge = gone.get("edge")
    numbered = panel["shape"]["kind"] == "polygon"
    if numbered and edge not in (None, "all"): edge = int(edge) + 1  # the file counts from 0, a person from 1
    where = "every allowance" if edge in (None, "all") else f"allowance at edge {edge}" if numbered else f"{edge} allowance"
    kind = gone["kind"]
    if kind == "trim": return f"{where} {spoken(job, gone['to'])} instead of {spoken(job, gone['from'])}"
    if kind == "stretcher": return f"strip of other cloth sewn on at {f'edge {edge}' if numbered else f'the {edge} edge'}: {spoken(job, gone['to'])} of face cloth left of {spoken(job, gone['from'])}"
    if kind == "seam": return at_back(job, panel, mine) or f"joined from {mine[0]['of']} pieces"
    if kind == "turn": return "turned from its run"
    if kind == "uncentre": return "off centre"
    other = job.cloths[mine[0]["cloth"]]
    return f"cut from {other.get('name') or other['id']}"


def check_row(job, row, cut):
    unit, panel = job.data["unit"], job.panels[cut["panel"]]
    mm = lambda key: job.mm(row[f"{key} ({unit})"])
    low = sheet_low(job, cut)
    own, laid, measured = job.cut_outline(panel, cut), job.on_cloth(cut), job.measured(panel)
    assert near(mm("cut across"), extent(own, 0)) and near(mm("cut up"), extent(own, 1)), row
    assert near(mm("measured across"), extent(measured, 0)) and near(mm("measured up"), extent(measured, 1)), row
    assert near(mm("from left selvage"), min(p[0] for p in laid) - low[0]) and near(mm("from cut end"), min(p[1] for p in laid) - low[1]), row
    assert all(near(job.mm(a), b) for a, b in zip(row[f"allowances ({unit})"].split(), job.allowances(panel, cut), strict=True)), row
    assert row["turn"] == WORDS[cut.get("turn", 0)], row
    assert row["name"] == panel["name"] and row["mark"] == panel["mark"]
    assert (int(row["copies"]), int(row["pieces"])) == (panel.get("count", 1), cut.get("of", 1)), row
    gone = [c for c in job.layout.get("conceded", []) if (c["panel"], c.get("copy", 1)) == (cut["panel"], cut.get("copy", 1))]
    assert [w for w in row["given up"].split("; ") if w] == [words_of(job, c) for c in gone], (row, gone)
    freed = any(c["kind"] == "uncentre" for c in gone)
    flows = any(panel["id"] in (f["from"], f["to"]) for f in job.data.get("flow", []))
    follows = panel.get("motif") or panel.get("alike") or panel.get("pieces", {}).get("match") or flows
    patterned = "pattern" in job.cloths[job.cloth_of(cut)]
    assert bool(row["motif"]) == bool(follows and patterned and not freed), row
    if row["motif"]: check_seat(job, cut, row, low)


def crossing(ring, level, axis):
    """Where a line at `level` of one axis runs through a ring: intervals of the other axis."""
    hits = []
    for a, b in zip(ring, ring[1:] + ring[:1]):
        if (a[axis] <= level) != (b[axis] <= level):
            hits.append(a[1 - axis] + (b[1 - axis] - a[1 - axis]) * (level - a[axis]) / (b[axis] - a[axis]))
    hits.sort()
    return list(zip(hits[::2], hits[1::2]))


def side_is_open(ring, others):
    """Some whole side looks straight at the section's edge: tried at many levels along it."""
    for axis in (0, 1):
        lo, hi = min(p[axis] for p in ring), max(p[axis] for p in ring)
        free = {-1: True, 1: True}
        for k in range(40):
            level = lo + (hi - lo) * (k + 0.5) / 40
            mine = crossing(ring, level, axis)
            if not mine: continue
            for other in others:
                for a, b in crossing(other, level, axis):
                    if b - a < 0.1: continue
                    if (a + b) / 2 < mine[0][0]: free[-1] = False
                    if (a + b) / 2 > mine[-1][1]: free[1] = False
        if free[-1] or free[1]: return True
    return False


def sections(rings):
    """Rings between two levels that none of them crosses, from the cut end up."""
    out, reach = [], -math.inf
    for ring in sorted(rings, key=lambda r: min(p[1] for p in r)):
        if min(p[1] for p in ring) + 0.02 >= reach: out.append([]); reach = max(p[1] for p in ring)
        reach = max(reach, max(p[1] for p in ring))
        out[-1].append(ring)
    return out


def check_order(job, cuts):
    """Section after section, and in each one only what lies open."""
    bolt = "bolt" in job.cloths[job.cloth_of(cuts[0])]
    todo = [c for c in cuts if c.get("state") != "cut"]
    assert cuts[:len(cuts) - len(todo)] == [c for c in cuts if c.get("state") == "cut"], "what is cut already comes first"
    rings = [job.on_cloth(c) for c in todo]
    parts = sections(rings) if bolt else [rings]
    at = together = apart = 0
    for part in parts:
        here = rings[at:at + len(part)]
        assert sorted(map(repr, here)) == sorted(map(repr, part)), "a section is left before it is done"
        for k, ring in enumerate(here): assert side_is_open(ring, here[k + 1:]), f"{todo[at + k]} cannot be reached"
        names = [c["panel"] for c in todo[at:at + len(part)]]
        runs = sum(1 for k, n in enumerate(names) if k == 0 or names[k - 1] != n)
        together += len(set(names)); apart += runs - len(set(names))
        at += len(part)
    return together, apart


def main(program, count="40"):
    with tempfile.TemporaryDirectory() as folder:
        folder = pathlib.Path(folder)
        subprocess.run([program, folder, "list", count], check=True)
        files = sorted(folder.glob("*.csv"))
        assert len(files) >= 11 + int(count), "the samples could not be planned"
        rows_seen = together = apart = 0
        for file in files:
            job = Job(file.with_suffix(".boltwright"))
            with open(file, encoding="utf-8", newline="") as f: rows = list(csv.DictReader(f))
            cuts = {(c["panel"], c.get("copy", 1), c.get("piece", 1)): c for c in job.layout["cuts"]}
            ids = {(p["mark"], p["name"]): p["id"] for p in job.data["panels"]}
            assert [int(r["number"]) for r in rows] == list(range(1, len(cuts) + 1))
            ordered = [cuts.pop((ids[r["mark"], r["name"]], int(r["copy"]), int(r["piece"]))) for r in rows]
            assert not cuts
            for row, cut in zip(rows, ordered): check_row(job, row, cut)
            for sheet in dict.fromkeys((job.cloth_of(c), c.get("on")) for c in ordered):
                a, b = check_order(job, [c for c in ordered if (job.cloth_of(c), c.get("on")) == sheet])
                together += a; apart += b
            rows_seen += len(rows)
        assert apart * 10 <= together, f"copies are torn apart too often: {apart} of {together}"
        print(f"{len(files)} lists, {rows_seen} rows; copies together {together}, torn apart {apart}")


if __name__ == "__main__":
    main(*sys.argv[1:])
