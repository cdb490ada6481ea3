"""Whether an edit counts: taken in, held until somebody decides, or refused; each with its sentence."""

from dataclasses import dataclass
from functools import cache, cached_property

from ringside.entries.models import Entry
from ringside.ring.checks import check_meaning, entries_named
from ringside.ring.models import Edit as Row
from ringside.ring.models import Tablet
from ringside.ring.places import Place, place_of
from ringside.ring.reasons import reason
from ringside.ring.rights import ON_PAPER, PAPER, doing_for
from ringside.shows.may import MAY, may
from ringside.shows.models import Ring, Role
from scoring.bad_input import BadInput
from scoring.sheet import FORMAT, Edit, field_kind
from scoring.sheet_fields import check_edit

# The order in which a person's roles are tried: the first that may do it is stamped on the edit.
STAMPS = (Role.Kind.JUDGE, Role.Kind.WRITER, Role.Kind.STEWARD, Role.Kind.OWNER, Role.Kind.SECRETARY)


@dataclass(frozen=True, slots=True)
class Ruling:
    """The state an edit gets, why it is not taken in, and the role that wrote it; no role where none may."""

    state: str
    reason: str = ""
    role: str = ""


class Ground:
    """The ring that a batch is taken into: where its sheets lead and which tablets are lost is asked once a batch."""

    def __init__(self, ring: Ring) -> None:
        self.ring = ring
        self.place_of = cache(place_of)

    @cached_property
    def lost(self) -> frozenset[str]:
        """The devices declared lost here."""
        lost = Tablet.objects.filter(ring=self.ring, lost_at__isnull=False)
        return frozenset(lost.values_list("device", flat=True))


def rule_on(ground: Ground, roles: frozenset[str], edit: Edit) -> Ruling:
    """How an edit stands that somebody with these roles sends to a ring."""
    doing = doing_for(edit.field)
    role = _role_for(roles, edit, doing)
    if not role:
        return Ruling(Row.State.REFUSED, reason("not-allowed", doing=MAY[doing][0]))
    try:
        held = _held_because(ground, edit)
    except BadInput as error:
        return Ruling(Row.State.REFUSED, error.message, role)
    return Ruling(Row.State.HELD if held else Row.State.TAKEN, held, role)


def _role_for(roles: frozenset[str], edit: Edit, doing: str) -> str:
    """The role under which the edit counts; empty where none of them may write it."""
    if PAPER in roles and field_kind(edit.field) in ON_PAPER.get(edit.sheet.partition(":")[0], ()):
        return PAPER
    return next((str(kind) for kind in STAMPS if kind in roles and may(frozenset({kind}), doing)), "")


def _held_because(ground: Ground, edit: Edit) -> str:
    """Why somebody has to decide on this edit; nothing where it counts. Raises BadInput to refuse it."""
    if edit.device in ground.lost:
        return reason("lost-tablet")
    if edit.v != FORMAT:
        return reason("newer-page")
    check_edit(edit)
    place = ground.place_of(edit.sheet)
    if place is None or place.show_breed.show_id != ground.ring.show_id:
        raise BadInput("unknown-code", reason("no-such-sheet"), "sheet")
    if place.ring != ground.ring:
        return reason("other-ring")
    gone = _gone(edit, place)
    if not gone:
        check_meaning(edit, place)
    return gone


def _gone(edit: Edit, place: Place) -> str:
    """Which dog that the edit speaks of was withdrawn, or moved to another class, since it was written."""
    named = [int(key) for key in entries_named(edit) if key.isdecimal() and len(key) <= 18]
    spoken_of = list(Entry.objects.filter(show=place.show_breed.show_id, pk__in=named)) if named else []
    spoken_of += [place.entry] if place.entry else []
    withdrawn = [one for one in spoken_of if one.state == Entry.State.WITHDRAWN]
    if withdrawn:
        return reason("withdrawn", numbers=_numbers(withdrawn))
    moved = [one for one in spoken_of if place.show_class and one.show_class_id != place.show_class.pk]
    return reason("moved", numbers=_numbers(moved)) if moved else ""


def _numbers(entries: list[Entry]) -> str:
    return ", ".join(str(one.number or one.pk) for one in entries)
