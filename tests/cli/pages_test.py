#!/usr/bin/env python3
"""boltwright draw, sheet and client: a picture, a sheet to cut from, a page for the client."""
import json, re, shutil, subprocess, unittest, xml.etree.ElementTree

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

    def test_the_clients_page_claims_nothing_for_a_layout_that_does_not_hold(self):
        file, out = self.planned(), self.folder / "client.pdf"
        self.assertEqual(run("client", file, "--out", out, "--seconds", 0).returncode, 0)
        self.assertIn("Nothing is given up for it", self.words_of(out))
        self.assertIn("of the 2 yd 18 in there; 1 yd 34 in left over", self.words_of(out))
        right = file.read_text()
        job = json.loads(right)
        job["layouts"][-1]["cuts"].pop()  # a border is put aside
        file.write_text(json.dumps(job))
        self.assertEqual(run("client", file, "--out", out, "--seconds", 0).returncode, 0)
        said = self.words_of(out)
        self.assertIn("A draft: this layout does not hold yet.", said)
        self.assertIn("a draft: does not hold yet", said)  # in the choice as well
        self.assertNotIn("full allowances", said)
        self.assertNotIn("nothing given up", said)
        # What cannot be cut at all is not shown to a client, as there is no sheet to cut by.
        job = json.loads(right)
        job["layouts"][-1]["cuts"][0]["x"] = -3
        file.write_text(json.dumps(job))
        out.unlink()
        self.assert_one_line(run("client", file, "--out", out, "--seconds", 0), "nothing is printed for a client")
        self.assertFalse(out.exists())

    def test_what_the_search_leaves_open_is_no_reason_to_a_client(self):
        # Nothing proves this settee's length, so each step between planned lengths is told as no more than it.
        file = self.planned(json.loads((SAMPLES[0].parent / "striped-settee.boltwright").read_text()))
        out = self.folder / "client.pdf"
        self.assertEqual(run("client", file, "--out", out, "--seconds", 0.5).returncode, 0)
        self.assertRegex(self.words_of(out), r"\+ up to [0-9]")

    def photographed(self, taped):
        """The bench on a remnant that was measured in a photograph which is long gone."""
        job = bench()
        corners = [[0, 0], [60, 0], [60, 50], [0, 50]]
        photo = {"file": "gone.jpg", "points": [[0, 0], [1, 0], [1, 1], [0, 1]], "at": corners}
        if taped:
            photo["taped"] = [{"from": [0, 1], "to": [60, 1], "taped": 60}, {"from": [1, 0], "to": [1, 50], "taped": 50}]
        job["cloths"] = [{"id": "body", "remnants": [{"id": "A", "outline": corners, "photo": photo}]}]
        return self.planned(job)

    def test_nothing_is_cut_by_a_photograph_alone(self):
        file = self.photographed(taped=False)
        for name in ("sheet.pdf", "sheet.csv"):
            out = self.folder / name
            self.assert_one_line(run("sheet", file, "--out", out), name, "remnant A", "photograph only", "tape two lengths")
            self.assertFalse(out.exists())
        # A picture and the client's page are nothing to cut by.
        self.assertEqual(run("draw", file, "--out", self.folder / "x.png").returncode, 0)
        self.assertEqual(run("client", file, "--out", self.folder / "x.pdf", "--seconds", 0).returncode, 0)

    def test_two_taped_lengths_open_the_sheet(self):
        out = self.folder / "sheet.pdf"
        self.assertEqual(run("sheet", self.photographed(taped=True), "--out", out).returncode, 0)
        self.assertEqual(out.read_bytes()[:5], b"%PDF-")

    def words_of(self, pdf):
        if not shutil.which("pdftotext"): self.skipTest("pdftotext is not here, so the pages cannot be read")
        text = subprocess.run(["pdftotext", "-layout", pdf, "-"], capture_output=True, text=True, check=True).stdout
        return " ".join(text.split())

    def test_trimmings_and_what_was_asked_of_the_cloth_are_printed(self):
        job = bench()
        # T7.4 of the trade notes: 36 in of half-inch heads side by side are 72 nails.
        job["trimmings"] = [
            {"kind": "nails", "name": "front edge", "edges": 36, "head": "1/2"},
            {"kind": "welt", "edges": 60, "strip": 1.5, "run": "across", "from": "scraps", "shortest": 15}]
        job["cloths"][0]["asked"] = [{"about": "fire", "said": "doubt", "note": "label comes with the bolt"}]
        job["cloths"][0]["skew"] = 1
        file = self.planned(job)
        self.assertEqual(run("client", file, "--out", self.folder / "client.pdf").returncode, 0)
        client = self.words_of(self.folder / "client.pdf")
        for words in ("Nails (front edge): 72 with heads of", "What the cloth must be", "in doubt", "label comes with the bolt",
                      "skew 1 in over the width", "local rules", "what is left over"):
            self.assertIn(words, client)
        self.assertEqual(run("sheet", file, "--out", self.folder / "sheet.pdf").returncode, 0)
        sheet = self.words_of(self.folder / "sheet.pdf")
        self.assertIn("Nails (front edge): 72", sheet)
        self.assertNotIn("What the cloth must be", sheet)

    def test_every_sample_can_be_drawn_and_printed(self):
        for sample in SAMPLES:
            planned = self.folder / sample.name
            self.assertEqual(run("plan", sample, "--seconds", 2, "--out", planned).returncode, 0, sample.name)
            for command, name in (("draw", "x.svg"), ("draw", "x.png")):
                answer = run(command, planned, "--out", self.folder / name)
                self.assertEqual((answer.returncode, answer.stderr), (0, ""), (sample.name, command))


if __name__ == "__main__": unittest.main()
