"""What measurements, landmarks and readings are called, and how their numbers are written."""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from django.utils.formats import get_format
from django.utils.translation import gettext, pgettext_lazy
from django.utils.translation import gettext_lazy as _

from ringside.core.sentences import sentence
from ringside.photos.marks import LANDMARKS
from scoring.measuring.definitions import MEASUREMENTS


@dataclass(frozen=True, slots=True)
class Named:
    """A measurement's name, what it is, and what a dog with less or more of it is called."""

    name: str
    what: str
    less: str
    more: str


NAMES: dict[str, Named] = {
    "front-angle": Named(
        _("Front angle"),
        _("between the lines from the point of shoulder to withers and elbow"),
        pgettext_lazy("front-angle", "over-angulated"),
        pgettext_lazy("front-angle", "straight"),
    ),
    "rear-angle": Named(
        _("Rear angle"),
        _("between the lines from the stifle to pin bone and hock"),
        pgettext_lazy("rear-angle", "over-angulated"),
        pgettext_lazy("rear-angle", "straight"),
    ),
    "hock-angle": Named(
        _("Hock angle"),
        _("between the lines from the hock to stifle and rear foot"),
        pgettext_lazy("hock-angle", "closed"),
        pgettext_lazy("hock-angle", "open"),
    ),
    "blade-slope": Named(
        _("Slope of the blade"),
        _("withers to point of shoulder, to the level"),
        pgettext_lazy("blade-slope", "flat"),
        pgettext_lazy("blade-slope", "steep"),
    ),
    "arm-slope": Named(
        _("Slope of the upper arm"),
        _("point of shoulder to elbow, to the level"),
        pgettext_lazy("arm-slope", "flat"),
        pgettext_lazy("arm-slope", "steep"),
    ),
    "pastern-slope": Named(
        _("Slope of the pastern"),
        _("front pastern to foot, from the vertical"),
        pgettext_lazy("pastern-slope", "upright"),
        pgettext_lazy("pastern-slope", "sloping"),
    ),
    "croup-slope": Named(
        _("Slope of the croup"),
        _("start of the croup to pin bone, to the level"),
        pgettext_lazy("croup-slope", "flat"),
        pgettext_lazy("croup-slope", "steep"),
    ),
    "topline-slope": Named(
        _("Slope of the back"),
        _("withers to start of the croup, to the level"),
        pgettext_lazy("topline-slope", "rising to the rear"),
        pgettext_lazy("topline-slope", "falling to the rear"),
    ),
    "front-set": Named(
        _("Set of the front"),
        _("front foot ahead of the withers' plumb line, over the height"),
        pgettext_lazy("front-set", "set back"),
        pgettext_lazy("front-set", "set forward"),
    ),
    "upper-arm-ratio": Named(
        _("Upper arm to blade"),
        _("length of the one over the other"),
        pgettext_lazy("upper-arm-ratio", "short"),
        pgettext_lazy("upper-arm-ratio", "long"),
    ),
    "length-ratio": Named(
        _("Length to height"),
        _("point of shoulder to pin bone, over the height"),
        pgettext_lazy("length-ratio", "short"),
        pgettext_lazy("length-ratio", "long"),
    ),
    "chest-depth": Named(
        _("Depth of chest"),
        _("withers to brisket, over the height"),
        pgettext_lazy("chest-depth", "shallow"),
        pgettext_lazy("chest-depth", "deep"),
    ),
    "hock-height": Named(
        _("Height of the hock"),
        _("hock to ground, over the height"),
        pgettext_lazy("hock-height", "low"),
        pgettext_lazy("hock-height", "high"),
    ),
    "front-reach": Named(
        _("Reach"),
        _("leading front foot past the nose's plumb line, over the height"),
        pgettext_lazy("front-reach", "short"),
        pgettext_lazy("front-reach", "overreaching"),
    ),
    "stride-balance": Named(
        _("Front to rear stride"),
        _("triangle under the front over that under the rear"),
        pgettext_lazy("stride-balance", "less in front"),
        pgettext_lazy("stride-balance", "more in front"),
    ),
    "column-bend-left": Named(
        _("Left leg off its column"),
        _("pastern or hock off the line of the leg, over its length"),
        pgettext_lazy("column-bend-left", "bent in"),
        pgettext_lazy("column-bend-left", "bowed out"),
    ),
    "column-bend-right": Named(
        _("Right leg off its column"),
        _("pastern or hock off the line of the leg, over its length"),
        pgettext_lazy("column-bend-right", "bent in"),
        pgettext_lazy("column-bend-right", "bowed out"),
    ),
    "convergence": Named(
        _("Convergence"),
        _("between the lines of the two legs, positive toward the ground"),
        pgettext_lazy("convergence", "wide"),
        pgettext_lazy("convergence", "close"),
    ),
    "body-length-along-the-slant": Named(
        _("Length along the slant"),
        _("point of shoulder to pin bone"),
        pgettext_lazy("body-length-along-the-slant", "short"),
        pgettext_lazy("body-length-along-the-slant", "long"),
    ),
}
OF_LOGARITHM = frozenset(one.code for one in MEASUREMENTS if one.sd_of_logarithm)
READINGS = {
    "perhaps-too-little": _("perhaps a little {less}"),
    "perhaps-too-much": _("perhaps a little {more}"),
    "a-little-little": _("a little {less}"),
    "a-little-much": _("a little {more}"),
    "much-too-little": _("clearly {less}"),
    "much-too-much": _("clearly {more}"),
    "cannot-be-told": _("cannot be told from this photo"),
    "no-target": _("nothing to read it against"),
    "withheld": _("not measured"),
}
LANDMARK_NAMES = {one.code: one.name for view in LANDMARKS.values() for one in view}


