"""Cutting sheets, measured from the PDF itself by poppler: the test square, the scale bar and every panel's edge lie
within 0.1 mm of where they belong, pages laid on the next by their match marks show the same there within 0.1 mm, nothing is outside the printable area, no words lie over each other; qpdf finds the
files sound; fonts are embedded and each file has a title. Client's pages, and fresh sheets that begin with what has
changed: the same but for the edges; the client's choice, signature and cautions stand on one page.

usage: sheets_measure_right.py PAPER_PAGES [COUNT [FROM]]      COUNT: how many random jobs (default 8), from number FROM
"""
import json, pathlib, subprocess, sys, tempfile
from job_on_cloth import Job, farthest
import poppler

CLOSE = 0.1    # mm on paper
MARGIN = 10.0  # mm: the printable area
POINTS = {"Letter": (612, 792), "A4": (595, 842), "Legal": (612, 1008), "A3": (842, 1191), "Tabloid": (792, 1224)}  # ISO 216, ANSI Y14.1


def rings(paths):
    return [points for p in paths if p.stroked for points, closed in p.parts if closed and len(points) > 2]


def segments(paths):
    out = []
    for p in paths:
        for points, closed in p.parts:
            if p.stroked: out += list(zip(points, points[1:])) + ([(points[-1], points[0])] if closed else [])
    return out


def clipped(a, b, low, high):
    """The part of an edge between two levels of y."""
    if max(a[1], b[1]) <= low or min(a[1], b[1]) >= high: return None
    def at(y): return (a[0] + (b[0] - a[0]) * (y - a[1]) / (b[1] - a[1]), y)
    ends = [at(min(max(p[1], low), high)) if not low <= p[1] <= high else p for p in (a, b)]
    return ends if ends[0] != ends[1] else None


def check_cloth(job, plan, number, paths):
    scale, count = plan["scale"], 0
    closed, lines = rings(paths), segments(paths)
    for strip in plan["pages"][number]:
        def on_paper(p): return (strip["x"] + (p[1] - strip["from"]) / scale, strip["y"] + (p[0] - strip["low"]) / scale)
        for index in strip["cuts"]:
            ring = job.on_cloth(job.layout["cuts"][index])
            low, high = min(p[1] for p in ring), max(p[1] for p in ring)
            if high <= strip["from"] or low >= strip["to"]: continue
            if low >= strip["from"] and high <= strip["to"]:
                here = [on_paper(p) for p in ring]
                off = min(farthest(here, other) for other in closed)
                assert off <= CLOSE, f"{job.layout['cuts'][index]}: its outline is {off:.3f} mm off"
                count += len(ring)
                continue
            for a, b in zip(ring, ring[1:] + ring[:1]):
                part = clipped(a, b, strip["from"], strip["to"])
                if not part: continue
                p, q = map(on_paper, part)
                off = min(min(max(dist(p, s), dist(q, t)), max(dist(p, t), dist(q, s))) for s, t in lines)
                assert off <= CLOSE, f"{job.layout['cuts'][index]}: an edge that runs over the page's end is {off:.3f} mm off"
                count += 1
    return count


def dist(p, q): return max(abs(p[0] - q[0]), abs(p[1] - q[1]))


def match_marks(paths):
    """Middles of the ringed crosses, the ring 1.4 mm around its middle."""
    out = []
    for ring in rings(paths):
        x, y = (sum(p[k] for p in ring) / len(ring) for k in (0, 1))
        if len(ring) == 24 and all(abs(((p[0] - x) ** 2 + (p[1] - y) ** 2) ** 0.5 - 1.4) < 0.05 for p in ring): out.append((x, y))
    return out


