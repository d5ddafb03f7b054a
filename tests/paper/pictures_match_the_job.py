"""SVG pictures, read back by Python's own XML parser, show exactly the layout that the job file tells.

usage: pictures_match_the_job.py PAPER_PAGES
"""
import pathlib, subprocess, sys, tempfile
import xml.etree.ElementTree as ET
import zlib, struct
from job_on_cloth import Job, farthest

SVG = "{http://www.w3.org/2000/svg}"
CLOSE = 0.02  # mm: whole ticks on the bias, mitres, and three decimals in the file


def polygon(element):
    return [tuple(map(float, p.split(","))) for p in element.get("points").split()]


def panel_id(cut):
    name = f"panel-{cut['panel']}-{cut.get('copy', 1)}" + (f"-{cut.get('piece', 1)}" if cut.get("of", 1) > 1 else "")
    return "".join(c if c.isalnum() or c in "-_." else "_" for c in name)


def sheets(job):
    for cloth in job.data["cloths"]:
        for on in [None] if "bolt" in cloth else [r["id"] for r in cloth["remnants"]]:
            cuts = [c for c in job.layout["cuts"] if job.cloth_of(c) == cloth["id"] and c.get("on") == on]
            if cuts: yield cuts


def check(job_file, svg_file):
    job, root = Job(job_file), ET.parse(svg_file).getroot()
    box = [float(v) for v in root.get("viewBox").split()]
    assert root.get("width") == f"{box[2]:.3f}mm" and root.get("height") == f"{box[3]:.3f}mm", "the picture is not in true millimetres"
    assert root.find(SVG + "title").text and root.find(SVG + "desc").text
    groups = {g.get("id"): g for g in root.iter(SVG + "g") if g.get("id")}
    assert len(groups) == sum(1 for g in root.iter(SVG + "g") if g.get("id")), "an id stands twice"
    wanted = {panel_id(c) for c in job.layout["cuts"]}
    assert {g for g in groups if g.startswith("panel-")} == wanted, (set(groups) ^ wanted)
    for number, cuts in enumerate(sheets(job)):
        moved = None  # how much further down a second sheet lies
        for cut in cuts:
            group = groups[panel_id(cut)]
            assert group.find(SVG + "title").text and group.find(SVG + "desc").text, panel_id(cut)
            outline = polygon(group.find(SVG + "polygon"))
            ring = [(y, x) for x, y in job.on_cloth(cut)]  # from the cut end to the right, from the left selvage down
            down = min(p[1] for p in outline) - min(p[1] for p in ring)
            if moved is None: moved = 0 if number == 0 else down
            ring = [(x, y + moved) for x, y in ring]
            off = farthest(outline, ring)
            assert off <= CLOSE, f"{svg_file.name}: {panel_id(cut)} is {off:.3f} mm from where the job has it"
            for p in outline: assert box[0] <= p[0] <= box[0] + box[2] and box[1] <= p[1] <= box[1] + box[3]
    for text in root.iter(SVG + "text"):
        assert box[0] <= float(text.get("x")) <= box[0] + box[2] and box[1] <= float(text.get("y")) <= box[1] + box[3]
    return len(wanted)


def png_size(path):
    data = path.read_bytes()
    assert data[:8] == b"\x89PNG\r\n\x1a\n"
    length, kind = struct.unpack(">I4s", data[8:16])
    assert kind == b"IHDR" and zlib.crc32(data[12:16 + length]) == struct.unpack(">I", data[16 + length:20 + length])[0]
    return struct.unpack(">II", data[16:24])


def main(program):
    with tempfile.TemporaryDirectory() as folder:
        folder = pathlib.Path(folder)
        subprocess.run([program, folder, "pictures"], check=True)
        jobs = sorted(folder.glob("*.boltwright"))
        assert len(jobs) >= 10
        panels = 0
        for job in jobs:
            panels += check(job, job.with_suffix(".svg"))
            box = [float(v) for v in ET.parse(job.with_suffix(".svg")).getroot().get("viewBox").split()]
            width, height = png_size(job.with_suffix(".png"))  # a tenth of true size at 60 dots an inch
            assert abs(width - box[2] / 10 / 25.4 * 60) <= 1.5 and abs(height - box[3] / 10 / 25.4 * 60) <= 1.5
        print(f"{len(jobs)} pictures, {panels} outlines within {CLOSE} mm")


if __name__ == "__main__":
    main(sys.argv[1])
