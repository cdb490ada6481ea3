"""Sending a proof, handing it out as a download, deleting it, and the office's tick."""

import uuid

from django.contrib import messages
from django.contrib.auth.decorators import login_required
from django.http import FileResponse, HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.utils.translation import gettext
from django.views.decorators.http import require_GET, require_POST

from ringside.core.denied import Denied
from ringside.core.handing_out import as_download
from ringside.core.intake import suffix_of, too_many_bytes
from ringside.core.receiving import ByteLimit, takes_file
from ringside.core.sentences import sentence
from ringside.entries.access import access_entry
from ringside.entries.own import access_own_dog
from ringside.entries.proofs import actions
from ringside.entries.proofs.access import access_proof, own_proof
from ringside.entries.proofs.intake import PROOF
from ringside.entries.web.access import access_open_show


@takes_file(PROOF.most_bytes)
@login_required
@require_POST
def send(request: HttpRequest, slug: str, dog_id: int, limit: ByteLimit) -> HttpResponse:
    dog = access_own_dog(request.user, dog_id)
    show = access_open_show(slug)
    need, file = request.POST.get("need", ""), request.FILES.get("file")
    try:
        if limit.is_over or file is None:
            raise Denied(sentence(too_many_bytes(PROOF)) if limit.is_over else "Choose a file first.")
        actions.send_proof(who=request.user, show=show, dog=dog, need=need, content=file.read())
        messages.success(request, gettext("The proof is attached. The secretary looks at it and ticks it off."))
    except Denied as refused:
        messages.error(request, refused.reason)
    return redirect("enter:dog", slug=slug, dog_id=dog.pk)


@login_required
@require_GET
def download(request: HttpRequest, proof_id: uuid.UUID) -> FileResponse:
    """Never shown in the browser: whatever is in the file, it is only saved."""
    proof = access_proof(request.user, proof_id)
    name = f"{proof.need.replace(':', '-')}.{suffix_of(proof.media_type)}"
    return as_download(proof.file, name, proof.media_type)


@login_required
@require_POST
def delete(request: HttpRequest, slug: str, proof_id: uuid.UUID) -> HttpResponse:
    proof = own_proof(request.user, proof_id)
    actions.delete_proof(who=request.user, proof=proof)
    messages.success(request, gettext("The copy is deleted."))
    return redirect("enter:dog", slug=slug, dog_id=proof.dog_id)


@login_required
@require_POST
def tick(request: HttpRequest, slug: str, entry_id: int) -> HttpResponse:
    entry = access_entry(request.user, slug, entry_id, "tick-proofs")
    act = actions.take_tick_back if request.POST.get("do") == "back" else actions.tick
    act(who=request.user, entry=entry, need=request.POST.get("need", ""))
    return redirect("entries:entry", slug=slug, entry_id=entry.pk)
