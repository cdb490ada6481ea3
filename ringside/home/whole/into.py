"""Takes a show's file in: everything of it or nothing, under ids of this site.

Accounts are matched by address, people by name and address, dogs by microchip: what this site knows of them stays as
it is, and a file can neither give rights outside its own show nor make anybody the owner of a dog that is here.
"""

import zipfile
from pathlib import Path
from typing import IO, Any

from django.core.exceptions import ValidationError
from django.core.files.base import ContentFile
from django.db import DatabaseError, models, transaction
from django.db.models import Count
from django.utils import timezone

from ringside.core import zipped
from ringside.core.audit import record
from ringside.core.denied import Denied
from ringside.dogs.models import Dog
from ringside.entries.models import Entry
from ringside.home.whole.ids import Ids, translated
from ringside.home.whole.reading import CHECKS, MOST_BYTES, MOST_FILES, NotTakenIn, Told, read, value_of
from ringside.home.whole.tables import Model, fields_of, is_counted, names_dog
from ringside.people.models import Account, Person
from ringside.results.actions import fingerprint
from ringside.results.models import Critique
from ringside.ring.actions import as_edit
from ringside.ring.models import Edit
from ringside.shows.models import Role, Show, ShowBreed
from scoring.bad_input import BadInput
from scoring.rules import loader as rules
from scoring.sheet import digest
from scoring.standards import loader as standards


def take_in(*, by: Account, file: IO[bytes]) -> Show:
    """For whoever may start shows here; they own the show then, beside those who own it already."""
    if not by.runs_site:
        raise Denied("You may not take shows in on this site. Whoever runs it can let you.")
    with transaction.atomic():
        show = read_show(file)
        Role.objects.get_or_create(show=show, account=by, kind=Role.Kind.OWNER)
        record(who=by, doing="take-show-in", about=f"show:{show.slug}"[:80])
    return show


def read_show(file: Path | IO[bytes]) -> Show:
    """The show of the file, all of it or none. Raises NotTakenIn with the sentence to show."""
    kept: list[models.FieldFile] = []  # type: ignore[name-defined]
    try:
        with zipped.opened(file, most_files=MOST_FILES, most_bytes=MOST_BYTES) as archive, transaction.atomic():
            return _TakingIn(archive, read(archive), kept).show()
    except Exception as error:
        for one in kept:
            one.storage.delete(one.name)
        raise _worded(error) from error


def _worded(error: Exception) -> Exception:
    if isinstance(error, zipped.BadZip):
        return NotTakenIn(str(error))
    if isinstance(error, ValidationError):
        return NotTakenIn("A value in the file cannot be kept: {why}", why=" ".join(error.messages))
    if isinstance(error, DatabaseError | BadInput | ValueError | TypeError | OverflowError):
        return NotTakenIn("The file contradicts itself, or something in it is here already.")
    return error


