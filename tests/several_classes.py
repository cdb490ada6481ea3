"""A British breed in which a dog may stand in several classes; its dogs and their owners are invented."""

from ringside.entries.models import Entry
from ringside.shows.models import ShowClass
from tests.shows_for_tests import SmallShow, small_show


def british_show() -> tuple[SmallShow, dict[tuple[str, int], Entry]]:
    """Boxers 1, 2 and 3 in the open class, 1 and 3 in limit too, and the Hovawart 4; entries by class and number."""
    at = small_show()
    at.show.rules = "united-kingdom"
    at.show.save()
    # In the order of the rules, so that limit comes before open.
    ShowClass.objects.filter(code="open").update(order=8)
    limit = ShowClass.objects.create(show_breed=at.show_class.show_breed, sex="dog", code="limit", order=7)
    for number in (1, 3):
        Entry.objects.create(show=at.show, show_class=limit, dog=at.entries[number - 1].dog, number=number)
    found = {
        (entry.show_class.code, entry.number or 0): entry for entry in at.show.entries.select_related("show_class")
    }
    return at, found
