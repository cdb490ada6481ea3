"""The long run of `make proof`, at a twentieth."""

from tests.measuring import proof_coverage


def test_the_95_percent_interval_holds_the_errorless_picture_95_times_in_100():
    # 250 dogs a view know a share of 0.95 to 0.014; four of those are allowed
    found = proof_coverage.coverage(1000)
    assert {code: share for code, (share, _) in found.items() if abs(share - 0.95) > 0.056} == {}


def test_yaw_perspective_and_depth_take_from_what_the_interval_holds_of_the_dog(capsys):
    proof_coverage.main(0.02)
    lines = capsys.readouterr().out.splitlines()
    assert lines[0].startswith("coverage of the 95 % interval")
    assert len(lines) == 1 + len(proof_coverage.coverage(4))
