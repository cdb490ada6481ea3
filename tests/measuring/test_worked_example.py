"""A worked example dog, facing right, click SD 4 px, 900 px at the withers = 60 cm.

Source of every figure here: the closed first-order formulas named beside it, recomputed with the uncertainties
library and confirmed by simulation; common practice for what the lines are.
"""

import math
from dataclasses import replace

import pytest

from scoring.measuring.definitions import falls_behind
from scoring.measuring.geometry import area, area_ratio, click, distance, vertex_angle
from scoring.measuring.photo import Photo
from scoring.measuring.placement import moved, turned_by
from scoring.measuring.readings import interval
from scoring.measuring.rules_of_thumb import rules_of_thumb
from scoring.measuring.scale import Centimetres, body_length, in_centimetres
from tests.measuring.asking import named, value

SD = 4.0
DOG = {
    "withers": (1500.0, 500.0),
    "point-of-shoulder": (1730.0, 742.0),
    "elbow": (1520.0, 960.0),
    "front-foot": (1545.0, 1400.0),
    "pin-bone": (660.0, 640.0),
    "croup-start": (860.0, 545.0),
    "stifle": (800.0, 930.0),
    "hock": (560.0, 1130.0),
    "rear-foot": (575.0, 1400.0),
    "nose": (2010.0, 420.0),
}
GROUND = ((300.0, 1412.0), (2200.0, 1380.0))
PHOTO = Photo("standing-side", DOG, SD, GROUND)
UNLEVELLED = replace(PHOTO, ground=None)
FRONT_STRIDE = ((1520, 960), (1980, 1310), (1330, 1395))
REAR_STRIDE = ((800, 930), (1180, 1395), (520, 1300))


def clicks(*places: tuple[float, float]):
    return tuple(click(f"{x} {y}", (x, y)) for x, y in places)


def printed(expected: float):
    """Equal to the last of six printed decimals."""
    return pytest.approx(expected, abs=6e-7)


def test_the_front_angle_and_its_sd_are_those_of_the_three_sides_formula():
    # theta = atan2(|u x v|, u.v); SD = s sqrt(a^2 + b^2 + c^2)/(a b)
    assert value(PHOTO, "front-angle") == (printed(92.527183), printed(1.461103))


def test_a_right_angle_with_equal_arms_has_an_sd_of_two_clicks_over_an_arm():
    right = vertex_angle(*clicks((0, 300), (0, 0), (300, 0)))
    assert (right.value, right.sd(3)) == (printed(90), printed(1.145916))


def test_a_slope_that_is_not_levelled_has_an_sd_of_root_two_clicks_over_its_length():
    topline = falls_behind(*clicks(DOG["withers"], DOG["croup-start"]))
    assert (topline.value, topline.sd(SD)) == (printed(4.021990), printed(0.505181))


def test_the_stride_triangles_have_the_areas_and_sds_of_the_shoelace():
    front, rear = area(clicks(*FRONT_STRIDE)), area(clicks(*REAR_STRIDE))
    assert (front.value, front.sd(SD)) == (133300, printed(1989.120409))
    assert (rear.value, rear.sd(SD)) == (135400, printed(2020.445495))


def test_the_stride_ratio_is_a_statement_about_its_interval():
    names = ("elbow", "front-foot-lead", "front-foot-trail", "stifle", "rear-foot-lead", "rear-foot-trail")
    photo = Photo("moving-side", dict(zip(names, FRONT_STRIDE + REAR_STRIDE, strict=True)), SD)
    balance, sd = value(photo, "stride-balance")
    assert (balance, sd) == (printed(0.984490), printed(0.021103))
    assert interval(named(photo, "stride-balance"), balance, sd) == (printed(0.944601), printed(1.026065))


def test_a_click_that_two_areas_share_enters_with_its_covariance():
    # Var = V1/A1^2 + V2/A2^2 - 2 Cov/(A1 A2), Cov = s^2/4 e1.e2 of the sides that face the shared click
    front = clicks(*FRONT_STRIDE)
    rear = (*clicks((800, 930)), front[2], *clicks((520, 1300)))
    one, other = area(front), area(rear)
    facing_one, facing_other = (1980 - 1520, 1310 - 960), (520 - 800, 1300 - 930)
    sign = -1  # the two triangles are gone round in opposite directions about the shared click
    shared = sign * (SD**2 / 4) * (facing_one[0] * facing_other[0] + facing_one[1] * facing_other[1])
    variance = (
        (one.sd(SD) / one.value) ** 2 + (other.sd(SD) / other.value) ** 2 - 2 * shared / (one.value * other.value)
    )
    assert area_ratio(front, rear).log_sd(SD) == pytest.approx(math.sqrt(variance), rel=1e-12)


