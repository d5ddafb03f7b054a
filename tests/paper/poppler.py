"""What is on the pages of a PDF, as poppler reads it: paths and words, millimetres from the paper's upper left corner."""
import re, shutil, subprocess, sys
import xml.etree.ElementTree as ET

POINT = 25.4 / 72
SVG = "{http://www.w3.org/2000/svg}"
HTML = "{http://www.w3.org/1999/xhtml}"


def need(*tools):
    missing = [t for t in tools if not shutil.which(t)]
    if missing:
        print(f"skipped: {', '.join(missing)} missing (Debian: poppler-utils, qpdf)")
        sys.exit(77)


def run(*command):
    return subprocess.run(command, check=True, capture_output=True).stdout


def multiplied(m, n):
    a, b, c, d, e, f = m
    g, h, i, j, k, l = n
    return (a * g + c * h, b * g + d * h, a * i + c * j, b * i + d * j, a * k + c * l + e, b * k + d * l + f)


def matrix(text):
    m = re.match(r"matrix\(([^)]*)\)", text or "")
    return tuple(float(v) for v in re.split(r"[ ,]+", m.group(1).strip())) if m else (1, 0, 0, 1, 0, 0)


class Path:
    """One path: its corners by part, whether a part is closed, whether it is filled or stroked."""
    def __init__(self, element, m):
        # Older poppler writes a style, newer one attributes.
        style = dict(entry.split(":", 1) for entry in (element.get("style") or "").split(";") if ":" in entry)
        look = lambda key: element.get(key) or style.get(key)
        self.filled = look("fill") not in (None, "none")
        self.stroked = look("stroke") not in (None, "none")
        self.parts = []
        for part in re.findall(r"M[^M]*", element.get("d") or ""):
            numbers = [float(v) for v in re.findall(r"-?\d+\.?\d*(?:e-?\d+)?", part)]
            points = [self.at(m, numbers[i], numbers[i + 1]) for i in range(0, len(numbers) - 1, 2)]
            closed = "Z" in part
            while len(points) > 1 and close(points[0], points[-1]) and closed: points.pop()
            if len(points) > 1: self.parts.append((points, closed))

    @staticmethod
    def at(m, x, y):
        return ((m[0] * x + m[2] * y + m[4]) * POINT, (m[1] * x + m[3] * y + m[5]) * POINT)


def close(p, q, by=1e-6): return abs(p[0] - q[0]) <= by and abs(p[1] - q[1]) <= by


def paths(pdf, page):
    """All paths of a page but those that words are made of."""
    root = ET.fromstring(run("pdftocairo", "-svg", "-f", str(page), "-l", str(page), pdf, "-"))
    found = []

    def walk(element, m):
        if element.tag == SVG + "defs": return
        m = multiplied(m, matrix(element.get("transform")))
        if element.tag == SVG + "path": found.append(Path(element, m))
        for child in element: walk(child, m)

    walk(root, (1, 0, 0, 1, 0, 0))
    return found


def words(pdf):
    """By page: (paper width, height, [(text, left, top, right, bottom)])."""
    root = ET.fromstring(re.sub(rb"[\x00-\x08\x0b\x0c\x0e-\x1f]", b"", run("pdftotext", "-bbox", pdf, "-")))
    pages = []
    for page in root.iter(HTML + "page"):
        rows = [(w.text or "", *(float(w.get(k)) * POINT for k in ("xMin", "yMin", "xMax", "yMax"))) for w in page.iter(HTML + "word")]
        pages.append((float(page.get("width")) * POINT, float(page.get("height")) * POINT, rows))
    return pages


def dots(pdf, page, resolution):
    """A page in shades of grey: how many dots across and down, and all of them, row by row; 255 is white."""
    data = run("pdftoppm", "-gray", "-r", str(resolution), "-f", str(page), "-l", str(page), pdf)
    head = re.match(rb"P5\s+(\d+)\s+(\d+)\s+255\s", data)
    return int(head.group(1)), int(head.group(2)), data[head.end():]
