#!/usr/bin/env python3
"""Every sample is planned, judged, drawn and printed."""
import json, unittest

from boltwright import SAMPLES, ProgramTest, run


class Samples(ProgramTest):
    def plan(self, name):
        sample, = (s for s in SAMPLES if s.stem == name)
        out = self.folder / sample.name
        answer = run("plan", sample, "--seconds", 3, "--json", "--out", out)
        self.assertEqual(answer.returncode, 0, answer.stdout + answer.stderr)
        self.assertIs(json.loads(answer.stdout)["fits"], True)
        self.assert_right(out)
        return out

    def test_there_are_samples_for_every_shape_run_and_wish(self):
        text = "".join(sample.read_text() for sample in SAMPLES)
        for word in ('"rectangle"', '"trapezoid"', '"polygon"', '"up-roll"', '"down-roll"', '"railroad"', '"either"', '"bias"', '"remnants"', '"flaws"',
                     '"lot"', '"drop"', '"alike"', '"mirror"', '"pieces"', '"balanced"', '"match"', '"hidden"', '"flow"', '"lost"', '"at_to"', '"copy_to"',
                     '"stretcher"', '"other_cloth": "', '"uncentre"', '"allow_min"', '"square"', '"price"', '"cm"', '"mm"', '"two"', 'yd', '½'):
            self.assertIn(word, text)

    def test_bias_dining_seats(self): self.plan("bias-dining-seats")

    def test_hall_bench(self): self.plan("hall-bench")

    def test_lounge_two_cloths(self): self.plan("lounge-two-cloths")

    def test_railroaded_sofa(self): self.plan("railroaded-sofa")

    def test_slipper_chairs_remnants(self): self.plan("slipper-chairs-remnants")

    def test_striped_settee(self): self.plan("striped-settee")

    def test_tub_chairs(self): self.plan("tub-chairs")

    def test_window_seats_metric(self): self.plan("window-seats-metric")

    def test_wing_loveseat(self): self.plan("wing-loveseat")


if __name__ == "__main__": unittest.main()
