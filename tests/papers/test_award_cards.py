"""Award cards, read back: one for each award a judge has signed, blank ones before, and nothing for a withheld one."""

import io
from datetime import date

import pytest
from django.test import Client
from django.utils import translation
from pypdf import PdfReader

from ringside.papers.award_cards import AwardCard, award_cards_pdf, fitted
from ringside.papers.award_gathering import blank_cards, given_cards
from ringside.papers.fonts import BOLD
from ringside.results import final_actions
from ringside.results.award_corrections import cancel_awards
from ringside.results.models import AwardGiven, AwardsPublication, Final
from ringside.ring.models import Sheet
from ringside.shows.models import Appointment, ShowClass
from tests.papers import reading
from tests.papers.programmes import LONG_NAME
from tests.ring.test_awards import another
from tests.shows_for_tests import SmallShow, small_show

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]
MM = 72 / 25.4
LONG = AwardCard(
    show=LONG_NAME[:120], day="12 September 2026 – 13 September 2026", award=f"Best in group: {LONG_NAME[:90]}",
    place="place 2", number="123456", dog=LONG_NAME[:160], breed="Australian Shepherd, red merle with copper trim",
    of_class="Intermediate class, bitches", judge="Prof. Dr. Maria-Magdalena of the Long Names and Meadows " * 2,
)  # fmt: skip


@pytest.fixture
def at() -> SmallShow:
    """Boxers: the certificate to dog 1, its reserve withheld, best of breed dog 1, all published."""
    found = small_show()
    breed = found.show_class.show_breed
    AwardGiven.objects.create(show_breed=breed, award="cacib", sex="dog", entry=found.entries[0])
    AwardGiven.objects.create(show_breed=breed, award="reserve-cacib", sex="dog", withheld=True)
    AwardGiven.objects.create(show_breed=breed, award="best-of-breed", entry=found.entries[0])
    AwardsPublication.objects.create(show_breed=breed)
    return found


def in_short(cards: list[AwardCard]) -> list[tuple[str, str, str]]:
    return [(card.award, card.place, card.number) for card in cards]


def sign_hovawarts(at: SmallShow, **awards: object) -> None:
    Sheet.objects.create(
        key=f"breed:{at.other_class.show_breed_id}", ring=at.other_ring, show_breed=at.other_class.show_breed,
        fields={f"award.{code}": who for code, who in awards.items()},
        signed={f"award.{code}": who for code, who in awards.items()},
    )  # fmt: skip


def test_each_given_award_has_one_card_and_a_withheld_one_none(at):
    assert in_short(given_cards(at.show)) == [("CACIB, dogs", "", "1"), ("Best of breed", "", "1")]


def test_a_card_says_show_breed_class_number_dog_and_judge(at):
    first = given_cards(at.show)[0]
    assert (first.show, first.day, first.breed, first.dog) == ("Small Show", "13 June 2026", "Boxer", "Dog 1")
    assert (first.of_class, first.judge, first.is_blank) == ("Open class, dogs", "judge", False)


def test_a_cancelled_award_has_no_card_and_one_passed_on_is_its_new_holders(at):
    row = AwardGiven.objects.get(award="reserve-cacib")
    row.entry, row.withheld = at.entries[1], False
    row.save()
    cancel_awards(who=at.accounts["secretary"], entry=at.entries[0], why="Not registered")
    numbers = {card.award: card.number for card in given_cards(at.show)}
    assert "1" not in numbers.values()
    # That the reserve moves up is known in the trade and from memory, as the rules' data say (moves_up).
    assert numbers["CACIB, dogs"] == "2"
    assert "Best of breed" not in numbers


def test_awards_have_cards_from_the_judges_signature_on(at):
    sign_hovawarts(at, **{"best-of-breed": str(at.other_entry.pk)})
    assert ("Best of breed", "", "4") in in_short(given_cards(at.show))
    Sheet.objects.filter(show_breed=at.other_class.show_breed).update(signed=None)
    assert ("Best of breed", "", "4") not in in_short(given_cards(at.show))


def test_the_cards_of_one_ring_are_of_the_breeds_awarded_there(at):
    sign_hovawarts(at, **{"best-of-breed": str(at.other_entry.pk)})
    assert {card.breed for card in given_cards(at.show, at.other_ring)} == {"Hovawart"}
    Appointment.objects.create(show_breed=at.other_class.show_breed, sex="", code="", ring=at.ring)
    assert given_cards(at.show, at.other_ring) == []


def test_each_place_of_a_signed_final_has_a_card_with_its_judge(at):
    sign_hovawarts(at, **{"best-of-breed": str(at.other_entry.pk)})
    office = at.accounts["secretary"]
    final_actions.hold_finals(who=office, show=at.show)
    group = Final.objects.get(award="best-in-group", group="2")
    final_actions.name_judge(who=office, final=group, name="Jo Finch", email="")
    final_actions.record_final(who=office, final=group, places=[4, 1], absent=[], is_signed=False)
    assert [card for card in given_cards(at.show) if card.place] == []
    final_actions.record_final(who=office, final=group, places=[4, 1], absent=[], is_signed=True)
    placed = [card for card in given_cards(at.show) if card.place]
    assert [(card.place, card.number, card.breed, card.judge) for card in placed] == [
        ("place 1", "4", "Hovawart", "Jo Finch"), ("place 2", "1", "Boxer", "Jo Finch"),
    ]  # fmt: skip
    assert [card for card in given_cards(at.show, at.ring) if card.place] == []


