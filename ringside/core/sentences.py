"""The words of every finding: code to sentence, in one place. A sentence says what is so, and what to do about it.

Templates are filled from a finding's facts. Facts named in CODES are codes of the rules and lose their hyphens, those
in AWARDS become the award's name; days are written out. A part in square brackets is left out where a fact in it is
not known, none or nothing. Other rooms add their codes under a heading of their own.
"""

import re
from collections.abc import Iterable, Mapping
from datetime import date
from functools import cache
from typing import Any

from django.utils.formats import date_format
from django.utils.translation import gettext, pgettext

from scoring.findings import Finding
from scoring.rules.loader import codes, load

SENTENCES: dict[str, str] = {
    # Classes and ages: scoring.rules.classes
    "not-born-yet": "Born {born}, after the show: correct the date of birth.",
    "too-young": "Too young for this class: {completed_months} months old on {counted_on}, at least {least_months} "
    "are asked. Open from {first_possible_on}.",
    "too-old": "Too old for this class: {completed_months} months old on {counted_on}, at most {most_months} are "
    "allowed. The last possible day was {last_possible_on}.",
    "upper-bound-open-question": "Completes {most_months} months on {counted_on} itself: the rules leave open whether "
    "the class still takes a dog on that day, so it does here.",
    "wrong-sex": "This class is not for a {sex}.",
    "neutered-not-allowed": "Neutered dogs cannot be entered in this class under these rules.",
    "not-neutered": "This class is for neutered dogs only.",
    "title-missing": "This class asks for a confirmed title ({any_of}), and none is named: add the title, or choose "
    "another class.",
    "title-due-by-closing": "The title {titles} must be confirmed by {confirmed_by}.",
    "certificate-missing": "This class asks for {certificates}, and none is named: add the certificate, or choose "
    "another class.",
    "champion-must-use-champion-class": "This dog is a champion: the rules may send it to {classes}.",
    "win-limit-not-checked": "What a dog of this class may have won already is limited: check it with the owner.",
    # Microchip numbers: scoring.chip
    "chip-shortened-by-spreadsheet": "A spreadsheet has shortened the chip number to {chip}, and its last digits are "
    "lost: type it from the papers.",
    "chip-not-digits": "The chip number {chip} holds more than digits: type its 15 digits.",
    "chip-wrong-length": "The chip number {chip} has {digits} digits instead of 15: check it against the papers.",
    "chip-prefix-unknown": "No country and no maker has the number {prefix} with which the chip number {chip} begins: "
    "check it against the papers.",
    "chip-for-tests": "Chip numbers that begin with 999 are for tests, not for a dog: check {chip} against the papers.",
    "chip-cannot-exist": "No chip can hold the number {chip}: its last 12 digits are above {largest}. Check it against "
    "the papers.",
    "chip-may-be-rounded": "The chip number {chip} ends on six zeros: a spreadsheet may have rounded it.",
    # Files as a whole: ringside.entries.reading
    "file-empty": "There is nothing in this file.",
    "file-too-large": "This file is larger than {most} MB. Save the sheet with the entries alone and read that.",
    "unpacks-too-large": "Unpacked, this workbook is larger than {most} MB. Save the sheet with the entries as CSV.",
    "old-workbook": "This is a workbook of the old kind (.xls), or one with a password. Open it, save it as .xlsx or "
    "CSV without a password, and read that.",
    "not-a-workbook": "This is a packed file, but no .xlsx workbook. Save the entries as .xlsx or CSV and read that.",
    "workbook-damaged": "This workbook cannot be opened: it is damaged or cut off. Save it again, or save it as CSV.",
    "is-pdf": "This is a PDF, which has no table to read. Ask for the list as CSV or .xlsx.",
    "is-picture": "This is a picture. Ask for the list as CSV or .xlsx.",
    "is-document": "This is a text document. Save the table as CSV or .xlsx.",
    "is-page": "This is a web page, even if its name says otherwise. Open it in a spreadsheet and save it as .xlsx.",
    "zero-bytes-in-file": "This file holds zero bytes, which no text does. Save the list as CSV or .xlsx again.",
    "not-in-this-encoding": "This file is not written in {encoding}: choose another encoding.",
    "not-a-table": "No columns can be found in this file. Save the list as CSV with commas or semicolons, or as .xlsx.",
    "quote-never-closed": "In line {line} a quotation mark is opened and never closed, so the rest of the file would "
    "become one cell. Close it and read the file again.",
    "too-many-rows": "This file has more than {most} rows. Split it and read the parts.",
    "too-many-columns": "This file has more than {most} columns. Delete those without entries and read it again.",
    "cell-too-long": "A cell in line {line} holds more than {most} characters. Is a quotation mark missing there?",
    "headings-only": "This file has headings and no rows below them.",
    # Lines of a file: ringside.entries.checking
    "formula-text": "The {what} “{text}” begins as a spreadsheet's formula does. It is kept as text and never run: "
    "type what should stand here.",
    "spreadsheet-error": "The {what} holds a spreadsheet's error, {text}: type what should stand here.",
    "text-too-long": "The {what} is longer than {most} characters: shorten it.",
    "letters-lost": "Letters were already lost in the file: {texts}. Correct them here, or ask for a better file.",
    "letters-garbled": "The letters of “{text}” are garbled; it may have been “{meant}”.",
    "too-many-cells": "This line has {cells} cells below {headings} headings: check that nothing has slipped into the "
    "next column.",
    "name-missing": "The dog's name is missing.",
    "name-lost": "Nothing of the dog's name is left in the file ({text}): type it from the entry form.",
    "owner-missing": "The owner is missing.",
    "owner-lost": "Nothing of the owner's name is left in the file ({text}): type it from the entry form.",
    "breed-missing": "The breed is missing.",
    "breed-unknown": "Breed “{text}” is not known: did you mean {suggestion}?",
    "breed-not-here": "Breed “{text}” is not among the breeds with a standard here: correct it, or leave the line.",
    "variety-missing": "{breed} has varieties, and none is named: {known}.",
    "variety-unknown": "“{text}” is no variety of the {breed}. Known: {known}.",
    "variety-not-used": "{breed} has no varieties, so “{text}” is not kept.",
    "sex-missing": "The sex is missing.",
    "sex-unknown": "The sex “{text}” cannot be read: choose dog or bitch.",
    "born-missing": "The date of birth is missing.",
    "date-unreadable": "“{text}” cannot be read as a date ({style}).",
    "date-could-be-either": "“{text}” is read as {born}; day and month could also be the other way round.",
    "born-in-future": "Born {born}, which is still to come: correct the date of birth.",
    "age-rare": "{years} years old: check the date of birth, {born}.",
    "age-impossible": "{years} years old, born {born}: correct the date of birth.",
    "chip-missing": "The chip number is missing.",
    "email-missing": "There is no e-mail address, so the critique cannot be sent.",
    "email-invalid": "“{text}” is no e-mail address: correct it, or empty the field.",
    "class-missing": "The class is missing.",
    "class-unknown": "Class “{text}” is not known: did you mean {suggestion}?",
    "class-not-offered": "Class “{text}” is not offered under these rules. Offered: {known_classes}.",
    "classes-open": "Open to this dog: {open_classes}.",
    "age-depends-on-day": "Whether the dog has the age for this class depends on its day, {first} or {last}: set the "
    "breed's day.",
    "title-unknown": "“{text}” is no title that these rules know, so it is not kept.",
    "certificate-unknown": "“{text}” is no certificate that these rules know, so it is not kept.",
    "neutered-unreadable": "“{text}” cannot be read as yes or no.",
    "papers-incomplete": "Not named: {missing}. The catalogue will show a gap.",
    "own-parent": "The {parent} has the dog's own name, {name}.",
    "parents-alike": "Sire and dam have the same name, {name}.",
    "double": "The same as line {lines}: set this line aside.",
    "dog-twice-in-file": "The same dog stands in line {lines} with other details: correct one and set the other aside.",
    "chip-twice-in-file": "Line {lines} has the same chip number and another dog: one of the numbers is wrong.",
    "studbook-twice-in-file": "Line {lines} has the same studbook number and another dog: one of the numbers is wrong.",
    "chip-of-another-dog": "This chip number is on record for another dog, {name}: check it against the papers.",
    "dog-has-other-chip": "{name} is on record with another chip number: check it against the papers.",
    "studbook-of-another-dog": "This studbook number is on record for another dog, {name}.",
    "sex-differs-from-record": "This dog is on record as a {sex}.",
    "born-differs-from-record": "This dog is on record as born on {born}.",
    "already-entered": "This dog is entered in this show already ({classes}).",
    # Entries on the web: ringside.entries.web
    "too-many-classes": "These rules let a dog stand in {most} of the classes, and {chosen} are chosen: leave the best "
    "one.",
    "breed-not-at-show": "This show has no judge for the {breed}. Its breeds: {known}.",
    "dog-is-yours-already": "{name} is among your dogs already: choose it there instead of adding it again.",
    "dog-under-another-owner": "A dog with this {what} is on record here under another owner. If it is yours too, send "
    "the entry: the secretary asks and decides.",
    "entered-late": "Entries closed on {closed}: the secretary decides whether this one still comes in.",
    "sent-by-office": "The office keeps this for a decision: {why}",
    # Proofs: ringside.entries.proofs.intake
    "proof-unknown-kind": "This file is no PDF, JPEG or PNG, whatever its name says: choose a scan or a photo of the "
    "paper.",
    "proof-too-many-bytes": "This file is larger than {most_megabytes} MB: choose a smaller scan of the paper.",
    "proof-animated": "This file holds a film of several pictures: choose a single scan or photo of the paper.",
    "proof-too-many-pixels": "This picture has too many pixels: choose a smaller scan of the paper.",
    "proof-damaged": "This file is damaged or cut off: scan the paper again.",
    # A class judged on paper: ringside.results.paper_page
    "page-unknown-kind": "This file is no PDF, JPEG, PNG or WebP picture, whatever its name says: take a photo of the "
    "judge's page, or scan it.",
    "page-too-many-bytes": "This file is larger than {most_megabytes} MB: choose a smaller photo or scan of the page.",
    "page-too-many-pixels": "This picture has more than {most_megapixels} million pixels: choose a smaller one.",
    "page-too-small": "This picture is too small to read: its longer side needs {least_pixels} pixels at least.",
    "page-animated": "This file holds a film of several pictures: choose a single photo or scan of the page.",
    "page-damaged": "This file is damaged or cut off: take a photo of the page again.",
    # Dogs that compete together: scoring.rules.together
    "group-too-small": "{name}: {least} dogs at least are asked, {have} chosen.",
    "group-too-large": "{name}: {most} dogs at most stand together, {have} chosen.",
    "group-differs": "{name}: the dogs must have the same {what}, and these have {found}.",
    "group-unknown": "{name}: the {what} of {dogs} is not on record: look at the papers.",
    "group-no-common-parent": "{name}: these dogs have no parent in common.",
    "group-one-of-each": "{name}: one dog and one bitch are asked.",
    "handler-age-missing": "{name}: the handler's date of birth is missing.",
    "handler-too-young": "{name}: the handler is {years} years old on {counted_on}; {least_years} at least are asked.",
    "handler-too-old": "{name}: the handler is {years} years old on {counted_on}; {most_years} at most are allowed.",
    "handler-name-missing": "Write the handler's name.",
    "member-unknown": "No entered dog of this show has the number or name “{text}”.",
    "member-twice": "{text} is named twice.",
    "competition-not-offered": "Choose what is entered: this show offers {known}.",
    # Judges' appointments: ringside.shows.conflicts
    "judge-owns-dog": "{judge} judges a breed in which a dog of the same owner's name is entered: {dog}, number "
    "{number}. Appoint another judge, or ask whether it is the same person.",
    "judge-bred-dog": "{judge} judges a breed in which a dog of the same breeder's name is entered: {dog}, number "
    "{number}. Appoint another judge, or ask whether it is the same person.",
    "judge-handles-dog": "{judge} judges a breed in which a dog is entered whose handler at {show}, {day}, has the "
    "same name: {dog}, number {number}. Appoint another judge, or ask whether it is the same person.",
    "over-days-limit": "{judge} has {dogs} dogs on {day}; the limit is {most} {how} ({known}). Give a breed to another "
    "judge or another day.",
    "judge-in-two-rings": "{judge} is appointed in {rings} on {day}: put these breeds into one ring.",
    # Fees: scoring.fees, scoring.iban
    "fee-missing": "No fee fits: {class} class, {turn}, member: {member}, entered on {day}. Add a fee for it, or "
    "change this entry's fee.",
    "fee-not-clear": "Several fees fit ({lines}): {class} class, {turn}, member: {member}, entered on {day}. Change "
    "the fees so that one fits, or change this entry's fee.",
    "fee-missing-in-table": "No fee fits {turn}, member: {member}, entered from {day} on, in these classes: {classes}.",
    "fee-not-clear-in-table": "Several fees fit {turn}, member: {member}, entered from {day} on, in these classes: "
    "{classes}.",
    "iban-shape": "“{iban}” is no account number: it begins with two letters and two digits, 15 to 34 signs in all.",
    "iban-length": "This account number has {has} signs; one of {country} has {length}. Look at it again.",
    "iban-check-digits": "This account number cannot be right: its check digits do not fit. One sign is wrong or two "
    "are exchanged.",
    "bic-shape": "“{bic}” is no bank's code: it has 8 or 11 signs, the first six letters.",
    # Sheets and class cards: scoring.placing
    "fault": "Fault under the standard: {point}, {found}.",
    "serious-fault": "Serious fault under the standard: {point}, {found}.",
    "disqualifying-fault": "Disqualifying fault under the standard: {point}, {found}. The judge decides.",
    "not-for-this-sex": "{point} is not looked at in a {sex}.",
    "size-class": "{point} {found}: by its size {size}.",
    "placed-without-right": "Number {entry} has a place and no right to one: it is absent, disqualified or could "
    "not be judged. Take the place back, or correct the grade.",
    "too-many-places": "{given} dogs are placed; these rules place {most}.",
    "places-not-in-order": "The places do not run on[; given twice: {twice}][; left out: {left_out}].",
    "grade-not-used": "Number {entry}: these rules have no grade “{grade}”.",
    "reason-missing": "Number {entry} is graded {grade}: write the reason beside the grade, for the report.",
    "disqualifying-fault-not-acted-on": "Number {entry}[, graded {grade},] has a disqualifying fault on its sheet: "
    "{points}.",
    "placed-below-required-grade": "Number {entry} is placed with {grade}; the rules ask {least} at least for a place.",
    "grade-inversion": "The grades of numbers {entries} do not go with their places: {grades}.",
    "order-against-merit": "The sheets of numbers {entries} say the reverse: the first lost more marks.",
    "unequal-assessment": "Not every sheet speaks of the same points: {points}.",
    # Several judges: scoring.placing.panel_door
    "places-not-one-each": "The places of judge {judge} do not run from first to last, each once[; repeated: "
    "{repeated}].",
    # Awards of a breed: scoring.rules.awards and award_card
    "competes-from-class": "Competes from the {class} class[, place {place}][, {grade}].",
    "competes-as-winner": "Competes as the winner of {holds}.",
    "competes-as-second": "Competes as the second of the {class} class, which the winner of the {to} won.",
    "competes-as-second-in-group": "Competes as the second in the group of the dog that has {to}.",
    "award-without-right": "Number {entry} has the {award} and does not compete for it under these rules: look again. "
    "The judge decides.",
    "award-not-to-be-withheld": "The {award} is withheld; these rules do not let a judge withhold it.",
    # Points of a show: scoring.rules.points
    "dogs-counted": "{dog}, {win}: dogs counted {competing}, points {points}.",
    "fixed-points": "{dog}, {win}: points {points}[; fewer than {full_from_dogs} dogs give less].",
    "winner-not-counted": "{dog}, {win}: not one dog is counted ({counts}), and its winner must be. Correct the count.",
    "group-points": "{dog}, place {place} in a group of {breeds} breeds: points {points}.",
    "group-place-without-best-of-breed": "{dog} has a place in the group and is not best of breed: no points for it. "
    "Check both.",
    "best-in-show-points": "{dog}, best in show: points {points}, and none beside them.",
    "best-in-show-without-best-of-breed": "{dog} is best in show and not best of breed: check both.",
    "capped": "{dog}: points {sum} in all, of which one show gives {cap} at most.",
    "award-given-twice": "{win} went to {dogs}: it is given once. Check who has it.",
    "opposite-sex-is-the-same": "Best of breed and best of opposite sex are both a {sex}: check both.",
    "group-places-give-no-points": "Places in the group give no points under these rules ({dogs}).",
    "best-in-show-gives-no-points": "Best in show gives no points under these rules ({dog}).",
    # Titles: scoring.rules.titles
    "wins-missing": "Wins ({awards}): {least} are asked, {have} so far.",
    "countries-missing": "Countries of the wins ({awards}): {least} are asked, {have} so far.",
    "judges-missing": "Different judges of the wins ({awards}): {least} are asked, {have} so far.",
    "judges-apart-missing": "Wins ({awards}), each under a judge of its own: {least} are asked, {have} so far.",
    "span-missing": "{months} months must lie between the first and the last win ({awards})[: the first was on "
    "{first}, so one on {earliest_last} or later is missing].",
    "points-missing": "Points ({awards})[, from {after_months} months of age on][, up to {until_months} months]: "
    "{least} are asked, {have} so far[; wins at an unknown age: {of_unknown_age}].",
    "shows-missing": "Shows with points ({awards}): {least} are asked, {have} so far.",
    "win-of-points-missing": "One win ({awards}) of {least} points or more is asked; the best so far has {have}.",
    "win-after-age-missing": "One win ({awards}) at {after_months} months of age or more is asked[; wins at an unknown "
    "age: {of_unknown_age}].",
    # Photos as they are taken in: ringside.photos.intake
    "photo-unknown-kind": "This file is no photo that can be read here: choose a JPEG, PNG or WebP picture.",
    "photo-too-many-bytes": "This photo is larger than {most_megabytes} megabytes: choose a smaller copy of it.",
    "photo-too-many-pixels": "This photo has more than {most_megapixels} million pixels: choose a smaller copy of it.",
    "photo-too-small": "This photo is too small to mark: its longer side needs {least_pixels} pixels at least.",
    "photo-animated": "This file holds a film of several pictures: choose a single photo.",
    "photo-damaged": "This photo is damaged or incomplete: take it from the camera again.",
    # Measured photos: scoring.measuring
    "landmark-missing": "{measurement}: not measured, since {landmarks} is not marked.",
    "landmarks-coincide": "{measurement}: not measured, since {landmarks} lie on one spot. Move one of them.",
    "no-ground-line": "{measurement}: not measured, since there is no level line in the photo. Mark two points of "
    "level ground.",
    "facing-unknown": "{measurement}: not measured, since the points do not tell which way the dog faces.",
    "no-extent": "{measurement}: not measured, since {landmarks} leave it without a height, a length or an area.",
    "too-few-pixels": "{measurement}: the dog is too small in this photo to tell. Go nearer, or mark a larger picture.",
    "ground-clicks-coincide": "The two points of the level line lie on one spot: set them further apart.",
    "picture-turned": "The level line says that the picture is turned by {roll_deg} degrees: check its two points.",
    "landmarks-not-measured-here": "Marked, but not used in this view: {landmarks}.",
    "outside-picture": "Outside the picture, and so doubtful: {landmarks}.",
    "crossed-landmarks": "These points lie above and below each other as on no dog: {landmarks}. Check them.",
    "facing-disagrees": "These points do not agree which way the dog faces: {landmarks}. Check them.",
    "left-and-right-crossed": "Left and right are exchanged: {landmarks}. Left is the left of the picture.",
    "not-levelled": "{measurement}: without a level line a tilted camera goes straight into it.",
    "likely-yaw": "The dog probably stands at an angle to the camera[, turned by about {turned_deg} degrees or "
    "more][, since its feet lie {feet_apart_px} pixels apart in height where {allowed_px} are to be expected]: take "
    "the photo at a right angle to it.",
    "length-ratio-impossible": "The length to height of {length_ratio} is more than this breed can have "
    "({highest} at most): check the withers, the front foot, the point of shoulder and the pin bone.",
    "in-centimetres": "{measurement}: {value} cm, give or take {sd} cm for one standard deviation.",
    "placement-matters": "{measurement}: with the {landmark} {moved} on a dog of 60 cm, it would read {change}.",
}

