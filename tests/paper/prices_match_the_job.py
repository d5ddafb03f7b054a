"""What to buy and what it costs, as the client's page tells it, recomputed from the job file by separate code.

Cloth is sold by the quarter of a yard or the tenth of a metre, rounded up: steps of the trade (TRADE.md, T11.4: the
quarter yard; the tenth of a metre is common practice, no source). Some choices end exactly at a step, one tick
(1/320 mm) below it and one above, so that a step too many or too few shows.

usage: prices_match_the_job.py PAPER_PAGES [COUNT]      COUNT: how many random jobs (default 24)
"""
import math, pathlib, re, subprocess, sys, tempfile
from fractions import Fraction as F
from job_on_cloth import Job, in_millimetres, spun
import poppler

YARD, METRE = F(9144, 10), F(1000)
VULGAR = {"¼": " 1/4", "½": " 1/2", "¾": " 3/4", "⅛": " 1/8", "⅜": " 3/8", "⅝": " 5/8", "⅞": " 7/8"}


def plain(text):
    for sign, words in VULGAR.items(): text = text.replace(sign, words)
    return re.sub(r"\s+", " ", text.replace("\u00a0", " ").replace("\u2044", "/"))


def used(job, layout, cloth):
    """Millimetres up the roll to the last cut, exact where no corner is slanted; None where nothing is cut from it."""
    if "bolt" not in cloth: return None
    job.layout = layout
    reach = None
    for cut in layout["cuts"]:
        if job.cloth_of(cut) != cloth["id"]: continue
        ring = [spun(p, cut.get("turn", 0), cut.get("mirrored", False)) for p in job.cut_outline(job.panels[cut["panel"]], cut)]
        # whole ticks, as every length of the program is
        up = F(round((max(p[1] for p in ring) - min(p[1] for p in ring)) * 320), 320)
        top = in_millimetres(str(cut["y"]), job.per) + up
        reach = top if reach is None else max(reach, top)
    return F(round(reach * 320), 320) if reach is not None else None


def bought(job, length):
    """Steps up to what covers the length, and how that is said."""
    step = YARD / 4 if job.data["unit"] == "in" else METRE / 10
    steps = math.ceil(length / step)
    if job.data["unit"] != "in": return steps * step, f"{steps // 10}" + (f".{steps % 10}" if steps % 10 else "") + " m"
    whole, rest = divmod(F(steps, 4), 1)
    return steps * step, " ".join(w for w in (str(whole) if whole or not rest else "", str(rest) if rest else "", "yd") if w)


def cost(cloth, buy):
    price = cloth["price"]
    return buy / (METRE if price["per"] == "m" else YARD) * F(str(price["amount"]))


def says(text, amount):
    """To the hundredth, thousands set off; where two are as near, either."""
    return re.fullmatch(r"(\d{1,3}(,\d{3})*|\d+)\.\d\d", text) and abs(F(text.replace(",", "")) - amount) <= F(1, 200) + F(1, 10**9)


def lines(rows):
    """Words that stand on one line, from the left; lines from the top."""
    out = []
    for text, left, top, right, bottom in sorted(rows, key=lambda r: (r[4], r[1])):
        if out and abs(out[-1][0] - bottom) < 1.0: out[-1][1].append((left, text))
        else: out.append((bottom, [(left, text)]))
    return [plain(" ".join(t for _, t in sorted(words))) for _, words in out]


def check(pdf):
    job = Job(pdf.with_suffix(".boltwright"))
    shown = job.data["layouts"][int(pdf.with_suffix(".layout").read_text())]
    rows = poppler.words(pdf)[0][2]
    told = lines(rows)
    whole = plain(" ".join(r[0] for r in rows))
    seen = 0
    for cloth in job.data["cloths"]:
        length = used(job, shown, cloth)
        if length is None: continue
        buy, words = bought(job, length)
        if "length" in cloth["bolt"]: assert re.search(r" as laid out, (of the .* there; .* left over|all that is there)\.", whole)
        else: assert f", so {words} to buy." in whole, (words, whole[:300])
        seen += 1
        if "price" not in cloth: continue
        price = cloth["price"]
        per = "a metre" if price["per"] == "m" else "a yard"
        found = re.findall(rf"It costs {price['currency']} ([\d,.]+), at {price['currency']} ([\d,.]+) {per}\.", whole)
        assert any(says(a, cost(cloth, buy)) and says(b, F(str(price["amount"]))) for a, b in found), (found, float(cost(cloth, buy)))
    if not any("price" in c for c in job.data["cloths"]): assert "It costs" not in whole
    priced = 0
    for layout in job.data["layouts"]:
        parts, there, sums, currencies = [], [], F(0), set()
        for cloth in job.data["cloths"]:
            length = used(job, layout, cloth)
            if length is None: continue
            buy, words = bought(job, length)
            if "length" in cloth["bolt"]: there.append(r"[^;+a-z]+ (?:yd(?: [^;+a-z]+ in)?|in|m|cm|mm)")
            else: parts.append(re.escape(words))
            if "price" in cloth:
                sums += cost(cloth, buy)
                currencies.add(cloth["price"]["currency"])
            else: currencies.add(None)
        buying = [re.escape("buy ") + re.escape(" + ").join(parts)] if parts else []
        if there: buying.append("takes " + re.escape(" + ").join(there))
        start = re.escape(layout["name"]) + " " + "; ".join(buying)
        row = [m for m in (re.fullmatch(rf"{start}(|(?: \S+){{2}})", t) for t in told) if m]
        assert len(row) == 1, (start, told)
        rest = row[0][1].split()
        if len(currencies) == 1 and None not in currencies:
            assert len(rest) == 2 and rest[0] in currencies and says(rest[1], sums), (row[0][0], float(sums))
            priced += 1
        else: assert not rest, f"a price where one is not known: {row[0][0]}"
    # The step itself is bought once, and one tick more costs a step more.
    first, below, above = (bought(job, used(job, l, job.data["cloths"][0]))[0] for l in job.data["layouts"][:3])
    assert first == below < above
    return seen, priced


def main(program, count="24"):
    poppler.need("pdftotext")
    with tempfile.TemporaryDirectory() as folder:
        folder = pathlib.Path(folder)
        subprocess.run([program, folder, "prices", count], check=True)
        files = sorted(folder.glob("*.pdf"))
        failed, seen, priced = [], 0, 0
        for pdf in files:
            try: a, b = check(pdf)
            except AssertionError as e: failed.append(f"{pdf.name}: {e}")
            else: seen += a; priced += b
        if failed: sys.exit("\n".join(failed))
        samples = len([f for f in files if f.name.startswith("sample-")])
        assert samples >= 7 and priced >= 2 * int(count) + 20, (samples, priced)
        print(f"{len(files)} client's pages, {samples} of samples: {seen} bolts to buy, {priced} choices with a price")


if __name__ == "__main__":
    main(*sys.argv[1:])
