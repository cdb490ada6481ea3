"""Entries, the files they come in with, those that wait for a decision, and the proofs that belong to them."""

import uuid

from django.db import models
from django.utils.translation import gettext_lazy as _
from django.utils.translation import pgettext_lazy

from ringside.core.intake import suffix_of
from ringside.dogs.models import Dog
from ringside.people.models import Account, Person
from ringside.shows.models import Show, ShowClass


class Entry(models.Model):
    class State(models.TextChoices):
        ENTERED = "entered", pgettext_lazy("the dog", "entered")
        WITHDRAWN = "withdrawn", pgettext_lazy("the dog", "withdrawn")

    show = models.ForeignKey(Show, on_delete=models.CASCADE, related_name="entries")
    show_class = models.ForeignKey(ShowClass, on_delete=models.PROTECT, related_name="entries")
    dog = models.ForeignKey(Dog, on_delete=models.PROTECT, related_name="entries")
    # The dog's for the whole show, the same in all its classes: `numbering.give_numbers` alone writes it.
    number = models.PositiveIntegerField("catalogue number", null=True, blank=True)
    state = models.CharField(max_length=12, choices=State.choices, default=State.ENTERED)
    entered_at = models.DateTimeField(auto_now_add=True)
    # Who presents the dog; empty is the owner.
    handler = models.CharField(max_length=120, blank=True)

    class Meta:
        verbose_name_plural = "entries"
        constraints = [
            models.UniqueConstraint(
                fields=["show_class", "dog"],
                name="dog_once_in_class",
                violation_error_message=_("This dog is in this class already."),
            ),
        ]
        indexes = [models.Index(fields=["show", "number"], name="entry_by_number")]

    def __str__(self) -> str:
        return f"{self.number or 'no number'} {self.dog}"


class EntryFile(models.Model):
    """A file of entries as it was understood: kept until all its lines are taken or set aside.

    `content` is the file itself, so that it can be read again another way; it is emptied when no line waits any more.
    `columns` says which column (from 0) holds which field. `checked_for` is the state of the show that the lines'
    findings speak of.
    """

    show = models.ForeignKey(Show, on_delete=models.CASCADE, related_name="entry_files")
    name = models.CharField(max_length=200)
    content = models.BinaryField(default=bytes, blank=True)
    digest = models.CharField(max_length=64)
    kind = models.CharField(max_length=8)
    encoding = models.CharField(max_length=20, blank=True)
    delimiter = models.CharField(max_length=2, blank=True)
    sheet = models.CharField(max_length=100, blank=True)
    other_sheets = models.JSONField(default=list, blank=True)
    date_style = models.CharField(max_length=12)
    date_certain = models.BooleanField(default=True)
    heading_line = models.PositiveIntegerField(default=1)
    headings = models.JSONField(default=list)
    columns = models.JSONField(default=dict)
    checked_for = models.CharField(max_length=200, blank=True)
    uploaded_by = models.ForeignKey(Account, null=True, on_delete=models.SET_NULL, related_name="+")
    uploaded_at = models.DateTimeField(auto_now_add=True)

    class Meta:
        constraints = [models.UniqueConstraint(fields=["show", "digest"], name="file_once_in_show")]

    def __str__(self) -> str:
        return self.name


class EntryLine(models.Model):
    """One line of a file: its cells as read, the fields mended since, what is to be said of it, the entry it became."""

    class State(models.TextChoices):
        WAITING = "waiting", pgettext_lazy("a line", "waiting")
        TAKEN = "taken", pgettext_lazy("a line", "taken")
        ASIDE = "aside", pgettext_lazy("a line", "set aside")

    class Standing(models.TextChoices):
        GOOD = "good", pgettext_lazy("a line", "good")
        WARNED = "warned", _("good, with a warning")
        REFUSED = "refused", _("to be mended")

    file = models.ForeignKey(EntryFile, on_delete=models.CASCADE, related_name="lines")
    line = models.PositiveIntegerField()
    cells = models.JSONField(default=list)
    mended = models.JSONField(default=dict, blank=True)
    findings = models.JSONField(default=list, blank=True)
    standing = models.CharField(max_length=8, choices=Standing.choices, default=Standing.REFUSED)
    state = models.CharField(max_length=8, choices=State.choices, default=State.WAITING)
    entry = models.ForeignKey(Entry, null=True, blank=True, on_delete=models.SET_NULL, related_name="lines")

    class Meta:
        constraints = [models.UniqueConstraint(fields=["file", "line"], name="file_line_once")]
        indexes = [models.Index(fields=["file", "state", "standing", "line"], name="file_line_standing")]

    def __str__(self) -> str:
        return f"{self.file} line {self.line}"


