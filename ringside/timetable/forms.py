"""The forms of the day's plan: a time for each breed or part, and what a first plan is made from."""

from collections.abc import Mapping, Sequence
from datetime import time
from typing import Any

from django import forms
from django.utils.translation import gettext as _
from django.utils.translation import gettext_lazy

from ringside.timetable.planning import Hours
from ringside.timetable.queries import Key, Slot

CLOCK = "%H:%M"
STEP = 5  # minutes: nobody announces a breed for 10:17


def _clock() -> forms.TimeInput:
    return forms.TimeInput(format=CLOCK, attrs={"type": "time"})


def _short() -> forms.NumberInput:
    return forms.NumberInput(attrs={"class": "short"})


class ProposalForm(forms.Form):
    """What a first plan is made from: the hours of every ring, the pace, and every judge's break."""

    begins = forms.TimeField(label=gettext_lazy("Every ring begins at"), widget=_clock(), initial=time(9))
    ends = forms.TimeField(label=gettext_lazy("is through by"), widget=_clock(), initial=time(17, 30))
    minutes = forms.FloatField(
        label=gettext_lazy("Minutes a dog"), min_value=0.5, max_value=30, initial=3, widget=_short()
    )
    rest = forms.IntegerField(
        label=gettext_lazy("Minutes of each judge's break"), min_value=0, max_value=180, initial=30, widget=_short()
    )
    rest_from = forms.TimeField(label=gettext_lazy("not before"), widget=_clock(), initial=time(11, 30))
    rest_to = forms.TimeField(label=gettext_lazy("over by"), widget=_clock(), initial=time(14))

    def clean(self) -> dict[str, Any]:
        data = super().clean() or {}
        begins, ends = data.get("begins"), data.get("ends")
        if begins and ends and ends <= begins:
            self.add_error("ends", _("The rings end before they begin: look at both times."))
        rest, earliest, latest = (data.get(name) for name in ("rest", "rest_from", "rest_to"))
        if rest and earliest and latest and rest > _minutes(latest) - _minutes(earliest):
            self.add_error("rest", _("The break does not fit between its two times."))
        return data

    def hours(self) -> Hours:
        told = self.cleaned_data
        clock = {name: told[name].strftime(CLOCK) for name in ("begins", "ends", "rest_from", "rest_to")}
        return Hours(
            clock["begins"], clock["ends"], told["minutes"], 0, told["rest"], clock["rest_from"], clock["rest_to"],
            step=STEP,
        )  # fmt: skip


def _minutes(at: time) -> int:
    return at.hour * 60 + at.minute


class TimesForm(forms.Form):
    """A field for each slot, named by its key; `proposed` times stand where none is planned."""

    def __init__(self, *args: Any, slots: Sequence[Slot], proposed: Mapping[Key, time], **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.slots, self.proposed = slots, proposed
        for slot in slots:
            field = forms.TimeField(
                label=slot.title, required=False, widget=_clock(), initial=slot.at or proposed.get(slot.key),
                error_messages={"invalid": gettext_lazy("Write the time as 09:30, or leave it empty.")},
            )  # fmt: skip
            field.widget.attrs["aria-label"] = _("{title}: begins at").format(title=slot.title)
            self.fields[_name(slot)] = field

    def lines(self) -> list[tuple[Slot, Any, bool]]:
        """Each slot with its field, and whether the time in it is proposed and not kept yet; by ring and time."""
        slots = sorted(self.slots, key=lambda one: (*one.where, one.at or self.proposed.get(one.key, time.max)))
        return [(slot, self[_name(slot)], slot.key in self.proposed) for slot in slots]

    def times(self) -> dict[Key, time | None]:
        return {slot.key: self.cleaned_data[_name(slot)] for slot in self.slots}


def _name(slot: Slot) -> str:
    return "at-{}-{}-{}".format(*slot.key)
