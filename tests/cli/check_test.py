#!/usr/bin/env python3
"""boltwright check: right or not, and what is not."""
import json, unittest

from boltwright import ProgramTest, bench, outside_check, run


def laid():
    """The piano stool, laid by hand: borders side by side above the seat."""
    job = bench()
    job["layouts"] = [{"name": "by hand", "cloths": [{"id": "body", "length": 25.25}], "cuts": [
        {"panel": "seat", "copy": 1, "x": 0.5, "y": 0},
        {"panel": "border", "copy": 1, "x": 0.5, "y": 20.25},
        {"panel": "border", "copy": 2, "x": 21.75, "y": 20.25}]}]
    return job


class Check(ProgramTest):
    def faults(self, change):
        """What both judges find in the layout by hand after a change: ours as objects, the outside one's as texts."""
        job = laid()
        change(job, job["layouts"][0]["cuts"])
        file = self.write(job)
        answer = run("check", file, "--json")
        said = json.loads(answer.stdout)
        self.assertEqual(answer.returncode, 1 if said["faults"] else 0)
        self.assertEqual(said["right"], not said["faults"])
        outside = outside_check(file)
        if outside is not None: self.assertEqual(not outside, said["right"], (outside, said))
        return said["faults"]

    def test_a_layout_by_hand_is_right(self): self.assertEqual(self.faults(lambda job, cuts: None), [])

    def test_panels_too_near_each_other(self):
        fault, = self.faults(lambda job, cuts: cuts[2].update(x=21.6))
        self.assertEqual(fault["kind"], "overlap")
        self.assertEqual(fault["panel"], "border")

    def test_a_panel_on_the_selvage(self):
        fault, = self.faults(lambda job, cuts: cuts[0].update(x=0.25))
        self.assertEqual((fault["kind"], fault["panel"], fault["copy"]), ("edge", "seat", 1))

    def test_a_panel_left_out(self):
        fault, = self.faults(lambda job, cuts: cuts.pop(1))
        self.assertEqual((fault["kind"], fault["panel"], fault["copy"]), ("missing", "border", 1))

    def test_a_panel_turned_without_leave(self):
        fault, = self.faults(lambda job, cuts: cuts[0].update(turn=180))
        self.assertEqual((fault["kind"], fault["panel"]), ("turn", "seat"))

    def test_a_panel_that_the_job_has_not(self):
        faults = self.faults(lambda job, cuts: cuts.append({"panel": "ghost", "copy": 1, "x": 0.5, "y": 40}))
        self.assertIn("ghost", " ".join(fault["text"] for fault in faults))

    def test_a_length_that_is_not_what_the_cuts_reach(self):
        fault, = self.faults(lambda job, cuts: job["layouts"][0]["cloths"][0].update(length=24))
        self.assertEqual(fault["kind"], "figures")

    def test_text_is_one_sentence_a_line(self):
        job = laid()
        job["layouts"][0]["cuts"][0]["x"] = 0.25
        answer = run("check", self.write(job))
        self.assertEqual(answer.returncode, 1)
        self.assertEqual(len(answer.stdout.splitlines()), 1)
        self.assertIn("Seat", answer.stdout)

    def test_a_job_without_a_layout_is_not_right(self):
        answer = run("check", self.write(bench()), "--json")
        self.assertEqual((answer.returncode, json.loads(answer.stdout)["right"]), (1, False))

    def test_the_last_layout_is_looked_at_unless_one_is_named(self):
        job = laid()
        job["layouts"].append({"name": "half", "cuts": job["layouts"][0]["cuts"][:1]})
        file = self.write(job)
        self.assertEqual(run("check", file).returncode, 1)
        self.assertEqual(run("check", file, "--layout", "by hand").returncode, 0)
        self.assert_one_line(run("check", file, "--layout", "other"), "other", "by hand")


if __name__ == "__main__": unittest.main()