class _TakingIn:
    """One file on its way in; `ids` leads from the file's ids to this site's."""

    def __init__(self, archive: zipfile.ZipFile, told: Told, kept: list[Any]) -> None:
        self.archive, self.told, self.kept, self.ids = archive, told, kept, Ids()
        self.known_dogs: set[Any] = set()

    def show(self) -> Show:
        self._require_new()
        for model, rows in self.told.tables.items():
            for row in rows:
                self._take(model, row)
        show = Show.objects.get(pk=self.ids.get("shows.show", self.told.tables[Show][0]["id"]))
        _require_known_codes(show)
        _require_a_number_a_dog(show)
        _require_signed(show)
        return show

    def _require_new(self) -> None:
        shows = self.told.tables[Show]
        if len(shows) != 1:
            raise NotTakenIn("The file does not hold exactly one show.")
        slug = shows[0]["slug"]
        if isinstance(slug, str) and Show.objects.filter(slug=slug).exists():
            raise NotTakenIn(
                "This site has a show with the address “{slug}” already. Nothing was changed.", slug=slug[:60]
            )

    def _take(self, model: Model, row: dict[str, Any]) -> None:
        label, key = model._meta.label_lower, model._meta.pk
        assert key is not None
        old = row["id"] if is_counted(key) else row[key.name]
        if isinstance(old, (bool, list, dict)) or self.ids.get(label, old) is not None:
            raise NotTakenIn("{name} in the file holds one id twice.", name=label)
        if names_dog(model) and row["dog"] in self.known_dogs:
            return
        made = self._made(model, row)
        standing = _standing(made)
        if standing is None:
            made.save_base(raw=True, force_insert=True)
        elif model is Dog:
            self.known_dogs.add(old)
        self.ids.add(label, old, (standing or made).pk)

    def _made(self, model: Model, row: dict[str, Any]) -> models.Model:
        made = model()
        for field in fields_of(model):
            name = f"{model._meta.label_lower}.{field.name}"
            if isinstance(field, models.ForeignKey):
                setattr(made, field.attname, self._link(field, row[field.name]))
            elif not isinstance(field, models.FileField):
                setattr(made, field.attname, value_of(field, translated(self.ids, name, row[field.name], row)))
        for field in (field for field in fields_of(model) if isinstance(field, models.FileField)):
            self._keep(made, field, row)
        if isinstance(made, Edit):
            made.digest = digest(as_edit(made))
        if isinstance(made, Account):
            made.set_unusable_password()
            made.joined_at = timezone.now()
        return made

    def _link(self, field: models.ForeignKey, old: Any) -> Any:  # type: ignore[type-arg]
        if old is None and field.null:
            return None
        new = None if isinstance(old, (bool, list, dict)) else self.ids.get(field.related_model._meta.label_lower, old)
        if new is None:
            raise NotTakenIn(
                "A row in the file names a {name} that is not in it.", name=field.related_model._meta.verbose_name
            )
        return new

    def _keep(self, made: models.Model, field: models.FileField, row: dict[str, Any]) -> None:
        name = row[field.name]
        if name == "" and field.blank:
            return
        check = CHECKS.get(f"{made._meta.label_lower}.{field.name}")
        if not isinstance(name, str) or name not in self.told.files or check is None:
            raise NotTakenIn("A row in the file names a photo that is not in it.")
        content = self.archive.read(name)
        check(content, row)
        place = getattr(made, field.name)
        place.save(name.rpartition("/")[2], ContentFile(content), save=False)
        self.kept.append(place)


def _standing(made: models.Model) -> models.Model | None:
    """What this site has of an account, a person, a dog already."""
    if isinstance(made, Account):
        return Account.objects.filter(email=made.email).first()
    if isinstance(made, Person) and made.email:
        return Person.objects.filter(name=made.name, email__iexact=made.email).order_by("pk").first()
    if isinstance(made, Dog) and made.chip:
        return Dog.objects.filter(chip=made.chip).first()
    return None


def _require_known_codes(show: Show) -> None:
    """Rules and standards that this site does not have would leave pages that cannot be opened."""
    missing = {show.rules} - set(rules.codes())
    breeds = {standard.code for standard in standards.all_standards()}
    missing |= set(ShowBreed.objects.filter(show=show).values_list("breed", flat=True)) - breeds
    if missing:
        raise NotTakenIn(
            "This site has no rules or standard called {names}. Update it first.", names=", ".join(sorted(missing))
        )


def _require_a_number_a_dog(show: Show) -> None:
    """The entries of a dog share its number; two dogs share none."""
    numbered = Entry.objects.filter(show=show, number__isnull=False).values("number").order_by()
    if numbered.annotate(dogs=Count("dog", distinct=True)).filter(dogs__gt=1).exists():
        raise NotTakenIn("The file contradicts itself, or something in it is here already.")


def _require_signed(show: Show) -> None:
    """Every critique says what was signed: its printed fingerprint is made again."""
    for one in Critique.objects.filter(entry__show=show).iterator(chunk_size=500):
        if one.fingerprint != fingerprint(one.entry_id, one.paper, one.sentences):
            raise NotTakenIn("A signed critique in the file was changed after it was signed. Nothing was taken in.")