def test_a_rings_blank_cards_are_of_the_awards_its_dogs_can_come_to_compete_for(at):
    blank = blank_cards(at.show, at.ring)
    awards = {card.award for card in blank}
    assert {"CACIB, dogs", "Reserve CACIB, dogs", "Best of breed"} <= awards
    assert not any("bitches" in award for award in awards)
    assert all(card.is_blank and not card.number and not card.dog for card in blank)
    assert {card.judge for card in blank} == {"judge"}
    bitches = ShowClass.objects.create(show_breed=at.show_class.show_breed, sex="bitch", code="veteran")
    another(bitches, 11)
    more = {card.award for card in blank_cards(at.show, at.ring)}
    assert "Best veteran" in more - awards


def test_blank_cards_of_all_rings_hold_every_place_of_the_finals_held(at):
    final_actions.hold_finals(who=at.accounts["secretary"], show=at.show)
    places = [card.place for card in blank_cards(at.show) if card.award.startswith("Best in group")]
    # Common practice: three dogs are placed in a group.
    assert places == ["place 1", "place 2", "place 3"]


@pytest.mark.parametrize("per_sheet", [4, 2])
@pytest.mark.parametrize("size", ["A4", "letter"])
def test_no_name_is_cut_and_none_leaves_its_card(size, per_sheet):
    content = award_cards_pdf([LONG] * (per_sheet + 1), "Cards", size, per_sheet)
    reading.check(content)
    assert all(reading.fonts(content).values())
    pages = reading.pages(content)
    assert len(pages) == 2
    words = "".join(pages[1].split())
    for told in (LONG.show, LONG.award, LONG.dog, LONG.judge, LONG.breed, LONG.of_class, LONG.number, LONG.place):
        assert "".join(told.split()) in words
    width, height = (float(side) for side in PdfReader(io.BytesIO(content)).pages[1].mediabox[2:])
    right, bottom = (width / 2, height / 2) if per_sheet == 4 else (width, height / 2)
    spots = _spots(content)
    assert min(x for x, _ in spots) >= 15
    assert max(x for x, _ in spots) < right
    assert min(y for _, y in spots) > bottom
    assert len({round(y) for _, y in spots}) == len(spots)


def _spots(content: bytes) -> list[tuple[float, float]]:
    """Where each piece of text on the second page begins."""
    found = []

    def note(text, transform, matrix, *_) -> None:
        if text.strip():
            x, y = matrix[4], matrix[5]
            a, b, c, d, e, f = transform
            found.append((a * x + c * y + e, b * x + d * y + f))

    PdfReader(io.BytesIO(content)).pages[1].extract_text(visitor_text=note)
    return found


def test_two_cards_to_a_sheet_of_a4_are_a5_each():
    """ISO 216: A5 is 148 mm by 210 mm, half of A4."""
    [page] = PdfReader(io.BytesIO(award_cards_pdf([LONG], "Cards", "A4", 2))).pages
    width, height = (float(side) / MM for side in page.mediabox[2:])
    assert (round(width), int(height / 2)) == (210, 148)


def test_a_word_longer_than_its_line_is_parted_and_not_lost():
    lines, _ = fitted("X" * 160, 240, (BOLD, 15, 8), 5)
    assert "".join(lines) == "X" * 160


def test_the_office_prints_both_kinds_and_says_so_where_there_is_nothing(at):
    client = Client()
    client.force_login(at.accounts["secretary"])
    assert "award-cards.pdf" in client.get("/papers/show/small/").content.decode()
    given = client.get("/papers/show/small/award-cards.pdf?kind=given&per_sheet=2&size=letter")
    assert "CACIB, dogs" in reading.text(given.content)
    blank = client.get(f"/papers/show/small/award-cards.pdf?kind=blank&ring={at.other_ring.pk}")
    assert "Hovawart" in reading.text(blank.content)
    nothing = client.get(f"/papers/show/small/award-cards.pdf?kind=given&ring={at.other_ring.pk}")
    assert nothing.status_code == 409
    assert "No judge has signed an award here yet" in nothing.content.decode()
    assert client.get("/papers/show/small/award-cards.pdf?ring=x").status_code == 404


def test_cards_speak_the_language_of_whoever_prints_them(at):
    with translation.override("de"):
        card = next(card for card in given_cards(at.show) if "CACIB" in card.award)
        text = reading.text(award_cards_pdf([card], "Karten"))
    assert card.day == "13. Juni 2026"
    assert "Offene Klasse, Rüden" in text
    assert "Richter/in: judge" in text
    assert "Unterschrift" in text


def test_a_card_without_a_judge_leaves_a_line_for_the_name(at):
    breed = at.show_class.show_breed
    breed.judge, breed.day = None, date(2026, 6, 14)
    breed.save()
    card = given_cards(at.show)[0]
    assert (card.judge, card.day) == ("", "14 June 2026")
    assert "Judge Signature" in reading.text(award_cards_pdf([card], "Cards"))