def check_match(job, plan, one, other, pages):
    """Two strips of one cloth that overlap, each on its page: laid mark on mark, what both show lies on itself."""
    scale, at = plan["scale"], (one["to"] + other["from"]) / 2
    spots = []  # by page: its two marks of this match, and every corner drawn
    for strip, paths in ((one, pages[0]), (other, pages[1])):
        x = strip["x"] + (at - strip["from"]) / scale
        top, deep = strip["y"], max(p[0] for c in job.layout["cuts"] for p in job.on_cloth(c)) / scale + 80
        marks = sorted((m for m in match_marks(paths) if abs(m[0] - x) < 1 and top - 5 < m[1] < top + deep), key=lambda m: m[1])[:2]
        assert len(marks) == 2, f"{len(marks)} match marks where a strip goes on"
        spots.append((marks, [p for s in segments(paths) for p in s]))
    (marks, here), (twins, there) = spots
    apart = lambda m: (m[1][0] - m[0][0], m[1][1] - m[0][1])
    assert dist(apart(marks), apart(twins)) <= CLOSE, "the two marks do not fit on their twins"
    seen = 0
    for index in set(one["cuts"]) & set(other["cuts"]):
        for across, along in job.on_cloth(job.layout["cuts"][index]):
            if not other["from"] + 1 < along < one["to"] - 1: continue
            found = []
            for strip, mark, corners in ((one, marks[0], here), (other, twins[0], there)):
                want = (strip["x"] + (along - strip["from"]) / scale, strip["y"] + (across - strip["low"]) / scale)
                point = min(corners, key=lambda p: dist(p, want))
                found.append((point[0] - mark[0], point[1] - mark[1]))
            assert dist(*found) <= CLOSE, f"{job.layout['cuts'][index]}: {dist(*found):.3f} mm apart when one page lies on the next"
            seen += 1
    return seen


def check_matches(job, plan, pages):
    strips = [(number, strip) for number, page in enumerate(plan["pages"]) for strip in page]
    matches = corners = 0
    for (a, one), (b, other) in zip(strips, strips[1:]):
        if one["sheet"] != other["sheet"]: continue
        corners += check_match(job, plan, one, other, (pages[a], pages[b]))
        matches += 1
    return matches, corners


def check_square_and_bar(plan, paths):
    side = plan["square"]
    boxes = [(max(x for x, y in r) - min(x for x, y in r), max(y for x, y in r) - min(y for x, y in r)) for r in rings(paths) if len(r) == 4]
    assert any(abs(w - side) <= CLOSE and abs(h - side) <= CLOSE for w, h in boxes), "no test square"
    # The bar is the framed box 1.6 mm high whose left half is black.
    bars = [w for w, h in boxes if abs(h - 1.6) <= CLOSE]
    usual = [25.4 * n for n in (1, 2, 3, 6, 12, 18, 36, 72, 180)] + [10.0 * n for n in (1, 2, 5, 10, 20, 50, 100, 200, 500)]
    assert any(abs(w - n / plan["scale"]) <= CLOSE for w in bars for n in usual), f"no scale bar: {bars}"
    return min((abs(w - n / plan["scale"]), n, w) for w in bars for n in usual)


def check_bar_words(job, plan, bar, rows):
    """What the bar is said to be is what it measures."""
    text = " ".join(r[0] for r in rows)
    per = {"in": 25.4, "cm": 10.0, "mm": 1.0}[job.data["unit"]]
    assert f"{round(bar[1] / per)} {job.data['unit']} of cloth, 1:{plan['scale']}" in text, (bar, text[-400:])


def check_words(width, height, rows, where):
    assert not any("…" in r[0] and r[0] != "…" for r in rows), f"{where}: words are cut off: {[r[0] for r in rows if '…' in r[0]]}"
    for text, left, top, right, bottom in rows:
        assert left >= MARGIN - 0.3 and right <= width - MARGIN + 0.3 and top >= MARGIN - 1 and bottom <= height - MARGIN + 1, \
            f"{where}: {text!r} is outside the printable area"
    ordered = sorted(rows, key=lambda r: r[1])
    for i, a in enumerate(ordered):
        for b in ordered[i + 1:]:
            if b[1] >= a[3]: break
            deep = min(min(a[3], b[3]) - max(a[1], b[1]), min(a[4], b[4]) - max(a[2], b[2]))
            assert deep <= 0.12, f"{where}: {a[0]!r} and {b[0]!r} lie over each other by {deep:.2f} mm"


def check_area(width, height, paths, where):
    for p in paths:
        for points, _ in p.parts:
            for x, y in points:
                assert MARGIN - 0.3 <= x <= width - MARGIN + 0.3 and MARGIN - 0.3 <= y <= height - MARGIN + 0.3, f"{where}: a line at {x:.1f}, {y:.1f}"


