"""What a governing body's show rules hold: classes, grades, awards, titles and points, each with its source."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from typing import Literal, TypeVar

Verified = Literal["read", "derived", "memory"]
Sex = Literal["dog", "bitch"]
AgeDay = Literal["show-day", "day-before", "first-day-of-show", "day-before-first-day"]
LastDay = Literal["included", "excluded", "open-question"]
Neutered = Literal["allowed", "barred", "required"]
Elsewhere = Literal["allowed", "notes", "warns", "refuses"]
Level = Literal["class", "sex", "breed", "group", "show", "trial"]
AwardKind = Literal["certificate", "reserve", "best", "result"]
SEXES: tuple[Sex, Sex] = ("dog", "bitch")


@dataclass(frozen=True, slots=True)
class Cite:
    """Where a value comes from: a key of sources.toml, and how it was checked."""

    source: str
    verified: Verified


@dataclass(frozen=True, slots=True)
class Provenance:
    """The source of a whole record, and of those of its values that come from elsewhere."""

    whole: Cite
    but: Mapping[str, Cite] = field(default_factory=dict)

    def of(self, key: str) -> Cite:
        return self.but.get(key, self.whole)


@dataclass(frozen=True, slots=True)
class Grade:
    """A qualification. `rank` 0 is the best of the book; a grade that bars from a place has `may_be_placed` False."""

    code: str
    name: str
    rank: int
    needs_reason: bool
    may_be_placed: bool
    abbreviation: str
    provenance: Provenance


@dataclass(frozen=True, slots=True)
class GradeScale:
    """The grades one kind of class uses, best first, and the least of them that may be placed, where one is set."""

    code: str
    grades: tuple[str, ...]
    least_for_place: str | None
    provenance: Provenance


@dataclass(frozen=True, slots=True)
class ClassRule:
    """One class of the catalogue. Ages are whole calendar months; `least_months` must be completed.

    `last_day` says whether the class is still open on the day `most_months` is completed.
    `titles`: one of these must be held; `documents`: all of these must be there. `scale` None: not graded.
    `win_limit`: what the dog may already have won is limited, which nothing here can check.
    `champions_elsewhere`: how much it matters that a confirmed champion stands here and not in its own class.
    `places`: how many dogs this class places, where it differs from the book's.
    """

    code: str
    name: str
    least_months: int
    most_months: int | None
    last_day: LastDay
    sexes: tuple[Sex, ...]
    titles: tuple[str, ...]
    documents: tuple[str, ...]
    neutered: Neutered
    certificates: tuple[str, ...]
    scale: str | None
    win_limit: bool
    champions_elsewhere: Elsewhere
    places: int | None
    provenance: Provenance


@dataclass(frozen=True, slots=True)
class Candidates:
    """Who competes for an award: dogs of `classes` at `places` with one of `grades` (empty: any), or `winners_of`
    other awards, or the dog placed second in a class that the winner of `second_to` won, or the winners of the sex that
    the winner of `other_sex_than` is not. `unbeaten`: no dog that stood behind another in another of the classes (of
    all where the line names none); behind the winner of `second_to` does not count.
    """

    classes: tuple[str, ...] = ()
    places: tuple[int, ...] = ()
    grades: tuple[str, ...] = ()
    winners_of: tuple[str, ...] = ()
    second_to: str | None = None
    other_sex_than: str | None = None
    unbeaten: bool = False


@dataclass(frozen=True, slots=True)
class Award:
    """A certificate or a best-of award. `level` "sex": one for each sex of a breed or variety.

    `places`: how many dogs a final of a group or a show places. `reserve_of`: the award of which this is the reserve;
    where it `moves_up`, its holder gets that award if it is cancelled.
    """

    code: str
    name: str
    level: Level
    kind: AwardKind
    may_be_withheld: bool
    candidates: tuple[Candidates, ...]
    provenance: Provenance
    places: int = 1
    reserve_of: str | None = None
    moves_up: bool = False


@dataclass(frozen=True, slots=True)
class Group:
    """A group of breeds that compete together after best of breed; `breeds` are codes of standards."""

    code: str
    name: str
    breeds: tuple[str, ...]
    provenance: Provenance


@dataclass(frozen=True, slots=True)
class Need:
    """One condition of a title route. `kind` names the function of titles.py that checks it.

    `least` is how many it asks for; `months` an age or a span to complete; `until_months` an age not to pass.
    """

    kind: str
    awards: tuple[str, ...]
    least: int
    months: int | None
    until_months: int | None
    provenance: Provenance


@dataclass(frozen=True, slots=True)
class TitleRoute:
    """One way to a title: all of its needs. Wins of an award count from `counts_from[award]` on, where given.

    Of the wins in `once_a_show` only the one of most points counts at each show.
    """

    code: str
    counts_from: Mapping[str, date]
    once_a_show: tuple[str, ...]
    needs: tuple[Need, ...]


@dataclass(frozen=True, slots=True)
class TitleRule:
    """A title; any one of its routes gains it. Without routes it is only known, not computed."""

    code: str
    name: str
    routes: tuple[TitleRoute, ...]
    provenance: Provenance


@dataclass(frozen=True, slots=True)
class PointsWin:
    """A win that earns points by the dogs counted for it, by the winner's sex; or a fixed number of points.

    `full_from_dogs`: fewer dogs than this give less than the fixed points.
    """

    code: str
    counts: Mapping[Sex, tuple[str, ...]]
    fixed: int | None
    full_from_dogs: int | None
    provenance: Provenance


@dataclass(frozen=True, slots=True)
class GroupRow:
    """Points for the group places 1, 2, ... where at least this many breeds competed."""

    least_breeds: int
    points: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class CountOf:
    """Which dogs one count takes: those of a sex in these classes."""

    sex: Sex
    classes: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class PointsRule:
    """Points of one show. Dogs counted become points by `steps` (least count, points), or as `base` + count.

    `counted` says which classes each count takes, `no_points_from` the classes whose dogs earn none themselves.
    """

    counts: tuple[str, ...]
    cap: int
    steps: tuple[tuple[int, int], ...]
    base: int | None
    wins: tuple[PointsWin, ...]
    group: tuple[GroupRow, ...]
    group_needs: str | None
    best_in_show: int | None
    provenance: Provenance
    counted: Mapping[str, CountOf] = field(default_factory=dict)
    counted_from: Cite | None = None
    no_points_from: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Document:
    """A paper an entry encloses, such as a working certificate."""

    code: str
    name: str
    provenance: Provenance


@dataclass(frozen=True, slots=True)
class Competition:
    """Dogs that compete together, or a young handler: a brace, a breeders' or progeny group, junior handling.

    `least` to `most` dogs (None: no limit) stand together. `same` names what they must share: breed, variety, owner,
    breeder, or one parent. `one_of_each`: one dog and one bitch. `least_years` to `most_years` is the handler's age,
    both years included, where the competition is the handler's.
    """

    code: str
    name: str
    least: int
    most: int | None
    same: tuple[str, ...]
    one_of_each: bool
    least_years: int | None
    most_years: int | None
    provenance: Provenance

    @property
    def is_handling(self) -> bool:
        return self.least_years is not None or self.most_years is not None


Coded = TypeVar("Coded", ClassRule, Grade, GradeScale, Award, Competition)


@dataclass(frozen=True)
class RuleBook:
    """One governing body's show rules in force on a day, with its overlays already laid over it."""

    code: str
    name: str
    edition: str
    dated: date | None
    overlays: tuple[str, ...]
    languages: tuple[str, ...]
    age_day: AgeDay
    upper_age_day: AgeDay
    places: int
    classes_per_dog: int | None
    classes: tuple[ClassRule, ...]
    grades: tuple[Grade, ...]
    scales: tuple[GradeScale, ...]
    awards: tuple[Award, ...]
    titles: tuple[TitleRule, ...]
    documents: tuple[Document, ...]
    competitions: tuple[Competition, ...]
    points: PointsRule | None
    provenance: Provenance
    groups: tuple[Group, ...] = ()
    groups_by_standard: bool = False

    @property
    def class_order(self) -> tuple[str, ...]:
        """Class codes in catalogue order."""
        return tuple(rule.code for rule in self.classes)

    @property
    def least_grade_for_place(self) -> str | None:
        """The least grade of adult classes that may be placed; None where the rules set none."""
        return next((scale.least_for_place for scale in self.scales if scale.code == "adult"), None)

    def class_rule(self, class_code: str) -> ClassRule:
        """The class; KeyError where these rules have none of that code."""
        return _by_code(self.classes, class_code)

    def grade(self, grade_code: str) -> Grade:
        """The grade; KeyError where these rules have none of that code."""
        return _by_code(self.grades, grade_code)

    def award(self, award_code: str) -> Award:
        """The award; KeyError where these rules have none of that code."""
        return _by_code(self.awards, award_code)

    def competition(self, code: str) -> Competition:
        """The group competition; KeyError where these rules have none of that code."""
        return _by_code(self.competitions, code)

    def group_of(self, breed: str, by_standard: int) -> Group | None:
        """The group a breed belongs to; None where these rules' data name none. `by_standard`: its standard's own."""
        if self.groups_by_standard:
            return next((group for group in self.groups if group.code == str(by_standard)), None)
        return next((group for group in self.groups if breed in group.breeds), None)

    def is_graded(self, class_code: str) -> bool:
        return self.class_rule(class_code).scale is not None

    def grades_for(self, class_code: str) -> tuple[Grade, ...]:
        """The grades a class uses, best first; none where the class is not graded."""
        scale = self._scale_of(class_code)
        return tuple(self.grade(code) for code in scale.grades) if scale else ()

    def places_for(self, class_code: str) -> int:
        """How many dogs a class places."""
        own = self.class_rule(class_code).places
        return self.places if own is None else own

    def least_grade_for(self, class_code: str) -> str | None:
        """The least grade of this class that may be placed; None where the rules set none."""
        scale = self._scale_of(class_code)
        return scale.least_for_place if scale else None

    def meets_least_grade(self, grade_code: str) -> bool:
        """Whether a grade is good enough for a place: at or above the least grade of every scale that holds it."""
        grade = self.grade(grade_code)
        least = [scale.least_for_place for scale in self.scales if grade_code in scale.grades]
        return grade.may_be_placed and all(code is None or grade.rank <= self.grade(code).rank for code in least)

    def _scale_of(self, class_code: str) -> GradeScale | None:
        wanted = self.class_rule(class_code).scale
        return None if wanted is None else _by_code(self.scales, wanted)


def _by_code(records: tuple[Coded, ...], code: str) -> Coded:
    for record in records:
        if record.code == code:
            return record
    raise KeyError(code)
