"""Points through the whole show: from signed classes and awards, published, to the desk and the exhibitor's page."""

from datetime import date

import pytest
from django.test import Client
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from ringside.dogs.models import Dog, Ownership
from ringside.entries.models import Entry
from ringside.people.actions import person_for
from ringside.results import out
from ringside.results.award_corrections import cancel_awards
from ringside.results.models import AwardGiven, AwardsPublication, Final, Finalist, Placing, Publication
from ringside.results.points import BreedPoints, points_of
from ringside.results.titles import title_counts
from ringside.shows.models import Appointment, Ring, Show, ShowBreed, ShowClass
from tests.papers import reading
from tests.results.structure import problems

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]
DAY = date(2026, 6, 13)


class Judged:
    """A published breed of a show: so many present dogs in each class, the first of each placed first."""

    def __init__(self, rules: str, slug: str = "counted", breed: str = "boxer", judge: str = "Jo Finch") -> None:
        self.show, _ = Show.objects.get_or_create(
            slug=slug, defaults={"name": slug, "rules": rules, "first_day": DAY, "last_day": DAY}
        )
        ring, _ = Ring.objects.get_or_create(show=self.show, name="1")
        self.breed = ShowBreed.objects.create(
            show=self.show, breed=breed, judge=person_for(name=judge), ring=ring, day=DAY
        )
        self.number = Entry.objects.filter(show=self.show).count()

    def fill(self, sex: str, code: str, dogs: int, presence: str = "present") -> list[Entry]:
        show_class, _ = ShowClass.objects.get_or_create(show_breed=self.breed, sex=sex, code=code)
        Publication.objects.get_or_create(show_class=show_class)
        return [self.enter(show_class, presence) for _ in range(dogs)]

    def enter(self, show_class: ShowClass, presence: str) -> Entry:
        self.number += 1
        dog = Dog.objects.create(
            name=f"Dog {self.number}", breed=self.breed.breed, sex=show_class.sex, born=date(2022, 5, 1)
        )
        entry = Entry.objects.create(show=self.show, show_class=show_class, dog=dog, number=self.number)
        Placing.objects.create(show_class=show_class, entry=entry, presence=presence)
        return entry

    def award(self, **awards: Entry) -> None:
        AwardsPublication.objects.get_or_create(show_breed=self.breed)
        for code, entry in awards.items():
            award = code.replace("_", "-")
            sex = entry.dog.sex if award in ("winners", "challenge") else ""
            AwardGiven.objects.create(show_breed=self.breed, award=award, sex=sex, entry=entry)

    def found(self) -> BreedPoints:
        return next(one for one in points_of(self.show) if one.breed == self.breed)

    def points(self) -> dict[int, int]:
        return {one.entry.number or 0: one.points for one in self.found().earned}


def printed_example() -> tuple[Judged, Entry, Entry]:
    """Canadian breeder's worked explanation: 3 class dogs, 7 class bitches, 2 and 1 champions are there."""
    at = Judged("canada")
    dogs, bitches = at.fill("dog", "open", 3), at.fill("bitch", "open", 7)
    at.fill("dog", "specials-only", 2)
    at.fill("bitch", "specials-only", 1)
    return at, dogs[0], bitches[0]


def test_the_canadian_worked_example_comes_out_of_a_published_show():
    # Canadian breeder's worked explanation, entry 3-7-2-1: winners 2 and 3; best of winners 10 dogs, 4.
    at, dog, bitch = printed_example()
    AwardGiven.objects.create(show_breed=at.breed, award="winners", sex="bitch", entry=bitch)
    at.award(winners=dog)
    assert at.found().counts == {"class_dogs": 3, "class_bitches": 7, "champion_dogs": 2, "champion_bitches": 1}
    assert at.points() == {dog.number: 2, bitch.number: 3}
    at.award(best_of_winners=dog)
    assert at.points()[dog.number or 0] == 4
    at.award(best_of_breed=dog)
    # The same example: best of breed over 13 dogs, 5.
    assert at.points() == {dog.number: 5, bitch.number: 3}


