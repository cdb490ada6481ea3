"""Words for dogs that every room says alike."""

from django.utils.translation import gettext_lazy as _

# Of several: the heading of a class, of an award, of a line on the board.
SEXES = {"dog": _("dogs"), "bitch": _("bitches")}