CODES = frozenset(
    {
        "grade",
        "grades",
        "least",
        "point",
        "points",
        "found",
        "size",
        "any_of",
        "class",
        "classes",
        "open_classes",
        "sex",
        "sexes",
        "titles",
        "known_classes",
        "counts",
        "turn",
    }
)
# Facts that are codes of awards, and are said by the award's name.
AWARDS = frozenset({"award", "awards", "holds", "to", "win"})
CLASSES = frozenset({"class", "classes", "open_classes", "known_classes", "size"})
EITHER = frozenset({"any_of", "awards"})
# Names and fields that the message files know; anything else under these keys is said as it is.
NAMES = frozenset({"what", "breed", "known"})
IF_KNOWN = re.compile(r"\[([^\]]*)\]")
FACT = re.compile(r"\{(\w+)\}")
ISO_DAY = re.compile(r"\d{4}-\d{2}-\d{2}")


def sentence(finding: Finding | Mapping[str, Any]) -> str:
    """The words for a finding, or for one kept as JSON. A code without words says itself, so that nothing is hidden."""
    code, facts = (finding.code, finding.facts) if isinstance(finding, Finding) else (finding["code"], finding["facts"])
    template = SENTENCES.get(code)
    if template is None:
        return f"{code.replace('-', ' ').capitalize()}."
    words = _Words({key: _worded(key, value) for key, value in facts.items()})
    return IF_KNOWN.sub(lambda part: _if_known(part[1], facts), gettext(template)).format_map(words)


