"""Panels and layouts at 1:1, measured from the PDF itself by poppler: every edge lies within 0.1 mm of where it belongs on
the joined pages, neighbours show the same and their match marks meet; labels keep to their grid. The covered piece: words inside
the page and clear of each other.

usage: true_size_and_labels.py PAPER_PAGES [COUNT]      COUNT: how many random jobs (default 6)
"""
import json, pathlib, subprocess, sys, tempfile
from job_on_cloth import Job
from sheets_measure_right import CLOSE, MARGIN, check_area, check_file, check_words, dist, rings, segments
import poppler


def inside(box, a, b):
    """The part of a line in an upright box (by halving at each side)."""
    for axis in (0, 1):
        for low, sign in ((box[axis], 1), (box[axis + 2], -1)):
            da, db = sign * (a[axis] - low), sign * (b[axis] - low)
            if da < 0 and db < 0: return None
            if da * db < 0:
                t = da / (da - db)
                cut = (a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t)
                a, b = (cut, b) if da < 0 else (a, cut)
    return a, b


def on_joined_paper(job, name):
    """Cut outlines as the drawings have them, told from the job file."""
    if name.endswith("-whole"):
        sheets = {}
        for cut in job.layout["cuts"]: sheets.setdefault((job.cloth_of(cut), cut.get("on")), []).append(cut)
        drawings = []
        for cloth in job.data["cloths"]:
            for remnant in cloth.get("remnants", [{"id": None, "outline": [[0, 0]]}]):
                cuts = sheets.get((cloth["id"], remnant["id"]))
                if not cuts: continue
                low = [min(job.mm(p[k]) for p in remnant["outline"]) for k in (0, 1)]
                drawings.append([[(y - low[1], x - low[0]) for x, y in job.on_cloth(c)] for c in cuts])
        return drawings
    return None


def panel_drawings(job, panel, copy):
    drawings = []
    for cut in job.layout["cuts"]:
        if (cut["panel"], cut.get("copy", 1)) != (panel, copy): continue
        ring = job.cut_outline(job.panels[panel], cut)
        if cut.get("mirrored"): ring = [(-x, y) for x, y in ring]
        left, top = min(p[0] for p in ring), max(p[1] for p in ring)
        drawings.append([[(x - left, top - y) for x, y in ring]])
    return drawings


def crosses(paths):
    """Middles of the match marks' rings."""
    out = []
    for ring in rings(paths):
        if len(ring) != 24: continue
        out.append((sum(p[0] for p in ring) / 24, sum(p[1] for p in ring) / 24))
    return out


def check_true_size(pdf, drawings):
    plan = json.loads(pdf.with_suffix(".json").read_text())
    check_file(pdf)
    pages = poppler.words(pdf)
    assert len(pages) == len(plan["pages"]), pdf.name
    edges, marks = 0, {}
    for number, (page, (width, height, rows)) in enumerate(zip(plan["pages"], pages)):
        where = f"{pdf.name}, page {number + 1}"
        check_words(width, height, rows, where)
        paths = poppler.paths(pdf, number + 1)
        check_area(width, height, paths, where)
        room, start = page["room"], page["from"]
        shift = (room[0] - start[0], room[1] - start[1])
        lines = segments(paths)
        for ring in drawings[page["drawing"]]:
            here = [(x + shift[0], y + shift[1]) for x, y in ring]
            for a, b in zip(here, here[1:] + here[:1]):
                part = inside(room, a, b)
                if not part or max(abs(part[0][0] - part[1][0]), abs(part[0][1] - part[1][1])) < 0.2: continue
                p, q = part
                off = min(min(max(dist(p, s), dist(q, t)), max(dist(p, t), dist(q, s))) for s, t in lines)
                assert off <= CLOSE, f"{where}: an edge is {off:.3f} mm off"
                edges += 1
        for x, y in crosses(paths):
            marks.setdefault((page["drawing"], round((x - shift[0]) * 2), round((y - shift[1]) * 2)), []).append((x - shift[0], y - shift[1]))
        # The bar to lay a rule on: 4 in or 100 mm.
        bars = [max(x for x, y in r) - min(x for x, y in r) for r in rings(paths) if abs(max(y for x, y in r) - min(y for x, y in r) - 1.6) <= CLOSE]
        assert any(min(abs(w - 101.6), abs(w - 100)) <= CLOSE for w in bars), f"{where}: no bar"
    together = 0
    for same in marks.values():
        for mark in same[1:]:
            assert dist(mark, same[0]) <= CLOSE, f"{pdf.name}: match marks are {dist(mark, same[0]):.3f} mm apart"
            together += 1
    tiles = {(p["drawing"], p["column"], p["row"]) for p in plan["pages"]}
    joins = sum((d, c + 1, r) in tiles for d, c, r in tiles) + sum((d, c, r + 1) in tiles for d, c, r in tiles)
    assert together >= joins, f"{pdf.name}: {joins} joins, but only {together} match marks that meet"
    return edges, together


