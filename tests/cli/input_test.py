#!/usr/bin/env python3
"""What is wrong with a file or a call is said in one line, and nothing is written."""
import json, unittest

from boltwright import SAMPLES, ProgramTest, bench, run


class Input(ProgramTest):
    def refused(self, job, *words):
        """The job is refused by plan and check alike, in one line that names the file, and stays byte for byte."""
        file = self.write(job)
        before = file.read_bytes()
        for call in (("plan", file, "--steps", 10), ("check", file)):
            self.assert_one_line(run(*call), str(file), *words)
        self.assertEqual(file.read_bytes(), before)
        self.assertEqual([entry.name for entry in self.folder.iterdir()], [file.name])

    def changed(self, change):
        job = bench()
        change(job)
        return job

    def test_a_file_that_is_not_there(self):
        self.assert_one_line(run("plan", self.folder / "none.boltwright"), "none.boltwright")

    def test_a_folder_in_place_of_a_file(self): self.assert_one_line(run("plan", self.folder), str(self.folder))

    def test_an_empty_file(self): self.refused("")

    def test_half_a_file(self):
        text = SAMPLES[0].read_text()
        self.refused(text[:len(text) // 2])

    def test_bytes_that_are_no_text(self): self.refused(b"\x00\xff\xfe\x80" * 40)

    def test_text_that_is_no_utf_8(self): self.refused(json.dumps(bench()).encode().replace(b"Piano", b"Pian\xf3"))

    def test_json_that_is_no_job(self):
        for text in ("[]", "3", "null", '"boltwright"', "{}"): self.refused(text)

    def test_another_version(self): self.refused(self.changed(lambda job: job.update(boltwright=2)), "boltwright", "2")

    def test_a_unit_that_is_none(self): self.refused(self.changed(lambda job: job.update(unit="furlong")), "unit", "furlong")

    def test_a_word_where_a_length_belongs(self):
        self.refused(self.changed(lambda job: job["panels"][0]["shape"].update(across="2o 1/2")), "seat", "across", "2o 1/2")

    def test_a_decimal_comma(self): self.refused(self.changed(lambda job: job["panels"][0]["shape"].update(across="20,5")), "seat", "20,5")

    def test_wrong_types(self):
        for key, value in (("panels", {}), ("cloths", "cotton"), ("gap", [1]), ("gap", True), ("layouts", 3)):
            self.refused(self.changed(lambda job: job.update({key: value})), key)

    def test_absurd_numbers(self):
        for value in (0, -3, 1e300, "1e9", 40000000):
            self.refused(self.changed(lambda job: job["panels"][0]["shape"].update(up=value)), "up")

    def test_numbers_that_are_none(self):
        for value in ("NaN", "Infinity", "1e999"):
            self.refused(json.dumps(bench()).replace('"up": 16', f'"up": {value}'))

    def test_a_count_of_none_or_half(self):
        for value in (0, -1, 1.5, "two"): self.refused(self.changed(lambda job: job["panels"][0].update(count=value)), "count")

    def test_negative_allowance_gap_and_selvage(self):
        self.refused(self.changed(lambda job: job["panels"][0].update(allow=-1)), "allow")
        self.refused(self.changed(lambda job: job.update(gap=-0.25)), "gap")
        self.refused(self.changed(lambda job: job["cloths"][0].update(selvage=-1)), "selvage")

    def test_no_width_left_between_the_selvages(self):
        self.refused(self.changed(lambda job: job["cloths"][0].update(selvage=27)), "selvage")

    def test_an_allowance_that_may_grow(self):
        self.refused(self.changed(lambda job: job["panels"][0].update(allow_min=3)), "allow_min")

    def test_unknown_ids(self):
        self.refused(self.changed(lambda job: job["panels"][0].update(cloth="velvet")), "velvet")
        self.refused(self.changed(lambda job: job.update(flow=[{"from": "seat", "edge": "bottom", "to": "nothing", "edge_to": "top"}])), "nothing")

    def test_an_edge_that_is_none(self):
        self.refused(self.changed(lambda job: job["panels"][0].update(allow={"front": 1})), "front")

    def test_two_panels_of_one_id(self): self.refused(self.changed(lambda job: job["panels"][1].update(id="seat")), "seat")

    def test_a_polygon_that_crosses_itself(self):
        shape = {"kind": "polygon", "points": [[0, 0], [10, 10], [10, 0], [0, 10]]}
        self.refused(self.changed(lambda job: job["panels"][0].update(shape=shape)), "seat", "points")

    def test_a_polygon_that_runs_clockwise(self):
        shape = {"kind": "polygon", "points": [[0, 0], [0, 10], [10, 10], [10, 0]]}
        self.refused(self.changed(lambda job: job["panels"][0].update(shape=shape)), "seat", "points")

    def test_a_motif_on_cloth_without_a_pattern(self):
        self.refused(self.changed(lambda job: job["panels"][0].update(motif={"centre": "both"})), "seat", "motif")

    def test_a_motif_on_an_axis_that_does_not_repeat(self):
        def change(job):
            job["cloths"][0]["pattern"] = {"across": 4.5}
            job["panels"][0]["motif"] = {"centre": "up"}
        self.refused(self.changed(change), "seat", "motif")

    def test_pieces_of_something_not_a_rectangle(self):
        def change(job):
            job["panels"][0]["shape"] = {"kind": "trapezoid", "bottom": 20, "top": 18, "up": 16}
            job["panels"][0]["pieces"] = {"most": 2}
        self.refused(self.changed(change), "seat", "most")

    def test_a_cloth_that_is_bolt_and_remnant_at_once(self):
        self.refused(self.changed(lambda job: job["cloths"][0].update(remnants=[{"id": "A", "outline": [[0, 0], [9, 0], [9, 9]]}])), "body")

    def test_a_very_deep_file(self): self.refused("[" * 200000)


class Calls(ProgramTest):
    def test_an_option_that_is_none(self): self.assert_one_line(run("plan", SAMPLES[0], "--fast"), "--fast")

    def test_a_job_left_out(self): self.assert_one_line(run("plan"), "JOB")

    def test_numbers_out_of_range(self):
        for option, value in (("--seconds", "0"), ("--seconds", "soon"), ("--threads", "0"), ("--steps", "-5"), ("--seed", "-1"), ("--seed", "x")):
            self.assert_one_line(run("plan", SAMPLES[0], option, value), option)

    def test_seconds_and_steps_at_once(self):
        self.assert_one_line(run("plan", SAMPLES[0], "--steps", 5, "--seconds", 1), "--seconds", "--steps")

    def test_help_and_version(self):
        for arguments in (("--help",), ("plan", "--help"), ("check", "--help"), ("draw", "--help")):
            answer = run(*arguments)
            self.assertEqual((answer.returncode, answer.stderr), (0, ""))
            self.assertIn("JOB", answer.stdout)
        self.assertRegex(run("--version").stdout, r"^boltwright \d+\.\d+\.\d+\n$")


if __name__ == "__main__": unittest.main()
