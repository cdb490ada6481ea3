"""The exhibitor's forms: a dog's facts, and the address a sign-in code is sent to."""

from typing import Any

from django import forms
from django.utils.translation import gettext
from django.utils.translation import gettext_lazy as _

from ringside.core.sentences import colon
from ringside.dogs.models import Dog, Sex
from ringside.shows.forms import DateInput, breed_choices
from scoring.rules.rulebook import RuleBook
from scoring.standards import loader as standards

LONGEST = 300
# The fields of the form by the names that findings use.
FIELDS = (
    "name", "call_name", "breed", "variety", "sex", "born", "studbook", "chip", "sire", "dam", "breeder", "owner",
    "titles", "certificates", "neutered",
)  # fmt: skip


class AddressForm(forms.Form):
    email = forms.EmailField(
        label=_("Your e-mail"),
        max_length=254,
        widget=forms.EmailInput(attrs={"autocomplete": "email"}),
        help_text=_("A sign-in code is sent there. There is no password."),
    )


def _line(label: Any, help_text: Any = "") -> forms.CharField:
    return forms.CharField(label=label, required=False, max_length=LONGEST, help_text=help_text)


class DogForm(forms.Form):
    """What an entry says of a dog. What is missing or wrong is said by the checks, so that all is said at once."""

    name = _line(_("Registered name"), _("As the papers write it."))
    breed = forms.ChoiceField(label=_("Breed"), required=False)
    variety = forms.ChoiceField(label=_("Variety"), required=False, help_text=_("Where the breed has several."))
    sex = forms.ChoiceField(required=False, choices=Sex.choices, widget=forms.RadioSelect, label=_("Sex"))
    born = forms.CharField(label=_("Date of birth"), required=False, max_length=40, widget=DateInput())
    chip = _line(_("Microchip"), _("15 digits."))
    studbook = _line(_("Studbook number"))
    titles = forms.MultipleChoiceField(
        label=_("Confirmed titles"),
        required=False,
        widget=forms.CheckboxSelectMultiple,
        help_text=_("None: leave empty."),
    )
    certificates = forms.MultipleChoiceField(
        label=_("Certificates"), required=False, widget=forms.CheckboxSelectMultiple, help_text=_("None: leave empty.")
    )
    neutered = forms.BooleanField(required=False, label=_("Neutered"))
    sire = _line(_("Sire"))
    dam = _line(_("Dam"))
    breeder = _line(_("Breeder"))
    call_name = _line(_("Call name"))
    owner = _line(_("Owner"), _("Your name, as the catalogue is to print it."))

    def __init__(self, *args: Any, book: RuleBook, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.fields["breed"].choices = [("", gettext("Choose")), *breed_choices()]
        self.fields["variety"].choices = [("", gettext("None")), *_varieties()]
        self.fields["titles"].choices = [(title.code, gettext(title.name)) for title in book.titles]
        self.fields["certificates"].choices = [(paper.code, gettext(paper.name)) for paper in book.documents]
        for name in ("titles", "certificates"):
            if not self.fields[name].choices:
                del self.fields[name]

    def texts(self, email: str) -> dict[str, str]:
        """The fields as the checks read them."""
        data = self.cleaned_data
        told = {name: data.get(name, "") for name in FIELDS}
        lists = {name: ", ".join(data.get(name) or ()) for name in ("titles", "certificates")}
        neutered = "yes" if data.get("neutered") else "no"
        variety = str(told["variety"]).partition(":")[2]
        return {**told, **lists, "neutered": neutered, "variety": variety, "email": email}


def _varieties() -> list[tuple[str, str]]:
    return [
        (f"{standard.code}:{variety.code}", colon(gettext(standard.name), gettext(variety.name)))
        for standard in sorted(standards.all_standards(), key=lambda one: gettext(one.name))
        for variety in standard.varieties
    ]


def texts_of(dog: Dog) -> dict[str, Any]:
    """A dog on record as the form's first values."""
    told = {
        name: getattr(dog, name) for name in FIELDS if hasattr(dog, name) and name not in ("titles", "certificates")
    }
    return {
        **told,
        "born": dog.born.isoformat(),
        "variety": f"{dog.breed}:{dog.variety}" if dog.variety else "",
        "titles": [title.code for title in dog.titles.all()],
        "certificates": [one.code for one in dog.certificates.all()],
    }