def check_labels(pdf, job):
    plan = json.loads(pdf.with_suffix(".json").read_text())
    check_file(pdf)
    boxes, cuts = plan["boxes"], job.layout["cuts"]
    found = 0
    for number, (width, height, rows) in enumerate(poppler.words(pdf)):
        where = f"{pdf.name}, page {number + 1}"
        check_words(width, height, rows, where)
        paths = poppler.paths(pdf, number + 1)
        check_area(width, height, paths, where)
        by_box = {}
        for row in rows:
            home = [i for i, b in enumerate(boxes) if b[0] - 0.1 <= row[1] and row[3] <= b[2] + 0.1 and b[1] - 0.6 <= row[2] and row[4] <= b[3] + 0.6]
            assert home, f"{where}: {row[0]!r} stands on no label"
            by_box.setdefault(home[0], []).append(row[0])
        for box, words in by_box.items():
            index = number * len(boxes) + box - plan["used"]
            assert 0 <= index < len(cuts) and str(index + 1) in words, f"{where}: label {box} should be number {index + 1}: {words}"
            text = " ".join(words)
            assert any(p["mark"] in text and p["name"].split()[0] in text for p in job.panels.values()), text
            assert (job.data["job"]["title"].split() or ["top"])[0] in text and "top" in words, text
            arrows = [pts for p in paths if p.filled for pts, _ in p.parts if len(pts) == 7 and all(boxes[box][0] <= x <= boxes[box][2] and boxes[box][1] <= y <= boxes[box][3] for x, y in pts)]
            assert len(arrows) == 1, f"{where}: no arrow to the top on label {box}"
            tip = min(arrows[0], key=lambda p: p[1])
            assert sum(abs(p[1] - tip[1]) < 0.01 for p in arrows[0]) == 1, "the arrow points up"
            found += 1
    assert found == len(cuts), (pdf.name, found, len(cuts))
    return found


def check_piece(pdf, job):
    """The covered piece: one page, its words inside and clear of each other, and nothing printed beyond the margin (as
    dots, since the cloth's figure is drawn further and clipped)."""
    check_file(pdf)
    (width, height, rows), = poppler.words(pdf)
    check_words(width, height, rows, pdf.name)
    across, down, grey = poppler.dots(pdf, 1, 50)
    edge = int(MARGIN / 25.4 * 50) - 1
    inside = range(edge, across - edge)
    beyond = [(x, y) for y in range(down) for x in range(across)
              if (x not in inside or not edge <= y < down - edge) and grey[y * across + x] < 250]
    assert not beyond, f"{pdf.name}: printed beyond the margin at {beyond[:3]}"
    assert min(grey) < 100, f"{pdf.name}: an empty page"
    title = job.data["job"]["title"].split()
    assert not title or title[0] in " ".join(r[0] for r in rows)


def main(program, count="6"):
    poppler.need("pdftotext", "pdftocairo", "pdftoppm", "pdffonts", "pdfinfo", "qpdf")
    with tempfile.TemporaryDirectory() as folder:
        folder = pathlib.Path(folder)
        subprocess.run([program, folder, "real", count], check=True)
        edges = marks = labels = pieces = 0
        failed = []
        for pdf in sorted(folder.glob("*.pdf")):
            name = pdf.stem.rsplit("-", 1)[0]
            job = Job(folder / f"{name}.boltwright")
            try:
                if pdf.stem.endswith("-labels"):
                    labels += check_labels(pdf, job)
                    continue
                if pdf.stem.endswith("-piece"):
                    check_piece(pdf, job)
                    pieces += 1
                    continue
                if pdf.stem.endswith("-whole"): drawings = on_joined_paper(job, pdf.stem)
                else:
                    panel, copy = pdf.with_suffix(".cut").read_text().split("\n")[:2]
                    drawings = panel_drawings(job, panel, int(copy))
                e, m = check_true_size(pdf, drawings)
                edges += e
                marks += m
            except AssertionError as wrong: failed.append(f"{pdf.name}: {wrong}")
        print(f"{edges} edges at true size, {marks} match marks that meet, {labels} labels, {pieces} covered pieces")
        if failed: sys.exit("\n".join(failed))
        assert edges and marks and labels and pieces


if __name__ == "__main__":
    main(*sys.argv[1:])
