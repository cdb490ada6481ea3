"""The shipped figures against the published ones: each row names where the figure was read."""

import pytest

from scoring.standards.loader import load

# breed, sex, least and most height in cm, where it was read
HEIGHTS = [
    ("rottweiler", "dog", 61, 68, "vdo-rottweiler.com; power-rotti.de"),
    ("rottweiler", "bitch", 56, 63, "vdo-rottweiler.com; power-rotti.de"),
    ("boxer", "dog", 57, 63, "FCI Standard 144"),
    ("boxer", "bitch", 53, 59, "FCI Standard 144"),
    ("dobermann", "dog", 68, 72, "dobermann.lt"),
    ("dobermann", "bitch", 63, 68, "dobermann.lt"),
    ("german-shepherd-dog", "dog", 60, 65, "bolognadogs.it; vindy.de"),
    ("german-shepherd-dog", "bitch", 55, 60, "bolognadogs.it; vindy.de"),
    ("hovawart", "dog", 63, 70, "hovawart.com.ua; natur-lexikon.com"),
    ("hovawart", "bitch", 58, 65, "hovawart.com.ua; natur-lexikon.com"),
    ("bernese-mountain-dog", "dog", 64, 70, "natur-lexikon.com"),
    ("bernese-mountain-dog", "bitch", 58, 66, "natur-lexikon.com; cqbb.org"),
    ("leonberger", "dog", 72, 80, "petbond.ie; Leonberger Club of Canada"),
    ("leonberger", "bitch", 65, 75, "petbond.ie; Leonberger Club of Canada"),
]
IDEALS = [
    ("rottweiler", "dog", 65, 66, "power-rotti.de"),
    ("rottweiler", "bitch", 60, 61, "power-rotti.de"),
    ("german-shepherd-dog", "dog", 62.5, 62.5, "bolognadogs.it; vindy.de"),
    ("german-shepherd-dog", "bitch", 57.5, 57.5, "bolognadogs.it; vindy.de"),
    ("bernese-mountain-dog", "dog", 66, 68, "natur-lexikon.com"),
    ("bernese-mountain-dog", "bitch", 60, 63, "natur-lexikon.com; cqbb.org"),
    ("leonberger", "dog", 76, 76, "petbond.ie"),
    ("leonberger", "bitch", 70, 70, "petbond.ie"),
]
# breed, measurement, sex, least, most, where it was read
FIGURES = [
    ("rottweiler", "body-length", None, 1.0, 1.15, "rottweiler.on.ca: at most 15 % over the height"),
    ("rottweiler", "chest-depth", None, 0.5, 0.5, "vdo-rottweiler.com"),
    ("rottweiler", "blade-slope", None, 45, 45, "vdo-rottweiler.com"),
    ("rottweiler", "skull-to-muzzle", None, 1.5, 1.5, "French copy of 2018"),
    ("rottweiler", "muzzle-to-head", None, 0.4, 0.4, "evrelop.blogg.se"),
    ("rottweiler", "weight", "dog", 50, 50, "power-rotti.de"),
    ("rottweiler", "weight", "bitch", 42, 42, "power-rotti.de"),
    ("boxer", "length-ratio", None, 1.0, 1.0, "FCI Standard 144: square"),
    ("boxer", "chest-depth", None, 0.5, 0.5, "FCI Standard 144"),
    ("boxer", "skull-to-muzzle", None, 2.0, 2.0, "FCI Standard 144: bridge to skull 1 : 2"),
    ("boxer", "front-angle", None, 90, 90, "FCI Standard 144"),
    ("boxer", "hock-angle", None, 140, 140, "FCI Standard 144"),
    ("boxer", "rear-pastern-to-ground", None, 95, 100, "FCI Standard 144"),
    ("boxer", "weight", "dog", 30, 30, "FCI Standard 144"),
    ("boxer", "weight", "bitch", 25, 25, "FCI Standard 144"),
    ("dobermann", "body-length", "dog", 1.0, 1.05, "allevamentobigjoy.com; dobermannclub.be"),
    ("dobermann", "body-length", "bitch", 1.0, 1.10, "allevamentobigjoy.com; dobermannclub.be"),
    ("dobermann", "chest-depth", None, 0.5, 0.5, "dobermann.lt"),
    ("dobermann", "blade-slope", None, 50, 50, "deltibur.it"),
    ("dobermann", "front-angle", None, 105, 110, "deltibur.it"),
    ("dobermann", "pastern-slope", None, 0, 10, "deltibur.it; amirace.se"),
    ("dobermann", "thigh-slope", None, 80, 85, "deltibur.it 80; amirace.se 80 to 85"),
    ("dobermann", "rear-angle", None, 130, 130, "amirace.se; deltibur.it"),
    ("dobermann", "hock-angle", None, 140, 140, "amirace.se; deltibur.it"),
    ("dobermann", "weight", "dog", 40, 45, "dobermann.lt"),
    ("dobermann", "weight", "bitch", 30, 35, "dobermann.lt"),
    ("german-shepherd-dog", "length-ratio", None, 1.10, 1.17, "schaeferhundinfo.de; bolognadogs.it"),
    ("german-shepherd-dog", "head-length", None, 0.4, 0.4, "schaeferhundinfo.de"),
    ("german-shepherd-dog", "skull-to-muzzle", None, 1.0, 1.0, "schaeferhundinfo.de"),
    ("german-shepherd-dog", "chest-depth", None, 0.45, 0.48, "irc-galleria; thegermanshepherd.org"),
    ("german-shepherd-dog", "front-angle", None, 90, 110, "difossombrone.it"),
    ("german-shepherd-dog", "upper-arm-ratio", None, 1.0, 1.0, "difossombrone.it"),
    ("german-shepherd-dog", "pastern-to-forearm-angle", None, 20, 22, "difossombrone.it"),
    ("german-shepherd-dog", "pastern-to-forearm-length", None, 1 / 3, 1 / 3, "difossombrone.it"),
    ("german-shepherd-dog", "rear-angle", None, 120, 120, "difossombrone.it"),
    ("hovawart", "length-ratio", None, 1.10, 1.15, "hovawart.it, 2025; altenfarben.hu"),
    ("hovawart", "skull-to-muzzle", None, 1.0, 1.0, "hovawart.it"),
    ("hovawart", "weight", "dog", 30, 40, "hovawart.com.ua"),
    ("hovawart", "weight", "bitch", 25, 35, "hovawart.com.ua"),
    ("bernese-mountain-dog", "length-ratio", None, 10 / 9, 10 / 9, "durevedenoe: height to length 9 : 10"),
    ("bernese-mountain-dog", "chest-depth", None, 0.5, 0.5, "durevedenoe: height to chest 2 : 1"),
    ("leonberger", "length-ratio", None, 10 / 9, 10 / 9, "petbond.ie: height to length 9 : 10"),
    ("leonberger", "chest-depth", None, 0.5, 0.5, "petbond.ie"),
    ("leonberger", "skull-depth-to-muzzle-depth", None, 1.0, 1.0, "petbond.ie"),
    ("dachshund", "body-length", None, 1.7, 1.8, "frenchtoutou.com: height to length 1 : 1.7 to 1.8"),
    ("dachshund", "ground-clearance", None, 1 / 3, 1 / 3, "sachsen-anhalt-dtk.de"),
    ("dachshund", "upper-arm-ratio", None, 1.0, 1.0, "sachsen-anhalt-dtk.de"),
    ("dachshund", "front-angle", None, 90, 90, "sachsen-anhalt-dtk.de: nearly a right angle"),
    ("dachshund", "weight", None, 9, 9, "dackelalarm.de"),
]
ANGLES = {"front-angle", "rear-angle", "hock-angle", "blade-slope", "pastern-slope", "upper-arm-ratio"}
# breed, point, option, standing, where it was read
STANDINGS = [
    ("boxer", "bite", "undershot", "asked", "FCI Standard 144"),
    ("boxer", "bite", "scissor", "fault", "FCI Standard 144: undershot is asked, any departure a fault"),
    ("boxer", "bite", "wry", "fault", "FCI Standard 144"),
    ("boxer", "tail-form", "stumpy", "disqualifying-fault", "FCI Standard 144"),
    ("boxer", "tail-form", "kinked", "fault", "FCI Standard 144"),
    ("boxer", "ear-carriage", "rose", "fault", "FCI Standard 144"),
    ("rottweiler", "bite", "scissor", "asked", "ifr2021.fr"),
    ("rottweiler", "bite", "pincer", "fault", "ifr2021.fr"),
    ("rottweiler", "bite", "undershot", "disqualifying-fault", "un4k.blogspot.com, text of 2000"),
    ("rottweiler", "bite", "overshot", "disqualifying-fault", "un4k.blogspot.com, text of 2000"),
    ("rottweiler", "bite", "wry", "disqualifying-fault", "un4k.blogspot.com, text of 2000"),
    ("rottweiler", "eyelids", "entropion", "disqualifying-fault", "un4k.blogspot.com, text of 2000"),
    ("rottweiler", "eyelids", "ectropion", "disqualifying-fault", "un4k.blogspot.com, text of 2000"),
    ("rottweiler", "eye-colour", "yellow", "disqualifying-fault", "un4k.blogspot.com, text of 2000"),
    ("rottweiler", "eye-colour", "odd", "disqualifying-fault", "un4k.blogspot.com, text of 2000"),
    ("rottweiler", "sex-type", "reversed", "disqualifying-fault", "un4k.blogspot.com, text of 2000"),
    ("rottweiler", "tail-form", "kinked", "disqualifying-fault", "un4k.blogspot.com, text of 2000"),
    ("rottweiler", "colour", "not-permitted", "disqualifying-fault", "un4k.blogspot.com, text of 2000"),
    ("dobermann", "bite", "scissor", "asked", "dobermann.lt; webdeperros.com"),
    ("dobermann", "bite", "undershot", "disqualifying-fault", "dobermann.lt"),
    ("dobermann", "bite", "overshot", "disqualifying-fault", "dobermann.lt"),
    ("dobermann", "eye-colour", "yellow", "disqualifying-fault", "dobermann.lt"),
    ("hovawart", "bite", "scissor", "asked", "acr-ev.de"),
    ("hovawart", "bite", "pincer", "tolerated", "acr-ev.de"),
    ("hovawart", "bite", "undershot", "disqualifying-fault", "hgd-hovawart.com"),
    ("hovawart", "bite", "overshot", "disqualifying-fault", "hgd-hovawart.com"),
    ("hovawart", "eye-colour", "blue", "disqualifying-fault", "hgd-hovawart.com"),
    ("hovawart", "ear-carriage", "erect", "disqualifying-fault", "hgd-hovawart.com"),
    ("hovawart", "ear-carriage", "tipped", "disqualifying-fault", "hgd-hovawart.com"),
    ("hovawart", "ear-carriage", "rose", "disqualifying-fault", "hgd-hovawart.com"),
    ("hovawart", "tail-form", "ringed", "disqualifying-fault", "hgd-hovawart.com"),
    ("hovawart", "colour", "not-permitted", "disqualifying-fault", "hgd-hovawart.com"),
    ("bernese-mountain-dog", "bite", "scissor", "asked", "durevedenoe"),
    ("bernese-mountain-dog", "bite", "pincer", "tolerated", "durevedenoe"),
    ("leonberger", "bite", "scissor", "asked", "greaterbluegrass"),
    ("leonberger", "bite", "pincer", "tolerated", "greaterbluegrass"),
    ("leonberger", "bite", "undershot", "disqualifying-fault", "leonberger-freundeskreis.de"),
    ("leonberger", "bite", "overshot", "disqualifying-fault", "leonberger-freundeskreis.de"),
    ("leonberger", "tail-form", "ringed", "disqualifying-fault", "leonberger-freundeskreis.de"),
    ("leonberger", "pigment", "brown", "disqualifying-fault", "leonberger-freundeskreis.de"),
    ("leonberger", "eyelids", "entropion", "disqualifying-fault", "leonberger-freundeskreis.de"),
]
# FCI standard numbers and groups (FCI nomenclature; the groups are listed in the FCI show regulations)
NUMBERS = {
    "boxer": (144, 2),
    "hovawart": (190, 2),
    "bernese-mountain-dog": (45, 2),
    "german-shepherd-dog": (166, 1),
    "rottweiler": (147, 2),
    "dobermann": (143, 2),
    "leonberger": (145, 2),
    "dachshund": (148, 4),
}


