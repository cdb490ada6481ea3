"""What the signatures of a sheet say together.

- A signature's value is the list of the edit ids it covers, or `{"covers": [ids], "aside": [ids]}`; null, or `covers`
  null, withdraws the signature it replaces. `aside` names edits that stay on the record but neither stand nor wait.
- A signature that covers ids not known here, or whose value cannot be read, is pending. It does not count, so what it
  replaces stays in force; what replaces it replaces that too.
- Several signatures in force at once sign everything that any of them covers (and their field is disputed): nothing
  that a judge signed drops out, and nothing that no judge signed gets in. So a signature beside a withdrawal stands.
"""

from collections.abc import Set
from dataclasses import dataclass
from typing import Any

from scoring.replacing import Edits, live_edits

NOTHING: frozenset[str] = frozenset()


@dataclass(frozen=True, slots=True)
class Signature:
    """One signature's words; `covers` is None where it withdraws."""

    covers: frozenset[str] | None
    aside: frozenset[str]


@dataclass(frozen=True, slots=True)
class Signing:
    """All signatures together; `covers` is None where none is in force. `signed_by` and `pending` are their ids."""

    covers: frozenset[str] | None
    aside: frozenset[str]
    signed_by: Set[str]
    pending: Set[str]


def signing(signatures: Edits, known: Set[str]) -> Signing:
    """What these edits of the signature field say, where the ids in `known` have arrived."""
    complete = {
        edit_id: said
        for edit_id, edit in signatures.items()
        if (said := read_signature(edit.value)) and known >= (said.covers or NOTHING)
    }
    in_force = {edit.id: complete[edit.id] for edit in live_edits(signatures, complete.keys())}
    covered = {edit_id: said.covers for edit_id, said in in_force.items() if said.covers is not None}
    return Signing(
        covers=NOTHING.union(*covered.values()) if covered else None,
        aside=NOTHING.union(*(said.aside for said in in_force.values())),
        signed_by=covered.keys(),
        pending={edit.id for edit in live_edits(signatures, signatures.keys())} - complete.keys(),
    )


def read_signature(value: Any) -> Signature | None:
    """The signature in one value; None where the value cannot be read as one."""
    said = value if isinstance(value, dict) else {"covers": value}
    if "covers" not in said or not (said["covers"] is None or _are_ids(said["covers"])):
        return None
    aside = said.get("aside", [])
    covers = None if said["covers"] is None else frozenset(said["covers"])
    return Signature(covers, frozenset(aside)) if _are_ids(aside) else None


def _are_ids(value: Any) -> bool:
    return isinstance(value, list) and all(isinstance(edit_id, str) for edit_id in value)
