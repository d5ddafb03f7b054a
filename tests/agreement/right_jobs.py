"""Jobs with a layout that is right, which between them use everything a job file can say. Every one is our invention.

`Bench` lays panels at places that their wishes allow: `lay` puts a point of the panel on a point of the cloth.
"""
import copy as copying


def rectangle(id, across, up, **more):
    return {"id": id, "name": id.title(), "shape": {"kind": "rectangle", "across": across, "up": up}, **more}


def trapezoid(id, bottom, top, up, shift=0, **more):
    return {"id": id, "name": id.title(), "shape": {"kind": "trapezoid", "bottom": bottom, "top": top, "up": up, "shift": shift}, **more}


def polygon(id, points, **more):
    return {"id": id, "name": id.title(), "shape": {"kind": "polygon", "points": points}, **more}


class Bench:
    """Lays cuts by where a point of the panel falls, with the outside checker's own way from panel to cloth."""

    def __init__(self, outside, job):
        self.outside, self.job = outside, job
        self.layout = {"name": "by hand", "made_by": "hand", "cloths": [], "cuts": [], "left_out": [], "conceded": []}
        job["layouts"] = [self.layout]
        self.placed = []

    def panel(self, id): return next(p for p in self.job["panels"] if p["id"] == id)

    def lay(self, id, copy=1, turn=0, put=None, onto=(0, 0), **more):
        """`put`: a point of the panel in the job's unit; none: the lower left corner of the cut's box."""
        o, unit, p = self.outside, self.job["unit"], self.panel(id)
        tick = o.TICK[unit]
        cut = {"panel": id, "copy": copy, "x": 0, "y": 0, "turn": turn, **more}
        if p.get("mirror") and copy % 2 == 0: cut["mirrored"] = True
        points = o.edges_of(p["shape"], unit); names = o.edge_names(p["shape"], len(points))
        want = o.allowance(p.get("allow"), unit, names, [0] * len(points))
        have = o.allowance(cut.get("allow"), unit, names, want)
        span = None
        if cut.get("of", 1) > 1:
            outline = o.grown(points, have)
            size = [max(q[k] for q in outline) - min(q[k] for q in outline) for k in (0, 1)]
            axis = 0 if size[0] >= size[1] else 1
            seam = p["pieces"].get("seam", 0)
            before = min(q[axis] for q in outline)
            for k in range(1, cut["piece"]):
                mate = next(c for c in self.layout["cuts"] if (c["panel"], c["copy"], c.get("piece")) == (id, copy, k))
                before += (mate["length"] - seam * ((k > 1) + (k < cut["of"]))) * tick
            start = before - seam * tick * (cut["piece"] > 1)
            span = (axis, start, start + cut["length"] * tick)
        trial = o.Placed(cut, p, points, have, span, turn, unit)
        if put is not None:
            there = trial.at((put[0] * tick, put[1] * tick))
            onto = (onto[0] - there[0] / tick, onto[1] - there[1] / tick)
        cut["x"], cut["y"] = round(onto[0], 5), round(onto[1], 5)
        self.layout["cuts"].append(cut)
        self.placed.append((cut, o.Placed(cut, p, points, have, span, turn, unit)))
        return cut

    def concede(self, kind, panel, copy=1, **more): self.layout["conceded"].append({"kind": kind, "panel": panel, "copy": copy, **more})

    def tell_lengths(self, **more):
        """The lengths used, of every bolt that something lies on."""
        tick = self.outside.TICK[self.job["unit"]]
        home = self.job["cloths"][0]["id"]
        for cloth in self.job["cloths"]:
            tops = [placed.poly.bounds[3] for cut, placed in self.placed
                    if cut.get("cloth", self.panel(cut["panel"]).get("cloth", home)) == cloth["id"]]
            if "bolt" in cloth and tops:
                self.layout["cloths"].append({"id": cloth["id"], "length": round(max(tops) / tick, 5), **more})


