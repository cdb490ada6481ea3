"""A person's own click error and the least real change."""

import numpy
import pytest

from scoring.measuring.repeats import least_real_change, own_click_sd


def test_the_least_real_change_is_1_96_times_root_two_standard_errors():
    # 1.96 sqrt(2) SEM: 2.772 for an SEM of one
    assert least_real_change(1) == pytest.approx(2.7719, abs=5e-5)


def test_one_landmark_marked_twice_gives_the_pooled_sd_of_both_axes():
    # two axes with d^2/2 each: (9/2 + 16/2)/2 = 6.25
    found = own_click_sd({"hock": (10.0, 20.0)}, {"hock": (13.0, 24.0)})
    assert (found.sd_px, found.landmarks) == (2.5, 1)


def test_only_landmarks_marked_twice_count():
    first = {"hock": (10.0, 20.0), "elbow": (0.0, 0.0)}
    assert own_click_sd(first, {"hock": (13.0, 24.0), "stifle": (1.0, 1.0)}).landmarks == 1
    assert own_click_sd(first, {}) is None


def test_the_own_click_sd_is_found_again_from_simulated_clicks():
    draw = numpy.random.default_rng(3)
    names = [str(n) for n in range(4000)]
    first, again = ({name: tuple(draw.normal(100, 4, 2)) for name in names} for _ in range(2))
    assert own_click_sd(first, again).sd_px == pytest.approx(4, rel=0.03)