def _if_known(part: str, facts: Mapping[str, Any]) -> str:
    return part if all(facts.get(name) for name in FACT.findall(part)) else ""


class _Words(dict[str, str]):
    """A fact that a finding left out is a gap in a sentence, never an error on a page."""

    def __missing__(self, key: str) -> str:
        return "…"


def _worded(key: str, value: Any) -> str:
    if isinstance(value, bool):
        return gettext("yes") if value else gettext("no")
    if isinstance(value, str):
        return _day(value) if ISO_DAY.fullmatch(value) else _plain(key, value)
    if isinstance(value, Iterable):
        return listed((_plain(key, str(item)) for item in value), gettext("or") if key in EITHER else gettext("and"))
    return "…" if value is None else str(value)


def _plain(key: str, value: str) -> str:
    if key in AWARDS:
        return gettext(award_names().get(value, value))
    if key in NAMES:
        return gettext(value)
    if key not in CODES:
        return value
    plain = value.replace("-", " ").replace("_", " ")
    return pgettext("class", plain) if key in CLASSES else gettext(plain)


@cache
def award_names() -> Mapping[str, str]:
    """The names of all awards of all rules; where two bodies name one differently, either will do in a sentence."""
    books = [load(code) for code in codes()]
    return {award.code: award.name for book in books for award in book.awards}


def _day(text: str) -> str:
    try:
        day = date.fromisoformat(text)
    except ValueError:
        return text
    return date_format(day)


def colon(name: object, words: object) -> str:
    """ "name: words"; a language may space its colon."""
    return gettext("{name}: {words}").format(name=name, words=words)


def apart(parts: Iterable[str]) -> str:
    """Parts with commas of their own as a list: "a, b; c"; a language may space its semicolon."""
    told = ""
    for part in parts:
        told = gettext("{told}; {part}").format(told=told, part=part) if told else part
    return told


def listed(words: Iterable[str], joint: str = "") -> str:
    """Words as a list: "a, b and c"."""
    *most, last = list(words) or ["…"]
    joint = joint or gettext("and")
    return f"{', '.join(most)} {joint} {last}" if most else last
