"""An exhibitor with a phone enters a dog: adds it, mends what is named, chooses the class, attaches a proof; the
office looks at it, ticks it off, and decides on what comes late."""

from datetime import UTC, datetime, timedelta

import pytest
from playwright.sync_api import expect

from tests.browser.test_accessibility import violations
from tests.browser.test_journeys import enter, keep_picture

pytestmark = pytest.mark.browser

PDF = b"%PDF-1.4\n1 0 obj<<>>endobj\ntrailer<<>>\n%%EOF\n"
TODAY = datetime.now(tz=UTC).date()
BORN = TODAY - timedelta(days=900)
CLOSE = (
    "from datetime import timedelta; from django.utils.timezone import localdate;"
    "from ringside.shows.models import Show;"
    "Show.objects.filter(slug='lindmoor').update(entries_close=localdate() - timedelta(days=1))"
)


@pytest.fixture
def page(sized, fresh_site):
    page = sized("phone", fresh_site.address)
    enter(page, "exhibitor")
    page.get_by_role("link", name="Enter a dog in a show").tap()
    page.get_by_role("link", name="Lindmoor Open Show").tap()
    expect(page.locator("h1")).to_have_text("Lindmoor Open Show")
    return page


def fits(page) -> bool:
    return bool(page.evaluate("document.documentElement.scrollWidth <= innerWidth"))


def add_dog(page, name: str) -> None:
    page.get_by_role("link", name="A dog that is not here yet").tap()
    page.get_by_label("Registered name").fill(name)
    page.get_by_label("Breed", exact=True).select_option("boxer")
    page.get_by_label("dog", exact=True).check()
    page.get_by_label("Date of birth").fill(BORN.isoformat())
    page.get_by_label("Microchip").fill("123")
    page.get_by_label("FCI working class certificate").check()
    page.get_by_role("button", name="Keep, and choose the class").tap()


def test_a_dog_is_entered_on_a_phone_and_its_proof_ticked_off_in_the_office(page, sized, fresh_site):
    assert violations(page) == []
    assert fits(page)
    keep_picture(page, "enter-show")
    page.get_by_role("link", name="Enter a dog").tap()
    add_dog(page, "Tarn of Lindmoor")
    expect(page.get_by_role("alert").first).to_contain_text("has 3 digits instead of 15")
    keep_picture(page, "enter-findings")
    assert violations(page) == []
    assert fits(page)
    expect(page.get_by_label("Registered name")).to_have_value("Tarn of Lindmoor")
    page.get_by_label("Microchip").fill("999000000880001")
    page.get_by_role("button", name="Keep, and choose the class").tap()
    expect(page.get_by_role("alert").first).to_contain_text("Not named")
    page.get_by_role("button", name="Keep, and choose the class").tap()

    expect(page.locator("h1")).to_have_text("Tarn of Lindmoor")
    keep_picture(page, "enter-class")
    assert violations(page) == []
    page.get_by_label("Working").check()
    page.get_by_role("button", name="Enter", exact=True).tap()
    expect(page.locator(".messages")).to_contain_text("Tarn of Lindmoor is entered: Working.")
    expect(page.get_by_text("Missing.").first).to_be_visible()
    proof = page.get_by_role("region", name="FCI working class certificate")
    proof.get_by_label("PDF, JPEG or PNG").set_input_files({"name": "a.pdf", "mimeType": "x/y", "buffer": PDF})
    proof.get_by_role("button", name="Attach").tap()
    expect(page.locator(".messages")).to_contain_text("The proof is attached")
    keep_picture(page, "enter-entered")
    assert violations(page) == []
    assert fits(page)

    office = sized("desk", fresh_site.address)
    enter(office, "secretary")
    office.goto("/office/lindmoor/entries/")
    office.get_by_label("Proofs").select_option("missing")
    expect(office.locator("#entry-rows")).to_contain_text("1 entry")
    keep_picture(office, "office-entries")
    assert violations(office) == []
    office.get_by_role("link", name="Tarn of Lindmoor").click()
    with office.expect_download() as download:
        office.get_by_role("link", name="copy of").click()
    assert download.value.suggested_filename.endswith(".pdf")
    office.get_by_role("button", name="Seen FCI working class certificate").click()
    expect(office.locator("main")).to_contain_text("secretary@")
    keep_picture(office, "office-entry")
    assert violations(office) == []
    page.reload()
    expect(page.get_by_text("Seen by the office")).to_be_visible()


def test_a_late_entry_waits_and_the_exhibitor_reads_the_decision(page, sized, fresh_site):
    page.get_by_role("link", name="Enter a dog").tap()
    fresh_site.manage("shell", "-c", CLOSE)
    page.locator(".doors a").first.tap()
    page.get_by_label("Open").check()
    page.get_by_role("button", name="Send to the secretary").tap()
    expect(page.locator("main")).to_contain_text("Waits for the secretary: Open")
    keep_picture(page, "enter-late")

    office = sized("desk", fresh_site.address)
    enter(office, "secretary")
    office.goto("/office/lindmoor/entries/")
    office.get_by_role("link", name="Waiting for a decision 1").click()
    office.get_by_role("button", name="Refuse").click()
    expect(office.get_by_role("alert")).to_be_visible()
    keep_picture(office, "office-waiting")
    assert violations(office) == []
    office.get_by_label("Reason").fill("The letter was posted in time.")
    office.get_by_role("button", name="Accept").click()
    expect(office.locator("main")).to_contain_text("Nothing waits.")
    page.reload()
    expect(page.locator("main")).to_contain_text("Accepted: Open")
    expect(page.locator("main")).to_contain_text("The letter was posted in time.")


def test_a_young_handler_is_entered_by_the_phone_and_listed_in_the_office(page, sized, fresh_site):
    page.get_by_role("link", name="Enter a dog").tap()
    page.get_by_role("link", name="Brace").tap()
    page.get_by_label("What is entered").select_option("junior-handling-younger")
    page.get_by_label("Name").fill("Pip Vale")
    page.get_by_role("button", name="Enter", exact=True).tap()
    expect(page.get_by_role("alert")).to_contain_text("date of birth is missing")
    page.get_by_label("Handler's date of birth").fill((TODAY - timedelta(days=4000)).isoformat())
    page.get_by_role("button", name="Enter", exact=True).tap()
    expect(page.locator("main")).to_contain_text("Pip Vale")
    keep_picture(page, "enter-groups")
    assert violations(page) == []
    assert fits(page)
    office = sized("desk", fresh_site.address)
    enter(office, "secretary")
    office.goto("/office/lindmoor/entries/groups/")
    expect(office.get_by_role("row", name="Pip Vale")).to_be_visible()
    keep_picture(office, "office-groups")
    assert violations(office) == []
    office.goto("/office/lindmoor/entries/terms/")
    assert violations(office) == []