def check_file(pdf):
    found = subprocess.run(["qpdf", "--check", pdf], capture_output=True, text=True)
    assert found.returncode == 0 and "WARNING" not in found.stdout + found.stderr, found.stdout + found.stderr
    fonts = poppler.run("pdffonts", pdf).decode().splitlines()[2:]
    assert fonts and all(line.split()[-5] == "yes" for line in fonts), fonts
    info = dict(line.split(":", 1) for line in poppler.run("pdfinfo", pdf).decode().splitlines() if ":" in line)
    assert info["Title"].strip(), "no title"
    size = tuple(round(float(v)) for v in info["Page size"].split("pts")[0].split("x"))
    assert tuple(sorted(size)) in POINTS.values(), size


def check(pdf):
    job, plan = Job(pdf.with_suffix(".boltwright")), json.loads(pdf.with_suffix(".json").read_text())
    check_file(pdf)
    pages = poppler.words(pdf)
    assert len(pages) > len(plan["pages"])
    edges, drawn = 0, []
    for number, (width, height, rows) in enumerate(pages):
        where = f"{pdf.name}, page {number + 1}"
        check_words(width, height, rows, where)
        paths = poppler.paths(pdf, number + 1)
        check_area(width, height, paths, where)
        if number >= len(plan["pages"]): continue
        drawn.append(paths)
        edges += check_cloth(job, plan, number, paths)
        check_bar_words(job, plan, check_square_and_bar(plan, paths), rows)
    # Every cut has its numbered row on the list.
    listed = {t for _, _, rows in pages[len(plan["pages"]):] for t, *_ in rows}
    assert all(str(n + 1) in listed for n in range(len(job.layout["cuts"])))
    return edges, *check_matches(job, plan, drawn)


def check_client_page(pdf):
    check_file(pdf)
    job = json.loads((pdf.parent / f"{pdf.stem.removesuffix('-client')}-0.boltwright").read_text())
    pages = poppler.words(pdf)
    # One page, whatever the job; trimmings and answers about the cloth follow on pages of their own.
    beside = bool(job.get("trimmings")) or any(c.get("asked") or c.get("bow") or c.get("skew") for c in job["cloths"])
    assert (len(pages) > 1) == beside, f"{len(pages)} pages"
    for number, (width, height, rows) in enumerate(pages):
        where = f"{pdf.name}, page {number + 1}"
        check_words(width, height, rows, where)
        check_area(width, height, poppler.paths(pdf, number + 1), where)
    text = " ".join(r[0] for r in pages[0][2])
    for words in ("Cut cloth cannot be returned.", "one dye lot", "local law", "Signed"): assert words in text, words


def check_pages(pdf, heading):
    """What may be said of every page, whatever it tells."""
    check_file(pdf)
    pages = poppler.words(pdf)
    assert heading in " ".join(r[0] for r in pages[0][2])
    for number, (width, height, rows) in enumerate(pages):
        where = f"{pdf.name}, page {number + 1}"
        check_words(width, height, rows, where)
        check_area(width, height, poppler.paths(pdf, number + 1), where)


def main(program, count="8", first="1"):
    poppler.need("pdftotext", "pdftocairo", "pdffonts", "pdfinfo", "qpdf")
    with tempfile.TemporaryDirectory() as folder:
        folder = pathlib.Path(folder)
        subprocess.run([program, folder, "sheets", count, first], check=True)
        clients = sorted(folder.glob("*-client.pdf"))
        changed = sorted(folder.glob("*-changed.pdf"))
        pdfs = sorted(set(folder.glob("*.pdf")) - set(clients) - set(changed))
        samples = len(list(folder.glob("sample-*-client.pdf")))
        assert samples >= 8 or int(first) > 1, "the samples could not be planned"
        assert len(pdfs) == 25 + int(count) + samples and len(clients) == len(changed) == 5 + int(count) + samples
        failed = []
        edges = matches = corners = 0
        for pdf in pdfs:
            try: found = check(pdf)
            except AssertionError as e: failed.append(f"{pdf.name}: {e}")
            else: edges, matches, corners = edges + found[0], matches + found[1], corners + found[2]
        for pdf in clients:
            try: check_client_page(pdf)
            except AssertionError as e: failed.append(f"{pdf.name}: {e}")
        for pdf in changed:
            try: check_pages(pdf, "What has changed")
            except AssertionError as e: failed.append(f"{pdf.name}: {e}")
        assert failed or matches >= 20 and corners >= 20, (matches, corners)
        print(f"{len(pdfs)} sheets, {edges} edges; {matches} pages laid on the next by their match marks, {corners} corners on both")
        if failed: sys.exit("\n".join(failed))


if __name__ == "__main__":
    main(*sys.argv[1:])
