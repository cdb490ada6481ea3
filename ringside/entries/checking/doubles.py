"""The same dog twice in one file, or two dogs with one number."""

from collections import defaultdict
from collections.abc import Iterator, Sequence

from ringside.entries.checking.wanted import CheckedLine, Wanted
from ringside.entries.reading.words import plain
from scoring.findings import Finding, refuses

Key = tuple[str, ...]
# What two lines share: the finding where they contradict each other, and the field that it speaks of.
CODES = {
    "dog": ("dog-twice-in-file", "name"),
    "chip": ("chip-twice-in-file", "chip"),
    "studbook": ("studbook-twice-in-file", "studbook"),
}
NAMED = 5


def doubles(lines: Sequence[CheckedLine], classes_per_dog: int | None) -> dict[int, list[Finding]]:
    """Findings by line number.

    Of lines that say the same, the first is good and the later are doubles of it. Where lines contradict each other,
    nobody here can know which is right, and all of them wait.
    """
    shared: dict[Key, list[CheckedLine]] = defaultdict(list)
    for line in lines:
        for key in _keys(line.values):
            shared[key].append(line)
    found: dict[int, dict[tuple[int, ...], Finding]] = defaultdict(dict)
    for key in sorted((key for key in shared if len(shared[key]) > 1), key=lambda key: list(CODES).index(key[0])):
        for number, finding in _of_group(key[0], shared[key], classes_per_dog):
            found[number].setdefault(tuple(finding.facts["lines"]), finding)
    return {number: list(findings.values()) for number, findings in found.items()}


def _keys(values: Wanted) -> Iterator[Key]:
    if values.name and values.breed and values.born:
        yield ("dog", plain(values.name), values.breed, values.born.isoformat())
    if values.chip:
        yield ("chip", values.chip)
    if values.studbook and values.breed:
        yield ("studbook", plain(values.studbook), values.breed)


def _of_group(kind: str, group: Sequence[CheckedLine], classes_per_dog: int | None) -> Iterator[tuple[int, Finding]]:
    dogs = {_dog(line.values) for line in group}
    classes = {line.values.class_code for line in group}
    if len(dogs) > 1 or (len(classes) > 1 and classes_per_dog == 1):
        code, field = CODES[kind]
        for line in group:
            yield line.line, refuses(code, field=field, **_others(line, group))
        return
    first: dict[str, int] = {}
    for line in group:
        earlier = first.setdefault(line.values.class_code, line.line)
        if earlier != line.line:
            yield line.line, refuses("double", field="name", lines=[earlier])


def _dog(values: Wanted) -> tuple[object, ...]:
    return plain(values.name), values.breed, values.sex, values.born, values.chip


def _others(line: CheckedLine, group: Sequence[CheckedLine]) -> dict[str, list[int]]:
    others = (other.line for other in group if other.line != line.line)
    return {"lines": [number for number, _ in zip(others, range(NAMED), strict=False)]}