def test_group_points_are_added_up_to_five_from_a_published_final():
    # Canadian Kennel Club championship section: second of three breeds in the group adds 1; no more than 5 a show.
    at, dog, _ = printed_example()
    at.award(winners=dog)
    at.award(best_of_winners=dog)
    AwardGiven.objects.filter(award="best-of-winners").delete()
    for breed in ("rottweiler", "leonberger"):
        Judged("canada", breed=breed).fill("dog", "open", 1)
    final = Final.objects.create(show=at.show, award="best-in-group", group="3")
    Finalist.objects.create(final=final, entry=dog, place=2)
    assert at.points()[dog.number or 0] == 2
    final.published_at = "2026-06-13T18:00:00Z"
    final.save()
    at.award(best_of_breed=dog)
    assert at.points()[dog.number or 0] == 5
    assert any("place 2 in a group of 3 breeds: points 1" in words for words in at.found().why)


def test_a_champion_shown_as_such_earns_no_points_and_a_waiting_breed_says_why():
    at = Judged("canada")
    [dog] = at.fill("dog", "specials-only", 1)
    at.fill("dog", "open", 2)
    assert at.found().waits_for == ("the awards to be published",)
    at.award(best_of_breed=dog)
    assert at.points() == {}


def test_the_australian_worked_example_comes_out_of_a_published_show():
    # Australian hound club and an article on the title: 5 dogs, 4 bitches; best of breed 14, the bitch's challenge 9.
    at = Judged("australia")
    dogs, bitches = at.fill("dog", "open", 5), at.fill("bitch", "junior", 4)
    at.fill("dog", "baby-puppy", 6)
    AwardGiven.objects.create(show_breed=at.breed, award="challenge", sex="bitch", entry=bitches[0])
    at.award(challenge=dogs[0])
    assert at.points() == {dogs[0].number: 10, bitches[0].number: 9}
    at.award(best_of_breed=dogs[0])
    assert at.points() == {dogs[0].number: 14, bitches[0].number: 9}


CLASSES = {"canada": ("open", "specials-only", "veteran", "baby-puppy"), "australia": ("open", "junior", "baby-puppy")}


