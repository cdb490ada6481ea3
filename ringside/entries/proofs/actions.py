"""A proof is sent and deleted by the dog's owner, and ticked off by the office, with who and when."""

from django.core.files.base import ContentFile
from django.db import transaction

from ringside.core.audit import record
from ringside.core.denied import Denied, NotNow
from ringside.core.intake import take
from ringside.dogs.models import Dog
from ringside.entries.models import Entry, EntryTerms, Proof, ProofTick
from ringside.entries.own import owns
from ringside.entries.proofs.intake import PROOF
from ringside.entries.proofs.keeping import forget_proofs
from ringside.entries.proofs.needs import needs_by_class
from ringside.people.models import Account
from ringside.shows.access import require
from ringside.shows.models import Show

# One account cannot fill the disk. Ours, no source.
MOST_OF_A_DOG = 20


@transaction.atomic
def send_proof(*, who: Account, show: Show, dog: Dog, need: str, content: bytes) -> Proof:
    """Keeps a copy of a paper with the dog."""
    if not owns(who, dog):
        raise Denied("You may not add proofs to a dog of somebody else.")
    if need not in {code for needs in needs_by_class(show).values() for code in needs}:
        raise NotNow("This show asks for no such proof.")
    if Proof.objects.filter(dog=dog).count() >= MOST_OF_A_DOG:
        raise NotNow("This dog has {most} proofs already: delete one that is no longer needed.", most=MOST_OF_A_DOG)
    taken = take(content, PROOF)
    proof = Proof(dog=dog, need=need, media_type=taken.media_type, sent_by=who)
    proof.file.save("", ContentFile(taken.content), save=False)
    proof.save()
    record(who=who, doing="send-proof", show_id=show.pk, about=f"dog:{dog.pk}", need=need)
    return proof


@transaction.atomic
def delete_proof(*, who: Account, proof: Proof) -> None:
    """Deletes the copy. What the office has seen stays ticked."""
    if not owns(who, proof.dog):
        raise Denied("You may not delete proofs of a dog of somebody else.")
    record(who=who, doing="delete-proof", about=f"dog:{proof.dog_id}", need=proof.need)
    forget_proofs(Proof.objects.filter(pk=proof.pk))


@transaction.atomic
def tick(*, who: Account, entry: Entry, need: str) -> None:
    """The office has seen the proof, as a file or on paper."""
    require(who, entry.show, "tick-proofs")
    if need not in needs_by_class(entry.show).get(entry.show_class.code, {}):
        raise NotNow("This entry needs no such proof.")
    _, is_new = ProofTick.objects.get_or_create(show=entry.show, dog=entry.dog, need=need, defaults={"by": who})
    if is_new:
        record(who=who, doing="tick-proof", show_id=entry.show_id, about=f"entry:{entry.pk}", need=need)


@transaction.atomic
def take_tick_back(*, who: Account, entry: Entry, need: str) -> None:
    require(who, entry.show, "tick-proofs")
    gone, _ = ProofTick.objects.filter(show=entry.show, dog=entry.dog, need=need).delete()
    if gone:
        record(who=who, doing="untick-proof", show_id=entry.show_id, about=f"entry:{entry.pk}", need=need)


@transaction.atomic
def ask_terms(*, who: Account, show: Show, vaccination: str, groups: list[str]) -> EntryTerms:
    """What this show asks of entries beside the rules, and which group competitions it offers."""
    require(who, show, "change-show")
    terms, _ = EntryTerms.objects.update_or_create(
        show=show, defaults={"vaccination": vaccination.strip(), "groups": groups}
    )
    record(who=who, doing="change-entry-terms", show_id=show.pk, groups=groups, vaccination=bool(vaccination.strip()))
    return terms