@pytest.mark.parametrize(("breed", "sex", "low", "high", "read_at"), HEIGHTS)
def test_a_height_is_the_published_one(breed, sex, low, high, read_at):
    size = load(breed).size("height", sex)
    assert (size.low, size.high, size.unit, size.verified) == (low, high, "cm", "read"), read_at


@pytest.mark.parametrize(("breed", "sex", "low", "high", "read_at"), IDEALS)
def test_an_ideal_height_is_the_published_one(breed, sex, low, high, read_at):
    size = load(breed).size("height", sex)
    assert (size.ideal_low, size.ideal_high) == (low, high), read_at


@pytest.mark.parametrize(("breed", "measurement", "sex", "low", "high", "read_at"), FIGURES)
def test_a_figure_is_the_published_one(breed, measurement, sex, low, high, read_at):
    figures = [one for one in load(breed).figures if (one.measurement, one.sex) == (measurement, sex)]
    assert [(one.low, one.high) for one in figures] == [pytest.approx((low, high))], read_at


def test_every_read_figure_is_in_the_table():
    in_table = {row[:3] for row in FIGURES}
    shipped = {
        (breed, one.measurement, one.sex)
        for breed in NUMBERS
        for one in load(breed).figures
        if one.verified in ("read", "derived")
    }
    assert shipped == in_table