class EntryTerms(models.Model):
    """What one show asks of its entries beside the rules. An empty `vaccination` asks for none.

    `groups` are codes of the group competitions of the rules that this show offers.
    """

    show = models.OneToOneField(Show, on_delete=models.CASCADE, related_name="entry_terms")
    vaccination = models.CharField(max_length=200, blank=True)
    groups = models.JSONField(default=list, blank=True)

    def __str__(self) -> str:
        return f"What {self.show} asks"


class EntryRequest(models.Model):
    """An entry that waits for the office: late, or in doubt. It is no entry and has no number until it is accepted.

    `dog` is one on record; otherwise `texts` holds the fields of the dog as they were typed. A handler's name is in
    `texts` either way. `classes` are codes, `doubts` findings as JSON: why it waits.
    """

    class State(models.TextChoices):
        WAITING = "waiting", _("waits for the secretary")
        ACCEPTED = "accepted", pgettext_lazy("an entry", "accepted")
        REFUSED = "refused", pgettext_lazy("an entry", "refused")
        TAKEN_BACK = "taken-back", pgettext_lazy("an entry", "taken back")

    show = models.ForeignKey(Show, on_delete=models.CASCADE, related_name="entry_requests")
    account = models.ForeignKey(Account, null=True, blank=True, on_delete=models.CASCADE, related_name="entry_requests")
    dog = models.ForeignKey(Dog, null=True, blank=True, on_delete=models.CASCADE, related_name="entry_requests")
    texts = models.JSONField(default=dict, blank=True)
    classes = models.JSONField(default=list)
    doubts = models.JSONField(default=list)
    asked_at = models.DateTimeField(auto_now_add=True)
    state = models.CharField(max_length=10, choices=State.choices, default=State.WAITING)
    reason = models.CharField(max_length=300, blank=True)
    decided_by = models.ForeignKey(Account, null=True, blank=True, on_delete=models.SET_NULL, related_name="+")
    decided_at = models.DateTimeField(null=True, blank=True)

    class Meta:
        indexes = [models.Index(fields=["show", "state", "asked_at"], name="request_by_show")]

    def __str__(self) -> str:
        return f"{self.name}: {self.state}"

    @property
    def name(self) -> str:
        return self.dog.name if self.dog else self.texts.get("name", "")


def own_file_name(proof: "Proof", _: str) -> str:
    """The name under which a proof is kept: ours, never the sender's."""
    return f"proofs/{proof.public_id}.{suffix_of(proof.media_type)}"


class Proof(models.Model):
    """A copy of a paper that an owner attached to a dog. `need` says what it proves: "title", "certificate:WCC"
    or "vaccination"."""

    public_id = models.UUIDField(unique=True, default=uuid.uuid4, editable=False)
    dog = models.ForeignKey(Dog, on_delete=models.CASCADE, related_name="proofs")
    need = models.CharField(max_length=60)
    file = models.FileField(upload_to=own_file_name, max_length=80)
    media_type = models.CharField(max_length=20)
    sent_by = models.ForeignKey(Account, null=True, on_delete=models.SET_NULL, related_name="+")
    sent_at = models.DateTimeField(auto_now_add=True)

    class Meta:
        constraints = [
            models.CheckConstraint(
                condition=models.Q(media_type__in=["application/pdf", "image/jpeg"]), name="proof_kind_is_known"
            )
        ]

    def __str__(self) -> str:
        return f"{self.need} of {self.dog}"


