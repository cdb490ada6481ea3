"""What is kept of a person: themselves, their dogs, entries, published critiques, photos, links, readers,
consents and requests.

Nothing of anybody else. `ringside/home/personal.py` names every row that leads to a person.
"""

from typing import Any

from django.db.models import Q, QuerySet
from django.urls import reverse
from django.utils.translation import gettext

from ringside.dogs.models import Dog
from ringside.entries.consents.queries import as_kept, consents_of
from ringside.entries.models import Entry
from ringside.entries.web.keeping import kept_of_entering
from ringside.fees.keeping import kept_of_money
from ringside.home.models import ClaimCode, CorrectionRequest, Reader, Share
from ringside.home.queries import result_words
from ringside.home.readers import in_force
from ringside.notices.models import Notice
from ringside.people.models import Account, Person
from ringside.photos.models import Photo, Steadiness
from ringside.results.models import Critique, PaperAwards, PaperClass
from ringside.results.queries import title_of
from ringside.ring.queries import breed_said
from ringside.shows.models import Role

VERSION = 2


def kept_of(account: Account) -> dict[str, Any]:
    """All of it as plain values: what the page shows is what the file holds."""
    return {
        "format": "ringside-kept",
        "version": VERSION,
        "account": {"email": account.email, "joined_at": account.joined_at.isoformat(timespec="seconds")},
        "people": [_person(person) for person in Person.objects.filter(account=account).order_by("name", "id")],
        "roles": [
            {"show": role.show.name, "role": role.get_kind_display()}
            for role in Role.objects.filter(account=account).select_related("show").order_by("show__first_day", "id")
        ],
        "dogs": [_dog(dog) for dog in _dogs(account)],
        "entries": [_entry(entry) for entry in _entries(account)],
        **kept_of_entering(account),
        **kept_of_money(account),
        "letters": [_letter(notice) for notice in _letters(account)],
        "signed_pages": [_page(paper) for paper in _pages(account)],
        "critiques": [_critique(critique) for critique in _critiques(account)],
        "photos": [_photo(photo) for photo in _photos(account)],
        "marking": [_steadiness(one) for one in Steadiness.objects.filter(account=account)],
        "shares": [_share(share) for share in _shares(account)],
        "readers": [_reader(one) for one in _readers(account)],
        "reads": [_reads(one) for one in in_force(email=account.email).order_by("id")],
        "consents": [as_kept(one) for one in consents_of(account)],
        "requests": [_request(one) for one in _requests(account)],
        "claims": [_claim(one) for one in _claims(account)],
    }


def _person(person: Person) -> dict[str, Any]:
    return {"name": person.name, "email": person.email, "country": person.country}


def _dogs(account: Account) -> list[Dog]:
    found = Dog.objects.filter(owners__account=account).distinct().order_by("name", "id")
    return list(found.prefetch_related("titles", "certificates"))


def _dog(dog: Dog) -> dict[str, Any]:
    told = ("name", "call_name", "breed", "variety", "sex", "studbook", "chip", "sire", "dam", "breeder", "neutered")
    return {
        **{name: getattr(dog, name) for name in told},
        "born": dog.born.isoformat(),
        "titles": [title.code for title in dog.titles.all()],
        "certificates": [one.code for one in dog.certificates.all()],
    }


def _entries(account: Account) -> list[Entry]:
    found = Entry.objects.filter(dog__owners__account=account).distinct()
    return list(
        found.select_related("dog", "show", "show_class__show_breed__show", "show_class__publication", "placing")
        .order_by("-show__first_day", "number", "id")
    )  # fmt: skip


def _entry(entry: Entry) -> dict[str, Any]:
    return {
        "show": entry.show.name,
        "first_day": entry.show.first_day.isoformat(),
        "dog": entry.dog.name,
        "class": title_of(entry.show_class),
        "number": entry.number,
        "handler": entry.handler,
        "state": entry.state,
        "entered_at": entry.entered_at.isoformat(timespec="seconds"),
        "result": result_words(entry),
    }


def _letters(account: Account) -> QuerySet[Notice]:
    return Notice.objects.filter(account=account).select_related("show").order_by("show__first_day", "id")


def _letter(notice: Notice) -> dict[str, Any]:
    """What the last letter before a show said of each dog: number, day, ring, time."""
    sent_at = notice.sent_at.isoformat(timespec="seconds") if notice.sent_at else None
    return {"show": notice.show.name, "state": notice.get_state_display(), "sent_at": sent_at, "told": notice.told}


def _pages(account: Account) -> list[PaperClass | PaperAwards]:
    """What the person judged on paper: classes, then the awards of breeds."""
    classes = PaperClass.objects.filter(judge__account=account).select_related("show_class__show_breed__show")
    awards = PaperAwards.objects.filter(judge__account=account).select_related("show_breed__show")
    return [*classes.order_by("typed_at", "id"), *awards.order_by("typed_at", "id")]


