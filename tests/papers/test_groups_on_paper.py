"""Braces, groups and young handlers stand in the catalogue by name and number, and on a steward's sheet by number."""

import io

import pytest
from django.utils import translation
from pypdf import PdfReader

from ringside.entries.models import Entry, EntryTerms, GroupEntry
from ringside.papers.catalogue import catalogue_pdf
from ringside.papers.gathering import programme_of
from ringside.papers.groups import groups_on_paper, title_of_groups
from ringside.papers.programme import GroupLine, GroupList
from ringside.papers.ring_sheets import ring_sheets_pdf
from ringside.papers.styles import SIZES
from tests.papers.programmes import programme
from tests.shows_for_tests import SmallShow, small_show

BRACES = tuple(GroupLine(f"Kennel {n}", ((str(n), f"Dog {n}"), (str(n + 1), f"Dog {n + 1}"))) for n in range(1, 60))


def text_of(pdf: bytes) -> list[str]:
    return [" ".join(page.extract_text().split()) for page in PdfReader(io.BytesIO(pdf)).pages]


@pytest.fixture
def at(db) -> SmallShow:
    found = small_show()
    EntryTerms.objects.create(show=found.show, groups=["brace"])
    brace = GroupEntry.objects.create(show=found.show, code="brace", name="Kennel Silverbrook")
    brace.members.set(found.entries[:2])
    gone = GroupEntry.objects.create(show=found.show, code="brace", name="Kennel Gone", withdrawn_at=brace.entered_at)
    gone.members.set(found.entries[1:])
    return found


@pytest.mark.both_databases
def test_what_is_entered_stands_by_competition_and_what_is_withdrawn_does_not(at):
    Entry.objects.filter(pk=at.entries[1].pk).update(state=Entry.State.WITHDRAWN)
    [one] = groups_on_paper(at.show)
    assert one.entered == (GroupLine("Kennel Silverbrook", (("1", "Dog 1"),)),)


def test_the_catalogue_names_each_group_with_its_dogs(at):
    told = " ".join(text_of(catalogue_pdf(programme_of(at.show))))
    assert "Braces, groups and junior handling" in told
    assert "Kennel Silverbrook 1 Dog 1 2 Dog 2" in told
    assert "Kennel Gone" not in told


def test_the_stewards_sheet_carries_numbers_only(at):
    pages = text_of(ring_sheets_pdf(programme_of(at.show)))
    assert "1 + 2" in pages[-1]
    assert not any("Kennel" in page or "Dog 1" in page for page in pages)


def test_a_show_without_groups_prints_no_word_of_them(db):
    found = programme_of(small_show().show)
    assert not any("junior handling" in page for page in text_of(catalogue_pdf(found)))
    assert not any("junior handling" in page for page in text_of(ring_sheets_pdf(found)))


def test_a_single_rings_papers_leave_the_groups_to_the_whole_show(at):
    assert programme_of(at.show, at.ring.pk).groups == ()


@pytest.mark.parametrize("size", list(SIZES))
@pytest.mark.parametrize("language", ["en", "de", "fr", "es"])
def test_many_groups_run_over_pages_in_every_language(size, language):
    told = programme(2, 6, groups=(GroupList("Brace", BRACES),))
    for make in (catalogue_pdf, ring_sheets_pdf):
        with translation.override(language):
            pages = " ".join(text_of(make(told, size)))
            assert title_of_groups() in pages
        assert all(str(n) in pages for n in range(1, 60))
