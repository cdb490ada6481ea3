"""From the codes in the database to the core's standards and rules."""

from django.utils.text import capfirst
from django.utils.translation import gettext, pgettext

from ringside.dogs.wording import SEXES
from ringside.shows.appointed import Part
from ringside.shows.models import Show, ShowBreed
from scoring.rules import loader as rules
from scoring.rules.rulebook import Award, ClassRule, Grade, RuleBook
from scoring.standards import loader as standards
from scoring.standards.model import BreedStandard


def rules_of(show: Show) -> RuleBook:
    return rules.load(show.rules, show.first_day, tuple(show.overlays))


def offered_classes(show: Show) -> tuple[ClassRule, ...]:
    """The classes that the show offers, in the order of the rules; all of them where it chose none."""
    every = rules_of(show).classes
    return tuple(one for one in every if one.code in show.classes_offered) or every


def part_words(book: RuleBook, part: Part) -> str:
    """ "dogs", "bitches, open class", "best of breed"."""
    if not part.sex:
        return gettext("best of breed")
    sex = str(SEXES[part.sex])
    if not part.code:
        return sex
    return gettext("{sex}, {name} class").format(sex=sex, name=class_name(book.class_rule(part.code)))


def standard_of(show_breed: ShowBreed) -> BreedStandard:
    return standards.load(show_breed.breed)


def class_name(rule: ClassRule) -> str:
    """In the reader's language, as it stands inside a sentence."""
    return pgettext("class", rule.name.lower())


def class_names(show: Show) -> dict[str, str]:
    """Every class of the show's rules by its code, in the reader's language, as it stands alone."""
    return {rule.code: capfirst(class_name(rule)) for rule in rules_of(show).classes}


def grade_name(grade: Grade) -> str:
    """In the reader's language, as it stands alone."""
    return gettext(grade.name)


def award_name(award: Award) -> str:
    return gettext(award.name)
