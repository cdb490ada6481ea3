"""Entering and withdrawing a brace, a group or a young handler."""

from collections.abc import Sequence
from datetime import date

from django.db import transaction
from django.http import Http404
from django.utils import timezone

from ringside.core.audit import record
from ringside.core.denied import Denied, NotNow
from ringside.core.sentences import sentence
from ringside.entries.models import Entry, GroupEntry
from ringside.entries.own import owns
from ringside.entries.together.queries import members_of, offered
from ringside.entries.web.opening import Standing, standing_of
from ringside.people.models import Account
from ringside.shows.access import require
from ringside.shows.models import Show
from scoring.findings import Finding, refuses
from scoring.rules.ages import completed_months
from scoring.rules.together import group_findings, handler_findings


def findings_on(show: Show, code: str, name: str, members: Sequence[Entry], born: date | None) -> list[Finding]:
    """All that is to be said of these dogs, or this handler, in this competition."""
    rule = next((one for one in offered(show) if one.code == code), None)
    if rule is None:
        known = [one.name for one in offered(show)] or ["nothing"]
        return [refuses("competition-not-offered", field="code", known=known)]
    found = group_findings(rule, members_of(members))
    if rule.is_handling:
        missing = [] if name.strip() else [refuses("handler-name-missing", field="name")]
        found += [*missing, *handler_findings(rule, born, show.first_day)]
    return found


@transaction.atomic
def enter_group(
    *, who: Account, show: Show, code: str, name: str, members: Sequence[Entry], born: date | None, today: date,
    for_office: bool,
) -> GroupEntry:  # fmt: skip
    """One group entry, by the office or by an exhibitor with own dogs. Of a handler's birth only the age is kept."""
    _require(who, show, members, today, for_office)
    refused = [sentence(one) for one in findings_on(show, code, name, members, born) if one.severity == "refuses"]
    if refused:
        raise NotNow(" ".join(refused))
    rule = next(one for one in offered(show) if one.code == code)
    years = completed_months(born, show.first_day) // 12 if rule.is_handling and born else None
    group = GroupEntry.objects.create(
        show=show, code=code, name=name.strip() or _called(members), handler_age=years, account=who
    )
    group.members.set(members)
    record(who=who, doing="enter-group", show_id=show.pk, about=f"group:{group.pk}", code=code)
    return group


def _called(members: Sequence[Entry]) -> str:
    """A group without a name goes by its dogs."""
    return " & ".join(entry.dog.name for entry in members)[:160]


def _require(who: Account, show: Show, members: Sequence[Entry], today: date, for_office: bool) -> None:
    if for_office:
        require(who, show, "take-entries")
    elif standing_of(show, today) is not Standing.OPEN:
        raise NotNow("Entries are closed: ask the show's office.")
    elif not all(owns(who, entry.dog) for entry in members):
        raise Denied("You may not name a dog of somebody else: ask the show's office to enter the group.")
    if any(entry.show_id != show.pk or entry.state != Entry.State.ENTERED for entry in members):
        raise NotNow("Only dogs that are entered in this show can be named.")


@transaction.atomic
def withdraw_group(*, who: Account, group: GroupEntry, for_office: bool, today: date) -> None:
    if for_office:
        require(who, group.show, "take-entries")
    elif group.account_id != who.pk:
        raise Http404
    elif standing_of(group.show, today) is not Standing.OPEN:
        raise NotNow("Entries are closed: ask the show's office to withdraw it.")
    if group.withdrawn_at is not None:
        raise NotNow("This is withdrawn already.")
    group.withdrawn_at = timezone.now()
    group.save(update_fields=["withdrawn_at"])
    record(who=who, doing="withdraw-group", show_id=group.show_id, about=f"group:{group.pk}")
