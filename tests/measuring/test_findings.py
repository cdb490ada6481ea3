"""What withholds a value, and what only puts a reading in doubt. What a photo must show: common practice, no source."""

from dataclasses import replace

import pytest

from tests.measuring.asking import findings, rows, values
from tests.measuring.dogs import GROUND, STANDING, Pictured, mirrored, pictured, turned

DOG = pictured("standing-side")
TROT = pictured("moving-side")
FRONT = pictured("front")
REAR = pictured("rear")
SLOPES = {"blade-slope", "arm-slope", "pastern-slope", "croup-slope", "topline-slope"}


def having(dog: Pictured, **places: tuple[float, float]) -> Pictured:
    return replace(dog, landmarks={**dog.landmarks, **{name.replace("_", "-"): at for name, at in places.items()}})


def without(dog: Pictured, *names: str) -> Pictured:
    return replace(dog, landmarks={name: place for name, place in dog.landmarks.items() if name not in names})


def withheld(dog: Pictured) -> set[str]:
    return {code for code, (value, _) in values(dog).items() if value is None}


def doubtful(dog: Pictured, **more: object) -> set[str]:
    return {code for code, row in rows(dog, **more).items() if row["reading"] == "cannot-be-told"}


def test_a_well_taken_photo_withholds_nothing_and_warns_of_nothing():
    assert withheld(DOG) == set()
    for dog in (DOG, TROT, FRONT, REAR):
        assert doubtful(dog) == set()


def test_a_missing_landmark_withholds_what_needs_it_and_says_which():
    dog = without(DOG, "hock")
    assert withheld(dog) == {"rear-angle", "hock-angle", "hock-height"}
    assert findings(dog, "landmark-missing") == [
        {"measurement": code, "landmarks": ["hock"]} for code in ("rear-angle", "hock-angle", "hock-height")
    ]
    assert rows(dog)["rear-angle"]["reading"] == "withheld"


def test_landmarks_that_coincide_withhold_what_lies_between_them():
    dog = having(DOG, elbow=STANDING["point-of-shoulder"])
    assert withheld(dog) == {"front-angle", "arm-slope", "upper-arm-ratio"}
    assert findings(dog, "landmarks-coincide")[0] == {
        "measurement": "front-angle",
        "landmarks": ["point-of-shoulder", "elbow"],
    }


def test_a_slope_is_withheld_without_a_ground_line_and_nothing_else_is():
    dog = replace(DOG, ground=None)
    assert withheld(dog) == SLOPES
    assert {facts["measurement"] for facts in findings(dog, "no-ground-line")} == SLOPES


def test_ground_clicks_that_coincide_are_no_ground_line():
    dog = replace(DOG, ground=(GROUND[0], GROUND[0]))
    assert withheld(dog) == SLOPES
    assert findings(dog, "ground-clicks-coincide") == [{}]


def test_a_plumb_line_without_a_ground_line_has_a_value_but_no_reading():
    dog = replace(DOG, ground=None)
    assert values(dog)["front-set"][0] is not None
    assert doubtful(dog) == {"front-set"}
    named = {facts["measurement"] for facts in findings(dog, "not-levelled")}
    assert named == {"front-set", "length-ratio", "chest-depth", "hock-height"}


def test_the_moving_dogs_height_needs_the_ground_line():
    assert withheld(replace(TROT, ground=None)) == {"front-reach"}


def test_a_front_set_is_withheld_where_nothing_says_where_the_head_is():
    dog = replace(DOG, landmarks={name: STANDING[name] for name in ("withers", "front-foot")})
    assert findings(dog, "facing-unknown") == [{"measurement": "front-set"}]


def test_landmarks_on_one_line_have_no_area():
    flat = {name: (x, 1000.0) for name, (x, _) in TROT.landmarks.items() if name not in ("withers", "nose")}
    dog = replace(TROT, landmarks={**TROT.landmarks, **flat})
    assert [facts["measurement"] for facts in findings(dog, "no-extent")] == ["stride-balance"]


def test_a_triangle_of_almost_no_area_has_a_value_but_no_reading():
    dog = having(TROT, elbow=(1655.0, 1352.51))
    assert values(dog)["stride-balance"][1] > 100
    assert rows(dog)["stride-balance"]["reading"] == "cannot-be-told"


def test_a_nose_on_the_other_side_is_named_and_turns_no_value_round():
    dog = having(DOG, nose=(100.0, 420.0))
    assert findings(dog, "facing-disagrees") == [{"landmarks": ["nose"]}]
    assert values(dog)["front-set"] == values(DOG)["front-set"]


def test_landmarks_that_change_places_are_found_crossed():
    dog = having(DOG, withers=STANDING["front-foot"], front_foot=STANDING["withers"])
    crossed = set(findings(dog, "crossed-landmarks")[0]["landmarks"])
    assert {"withers", "front-foot"} <= crossed
    assert "front-set" in doubtful(dog)
    assert withheld(dog) == set()


def test_feet_that_change_places_are_found_to_disagree():
    lead, trail = TROT.landmarks["front-foot-lead"], TROT.landmarks["front-foot-trail"]
    dog = having(TROT, front_foot_lead=trail, front_foot_trail=lead)
    assert {"front-foot-lead"} <= set(findings(dog, "facing-disagrees")[0]["landmarks"])
    assert doubtful(dog) == {"front-reach", "stride-balance"}


