"""Which models make up a show, found from the models themselves, and what is left out with the reason."""

from collections import deque
from functools import cache

from django.apps import apps
from django.db import models

from ringside.core.models import AuditLine
from ringside.dogs.models import Dog
from ringside.people.models import Account, Person
from ringside.shows.models import Show

Model = type[models.Model]

# Rows of these come along where a row of the show names them; they are matched with what the other site has already.
NAMED: tuple[Model, ...] = (Account, Person, Dog)
LEFT_OUT: dict[str, str] = {
    "home.claimcode": "a claim code is made with the site's secret: print the number cards again",
    "home.reader": "whom an owner lets read a dog's critiques is the owner's, not the show's: it is given there again",
    "papers.paperrun": "papers are printed from what is here, as often as wanted",
    "photos.steadiness": "how steadily a person marks is the person's, not the show's",
}
# Fields that do not travel: rights on a site are given there, sign-in belongs to a site, a digest is made again.
FIELDS_LEFT_OUT: dict[str, frozenset[str]] = {
    "people.account": frozenset({"password", "last_login", "is_active", "runs_site", "joined_at"}),
    "ring.edit": frozenset({"digest"}),
}


def own_models() -> list[Model]:
    """Every model of the program, the tables that link many to many among them, without those of the libraries."""
    return [model for model in apps.get_models(include_auto_created=True) if model.__module__.startswith("ringside.")]


@cache
def covered() -> tuple[Model, ...]:
    """The models of the file, each after those it names."""
    wanted = [model for model in own_models() if model._meta.label_lower not in LEFT_OUT and _belongs(model)]
    ordered: list[Model] = []
    for model in wanted:
        _after_what_it_names(model, wanted, ordered)
    # An audit line names in words whatever it is about.
    return (*(model for model in ordered if model is not AuditLine), AuditLine)


def _belongs(model: Model) -> bool:
    return model in (*NAMED, AuditLine) or path_to_show(model) is not None or names_dog(model)


def _after_what_it_names(model: Model, wanted: list[Model], ordered: list[Model]) -> None:
    for field in links(model):
        if field.related_model in wanted and field.related_model not in (model, *ordered):
            _after_what_it_names(field.related_model, wanted, ordered)
    if model not in ordered:
        ordered.append(model)


def links(model: Model) -> list[models.ForeignKey]:  # type: ignore[type-arg]
    return [field for field in model._meta.concrete_fields if isinstance(field, models.ForeignKey)]


def names_dog(model: Model) -> bool:
    """Whether rows are facts of a dog and of no show: its owners, titles, certificates."""
    return path_to_show(model) is None and any(field.related_model is Dog for field in links(model))


@cache
def path_to_show(model: Model) -> str | None:
    """The shortest way to the show as a look-up: "show_class__show_breed__show"; "pk" for the show itself."""
    waiting: deque[tuple[Model, tuple[str, ...]]] = deque([(model, ())])
    seen = {model}
    while waiting:
        at, path = waiting.popleft()
        if at is Show:
            return "__".join(path) or "pk"
        for field in links(at):
            if field.related_model not in seen:
                seen.add(field.related_model)
                waiting.append((field.related_model, (*path, field.name)))
    return None


def fields_of(model: Model) -> list[models.Field]:  # type: ignore[type-arg]
    """The fields that travel, without an id that the database counts up."""
    left_out = FIELDS_LEFT_OUT.get(model._meta.label_lower, frozenset())
    return [field for field in model._meta.concrete_fields if field.name not in left_out and not is_counted(field)]


def is_counted(field: models.Field) -> bool:  # type: ignore[type-arg]
    return isinstance(field, models.AutoField)
