"""Proofs go with their files, once the change that deletes them is certain."""

from django.db import transaction
from django.db.models import QuerySet

from ringside.entries.models import Proof


def forget_proofs(proofs: QuerySet[Proof]) -> None:
    """Deletes these copies, rows now and files when the transaction is through."""
    for proof in proofs:
        storage, name = proof.file.storage, proof.file.name
        proof.delete()
        transaction.on_commit(lambda storage=storage, name=name: storage.delete(name))