def test_left_and_right_of_the_picture_that_change_places_are_found():
    swapped = {
        **FRONT.landmarks,
        "left-foot": FRONT.landmarks["right-foot"],
        "right-foot": FRONT.landmarks["left-foot"],
    }
    dog = replace(FRONT, landmarks=swapped)
    assert findings(dog, "left-and-right-crossed") == [{"landmarks": ["left-foot", "right-foot"]}]
    assert doubtful(dog) == {"column-bend-left", "column-bend-right"}


def test_a_disagreement_smaller_than_the_clicks_is_none():
    dog = having(DOG, front_foot=(1545.0, 1400.0), hock=(801.0, 1130.0))
    assert findings(dog, "facing-disagrees") == []


def test_a_landmark_outside_the_picture_is_named_and_puts_its_readings_in_doubt():
    assert findings(DOG, "outside-picture", image=[2000, 1500]) == [{"landmarks": ["nose"]}]
    assert findings(DOG, "outside-picture", image=[2400, 1500]) == []
    assert doubtful(DOG, image=[1600, 1500]) == {"front-angle"}


def test_a_foreshortened_dog_is_taken_to_stand_at_an_angle():
    narrow = {name: (x * 0.6, y) for name, (x, y) in STANDING.items()}
    dog = replace(DOG, landmarks=narrow)
    (facts,) = findings(dog, "likely-yaw")
    assert facts["length_ratio"] == pytest.approx(0.6 * 1070 / 900)
    assert doubtful(dog) == {code for code, row in rows(DOG).items() if row["target"]}


def test_a_breeds_own_length_says_sooner_that_a_dog_stands_at_an_angle():
    # FCI standard 144, Boxer: the body is square, length over height 1.0
    narrow = replace(DOG, landmarks={name: (x * 0.73, y) for name, (x, y) in STANDING.items()})
    assert findings(narrow, "likely-yaw") == []
    assert findings(narrow, "likely-yaw", standard="boxer")[0]["lowest"] == pytest.approx(0.9)


def test_a_dog_longer_than_any_is_taken_for_a_misplaced_landmark():
    long = replace(DOG, landmarks={name: (x * 2.2, y) for name, (x, y) in STANDING.items()})
    assert [facts["highest"] for facts in findings(long, "length-ratio-impossible")] == [2.2]
    assert rows(long)["length-ratio"]["value"] == pytest.approx(2.2 * 1070 / 900)


def test_feet_at_unequal_heights_say_that_the_dog_stands_at_an_angle():
    dog = having(FRONT, right_foot=(680.0, 1280.0))
    assert len(findings(dog, "likely-yaw")) == 1
    assert findings(FRONT, "likely-yaw") == []


def test_feet_at_unequal_heights_only_by_camera_roll_say_nothing():
    assert findings(turned(FRONT, 15), "likely-yaw") == []


def test_too_few_pixels_for_a_reading_says_what_sd_it_needs():
    coarse = replace(DOG, click_sd=40.0)
    facts = {found["measurement"]: found for found in findings(coarse, "too-few-pixels")}
    assert facts["front-angle"]["sd_needed"] == pytest.approx(10 / 1.96)
    assert facts["front-angle"]["sd"] > facts["front-angle"]["sd_needed"]
    assert rows(coarse)["front-angle"]["reading"] == "cannot-be-told"
    assert rows(coarse)["front-angle"]["value"] == rows(DOG)["front-angle"]["value"]


def test_a_picture_on_its_side_is_measured_and_said_to_be():
    assert findings(turned(DOG, 90), "picture-turned")[0]["roll_deg"] == pytest.approx(90)
    assert findings(turned(DOG, 20), "picture-turned") == []


def test_landmarks_of_another_view_are_named():
    dog = having(FRONT, hock=(1.0, 2.0))
    assert findings(dog, "landmarks-not-measured-here") == [{"landmarks": ["hock"]}]


def test_a_rear_column_is_measured_at_the_hock_where_the_pastern_was_not_clicked():
    at_hock = rows(without(REAR, "left-pastern"))["column-bend-left"]
    assert at_hock["target"]["landmarks"] == ["left-hip", "left-hock", "left-foot"]
    assert rows(REAR)["column-bend-left"]["target"]["landmarks"] == ["left-hip", "left-pastern", "left-foot"]


def test_a_known_height_gives_lengths_in_centimetres():
    # 1070 px and 900 px at 60 cm; SD as for the worked example, but levelled by a level line of 1900 px
    lengths = {facts["measurement"]: facts for facts in findings(DOG, "in-centimetres", withers_height_cm=60)}
    assert lengths["length-ratio"]["value"] == pytest.approx(71.333333)
    assert set(lengths) == {"front-set", "length-ratio", "chest-depth", "hock-height", "body-length-along-the-slant"}


def test_what_a_landmark_elsewhere_would_do_is_said_the_same_of_a_mirrored_photo():
    assert [facts["change"] for facts in findings(mirrored(DOG), "placement-matters")] == pytest.approx(
        [facts["change"] for facts in findings(DOG, "placement-matters")]
    )
