"""One photo measured: every value with its SD, its target, what it reads, and the findings about it."""

from collections.abc import Collection
from dataclasses import dataclass

from scoring.findings import Finding, warns
from scoring.measuring.definitions import Measurement, in_force
from scoring.measuring.doubts import Doubt, doubts
from scoring.measuring.photo import Photo
from scoring.measuring.readings import Reading, reading_of, sd_needed, too_few_pixels
from scoring.measuring.rules_of_thumb import rules_of_thumb
from scoring.measuring.targets import Figure, Target, target_of
from scoring.measuring.uncertain import Uncertain
from scoring.measuring.withholding import measured


@dataclass(frozen=True, slots=True)
class Measured:
    """One measurement of one photo; `quantity` and `sd` are None where it is withheld."""

    measurement: Measurement
    quantity: Uncertain | None
    sd: float | None
    target: Target | None
    reading: Reading


@dataclass(frozen=True, slots=True)
class MeasuredPhoto:
    measurements: tuple[Measured, ...]
    findings: tuple[Finding, ...]


def measure_photo(photo: Photo, figures: Collection[Figure] = ()) -> MeasuredPhoto:
    """Every measurement of the photo's view.

    Rule: a value is withheld only where its landmarks or a slope's ground line are not there; doubt changes the
    reading and adds a finding.
    Limits: the SD is first order and holds the click error only, not stance, nor where the landmark really lies.
    Arguments: `figures` of the breed's standard, which go before the rules of thumb.
    """
    doubtful = doubts(photo, figures, rules_of_thumb())
    found = [_measure(photo, one, figures, doubtful) for one in in_force(photo.view, photo.landmarks)]
    about_each = [finding for _, findings in found for finding in findings]
    return MeasuredPhoto(
        measurements=tuple(measurement for measurement, _ in found),
        findings=(*(doubt.finding for doubt in doubtful), *about_each),
    )


def _measure(
    photo: Photo, measurement: Measurement, figures: Collection[Figure], doubtful: Collection[Doubt]
) -> tuple[Measured, tuple[Finding, ...]]:
    target = target_of(measurement, figures, rules_of_thumb())
    quantity = measured(photo, measurement)
    if isinstance(quantity, Finding):
        return Measured(measurement, None, None, target, "withheld"), (quantity,)
    sd = measurement.sd(quantity, photo.click_sd)
    if target is None:
        return Measured(measurement, quantity, sd, None, "no-target"), ()
    if too_few_pixels(measurement, quantity.value, sd, target):
        finding = warns("too-few-pixels", measurement=measurement.code, sd=sd, sd_needed=sd_needed(target))
        return Measured(measurement, quantity, sd, target, "cannot-be-told"), (finding,)
    if any(doubt.touches(measurement) for doubt in doubtful):
        return Measured(measurement, quantity, sd, target, "cannot-be-told"), ()
    return Measured(measurement, quantity, sd, target, reading_of(measurement, quantity.value, sd, target)), ()