def wing_chair(outside):
    """Inches, one-way cloth with a half-drop; every concession there is."""
    job = {
        "boltwright": 1, "unit": "in", "gap": 0.25,
        "cloths": [
            {"id": "body", "name": "Body", "bolt": {"width": 54, "length": 900, "square": 1, "flaws": [
                {"outline": [[30, 100], [32, 100], [32, 102], [30, 102]], "note": "pulled thread"}]},
             "selvage": 0.5, "way": "one", "pattern": {"across": 13.5, "along": 27, "drop": 13.5, "motif": [6.75, 4]}},
            {"id": "plain", "name": "Plain", "bolt": {"width": 54}, "way": "two"}],
        "panels": [
            rectangle("back", 24, 17, allow=1.5, allow_min={"top": 0.75, "left": 0.5, "right": 0.5},
                      motif={"centre": "across"}, may={"stretcher": {"bottom": 0.5}}),
            rectangle("seat", 24, 20, allow=0.5, motif={"centre": "across"}),
            trapezoid("arm", 20, 16, 12, 1, count=2, mirror=True, allow={"top": 1, "left": 2}, motif={"centre": "up", "at": [10, 6]}),
            rectangle("cushion", 20, 19, count=2, allow=0.5, alike=True, motif={"centre": "both"}),
            rectangle("border", 60, 5, pieces={"most": 3, "seam": 0.5, "shortest": 10, "match": True, "where": "balanced"}),
            rectangle("welt", 3, 30, run="bias"),
            polygon("wing", [[0, 0], [12, 0], [14, 20], [7, 16], [1, 22]], allow=[0.5, 1, 0.5, 0.5, 0.75],
                    allow_min=[0.5, 0.5, 0.5, 0.5, 0.75]),
            rectangle("deck", 22, 20, hidden=True),
            rectangle("outside-back", 26, 24, may={"other_cloth": True}),
            rectangle("dust-cover", 20, 10, may={"other_cloth": "plain"}),
            rectangle("outside-arm", 18, 24, may={"turn": True}),
            rectangle("pad", 12, 12, allow=1, allow_min=0.5, motif={"centre": "both"}, may={"uncentre": True}),
            rectangle("free", 8, 8)],
        "flow": [{"from": "back", "edge": "bottom", "to": "seat", "edge_to": "top", "lost": 4}]}
    bench = Bench(outside, job)
    bench.lay("back", put=(12, 8.5), onto=(20.25, 20), allow={"bottom": 0.75, "right": 1.5, "top": 1, "left": 1.5})
    bench.concede("trim", "back", edge="top", **{"from": 1.5, "to": 1})
    bench.concede("trim", "back", edge="bottom", **{"from": 1.5, "to": 0.75})
    bench.layout["conceded"][-1]["kind"] = "stretcher"
    bench.lay("seat", put=(12, 20), onto=(20.25, 20 - 8.5 - 4 + 54))   # two repeats above where the back's pattern ends
    bench.lay("arm", 1, put=(10, 6), onto=(14, 85))                    # level with motifs at 4 + 27 k / 2
    bench.lay("arm", 2, put=(10, 6), onto=(40, 85))
    bench.lay("cushion", 1, put=(10, 9.5), onto=(20.25, 4 + 13.5 + 108))
    bench.lay("cushion", 2, put=(10, 9.5), onto=(33.75, 4 + 27 * 10))
    bench.lay("border", put=None, onto=(1, 150), piece=1, of=3, length=20.5)
    bench.lay("border", put=(20, 0), onto=(21 + 13.5 - 27, 150 + 13.5), piece=2, of=3, length=21)
    bench.lay("border", put=(40, 0), onto=(7.5 + 20 - 27 + 13.5, 163.5 + 13.5), piece=3, of=3, length=20.5)
    bench.concede("seam", "border")
    bench.lay("welt", turn=45, onto=(25, 185))
    bench.lay("wing", onto=(2, 185), allow=[0.5, 0.5, 0.5, 0.5, 0.75])
    bench.concede("trim", "wing", edge=1, **{"from": 1, "to": 0.5})
    bench.lay("deck", onto=(25, 95))
    bench.layout["left_out"].append({"panel": "outside-back", "copy": 1})
    bench.lay("dust-cover", onto=(0, 0), cloth="plain")
    bench.concede("other_cloth", "dust-cover")
    bench.lay("outside-arm", turn=90, onto=(1, 210))
    bench.concede("turn", "outside-arm")
    bench.lay("pad", onto=(30, 215), allow=0.5)
    bench.concede("uncentre", "pad")
    bench.concede("trim", "pad", edge="all", **{"from": 1, "to": 0.5})
    bench.lay("free", onto=(0.5, 240))
    bench.tell_lengths(bound=5)
    return job


