"""The long run of `make proof`, at a twentieth."""

from dataclasses import replace

import pytest

from tests.measuring import proof_coverage
from tests.measuring.dogs import GROUND, pictured


def test_the_95_percent_interval_holds_the_errorless_picture_95_times_in_100():
    # 250 dogs a view know a share of 0.95 to 0.014; four of those are allowed
    found = proof_coverage.coverage(1000)
    assert {code: share for code, (share, _) in found.items() if abs(share - 0.95) > 0.056} == {}


def test_yaw_perspective_and_depth_take_from_what_the_interval_holds_of_the_dog(capsys):
    proof_coverage.main(0.02)
    lines = capsys.readouterr().out.splitlines()
    assert lines[0].startswith("coverage of the 95 % interval")
    assert len(lines) == 1 + len(proof_coverage.coverage(4))


@pytest.mark.parametrize(
    ("view", "code", "change"),
    [
        ("standing-side", "blade-slope", -1.7),
        ("standing-side", "front-angle", -1.7),
        ("standing-side", "croup-slope", -2.7),
        ("moving-side", "front-reach", 0.02),
    ],
)
def test_what_the_page_says_of_points_on_the_middle_of_the_dog_is_what_a_pinhole_camera_does(view, code, change):
    dog = replace(pictured(view), ground=GROUND)
    seen = {
        name: proof_coverage._projected(at, proof_coverage._depth(name), 0, 0) for name, at in dog.landmarks.items()
    }
    ground = tuple(proof_coverage._projected(at, 0, 0, 0) for at in dog.ground)
    values = [proof_coverage._values(one)[code] for one in (dog, replace(dog, landmarks=seen, ground=ground))]
    assert values[1] - values[0] == pytest.approx(change, abs=0.005 if view == "moving-side" else 0.05)
