"""The forms of setting a show up."""

from datetime import date, timedelta
from typing import Any

from django import forms
from django.utils.formats import date_format
from django.utils.text import capfirst, slugify
from django.utils.translation import gettext
from django.utils.translation import gettext_lazy as _

from ringside.core.denied import NotNow
from ringside.core.sentences import colon
from ringside.dogs.wording import SEXES
from ringside.shows.books import class_name, offered_classes, rules_of
from ringside.shows.models import Ring, Role, Show
from ringside.shows.queries import judges_in
from ringside.shows.rings import refuse_twin
from scoring.rules import loader as rules
from scoring.standards import loader as standards
from scoring.standards.names import plain

LONGEST_SHOW = 10


def rule_choices() -> list[tuple[str, str]]:
    """The governing bodies behind an empty choice: a show under rules that nobody chose would be judged wrongly."""
    return [("", gettext("Choose")), *((code, rules.load(code).name) for code in rules.codes())]


def overlay_choices() -> list[tuple[str, str]]:
    pairs = [(body, code) for body in rules.codes() for code in rules.overlay_codes(body)]
    names = [rules.load(body, None, (code,)).name.removeprefix(f"{rules.load(body).name}, ") for body, code in pairs]
    return [(code, gettext(name)) for (_body, code), name in zip(pairs, names, strict=True)]


def breed_choices() -> list[tuple[str, str]]:
    return sorted(((one.code, gettext(one.name)) for one in standards.all_standards()), key=lambda choice: choice[1])


def unit_choices() -> list[tuple[str, str]]:
    """What is appointed by itself: a breed, or one variety of it as "breed:variety"."""
    found = []
    for code, name in breed_choices():
        varieties = [(one.code, gettext(one.name)) for one in standards.load(code).varieties]
        of_all = gettext("{breed}: all varieties").format(breed=name) if varieties else name
        found += [(code, of_all), *((f"{code}:{own}", colon(name, words)) for own, words in varieties)]
    return found


class DateInput(forms.DateInput):
    input_type = "date"

    def __init__(self) -> None:
        super().__init__(format="%Y-%m-%d")


def free_name(name: str, pk: int | None = None) -> str:
    """A name from which an address can be made that no other show has."""
    slug = slugify(name)
    if not slug:
        raise forms.ValidationError(gettext("Give a name with at least one plain letter or digit, for its address."))
    if Show.objects.filter(slug=slug[:60]).exclude(pk=pk).exists():
        raise forms.ValidationError(gettext("There is a show of this name already. Add the year, for example."))
    return name


class ShowForm(forms.ModelForm):  # type: ignore[type-arg]
    rules = forms.ChoiceField(
        label=_("Rules"), choices=rule_choices, help_text=_("The governing body whose rules count.")
    )

    overlays = forms.MultipleChoiceField(
        label=_("National member or club"),
        choices=overlay_choices,
        required=False,
        widget=forms.CheckboxSelectMultiple,
        help_text=_("Its own certificates, titles, classes and dates on top of the governing body's rules."),
    )

    class Meta:
        model = Show
        fields = [
            "name", "place", "rules", "overlays", "first_day", "last_day", "entries_open", "entries_close",
            "critiques_public",
        ]  # fmt: skip
        labels = {
            "name": _("Name of the show"),
            "place": _("Place"),
            "first_day": _("First day"),
            "last_day": _("Last day"),
            "entries_open": _("Entries open on"),
            "entries_close": _("Entries close on"),
            "critiques_public": _("Critiques are public"),
        }
        help_texts = {
            "critiques_public": _("Everybody may read the published critiques, not only each dog's owner."),
        }
        widgets = dict.fromkeys(("first_day", "last_day", "entries_open", "entries_close"), DateInput())

    def clean_name(self) -> str:
        return free_name(self.cleaned_data["name"], self.instance.pk)

    def clean(self) -> dict[str, Any]:
        data = super().clean() or {}
        first, last, close = (data.get(name) for name in ("first_day", "last_day", "entries_close"))
        if first and last and last < first:
            self.add_error("last_day", _("The last day lies before the first."))
        self._check_overlays(data)
        if first and last and last - first > timedelta(days=LONGEST_SHOW):
            told = gettext("A show lasts {most} days at the most: look at both dates.").format(most=LONGEST_SHOW)
            self.add_error("last_day", told)
        if close and first and close > first:
            self.add_error("entries_close", _("Entries close before the show begins."))
        opened = data.get("entries_open")
        if opened and close and close < opened:
            self.add_error("entries_close", _("Entries close before they open: look at both dates."))
        return data

    def _check_overlays(self, data: dict[str, Any]) -> None:
        body = data.get("rules")
        if body and set(data.get("overlays") or []) - set(rules.overlay_codes(body)):
            self.add_error("overlays", _("This member does not belong to the governing body chosen above."))


