"""From the codes in the database to the core's standards and rules."""

from ringside.shows.models import Show, ShowBreed
from scoring.rules import loader as rules
from scoring.rules.rulebook import RuleBook
from scoring.standards import loader as standards
from scoring.standards.model import BreedStandard


def rules_of(show: Show) -> RuleBook:
    return rules.load(show.rules, show.first_day, tuple(show.overlays))


def standard_of(show_breed: ShowBreed) -> BreedStandard:
    return standards.load(show_breed.breed)