@settings(max_examples=15, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(data=st.data())
def test_points_never_fall_when_a_dog_is_added_and_never_change_with_an_absent_one(data):
    rules = data.draw(st.sampled_from(sorted(CLASSES)))
    at = Judged(rules, slug=f"p{Show.objects.count()}")
    winner, *_ = at.fill("dog", "open", data.draw(st.integers(1, 4)))
    at.fill("bitch", "open", data.draw(st.integers(0, 3)))
    first = "winners" if rules == "canada" else "challenge"
    at.award(**{first: winner})
    if data.draw(st.booleans()):
        at.award(best_of_breed=winner)
    sexes, codes = st.sampled_from(["dog", "bitch"]), st.sampled_from(CLASSES[rules])
    presences = st.sampled_from(["present", "absent", "excused", "withdrawn"])
    for sex, code, presence in data.draw(st.lists(st.tuples(sexes, codes, presences), max_size=4)):
        before = at.points()[winner.number or 0]
        at.fill(sex, code, 1, presence)
        after = at.points()[winner.number or 0]
        assert after >= before
        assert presence == "present" or after == before


def test_a_cancelled_win_takes_its_points_along(django_user_model):
    at, dog, _ = printed_example()
    at.award(winners=dog, best_of_breed=dog)
    secretary = django_user_model.objects.create_user("sec@small.example")
    at.show.roles.create(account=secretary, kind="secretary")
    cancel_awards(who=secretary, entry=dog, why="Disqualified by the body.")
    assert at.points() == {}


def test_the_exhibitor_reads_points_and_what_the_title_still_asks_of_shows_kept_here(django_user_model):
    owner = person_for(name="Ada", email="ada@small.example")
    at, dog, _ = printed_example()
    Ownership.objects.create(dog=dog.dog, person=owner)
    at.award(winners=dog, best_of_breed=dog)
    client = Client()
    client.force_login(owner.account)
    page = client.get(f"/my-dogs/{dog.dog_id}/").content.decode()
    assert "Only shows kept on this site are counted" in page
    assert "counted: 5 points" in page
    assert "10 are asked, 5 so far" in page
    again = Judged("canada", slug="later", judge="Lee Marsh")
    show_class = ShowClass.objects.create(show_breed=again.breed, sex="dog", code="open")
    Publication.objects.create(show_class=show_class)
    entry = Entry.objects.create(show=again.show, show_class=show_class, dog=dog.dog, number=1)
    Placing.objects.create(show_class=show_class, entry=entry)
    again.number = 1
    again.fill("dog", "open", 12)
    again.award(winners=entry)
    [count] = title_counts(dog.dog)
    assert [points for _, points in count.shows] == [5, 5]
    [champion] = [title for title in count.titles if title.name == "Canadian champion"]
    # Canadian Kennel Club championship section: ten points, three judges; two judges are not enough.
    [words] = champion.missing
    assert words.startswith("Different judges of the wins (Winners, Best of winners, Best of breed")
    assert words.endswith("3 are asked, 2 so far.")


def test_three_british_certificates_under_three_judges_meet_the_titles_conditions():
    # The Kennel Club, announcement of May 2023: three certificates under three judges, one when over 12 months old.
    born = Dog.objects.create(name="Wren", breed="boxer", sex="bitch", born=date(2022, 5, 1))
    for number, judge in enumerate(("Jo Finch", "Lee Marsh", "Kit Dale"), 1):
        at = Judged("united-kingdom", slug=f"uk{number}", judge=judge)
        show_class = ShowClass.objects.create(show_breed=at.breed, sex="bitch", code="open")
        Publication.objects.create(show_class=show_class)
        entry = Entry.objects.create(show=at.show, show_class=show_class, dog=born, number=1)
        AwardsPublication.objects.create(show_breed=at.breed)
        AwardGiven.objects.create(show_breed=at.breed, award="challenge-certificate", sex="bitch", entry=entry)
        [count] = title_counts(born)
        assert len(count.shows) == number
        assert count.titles[0].is_gained == (number == 3)


def test_a_win_counts_under_who_judged_the_awards_and_not_under_who_took_over_the_breed():
    """Three certificates as above, but the third under the second's judge: best of breed was judged apart there."""
    born = Dog.objects.create(name="Wren", breed="boxer", sex="bitch", born=date(2022, 5, 1))
    for number, judge in enumerate(("Jo Finch", "Lee Marsh", "Kit Dale"), 1):
        at = Judged("united-kingdom", slug=f"uk{number}", judge=judge)
        at.fill("bitch", "open", 0)
        show_class = at.breed.classes.get()
        entry = Entry.objects.create(show=at.show, show_class=show_class, dog=born, number=1)
        at.award(challenge_certificate=entry)
    Appointment.objects.create(show_breed=at.breed, judge=person_for(name="Lee Marsh"))
    [count] = title_counts(born)
    assert len(count.shows) == 3
    assert not count.titles[0].is_gained


def test_points_stand_in_the_paper_and_the_file(django_user_model):
    at, dog, _ = printed_example()
    at.award(winners=dog, best_of_breed=dog)
    secretary = django_user_model.objects.create_user("sec@small.example")
    at.show.roles.create(account=secretary, kind="secretary")
    client = Client()
    client.force_login(secretary)
    text = " ".join(reading.text(client.get("/papers/show/counted/results.pdf").content).split())
    assert "Points of this show 1 Dog 1 5" in text
    told = client.get("/office/counted/results/out/results.json").json()
    assert problems(told, out.schema("results")) == []
    [one] = told["points"]
    assert (one["number"], one["points"], one["wins"]) == (1, 5, ["winners", "best-of-breed"])


def test_the_desk_shows_the_points_and_a_body_without_points_says_so(django_user_model):
    at, dog, _ = printed_example()
    at.award(winners=dog)
    secretary = django_user_model.objects.create_user("sec@small.example")
    at.show.roles.create(account=secretary, kind="secretary")
    client = Client()
    client.force_login(secretary)
    page = client.get("/office/counted/results/points/").content.decode()
    assert "Class dogs" in page
    assert "Number 1, Winners: dogs counted 3, points 2." in page
    assert "in which count the dogs of each class stand" in page
    Show.objects.update(rules="fci")
    assert "counts no points at a show" in client.get("/office/counted/results/points/").content.decode()


def test_a_long_list_of_points_is_paged(django_user_model, monkeypatch):
    monkeypatch.setattr("ringside.results.point_views.BREEDS_PER_PAGE", 1)
    at, _dog, _ = printed_example()
    other = Judged(at.show.rules, breed="hovawart")
    other.fill("dog", "open", 1)
    secretary = django_user_model.objects.create_user("sec@small.example")
    at.show.roles.create(account=secretary, kind="secretary")
    client = Client()
    client.force_login(secretary)
    first, second = (client.get(f"/office/counted/results/points/?page={n}").content.decode() for n in (1, 2))
    assert (f"awards/{at.breed.pk}/" in first, f"awards/{other.breed.pk}/" in first) == (True, False)
    assert (f"awards/{at.breed.pk}/" in second, f"awards/{other.breed.pk}/" in second) == (False, True)
    assert "Page 1 of 2" in first
