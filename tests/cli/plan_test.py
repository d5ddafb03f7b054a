#!/usr/bin/env python3
"""boltwright plan: what it answers, what it keeps, and what it leaves alone."""
import json, os, signal, subprocess, time, unittest

from boltwright import PROGRAM, SAMPLES, ProgramTest, bench, run


class Plan(ProgramTest):
    def test_a_layout_is_appended_and_everything_else_stays_as_it_was(self):
        job = bench()
        job["mine"] = {"kept": [1, 2.50, "x"]}
        file = self.write(job)
        answer = run("plan", file, "--steps", 200)
        self.assertEqual(answer.returncode, 0, answer.stderr)
        now = json.loads(file.read_text())
        layouts = now.pop("layouts")
        self.assertEqual(now, job)
        self.assertEqual([layout["name"] for layout in layouts], ["Plan 1"])
        self.assertIn("Plan 1", answer.stdout)
        self.assert_right(file)

    def test_planning_again_appends_another_layout_under_a_name_not_yet_taken(self):
        file = self.write(bench())
        for _ in range(3): self.assertEqual(run("plan", file, "--steps", 50).returncode, 0)
        self.assertEqual([layout["name"] for layout in json.loads(file.read_text())["layouts"]], ["Plan 1", "Plan 2", "Plan 3"])

    def test_out_writes_another_file_and_leaves_the_job_byte_for_byte(self):
        file, out = self.write(bench()), self.folder / "planned.boltwright"
        before = file.read_bytes()
        self.assertEqual(run("plan", file, "--steps", 50, "--out", out).returncode, 0)
        self.assertEqual(file.read_bytes(), before)
        self.assert_right(out)

    def test_json_is_one_object_with_the_agreed_keys(self):
        answer = run("plan", self.write(bench()), "--steps", 200, "--json")
        self.assertEqual(answer.stdout.count("\n"), 1)
        said = json.loads(answer.stdout)
        self.assertEqual(list(said), ["fits", "proved", "cloths", "conceded", "left_out", "seconds", "unit"])
        self.assertIs(said["fits"], True)
        self.assertEqual(said["unit"], "in")
        cloth, = said["cloths"]
        self.assertEqual(list(cloth), ["id", "length", "bound", "proved", "waste"])
        # Seat and borders are 22 x 20 and twice 21 x 5: side by side they cannot lie in less than the seat's 20 in.
        self.assertEqual((cloth["id"], cloth["length"], cloth["bound"], cloth["proved"]), ("body", 20, 20, True))
        self.assertAlmostEqual(cloth["waste"], 1 - (22 * 20 + 2 * 21 * 5) / (53 * 20), places=3)

    def test_json_says_in_the_jobs_unit_what_the_file_says(self):
        job = bench()
        job["unit"] = "cm"
        job["cloths"][0]["bolt"] = {"width": 140}
        for panel in job["panels"]: panel["shape"] = {"kind": "rectangle", "across": "45.3", "up": 30.25}
        file = self.write(job)
        said = json.loads(run("plan", file, "--steps", 100, "--json").stdout)
        layout = json.loads(file.read_text())["layouts"][-1]
        self.assertEqual(said["unit"], "cm")
        for key in ("id", "length", "bound"): self.assertEqual(said["cloths"][0][key], layout["cloths"][0][key])

    def test_the_same_steps_and_seed_give_the_same_layout_with_any_number_of_threads(self):
        for sample in SAMPLES[::3]:
            layouts = []
            for threads in (1, 2, 3):
                out = self.folder / f"{sample.stem}-{threads}.boltwright"
                self.assertEqual(run("plan", sample, "--steps", 300, "--threads", threads, "--out", out).returncode, 0)
                layouts.append(json.loads(out.read_text())["layouts"])
            self.assertEqual(layouts[0], layouts[1], sample.name)
            self.assertEqual(layouts[0], layouts[2], sample.name)

    def test_panels_that_exclude_one_another_on_too_short_a_bolt_are_proved_not_to_fit(self):
        # Three seats 30 in wide need three rows of 20 in; 59 in of cloth has area for them, and no room.
        job = bench()
        job["cloths"][0]["bolt"]["length"] = 59
        job["panels"] = [{"id": "seat", "name": "Seat", "count": 3, "shape": {"kind": "rectangle", "across": 30, "up": 20}}]
        file = self.write(job)
        before = file.read_bytes()
        answer = run("plan", file, "--steps", 500, "--json")
        self.assertEqual(answer.returncode, 1, answer.stderr)
        said = json.loads(answer.stdout)
        self.assertEqual((said["fits"], said["proved"], said["cloths"]), (False, True, []))
        self.assertEqual(file.read_bytes(), before)

    def test_cloth_that_is_short_is_told_how_much_more_would_do(self):
        # Three seats 30 in wide need three rows of 20 in and two gaps of 1/4 in: 60 1/2 in, of 59 in there.
        job = bench()
        job["panels"] = [{"id": "seat", "name": "Seat", "count": 3, "shape": {"kind": "rectangle", "across": 30, "up": 20}}]
        remnant = {"id": "A", "outline": [[0, 0], [54, 0], [54, 59], [0, 59]]}
        for cloth, on, words in (({"bolt": {"width": 54, "length": 59}}, None, "The bolt would do if it were 1 1/2 in longer"),
                                 ({"remnants": [remnant]}, "A", "Remnant A would do if it were 1 1/2 in longer")):
            job["cloths"] = [{"id": "body", **cloth}]
            file = self.write(job)
            said = json.loads(run("plan", file, "--steps", 500, "--json").stdout)
            self.assertEqual(said["more"], [{"id": "body", "on": on, "more": 1.5, "at_least": 1.5}])
            told = run("plan", file, "--steps", 500)
            self.assertEqual(told.returncode, 1)
            self.assertIn(words, told.stdout)
            self.assertIn("Ask for 1/4 yd more", told.stdout)
            # As much more as it says does, and headless says then how much is left.
            longer = json.loads(json.dumps(job).replace("59", "60.5"))
            self.assertEqual(run("plan", self.write(longer, "longer.boltwright"), "--steps", 500).returncode, 0)

    def test_cloth_that_is_there_is_not_to_be_bought(self):
        job = bench()
        self.assertIn("enough, 1 yd 34 in left over", run("plan", self.write(job), "--steps", 50).stdout)
        del job["cloths"][0]["bolt"]["length"]
        self.assertIn("buy 3/4 yd", run("plan", self.write(job), "--steps", 50).stdout)

    def test_a_panel_wider_than_the_cloth_is_impossible_and_not_an_error_of_the_file(self):
        job = bench()
        job["panels"][0]["shape"]["across"] = 60
        file = self.write(job)
        before = file.read_bytes()
        answer = run("plan", file, "--steps", 100)
        self.assertEqual(answer.returncode, 1, answer.stderr)
        self.assertEqual(len(answer.stdout.splitlines()), 1)
        self.assertIn("Seat", answer.stdout)
        self.assertEqual(json.loads(run("plan", file, "--steps", 100, "--json").stdout)["proved"], True)
        self.assertEqual(file.read_bytes(), before)

    def on_a_remnant_too_small(self, may):
        """A seat that fills its remnant, and a deck for which there is no cloth left, whatever is trimmed."""
        job = bench()
        job["cloths"] = [{"id": "body", "name": "Plain rep", "remnants": [{"id": "A", "outline": [[0, 0], [22, 0], [22, 20], [0, 20]]}]}]
        job["panels"][1] = {"id": "deck", "name": "Deck", "count": 2, "hidden": True, "allow": 1, "allow_min": 0.5,
                            "shape": {"kind": "rectangle", "across": 18, "up": 16}, **({"may": may} if may else {})}
        return self.write(job)

    def test_what_cannot_be_laid_even_with_concessions_is_left_out_where_it_may_be(self):
        file = self.on_a_remnant_too_small({"other_cloth": True})
        answer = run("plan", file, "--steps", 2000, "--json")
        self.assertEqual(answer.returncode, 0, answer.stdout + answer.stderr)
        said, layout = json.loads(answer.stdout), json.loads(file.read_text())["layouts"][-1]
        left = [{"panel": "deck", "copy": 1}, {"panel": "deck", "copy": 2}]
        self.assertEqual([{"panel": one["panel"], "copy": one.get("copy", 1)} for one in said["left_out"]], left)
        self.assertEqual(said["left_out"], layout["left_out"])
        self.assertEqual(said["conceded"], [])
        self.assertEqual([cut["panel"] for cut in layout["cuts"]], ["seat"])
        self.assert_right(file)

    def test_without_leave_nothing_is_left_out_and_nothing_appended(self):
        file = self.on_a_remnant_too_small(None)
        before = file.read_bytes()
        answer = run("plan", file, "--steps", 2000, "--json")
        self.assertEqual(answer.returncode, 1, answer.stderr)
        said = json.loads(answer.stdout)
        self.assertEqual((said["fits"], said["left_out"]), (False, []))
        self.assertEqual(file.read_bytes(), before)

    def test_a_border_joined_at_the_back_is_right_by_both_judges_and_told_in_words(self):
        job = bench()
        job["cloths"] = [{"id": "body", "name": "Plain rep", "remnants": [{"id": "A", "outline": [[0, 0], [75, 0], [75, 20], [0, 20]]}]}]
        job["panels"] = [{"id": "border", "name": "Border", "shape": {"kind": "rectangle", "across": 72, "up": 5}, "pieces": {"most": 2, "seam": 0.5, "shortest": 10}},
                         {"id": "seat", "name": "Seat", "shape": {"kind": "rectangle", "across": 20, "up": 20}}]
        file = self.write(job)
        answer = run("plan", file, "--steps", 20000)
        self.assertEqual(answer.returncode, 0, answer.stdout + answer.stderr)
        self.assertIn("Border: joined at the back, out of sight: 54 1/2 in and 18 1/2 in", answer.stdout)
        cuts = [cut for cut in json.loads(file.read_text())["layouts"][-1]["cuts"] if cut["panel"] == "border"]
        self.assertEqual(sorted(cut["length"] for cut in cuts), [18.5, 54.5])
        self.assert_right(file)

    def test_locked_cuts_stay_where_they_are(self):
        file = self.write(bench())
        run("plan", file, "--steps", 100)
        job = json.loads(file.read_text())
        seat = next(cut for cut in job["layouts"][-1]["cuts"] if cut["panel"] == "seat")
        seat["state"], seat["x"], seat["y"] = "locked", 20, 31
        job["layouts"][-1]["cloths"] = [{"id": "body", "length": 51}]
        file.write_text(json.dumps(job))
        self.assertEqual(run("plan", file, "--steps", 100).returncode, 0)
        again = json.loads(file.read_text())["layouts"][-1]
        seat = next(cut for cut in again["cuts"] if cut["panel"] == "seat")
        self.assertEqual((seat["x"], seat["y"], seat["state"]), (20, 31, "locked"))
        self.assert_right(file)

    def test_an_interrupted_search_keeps_the_best_so_far_whole(self):
        file = self.write(SAMPLES[0].read_bytes())
        search = subprocess.Popen([PROGRAM, "plan", str(file), "--seconds", "120"], stdout=subprocess.PIPE, text=True)
        time.sleep(4)
        search.send_signal(signal.SIGINT)
        said, _ = search.communicate(timeout=60)
        self.assertEqual(search.returncode, 0, said)
        self.assert_right(file)

    def test_nothing_is_left_beside_the_job(self):
        file = self.write(bench())
        run("plan", file, "--steps", 50)
        self.assertEqual([entry.name for entry in self.folder.iterdir()], [file.name])

    def test_a_job_behind_a_link_is_replaced_where_it_lies(self):
        file, link = self.write(bench()), self.folder / "link.boltwright"
        link.symlink_to(file)
        self.assertEqual(run("plan", link, "--steps", 50).returncode, 0)
        self.assertTrue(link.is_symlink())
        self.assertEqual(len(json.loads(file.read_text())["layouts"]), 1)

    def test_a_folder_that_is_not_there_is_told_before_any_planning(self):
        file, out = self.write(bench()), self.folder / "nowhere" / "out.boltwright"
        self.assert_one_line(run("plan", file, "--seconds", 60, "--out", out), str(out))

    def test_a_device_is_never_replaced_by_a_file(self):
        pipe, file = self.folder / "pipe", self.write(bench())
        os.mkfifo(pipe)
        self.assert_one_line(run("plan", file, "--steps", 50, "--out", pipe), str(pipe))
        self.assertTrue(pipe.is_fifo())


if __name__ == "__main__": unittest.main()
