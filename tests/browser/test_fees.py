"""A show's money on the office's screen and on the exhibitor's phone: fee table, payment, invoice, what I owe."""

import os

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.browser.conftest import SIZES, follow
from tests.browser.test_accessibility import violations
from tests.browser.test_journeys import PICTURES, enter
from tests.served import Site

pytestmark = pytest.mark.browser


def seen(page: Page, name: str) -> None:
    """The screens are kept where RINGSIDE_PICTURES is set."""
    if os.environ.get("RINGSIDE_PICTURES"):
        PICTURES.mkdir(exist_ok=True)
        page.screenshot(path=PICTURES / f"fees-{name}.png", full_page=True)


def opened(browser: Browser, site: Site, size: str, face: str) -> Page:
    width, height = SIZES[size]
    page = browser.new_context(base_url=site.address, viewport={"width": width, "height": height}).new_page()
    enter(page, face)
    return page


def set_fees(page: Page) -> None:
    """The fee for puppies goes out of the demo's table and comes back; the account is mistyped and mended."""
    page.get_by_role("link", name="Fees", exact=True).click()
    page.get_by_role("link", name="Fee table and account").click()
    table = page.get_by_role("table", name="Fee table")
    table.get_by_role("button", name="Remove Puppy", exact=True).click()
    expect(page.get_by_text("Not decided yet")).to_be_visible()
    seen(page, "gap")
    page.get_by_role("link", name="Add a fee").click()
    page.get_by_label("What it is called on invoices").fill("Puppy")
    page.get_by_label("Amount in EUR").fill("25,00")
    page.get_by_label("For which entry").select_option(label="the first class of each dog")
    for name in ("Minor puppy", "Puppy"):
        page.get_by_role("checkbox", name=name, exact=True).check()
    assert violations(page) == []
    seen(page, "line")
    page.get_by_role("button", name="Keep").click()
    expect(table).to_contain_text("Minor puppy, Puppy")
    expect(page.get_by_text("Not decided yet")).to_have_count(0)
    page.get_by_label("Account number (IBAN)").fill("DE89 3704 0044 0532 0130 01")
    page.get_by_role("button", name="Keep").click()
    expect(page.get_by_role("alert")).to_contain_text("check digits do not fit")
    expect(page.get_by_label("Account number (IBAN)")).to_have_value("DE89 3704 0044 0532 0130 01")
    assert violations(page) == []
    seen(page, "set-up")
    page.get_by_label("Account number (IBAN)").fill("DE89 3704 0044 0532 0130 00")
    page.get_by_role("button", name="Keep").click()
    expect(page.locator(".messages")).to_contain_text("Kept.")


def find_exhibitor(page: Page, address: str) -> None:
    follow(page, page.get_by_role("link", name="Who owes what"))
    assert violations(page) == []
    seen(page, "list")
    page.get_by_role("searchbox").fill(address)
    page.get_by_role("button", name="Show").click()
    page.get_by_role("table", name="Exhibitors").get_by_role("link").first.click()


def book_and_bill(page: Page) -> None:
    """The rest is paid at the desk, first typed twice; the next invoice says so."""
    payments = page.get_by_role("table", name="Payments and refunds")
    for _ in range(2):
        page.get_by_label("Amount in EUR").fill("46,00")
        page.get_by_label("How", exact=True).select_option(label="cash")
        page.get_by_role("button", name="Record").click()
        expect(page.locator(".messages")).to_contain_text("Received: recorded.")
    expect(page.locator("main")).to_contain_text("To refund")
    payments.locator("summary").last.click()
    payments.get_by_label("Why", exact=True).last.fill("Typed twice")
    seen(page, "strike")
    payments.get_by_role("button", name="Strike out").last.click()
    expect(payments).to_contain_text("Typed twice")
    page.get_by_role("button", name="Make a new invoice").click()
    expect(page.locator(".messages")).to_contain_text("is made.")
    assert violations(page) == []
    seen(page, "account")


def test_the_office_charges_books_and_bills_and_the_exhibitor_reads_their_own_account(browser, fresh_site):
    page = opened(browser, fresh_site, "desk", "secretary")
    set_fees(page)
    phone = opened(browser, fresh_site, "phone", "exhibitor")
    phone.goto("/enter/lindmoor/")
    expect(phone.get_by_role("region", name="Fees")).to_contain_text("28.00 GBP")
    assert phone.evaluate("document.documentElement.scrollWidth <= innerWidth")
    assert violations(phone) == []
    seen(phone, "public")
    phone.goto("/my-dogs/kept/")
    address = phone.locator(".lead").inner_text().split(" under ")[1].split(",")[0]
    phone.goto("/my-dogs/")
    phone.get_by_role("link", name="What I owe and have paid").click()
    expect(phone.locator("main")).to_contain_text("46.00 EUR")
    seen(phone, "phone-owes")
    find_exhibitor(page, address)
    book_and_bill(page)
    phone.reload()
    expect(phone.locator("main")).to_contain_text("86.00 EUR")
    expect(phone.locator("main")).to_contain_text("0.00 EUR")
    assert violations(phone) == []
    assert phone.evaluate("document.documentElement.scrollWidth <= innerWidth")
    seen(phone, "phone")
    with phone.expect_download() as caught:
        phone.get_by_role("link", name="(PDF)").first.click()
    assert caught.value.suggested_filename.startswith("invoice-12-")
