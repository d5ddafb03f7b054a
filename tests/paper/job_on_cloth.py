"""Where the cuts of a .boltwright job lie on the cloth, in millimetres, told again from the format in the plainest way.

For tests of paper only: no code of the program, no judgement.
"""
import json, math, re
from fractions import Fraction as F

PER_UNIT = {"in": F(254, 10), "cm": F(10), "mm": F(1)}
EDGES = ("bottom", "right", "top", "left")


def in_millimetres(text, bare):
    """"36 1/2", "1 yd 4 1/2 in", "92 cm": numbers and fractions count until the unit that follows them."""
    text = text.strip().replace("½", " 1/2")
    if text.startswith("-"): return -in_millimetres(text[1:], bare)
    if re.fullmatch(r"[\d.]+[eE][-+]?\d+", text): return F(text) * bare
    total, held = F(0), F(0)
    for number, unit in re.findall(r"(\d+/\d+|\d*\.?\d+)|(yd|in|cm|mm|m|\"|')", text):
        if number: held += F(number)
        else:
            total += held * {"yd": F(9144, 10), "in": F(254, 10), '"': F(254, 10), "'": F(3048, 10), "cm": 10, "mm": 1, "m": 1000}[unit]
            held = F(0)
    return total + held * bare


def load(path):
    with open(path, encoding="utf-8") as f: return json.load(f)


class Job:
    def __init__(self, path):
        self.data = load(path)
        self.per = PER_UNIT[self.data["unit"]]
        self.panels = {p["id"]: p for p in self.data["panels"]}
        self.cloths = {c["id"]: c for c in self.data["cloths"]}
        self.main = self.data["cloths"][0]["id"]
        self.layout = self.data["layouts"][-1]

    def mm(self, length): return float(in_millimetres(str(length), self.per))

    def measured(self, panel):
        s = panel["shape"]
        if s["kind"] == "rectangle":
            a, u = self.mm(s["across"]), self.mm(s["up"])
            return [(0, 0), (a, 0), (a, u), (0, u)]
        if s["kind"] == "trapezoid":
            b, t, u = self.mm(s["bottom"]), self.mm(s["top"]), self.mm(s["up"])
            left = (b - t) / 2 + self.mm(s.get("shift", 0))
            return [(0, 0), (b, 0), (left + t, u), (left, u)]
        return [(self.mm(x), self.mm(y)) for x, y in s["points"]]

    def allowances(self, panel, cut):
        n = len(self.measured(panel))
        names = EDGES if panel["shape"]["kind"] != "polygon" else [str(i) for i in range(n)]
        full = self._by_edge(panel.get("allow"), names, [0.0] * n)
        return self._by_edge(cut.get("allow"), names, full)

    def _by_edge(self, spec, names, default):
        if spec is None: return list(default)
        if isinstance(spec, dict): return [self.mm(spec[k]) if k in spec else d for k, d in zip(names, default)]
        if isinstance(spec, list): return [self.mm(v) for v in spec]
        return [self.mm(spec)] * len(names)

    def cut_outline(self, panel, cut):
        """The cut outline in the panel's frame; of a piece, its part."""
        outline = grown(self.measured(panel), self.allowances(panel, cut))
        if cut.get("of", 1) == 1: return outline
        axis, low, high = self.piece_span(panel, cut, outline)
        lo = [min(p[k] for p in outline) for k in (0, 1)]
        hi = [max(p[k] for p in outline) for k in (0, 1)]
        lo[axis], hi[axis] = low, high
        return [(lo[0], lo[1]), (hi[0], lo[1]), (hi[0], hi[1]), (lo[0], hi[1])]

    def piece_span(self, panel, cut, outline):
        size = [max(p[k] for p in outline) - min(p[k] for p in outline) for k in (0, 1)]
        axis = 0 if size[0] >= size[1] - 1e-9 else 1
        seam = self.mm(panel["pieces"].get("seam", 0))
        at = min(p[axis] for p in outline)
        mates = [c for c in self.layout["cuts"] if (c["panel"], c.get("copy", 1)) == (cut["panel"], cut.get("copy", 1))]
        for c in sorted(mates, key=lambda c: c.get("piece", 1)):
            k, n = c.get("piece", 1), c["of"]
            net = self.mm(c["length"]) - seam * ((k > 1) + (k < n))
            if k == cut.get("piece", 1): return axis, at - seam * (k > 1), at + net + seam * (k < n)
            at += net

    def on_cloth(self, cut):
        """The cut outline where it lies, cloth frame."""
        panel = self.panels[cut["panel"]]
        ring = [spun(p, cut.get("turn", 0), cut.get("mirrored", False)) for p in self.cut_outline(panel, cut)]
        dx, dy = self.mm(cut["x"]) - min(p[0] for p in ring), self.mm(cut["y"]) - min(p[1] for p in ring)
        return [(x + dx, y + dy) for x, y in ring]

    def cloth_of(self, cut):
        return cut.get("cloth") or self.panels[cut["panel"]].get("cloth") or self.main


def grown(points, allow):
    n, lines, out = len(points), [], []
    for i in range(n):
        (x1, y1), (x2, y2) = points[i], points[(i + 1) % n]
        d = math.hypot(x2 - x1, y2 - y1)
        nx, ny = (y2 - y1) / d, (x1 - x2) / d
        lines.append((nx, ny, nx * x1 + ny * y1 + allow[i]))
    for i in range(n):
        (a, b, c), (d, e, f) = lines[i - 1], lines[i]
        det = a * e - d * b
        out.append(((c * e - f * b) / det, (a * f - d * c) / det))
    return out


def spun(p, turn, mirrored):
    x, y = (-p[0], p[1]) if mirrored else p
    c, s = {0: (1, 0), 90: (0, 1), 180: (-1, 0), 270: (0, -1)}.get(turn, (math.cos(math.radians(turn)), math.sin(math.radians(turn))))
    return (c * x - s * y, s * x + c * y)


def farthest(ring, other):
    """How far two rings of the same corners are apart, wherever each begins and whichever way it runs."""
    if len(ring) != len(other): return math.inf
    n = len(ring)
    best = math.inf
    for way in (other, other[::-1]):
        for k in range(n):
            best = min(best, max(math.dist(ring[i], way[(i + k) % n]) for i in range(n)))
    return best