def test_an_angle_between_bones_says_so():
    named = [one for breed in NUMBERS for one in load(breed).figures if one.measurement in ANGLES]
    assert {one.landmarks for one in named} == {"bones"}


def test_the_rottweilers_muzzle_of_one_to_one_and_a_half_is_forty_percent_of_the_head():
    # Derived: 1 / (1 + 1.5) = 0.4; the copy at evrelop.blogg.se prints the 40 percent
    figures = {one.measurement: one.value for one in load("rottweiler").figures}
    assert 1 / (1 + figures["skull-to-muzzle"]) == pytest.approx(figures["muzzle-to-head"])


@pytest.mark.parametrize(("breed", "point", "option", "standing", "read_at"), STANDINGS)
def test_a_standing_is_the_published_one(breed, point, option, standing, read_at):
    found = load(breed).point(point).option(option)
    assert (found.standing, found.verified) == (standing, "read"), read_at


@pytest.mark.parametrize("breed", NUMBERS)
def test_aggressive_and_overly_shy_dogs_are_disqualified_everywhere(breed):
    # FCI standards, disqualifying formula (csdogs.org; FCI Standard 144)
    temperament = load(breed).point("temperament")
    standings = {temperament.option(option).standing for option in ("aggressive", "shy")}
    assert standings == {"disqualifying-fault"}


@pytest.mark.parametrize("breed", NUMBERS)
def test_a_male_needs_two_descended_testicles_everywhere(breed):
    # FCI standards, note on males (FCI Standard 144)
    point = load(breed).point("testicles")
    assert (point.sex, point.when_no.standing) == ("dog", "disqualifying-fault")


def test_every_shipped_standard_has_its_number_and_group():
    assert {breed: (load(breed).number, load(breed).group) for breed in NUMBERS} == NUMBERS
