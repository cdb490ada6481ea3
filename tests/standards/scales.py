"""Two published scales of points as standards of invented breeds; how an item's points are shared is ours.

Boston Terrier: the AKC standard's list, read at showsightmagazine.com (judging the Boston Terrier) and breeds.ca.
Hound: the scale with grade thresholds read at ennik.nl (harehound, breed 4).
"""

from scoring.standards.loader import read_standard
from scoring.standards.model import BreedStandard

BOSTON = {
    "General appearance": {"substance": 5, "proportions": 5},
    "Expression": {"expression": 10},
    "Head": {"skull": 5, "stop": 2, "muzzle-length": 4, "muzzle-depth": 4},
    "Eyes": {"eyes": 5},
    "Ears": {"ear-set": 5},
    "Neck, topline, body, tail": {"neck": 4, "topline": 5, "chest-depth": 3, "tail-length": 3},
    "Forequarters": {"front-angulation": 6, "elbows": 4},
    "Hindquarters": {"rear-angulation": 6, "hocks": 4},
    "Feet": {"feet": 5},
    "Colour, coat, markings": {"white": 5},
    "Gait": {"reach": 5, "drive": 5},
}
HOUND = {
    "General appearance": {"substance": 20},
    "Head": {"skull": 15},
    "Eyes": {"eyes": 5},
    "Ears": {"ear-set": 5},
    "Neck": {"neck": 5},
    "Body": {"topline": 15},
    "Legs": {"front-angulation": 10, "rear-angulation": 10},
    "Tail": {"tail-carriage": 5},
    "Coat": {"coat-density": 10},
}
HOUND_GRADES = {"excellent": 90, "very-good": 80, "good": 70, "sufficient": 60}

HEAD = """
code = "invented"
name = "Invented"
authority = "none"
number = 0
group = 6
edition = 2000-01-01
source = "scale"
verified = "read"
colours = []
[sources]
scale = "a published scale of points"
[scale]
source = "scale"
verified = "read"
"""
OWN_POINT = """section = "head"
kind = "two-sided"
name = "{code}"
low = "too little"
high = "too much"
"""


def boston_terrier() -> BreedStandard:
    return scaled(BOSTON, {})


def hound() -> BreedStandard:
    return scaled(HOUND, HOUND_GRADES)


def scaled(items: dict[str, dict[str, int]], thresholds: dict[str, int]) -> BreedStandard:
    text = [HEAD]
    text += [f"thresholds.{grade} = {least}" for grade, least in thresholds.items()]
    for name, points in items.items():
        text.append(f'[[scale.items]]\nname = "{name}"\nworth = {sum(points.values())}\npoints = {list(points)}')
    for code, weight in (pair for points in items.values() for pair in points.items()):
        own = OWN_POINT.format(code=code) if code in ("expression", "eyes") else ""
        text.append(f'[points.{code}]\nasks = "What the scale weighs."\nweight = {weight}\n{own}')
    return read_standard("\n".join(text))