class ProofTick(models.Model):
    """The office has seen a proof, as a file or on paper, for one dog at one show."""

    show = models.ForeignKey(Show, on_delete=models.CASCADE, related_name="proof_ticks")
    dog = models.ForeignKey(Dog, on_delete=models.CASCADE, related_name="proof_ticks")
    need = models.CharField(max_length=60)
    by = models.ForeignKey(Account, null=True, on_delete=models.SET_NULL, related_name="+")
    at = models.DateTimeField(auto_now_add=True)

    class Meta:
        constraints = [models.UniqueConstraint(fields=["show", "dog", "need"], name="proof_ticked_once")]

    def __str__(self) -> str:
        return f"{self.need} of {self.dog} seen"


class GroupEntry(models.Model):
    """A brace, breeders' or progeny group, or a junior handler. `code` is one of the rules' group competitions.

    `name` is what the catalogue calls it: the kennel, the parent, the owner or the young handler, of whom only the
    age in years on the first day is kept, never the date of birth.
    """

    show = models.ForeignKey(Show, on_delete=models.CASCADE, related_name="group_entries")
    code = models.CharField(max_length=40)
    name = models.CharField(max_length=160)
    handler_age = models.PositiveSmallIntegerField(null=True, blank=True)
    members = models.ManyToManyField(Entry, related_name="group_entries")
    account = models.ForeignKey(Account, null=True, blank=True, on_delete=models.SET_NULL, related_name="+")
    entered_at = models.DateTimeField(auto_now_add=True)
    withdrawn_at = models.DateTimeField(null=True, blank=True)

    class Meta:
        verbose_name_plural = "group entries"

    def __str__(self) -> str:
        return f"{self.code}: {self.name}"


class Consent(models.Model):
    """A person agreed to something: to which words, when, by which way, and when that was withdrawn. Never deleted.

    `show` and `dog` are what it is about, as far as it is about one. `wording` is a number of `consents.wording`, 0
    where nobody kept the words. `given_at` is empty where nobody kept the moment. `text` is what may be printed; it
    goes when the person is forgotten.
    """

    class What(models.TextChoices):
        CATALOGUE_ADDRESS = "catalogue-address", _("address in the catalogue")
        CRITIQUE_LINK = "critique-link", _("critique shared by a link")
        PHOTO_LINK = "photo-link", _("photo shared by a link")
        CRITIQUES_PUBLIC = "critiques-public", _("critiques open to everybody")
        CRITIQUES_READER = "critiques-reader", _("critiques open to somebody named")

    class Way(models.TextChoices):
        WEB = "web", _("on the web")
        PAPER = "paper", _("on a paper form, recorded by the office")
        BEFORE = "before", _("recorded before consents were kept")
        FORGOTTEN = "forgotten", _("with the deletion of the account")

    person = models.ForeignKey(Person, on_delete=models.CASCADE, related_name="consents")
    what = models.CharField(max_length=20, choices=What.choices)
    wording = models.PositiveSmallIntegerField()
    show = models.ForeignKey(Show, null=True, blank=True, on_delete=models.CASCADE, related_name="consents")
    dog = models.ForeignKey(Dog, null=True, blank=True, on_delete=models.SET_NULL, related_name="consents")
    text = models.CharField(max_length=300, blank=True)
    given_at = models.DateTimeField(null=True, blank=True)
    way = models.CharField(max_length=10, choices=Way.choices)
    recorded_by = models.ForeignKey(Account, null=True, blank=True, on_delete=models.SET_NULL, related_name="+")
    withdrawn_at = models.DateTimeField(null=True, blank=True)
    withdrawn_way = models.CharField(max_length=10, choices=Way.choices, blank=True)

    class Meta:
        constraints = [
            models.UniqueConstraint(
                fields=["person", "show"],
                condition=models.Q(what="catalogue-address", withdrawn_at=None),
                name="one_address_in_force",
            ),
            models.CheckConstraint(
                condition=~models.Q(what="catalogue-address") | models.Q(show__isnull=False),
                name="address_is_for_a_show",
            ),
        ]
        indexes = [models.Index(fields=["show", "what"], name="consent_by_show")]

    def __str__(self) -> str:
        return f"{self.person}: {self.what}"