def day_of_show(show: Show, day: date | None) -> date | None:
    if day and not show.first_day <= day <= show.last_day:
        first, last = date_format(show.first_day), date_format(show.last_day)
        raise forms.ValidationError(
            gettext("The show runs from {first_day} to {last_day}.").format(first_day=first, last_day=last)
        )
    return day


class RingForm(forms.Form):
    """A ring's name, unlike every other of the show, and where it is found."""

    name = forms.CharField(label=_("Ring"), max_length=20, widget=forms.TextInput(attrs={"class": "short"}))
    place = forms.CharField(
        label=_("Where it is"), max_length=60, required=False, help_text=_("Such as: hall 2, by the north door.")
    )

    def __init__(self, *args: Any, show: Show, ring: Ring | None = None, **kwargs: Any) -> None:
        initial = {"name": ring.name, "place": ring.place} if ring else {}
        super().__init__(*args, initial=initial, **kwargs)
        self.show, self.ring = show, ring

    def clean_name(self) -> str:
        name = str(self.cleaned_data["name"])
        try:
            refuse_twin(self.show, name, self.ring.pk if self.ring else None)
        except NotNow as refused:
            raise forms.ValidationError(refused.reason) from None
        return name


def _judge(required: bool = True, **more: Any) -> forms.CharField:
    widget = forms.TextInput(attrs={"list": "known-judges"})
    return forms.CharField(label=_("Judge"), max_length=120, required=required, widget=widget, **more)


def _email() -> forms.EmailField:
    return forms.EmailField(
        label=_("Judge's e-mail"), required=False,
        help_text=_("The judge signs in with a code sent there. Of a judge of this show the name is enough."),
    )  # fmt: skip


def _ring(required: bool = True, **more: Any) -> forms.CharField:
    widget = forms.TextInput(attrs={"list": "known-rings"})
    return forms.CharField(label=_("Ring"), max_length=20, required=required, widget=widget, **more)


