#!/usr/bin/env python3
"""boltwright draw, sheet and client: a picture, a sheet to cut from, a page for the client."""
import re, unittest, xml.etree.ElementTree

from boltwright import SAMPLES, ProgramTest, bench, run


class Pages(ProgramTest):
    def planned(self, job=None):
        file = self.write(job or bench())
        self.assertEqual(run("plan", file, "--steps", 200).returncode, 0)
        return file

    def test_a_picture_in_true_millimetres(self):
        out = self.folder / "stool.svg"
        answer = run("draw", self.planned(), "--out", out)
        self.assertEqual((answer.returncode, answer.stderr), (0, ""))
        picture = xml.etree.ElementTree.parse(out).getroot()
        self.assertTrue(picture.get("width").endswith("mm"), picture.get("width"))
        # One user unit is one millimetre, so the page is as wide in millimetres as the view box in units.
        self.assertAlmostEqual(float(picture.get("width")[:-2]), float(picture.get("viewBox").split()[2]), places=3)
        # The cloth is 54 in across: 1371.6 mm (1 in = 25.4 mm exactly, international inch of 1959, from memory).
        self.assertGreaterEqual(float(picture.get("height")[:-2]), 1371.6)
        titles = {title.text for title in picture.iter("{http://www.w3.org/2000/svg}title")}
        self.assertTrue(any("Seat" in (title or "") for title in titles), titles)

    def test_a_picture_of_dots(self):
        out = self.folder / "stool.png"
        self.assertEqual(run("draw", self.planned(), "--out", out).returncode, 0)
        self.assertEqual(out.read_bytes()[:8], b"\x89PNG\r\n\x1a\n")

    def test_a_picture_of_another_kind_is_refused(self):
        out = self.folder / "stool.gif"
        self.assert_one_line(run("draw", self.planned(), "--out", out), "stool.gif", ".svg", ".png")
        self.assertFalse(out.exists())

    def test_a_job_without_a_layout_cannot_be_drawn(self):
        for command, name in (("draw", "x.svg"),):
            self.assert_one_line(run(command, self.write(bench()), "--out", self.folder / name), "no layout")

    def test_a_place_that_cannot_be_written(self):
        file = self.planned()
        for command, name in (("draw", "x.svg"), ("draw", "x.png")):
            out = self.folder / "nowhere" / name
            self.assert_one_line(run(command, file, "--out", out), str(out))

    def test_a_layout_that_is_not_right_is_drawn_with_a_warning(self):
        file, out = self.planned(), self.folder / "stool.svg"
        file.write_text(re.sub(r'"x": ?[\d.]+', '"x": 0', file.read_text(), count=1))
        answer = run("draw", file, "--out", out)
        self.assertIn("do not cut from this", answer.stderr)
        self.assertTrue(out.exists())

    def test_every_sample_can_be_drawn_and_printed(self):
        for sample in SAMPLES:
            planned = self.folder / sample.name
            self.assertEqual(run("plan", sample, "--seconds", 2, "--out", planned).returncode, 0, sample.name)
            for command, name in (("draw", "x.svg"), ("draw", "x.png")):
                answer = run(command, planned, "--out", self.folder / name)
                self.assertEqual((answer.returncode, answer.stderr), (0, ""), (sample.name, command))


if __name__ == "__main__": unittest.main()