def reading_words(code: str, reading: str, kind: str | None) -> str:
    """The reading of one measurement; `kind` of its target, since a rule of thumb asks for nothing."""
    if reading == "as-asked":
        return gettext("as the rule of thumb has it") if kind == "rule-of-thumb" else gettext("as asked")
    named = NAMES[code]
    return str(READINGS[reading]).format(less=named.less, more=named.more)


def landmark_words(code: str) -> str:
    return str(LANDMARK_NAMES.get(code, code.replace("-", " ")))


def number_words(value: float, unit: str) -> str:
    """A value as it is read: degrees to one place, ratios to two, with the reader's decimal sign."""
    rounded = f"{value:.1f}°" if unit == "deg" else f"{value:.2f}"
    return as_read(rounded.replace("-", "−") if float(rounded.rstrip("°")) else rounded.lstrip("-"))


def as_read(number: str) -> str:
    """A number written with a point, with the decimal sign of the reader's language."""
    return number.replace(".", get_format("DECIMAL_SEPARATOR"))


def interval_words(code: str, value: float, sd: float, unit: str) -> str:
    """The 95 % interval of a value: its ends where the SD is of the logarithm, else what to add and take away."""
    if code in OF_LOGARITHM:
        low, high = interval_of(code, value, sd)
        return span_words(low, high, unit)
    half = 1.96 * sd
    return as_read(f"± {half:.1f}°" if unit == "deg" else f"± {half:.3f}")


def span_words(low: float, high: float, unit: str) -> str:
    return gettext("{low} to {high}").format(low=number_words(low, unit), high=number_words(high, unit))


def interval_of(code: str, value: float, sd: float) -> tuple[float, float]:
    """Both ends of the 95 % interval."""
    if code in OF_LOGARITHM:
        return value * math.exp(-1.96 * sd), value * math.exp(1.96 * sd)
    return value - 1.96 * sd, value + 1.96 * sd


def finding_words(finding: Mapping[str, Any]) -> str:
    """The sentence of a finding about a photo, its numbers rounded as they are read."""
    facts = {name: _fact(name, value) for name, value in finding["facts"].items()}
    measurement = finding["facts"].get("measurement")
    if "change" in facts:
        facts["change"] = _changed(finding["facts"]["change"], _unit(str(measurement)))
        facts["moved"] = _moved(finding["facts"])
    return sentence({**finding, "facts": facts})


def _fact(name: str, value: Any) -> Any:
    if name == "measurement":
        return str(NAMES[value].name) if value in NAMES else str(value)
    if name in ("landmarks", "landmark"):
        return landmark_words(value) if isinstance(value, str) else [landmark_words(one) for one in value]
    if isinstance(value, float | int):
        return as_read(f"{value:.0f}" if name.endswith(("_px", "_deg")) else f"{value:.3g}")
    return value


def _unit(code: str) -> str:
    return next((one.unit for one in MEASUREMENTS if one.code == code), "ratio")


def _changed(change: float, unit: str) -> str:
    return more_or_less(change > 0, number_words(abs(change), unit))


def more_or_less(is_more: bool, amount: str) -> str:
    return (gettext("{amount} more") if is_more else gettext("{amount} less")).format(amount=amount)


def _moved(facts: Mapping[str, Any]) -> str:
    """How far a landmark is moved, said on a dog of 60 cm."""
    ahead, down = facts["ahead_of_height"], facts["down_of_height"]
    told = [
        _way(by, more if by > 0 else less)
        for by, more, less in (
            (ahead, gettext("{cm} cm further forward"), gettext("{cm} cm further back")),
            (down, gettext("{cm} cm lower"), gettext("{cm} cm higher")),
        )
        if by
    ]
    return gettext("{one} and {other}").format(one=told[0], other=told[1]) if len(told) == 2 else "".join(told)


def _way(by: float, sentence: str) -> str:
    return sentence.format(cm=f"{abs(60 * by):.0f}")
