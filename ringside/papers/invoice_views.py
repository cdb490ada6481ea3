"""An invoice as PDF: for the exhibitor it was sent to, and for the office of its show."""

from django.contrib.auth.decorators import login_required
from django.http import Http404, HttpRequest, HttpResponse
from django.views.decorators.http import require_GET

from ringside.fees.models import Invoice
from ringside.fees.one import may_read
from ringside.papers.invoice import invoice_pdf, paper_of
from ringside.papers.views import as_file, size_of
from ringside.shows.access import roles_of
from ringside.shows.may import may


@login_required
@require_GET
def invoice(request: HttpRequest, invoice_id: int) -> HttpResponse:
    found = Invoice.objects.select_related("show", "person", "replaces").filter(pk=invoice_id).first()
    if found is None or not (may_read(request.user, found) or may(roles_of(request.user, found.show), "see-fees")):
        raise Http404
    return as_file(invoice_pdf(paper_of(found), size_of(request)), f"invoice-{found.number}-{found.show.slug}")