def test_the_camera_roll_is_the_ground_lines_direction():
    assert (PHOTO.roll.value, PHOTO.roll.sd(SD)) == (printed(-0.964890), printed(0.170562))


def test_the_croup_after_levelling_holds_the_ground_lines_clicks_too():
    # SD = sqrt(2) s sqrt(1/L^2 + 1/G^2)
    assert value(PHOTO, "croup-slope") == (printed(24.442828), printed(1.473727))


def test_upper_arm_over_blade_has_the_angles_sd_as_a_pure_number():
    assert value(PHOTO, "upper-arm-ratio") == (printed(0.906645), printed(0.025501))


def test_body_length_in_centimetres_follows_from_a_known_height():
    # SD = L k sqrt((sH/H)^2 + 2 s^2/h^2 + 2 s^2/L^2), k = H/h
    length = in_centimetres(body_length(UNLEVELLED), SD, Centimetres(60.0, 0.5))
    assert (length.value, length.sd) == (printed(71.656712), printed(0.837645))


def test_horizontal_body_length_follows_from_the_length_ratio():
    ratio, _ = value(UNLEVELLED, "length-ratio")
    length = in_centimetres(quantity(UNLEVELLED, "length-ratio"), SD, Centimetres(60.0, 0.5))
    assert (ratio, length.value, length.sd) == (printed(1.188889), printed(71.333333), printed(0.834632))


def quantity(photo: Photo, code: str):
    measurement = named(photo, code)
    return measurement.formula(*(photo.dog_points[name] for name in measurement.landmarks))


def test_the_front_column_bends_toward_the_dogs_middle():
    column = {"left-shoulder": (400.0, 300.0), "left-pastern": (412.0, 820.0), "left-foot": (405.0, 1180.0)}
    assert value(Photo("front", column, SD), "column-bend-left") == (printed(-0.010279), printed(0.005598))


def test_a_plumb_offset_has_its_closed_sd():
    # o = (x_foot - x_top) f/(y_foot - y_top); SD = s sqrt(2 (1 + o^2))/h
    offset, sd = value(UNLEVELLED, "front-set")
    assert offset == pytest.approx(45 / 900)
    assert sd == pytest.approx(SD * math.sqrt(2 * (1 + offset**2)) / 900, rel=1e-12)


def test_a_length_has_an_sd_of_root_two_clicks():
    assert distance(*clicks((0, 0), (30, 40))).sd(SD) == pytest.approx(math.sqrt(2) * SD, rel=1e-12)


def test_a_yaw_of_ten_degrees_opens_a_right_angle_with_a_level_bisector():
    # 2 atan(1/cos psi)
    arm = 300 * math.cos(math.radians(10))
    assert vertex_angle(*clicks((arm, 300), (0, 0), (arm, -300))).value == printed(90.877097)


def test_a_yaw_of_ten_degrees_steepens_a_croup_and_shortens_a_dog():
    # atan(tan/cos psi), and the length over the height times cos psi
    squeezed = {name: (x * math.cos(math.radians(10)), y) for name, (x, y) in DOG.items()}
    squeezed["croup-start"], squeezed["pin-bone"] = (0.0, 0.0), (-math.cos(math.radians(10)), math.tan(math.pi / 6))
    croup = falls_behind(*clicks(squeezed["croup-start"], squeezed["pin-bone"]))
    assert croup.value == printed(30.381255)
    whole = {**DOG, "pin-bone": (660.0, 640.0)}
    narrow = {name: (x * math.cos(math.radians(10)), y) for name, (x, y) in whole.items()}
    straight, _ = value(replace(UNLEVELLED, landmarks=whole), "length-ratio")
    turned, _ = value(replace(UNLEVELLED, landmarks=narrow), "length-ratio")
    assert turned / straight == printed(0.984808)


def test_a_landmark_that_lies_elsewhere_turns_a_reading_by_more_than_its_clicks():
    # hock 2 cm further back, pin bone 1 cm lower, elbow 1 cm forward, at 15 px to the centimetre
    turned = {found.placement.measurement: found.change for found in map(of_photo, rules_of_thumb().placements)}
    assert turned == {
        "rear-angle": pytest.approx(-3.28, abs=0.005),
        "croup-slope": pytest.approx(3.40, abs=0.005),
        "front-angle": pytest.approx(2.12, abs=0.005),
    }


def of_photo(placement):
    return turned_by(PHOTO, placement)


def test_a_landmark_is_moved_ahead_of_a_dog_that_faces_left():
    flipped = replace(PHOTO, landmarks={name: (2500 - x, y) for name, (x, y) in DOG.items()}, ground=None)
    assert moved(flipped, "hock", 30, 0).landmarks["hock"] == (2500 - 560 - 30, 1130)