class JudgesForm(forms.Form):
    """Names a judge; the address of one who judges at the show already is known."""

    named = ("judge_name", "judge_email")

    def __init__(self, *args: Any, show: Show, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.show = show

    @property
    def known_judges(self) -> list[str]:
        return list(dict.fromkeys(judge.name for judge in judges_in(self.show)))

    @property
    def known_rings(self) -> list[str]:
        return [ring.name for ring in self.show.rings.order_by("name", "id")]

    def clean(self) -> dict[str, Any]:
        data = super().clean() or {}
        name, email = self.named
        if data.get(name) and not data.get(email) and email not in self.errors:
            known = [one for one in judges_in(self.show) if one.email and plain(one.name) == plain(data[name])]
            if len(known) == 1:
                data |= {name: known[0].name, email: known[0].email}
            else:
                self.add_error(email, _("Give the judge's e-mail too: the judge signs in with a code sent there."))
        return data


class WholeForm(JudgesForm):
    """Who judges a breed, or a variety of it, in which ring, on which day."""

    judge_name = _judge()
    judge_email = _email()
    ring = _ring()
    day = forms.DateField(label=_("Day"), widget=DateInput())

    def clean_day(self) -> Any:
        return day_of_show(self.show, self.cleaned_data["day"])


class BreedForm(WholeForm):
    """The same for any breed: all of its varieties, or one of them."""

    field_order = ("breed",)
    breed = forms.ChoiceField(label=_("Breed"), choices=unit_choices)

    def clean(self) -> dict[str, Any]:
        data = super().clean()
        if "breed" in data:
            data["breed"], _colon, data["variety"] = str(data["breed"]).partition(":")
        return data


def part_choices(show: Show) -> list[tuple[str, str]]:
    """Best of breed, both sexes, every class of each sex; the code is "sex:class", either may be empty."""
    classes = [
        (f"{sex}:{rule.code}", gettext("{name} class, {sex}").format(name=class_name(rule), sex=words))
        for sex, words in SEXES.items()
        for rule in offered_classes(show)
        if sex in rule.sexes
    ]
    of_sexes = [(f"{sex}:", words) for sex, words in SEXES.items()]
    told = [(":", gettext("Best of breed and the awards")), *of_sexes, *classes]
    return [(code, capfirst(words)) for code, words in told]


class PartForm(JudgesForm):
    """A part of the breed judged apart; a field left empty is as for the wider part."""

    part = forms.ChoiceField(label=_("Part of the breed"))
    judge_name = _judge(required=False, help_text=_("Empty: the breed's judge."))
    judge_email = _email()
    ring = _ring(required=False, help_text=_("Empty: the breed's ring."))
    day = forms.DateField(label=_("Day"), widget=DateInput(), required=False, help_text=_("Empty: the breed's day."))

    def __init__(self, *args: Any, show: Show, **kwargs: Any) -> None:
        super().__init__(*args, show=show, **kwargs)
        part = self.fields["part"]
        assert isinstance(part, forms.ChoiceField)
        part.choices = part_choices(show)

    def clean_day(self) -> Any:
        return day_of_show(self.show, self.cleaned_data["day"])

    def clean(self) -> dict[str, Any]:
        data = super().clean()
        if data.get("judge_email") and not data.get("judge_name"):
            self.add_error("judge_name", _("Give the judge's name to this address."))
        return data

    def told(self) -> dict[str, Any]:
        data = dict(self.cleaned_data)
        sex, _, code = data.pop("part").partition(":")
        return {**data, "sex": sex, "code": code}


class ReplaceForm(JudgesForm):
    """Who judges instead, and why."""

    named = ("name", "email")
    name = _judge()
    email = _email()
    why = forms.CharField(label=_("Why"), max_length=200, help_text=_("Kept with the change, such as: ill, delayed."))

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.fields["name"].label = gettext("Judge who takes over")


# The roles that are given by hand: the owner starts the show, a judge is appointed.
GIVEN = (Role.Kind.SECRETARY, Role.Kind.ASSISTANT, Role.Kind.STEWARD, Role.Kind.WRITER)


class RoleForm(forms.Form):
    email = forms.EmailField(label=_("E-mail"), help_text=_("They sign in with a code sent there."))
    kind = forms.ChoiceField(
        label=_("Role"),
        choices=[(kind.value, kind.label) for kind in GIVEN],
    )


class ClassesForm(forms.Form):
    """The classes that the show offers, of those its rules have."""

    classes = forms.MultipleChoiceField(label=_("Classes"), widget=forms.CheckboxSelectMultiple)

    def __init__(self, *args: Any, show: Show, **kwargs: Any) -> None:
        chosen = [rule.code for rule in offered_classes(show)]
        super().__init__(*args, initial={"classes": chosen}, **kwargs)
        field = self.fields["classes"]
        assert isinstance(field, forms.MultipleChoiceField)
        field.choices = [(rule.code, capfirst(class_name(rule))) for rule in rules_of(show).classes]


class CopyForm(forms.Form):
    """The name and first day of the show that is made from an earlier one."""

    name = forms.CharField(label=_("Name of the new show"), max_length=120)
    first_day = forms.DateField(
        label=_("First day"),
        widget=DateInput(),
        help_text=_("All other days move by as much: look at them afterwards."),
    )

    def clean_name(self) -> str:
        return free_name(self.cleaned_data["name"])
