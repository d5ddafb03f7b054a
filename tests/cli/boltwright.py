"""The program as its user meets it: for tests that call the command line and look at output, exit code and files."""
import copy, json, os, pathlib, shutil, subprocess, sys, tempfile, unittest

ROOT = pathlib.Path(__file__).resolve().parents[2]
SAMPLES = sorted((ROOT / "samples").glob("*.boltwright"))
SHARED = pathlib.Path(os.environ.get("BOLTWRIGHT_SHARED", ROOT.parent / "shared"))
PROGRAM = os.environ.get("BOLTWRIGHT", str(ROOT / "build" / "boltwright"))


def run(*arguments, **options):
    """Calls the program; returns what subprocess.run does, as text."""
    environment = {**os.environ, "LC_ALL": "C.UTF-8", **options.pop("environment", {})}
    environment.pop("DISPLAY", None)          # the command line needs no display
    environment.pop("WAYLAND_DISPLAY", None)
    return subprocess.run([PROGRAM, *map(str, arguments)], capture_output=True, text=True, env=environment, timeout=540, **options)


def python_with_shapely():
    for python in (sys.executable, "/usr/bin/python3"):
        if subprocess.run([python, "-c", "import shapely"], capture_output=True).returncode == 0: return python
    return None


def outside_check(job, layout=None):
    """The faults that a checker finds which shares no code with the program; None when it is not at hand."""
    checker, python = SHARED / "tools" / "check_layout.py", python_with_shapely()
    if not checker.exists() or not python: return None
    answer = subprocess.run([python, str(checker), str(job), "--json", *(["--layout", layout] if layout else [])], capture_output=True, text=True)
    if answer.returncode == 2: return [answer.stderr.strip()]
    return json.loads(answer.stdout)["faults"]


def bench():
    """A small job with room to spare; tests change what they are about."""
    return copy.deepcopy({
        "boltwright": 1, "unit": "in",
        "job": {"title": "Piano stool"},
        "cloths": [{"id": "body", "name": "Plain rep", "bolt": {"width": 54, "length": 90}, "selvage": 0.5}],
        "gap": 0.25,
        "panels": [
            {"id": "seat", "mark": "ST", "name": "Seat", "shape": {"kind": "rectangle", "across": 18, "up": 16}, "allow": 2},
            {"id": "border", "mark": "B", "name": "Border", "count": 2, "shape": {"kind": "rectangle", "across": 20, "up": 4}, "allow": 0.5},
        ]})


class ProgramTest(unittest.TestCase):
    """Gives every test a folder of its own."""

    def setUp(self):
        self.folder = pathlib.Path(tempfile.mkdtemp(prefix="boltwright-"))
        self.addCleanup(shutil.rmtree, self.folder, ignore_errors=True)

    def write(self, job, name="job.boltwright"):
        """A job (or text, or bytes) as a file in the test's folder."""
        file = self.folder / name
        file.write_bytes(job if isinstance(job, bytes) else (job if isinstance(job, str) else json.dumps(job)).encode())
        return file

    def assert_one_line(self, answer, *words):
        """Exit 2: one clear line on standard error with these words, nothing on standard output."""
        self.assertEqual(answer.returncode, 2, answer.stdout + answer.stderr)
        self.assertEqual(answer.stdout, "")
        self.assertEqual(answer.stderr.count("\n"), 1, answer.stderr)
        for word in words: self.assertIn(word, answer.stderr)
        for word in ("std::", "json.exception", "parse error", "terminate"): self.assertNotIn(word, answer.stderr)

    def assert_right(self, job):
        """Both judges, ours and the outside one, call the last layout right."""
        answer = run("check", job)
        self.assertEqual((answer.returncode, answer.stdout), (0, "right\n"), answer.stderr)
        faults = outside_check(job)
        if faults is None: print("the outside checker is not at hand; only our own was asked", file=sys.stderr)
        else: self.assertEqual(faults, [])