def slipper_chairs(outside):
    """Centimetres, remnants of two-way striped cloth with its top towards the selvage; a notch, a flaw, an edge kept."""
    job = {
        "boltwright": 1, "unit": "cm", "gap": 0.5,
        "cloths": [{"id": "stripe", "name": "Stripe", "way": "two", "up": "across", "edge": 1,
                    "pattern": {"along": 12, "motif": [0, 3]},
                    "remnants": [
                        {"id": "A", "outline": [[0, 0], [120, 0], [120, 90], [70, 90], [70, 150], [0, 150]],
                         "flaws": [{"outline": [[60, 60], [60, 64], [64, 64], [64, 60]], "note": "stain"}]},
                        {"id": "B", "outline": [[0, 100], [110, 100], [100, 0], [0, 0]], "motif": [5, 5]}]}],
        "panels": [
            rectangle("seat", 48, 46, allow=2, motif={"centre": "across"}),
            rectangle("back", 40, 30, count=2, allow=1, alike=True),
            rectangle("apron", 40, 8, count=3, motif={"centre": "across", "at": [0, 4]}),
            rectangle("strap", 8, 50, run="either"),
            rectangle("flap", 30, 20, count=2, mirror=True, allow={"left": 3})],
        "flow": [{"from": "back", "at": [20, 0], "copy": 1, "to": "apron", "at_to": [12, 8], "copy_to": 2},
                 {"from": "back", "edge": "left", "at": [0, 10], "lost": 4, "to": "apron", "edge_to": "left", "copy": 1, "copy_to": 3}]}
    bench = Bench(outside, job)
    bench.lay("seat", turn=90, put=(24, 23), onto=(28, 27), on="A")
    bench.lay("back", 1, turn=90, put=(20, 15), onto=(80, 53), on="B")
    bench.lay("back", 2, turn=90, put=(20, 15), onto=(24, 3 + 120), on="A")
    bench.lay("apron", 1, turn=270, put=(0, 4), onto=(60, 3 + 12 * 12), on="A")
    bench.lay("apron", 2, turn=90, put=(0, 4), onto=(10, 5 + 12 * 1), on="B")
    bench.lay("apron", 3, turn=90, put=(0, 4), onto=(30, 5 + 12 * 4), on="B")
    bench.lay("strap", turn=180, onto=(80, 5), on="A")
    bench.lay("flap", 1, turn=90, onto=(96, 2), on="A")
    bench.lay("flap", 2, turn=270, onto=(96, 40), on="A")
    return job


def window_seat(outside):
    """Millimetres, no pattern, a bolt of two-way cloth; a seat joined to every cushion, and pieces one above the other."""
    job = {
        "boltwright": 1, "unit": "mm", "gap": 5,
        "cloths": [{"id": "wool", "name": "Wool", "way": "two", "bolt": {"width": 1400, "square": 20}, "selvage": 12}],
        "panels": [
            rectangle("seat", 1000, 500, allow=15, allow_min=10),
            rectangle("cushion", 450, 450, count=3, allow=12, alike=True),
            rectangle("curtain", 300, 1500, pieces={"most": 2, "seam": 10, "shortest": 400}, run="down-roll"),
            polygon("corner", [[0, 0], [400, 0], [400, 200], [200, 200], [200, 400], [0, 400]], allow=[10, 10, 10, 10, 10, 10]),
            trapezoid("gusset", 300, 100, 200, 60, count=2, allow=10, run="either"),
            rectangle("bias", 60, 500, run="bias", count=2)],
        "flow": [{"from": "seat", "edge": "top", "to": "cushion", "edge_to": "bottom"},
                 {"from": "cushion", "edge": "right", "copy": 1, "to": "cushion", "edge_to": "left", "copy_to": 2}]}
    bench = Bench(outside, job)
    bench.lay("seat", turn=180, onto=(12, 20))
    for k in (1, 2): bench.lay("cushion", k, turn=180, onto=(12 + 479 * (k - 1), 600))
    bench.lay("cushion", 3, turn=180, onto=(12, 1100))
    bench.lay("curtain", turn=180, onto=(1080, 20), piece=1, of=2, length=810)
    bench.lay("curtain", turn=0, onto=(1080, 835), piece=2, of=2, length=710)
    bench.concede("seam", "curtain")
    bench.lay("corner", onto=(500, 1100))
    bench.lay("gusset", 1, onto=(940, 1600))
    bench.lay("gusset", 2, turn=90, onto=(12, 1600))
    bench.lay("bias", 1, turn=45, onto=(300, 1700))
    bench.lay("bias", 2, turn=315, onto=(720, 1850))
    bench.tell_lengths(bound=900)
    return job


def all_right(outside):
    return {make.__name__: make(outside) for make in (wing_chair, slipper_chairs, window_seat)}


def changed(job, change):
    """A copy of the job after `change(job, layout)`."""
    other = copying.deepcopy(job)
    change(other, other["layouts"][-1])
    return other
