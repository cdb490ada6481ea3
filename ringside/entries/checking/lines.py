"""One line of cells, read and checked by itself: its fields, and the class against the rules in force."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from ringside.entries.checking import fields
from ringside.entries.checking.texts import check_texts
from ringside.entries.checking.wanted import CheckedLine, ShowFacts, Wanted, day_of
from ringside.entries.reading.words import plain
from scoring.findings import Finding, notes, refuses, warns
from scoring.rules.ages import completed_months
from scoring.rules.classes import Dog, Occasion, class_eligibility, eligibility

PAPERS = ("studbook", "sire", "dam", "breeder")
SPOILT = frozenset({"formula-text", "spreadsheet-error"})
RARE_YEARS, IMPOSSIBLE_YEARS = 18, 30
FIELD_OF_RULE = {
    "not-born-yet": "born",
    "neutered-not-allowed": "neutered",
    "not-neutered": "neutered",
    "wrong-sex": "sex",
}


@dataclass(frozen=True, slots=True)
class Dates:
    """How this file writes its dates, and whether day and month may have been changed over."""

    style: str = "yyyy-mm-dd"
    doubtful: bool = False


def check_line(line: int, texts: Mapping[str, str], facts: ShowFacts, dates: Dates) -> CheckedLine:
    """Everything that is to be said of one line by itself. `texts` are cleaned cells by field."""
    of_texts = check_texts(texts)
    spoilt = {finding.facts["field"] for finding in of_texts if finding.code in SPOILT}
    usable = {field: text for field, text in texts.items() if field not in spoilt}
    values, of_fields = read_wanted(usable, facts, dates)
    found = [finding for finding in of_fields if finding.facts.get("field") not in spoilt]
    said = [*of_texts, *found, *_age(values, facts), *_parents(values), *_papers(values), *check_class(values, facts)]
    return CheckedLine(line, values, tuple(finding for finding in said if _is_asked(finding, texts)))


def _is_asked(finding: Finding, texts: Mapping[str, str]) -> bool:
    """What a file has no column for is said once of the file, not of each line; what must be there is said of each."""
    fields = finding.facts.get("fields") or [finding.facts.get("field")]
    return finding.severity == "refuses" or any(field in texts for field in fields)


def read_wanted(texts: Mapping[str, str], facts: ShowFacts, dates: Dates) -> tuple[Wanted, list[Finding]]:
    def of(field: str) -> str:
        return texts.get(field, "")

    name, of_name = fields.read_name(of("name"))
    breed, variety, of_breed = fields.read_breed(of("breed"), of("variety"))
    sex, of_sex = fields.read_sex(of("sex"))
    born, of_born = fields.read_born(of("born"), facts, dates.style, dates.doubtful)
    chip, of_chip = fields.read_chip(of("chip"))
    owner, of_owner = fields.read_owner(of("owner"))
    email, of_email = fields.read_email(of("email"))
    class_code, of_class = fields.read_class(of("class"), facts.book)
    titles, of_titles = fields.read_titles(of("titles"), facts.book)
    certificates, of_certificates = fields.read_certificates(of("certificates"), facts.book)
    neutered, of_neutered = fields.read_neutered(of("neutered"))
    values = Wanted(
        name=name,
        call_name=of("call_name"),
        breed=breed,
        variety=variety,
        sex=sex,
        born=born,
        studbook=of("studbook"),
        chip=chip,
        sire=of("sire"),
        dam=of("dam"),
        breeder=of("breeder"),
        owner=owner,
        email=email,
        handler=of("handler"),
        class_code=class_code,
        titles=titles,
        certificates=certificates,
        neutered=neutered,
    )
    found = [*of_name, *of_breed, *of_sex, *of_born, *of_chip, *of_owner, *of_email, *of_class, *of_titles]
    return values, [*found, *of_certificates, *of_neutered]


def _age(values: Wanted, facts: ShowFacts) -> Iterator[Finding]:
    """Ages at which a date is rather a slip of the pen than a dog's. Common practice, no source."""
    if values.born is None:
        return
    born = {"field": "born", "born": values.born.isoformat()}
    if values.born > facts.last_day:
        yield refuses("not-born-yet", shown_on=facts.last_day.isoformat(), **born)
    years = completed_months(values.born, facts.first_day) // 12
    if years >= IMPOSSIBLE_YEARS:
        yield refuses("age-impossible", years=years, **born)
    elif years >= RARE_YEARS:
        yield warns("age-rare", years=years, **born)


def _parents(values: Wanted) -> Iterator[Finding]:
    for field in ("sire", "dam"):
        if values.name and plain(getattr(values, field)) == plain(values.name):
            yield warns("own-parent", field=field, parent=field, name=values.name)
    if values.sire and plain(values.sire) == plain(values.dam):
        yield warns("parents-alike", field="dam", name=values.sire)


def _papers(values: Wanted) -> Iterator[Finding]:
    missing = [field for field in PAPERS if not getattr(values, field)]
    if missing:
        words = {"studbook": "studbook number"}
        yield warns("papers-incomplete", fields=missing, missing=[words.get(field, field) for field in missing])


def check_class(values: Wanted, facts: ShowFacts) -> list[Finding]:
    """What the rules say of this dog in this class on the day it is shown."""
    if not (values.class_code and values.sex and values.born) or values.born > facts.last_day:
        return []
    day = day_of(facts, values)
    first = _on_day(values, facts, day or facts.first_day)
    if day or facts.first_day == facts.last_day:
        return first
    last = _on_day(values, facts, facts.last_day)
    if _is_open(first) == _is_open(last):
        return first
    better = first if _is_open(first) else last
    doubt = warns(
        "age-depends-on-day", field="class", first=facts.first_day.isoformat(), last=facts.last_day.isoformat()
    )
    return [*better, doubt]


def _is_open(findings: list[Finding]) -> bool:
    return all(finding.severity != "refuses" for finding in findings)


def _on_day(values: Wanted, facts: ShowFacts, day: object) -> list[Finding]:
    dog = Dog(values.born, values.sex, values.neutered, frozenset(values.titles), frozenset(values.certificates))
    occasion = Occasion(day, facts.first_day, facts.entries_close_on)
    answer = class_eligibility(facts.book, facts.book.class_rule(values.class_code), dog, occasion)
    found = [_placed(finding) for finding in answer.findings]
    if answer.open:
        return found
    answers = eligibility(facts.book, dog, occasion.shown_on, occasion.first_day, occasion.entries_close_on)
    others = [other.class_code for other in answers if other.open]
    return [*found, notes("classes-open", field="class", open_classes=others)] if others else found


def _placed(finding: Finding) -> Finding:
    return Finding(finding.code, finding.severity, {**finding.facts, "field": FIELD_OF_RULE.get(finding.code, "class")})
