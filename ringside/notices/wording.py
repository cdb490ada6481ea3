"""The letter to an exhibitor, in the language that is active; the same words by e-mail and on paper."""

from collections.abc import Iterator
from datetime import date, datetime

from django.utils.formats import date_format, time_format
from django.utils.translation import gettext as _
from django.utils.translation import ngettext

from ringside.core.calendar_file import Event, calendar_text
from ringside.core.sentences import colon
from ringside.entries.proofs.needs import vaccination_asked
from ringside.notices.queries import Dog, Recipient
from ringside.results.queries import title_of
from ringside.shows.models import Ring, Show


def subject(show: Show) -> str:
    return " ".join(_("{show}: number, ring and time").format(show=show.name).split())


def opening(show: Show, recipient: Recipient) -> str:
    words = ngettext("This dog is entered for you in {show}:", "These dogs are entered for you in {show}:",
                     len({dog.entry.dog_id for dog in recipient.dogs}))  # fmt: skip
    return words.format(show=show.name_and_place)


def dog_lines(dog: Dog) -> list[str]:
    """Name and number; class; day, ring and time; judge."""
    number = dog.entry.number
    told = _("{dog}, number {number}").format(dog=dog.entry.dog.name, number=number) if number else dog.entry.dog.name
    judge = dog.appointed.judge
    return [
        told,
        title_of(dog.entry.show_class),
        where(dog),
        *([_("Judge: {judge}").format(judge=judge.name)] if judge else []),
    ]


def where(dog: Dog) -> str:
    """ "Saturday 13 June 2026, ring 1, planned for 09:30", with what is not known yet named."""
    day, ring, at = dog.appointed.day, dog.appointed.ring, dog.at
    return ", ".join([
        date_format(day, "WEEKDAY_DATE_FORMAT") if day else _("no day yet"),
        _ring(ring) if ring else _("no ring yet"),
        _("planned for {time}").format(time=time_format(at)) if at else _("no time yet"),
    ])  # fmt: skip


def _ring(ring: Ring) -> str:
    told = _("ring {name}").format(name=ring.name)
    return f"{told} ({ring.place})" if ring.place else told


def closing(vaccination: str) -> Iterator[str]:
    """What every letter ends with; `vaccination` is what the show asks of it, in its own words, or nothing."""
    yield _("The time is when the breed is planned to begin in its ring. Be at the ring in good time.")
    if vaccination:
        words = _sentence(vaccination)
        yield _("Vaccination that the show asks for: {words} Bring the papers.").format(words=words)
    yield _(
        "A dog that is not well stays at home: ask your vet. What this letter does not say, the governing body's own "
        "rules and local law decide."
    )


def _sentence(words: str) -> str:
    return words if words.endswith((".", "!", "?")) else f"{words}."


def body(show: Show, recipient: Recipient, address: str) -> str:
    """The e-mail's text; `address` is the page where the exhibitor's dogs are."""
    lines = [opening(show, recipient), ""]
    for dog in recipient.dogs:
        lines += [*dog_lines(dog), ""]
    lines += [*closing(vaccination_asked(show)), "", _("The attached file puts this into your calendar.")]
    lines += [_("Your dogs on the show's site: {address}").format(address=address), "", show.name]
    return "\n".join(lines)


def calendar(show: Show, recipient: Recipient, now: datetime) -> str:
    """An event for each dog whose day is known: from its time on, or all day where no time is planned."""
    events = [_event(show, dog, dog.appointed.day) for dog in recipient.dogs if dog.appointed.day]
    return calendar_text("Entries", events, now)


def _event(show: Show, dog: Dog, day: date) -> Event:
    entry = dog.entry
    summary, told = colon(show.name, entry.dog.name), "\n".join(dog_lines(dog))
    return Event(f"entry-{entry.pk}-{show.slug}", day, summary, told, show.place, dog.at)