def _page(paper: PaperClass | PaperAwards) -> dict[str, Any]:
    if isinstance(paper, PaperClass):
        show, title = paper.show_class.show_breed.show, title_of(paper.show_class)
    else:
        show, title = paper.show_breed.show, gettext("{breed}: awards").format(breed=breed_said(paper.show_breed))
    typed_at = paper.typed_at.isoformat(timespec="seconds")
    return {"show": show.name, "class": title, "typed_at": typed_at, "is_kept": bool(paper.page)}


def _critiques(account: Account) -> list[Critique]:
    found = Critique.objects.published().filter(entry__dog__owners__account=account).distinct()
    return list(found.select_related("entry__dog", "entry__show").order_by("-signed_at", "entry_id", "language", "id"))


def _critique(critique: Critique) -> dict[str, Any]:
    return {
        "show": critique.entry.show.name,
        "dog": critique.entry.dog.name,
        "language": critique.language,
        "text": " ".join(critique.sentences),
        "remark": critique.paper.get("remark", ""),
        "signed_at": critique.signed_at.isoformat(timespec="seconds"),
        "fingerprint": critique.fingerprint,
    }


def _photos(account: Account) -> QuerySet[Photo]:
    """Of the person's dogs, and those the person sent."""
    own = Photo.objects.filter(Q(dog__owners__account=account) | Q(uploaded_by=account)).distinct()
    return own.select_related("dog", "entry__show").order_by("uploaded_at", "id")


def _photo(photo: Photo) -> dict[str, Any]:
    return {
        "dog": photo.dog.name,
        "show": photo.entry.show.name if photo.entry else None,
        "view": photo.get_view_display(),
        "taken_on": photo.taken_on.isoformat() if photo.taken_on else None,
        "sent_at": photo.uploaded_at.isoformat(timespec="seconds"),
        "picture": reverse("photos:picture", args=[photo.public_id]),
        "landmarks": photo.landmarks,
        "ground": photo.ground,
        "withers_height_cm": photo.withers_height_cm,
        "measured": photo.measured,
        "shared": photo.share_token is not None,
    }


def _steadiness(one: Steadiness) -> dict[str, Any]:
    found_at = one.found_at.isoformat(timespec="seconds")
    return {"sd_of_width": one.sd_of_width, "landmarks": one.landmarks, "found_at": found_at}


def _shares(account: Account) -> QuerySet[Share]:
    own = Share.objects.filter(Q(entry__dog__owners__account=account) | Q(made_by=account)).distinct()
    return own.select_related("entry__dog", "entry__show").order_by("made_at", "id")


def _share(share: Share) -> dict[str, Any]:
    return {
        **_of_entry(share.entry),
        "address": reverse("home:shared", args=[share.token]),
        "made_at": share.made_at.isoformat(timespec="seconds"),
        "withdrawn_at": share.withdrawn_at.isoformat(timespec="seconds") if share.withdrawn_at else None,
    }


def _readers(account: Account) -> QuerySet[Reader]:
    return Reader.objects.filter(given_by=account).select_related("dog").order_by("given_at", "id")


def _reader(one: Reader) -> dict[str, Any]:
    """Whom the person lets read a dog's critiques."""
    withdrawn_at = one.withdrawn_at.isoformat(timespec="seconds") if one.withdrawn_at else None
    return {**_reads(one), "email": one.email, "withdrawn_at": withdrawn_at}


def _reads(one: Reader) -> dict[str, Any]:
    """A dog whose critiques the person may read; who let them is not theirs to take away."""
    given_at = one.given_at.isoformat(timespec="seconds")
    return {"dog": one.dog.name, "kind": one.get_kind_display(), "given_at": given_at}


def _requests(account: Account) -> QuerySet[CorrectionRequest]:
    asked = CorrectionRequest.objects.filter(asked_by=account)
    return asked.select_related("entry__dog", "entry__show").order_by("asked_at", "id")


def _request(one: CorrectionRequest) -> dict[str, Any]:
    asked_at = one.asked_at.isoformat(timespec="seconds")
    what = {"what": one.get_kind_display(), "text": one.text, "asked_at": asked_at, "answer": one.answer}
    return {**_of_entry(one.entry), **what}


def _claims(account: Account) -> QuerySet[ClaimCode]:
    used = ClaimCode.objects.filter(used_by=account)
    return used.select_related("entry__dog", "entry__show").order_by("used_at", "id")


def _claim(one: ClaimCode) -> dict[str, Any]:
    return {**_of_entry(one.entry), "used_at": one.used_at.isoformat(timespec="seconds") if one.used_at else None}


def _of_entry(entry: Entry) -> dict[str, Any]:
    return {"show": entry.show.name, "dog": entry.dog.name, "number": entry.number}
