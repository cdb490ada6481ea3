"""The ring page in the judge's language: chosen once, spoken without network too, whole and usable in each."""

import pytest
from playwright.sync_api import Page, expect

from tests.browser.conftest import QUIET_TABLET
from tests.browser.test_accessibility import SMALL_TARGETS, violations
from tests.browser.test_journeys import enter, keep_picture

pytestmark = pytest.mark.browser

# Words that are cut off or run out of what holds them, and pages that are wider than the screen.
TOO_WIDE = """() => {
  const words = "button, summary, .end, .state, h1, h2, h3, p, .said, label span";
  const over = (e, room) => e.scrollWidth > room
    ? [`${e.tagName}.${e.className} "${e.textContent.trim().slice(0, 40)}" ${e.scrollWidth} in ${room}`] : [];
  const shown = [...document.querySelectorAll(words)].filter((e) => e.offsetParent && !e.matches(".unseen, .unseen *"));
  const style = (e) => getComputedStyle(e);
  const cut = shown.filter((e) => style(e).display !== "inline" && style(e).overflowX === "visible");
  return [...over(document.documentElement, innerWidth), ...cut.flatMap((e) => over(e, e.clientWidth + 1))];
}"""
SAYS = {
    "de": ("de-DE", "Alles ist auf dem Server", "Aufstellung", "Berichte durchlesen"),
    "fr": ("fr-FR", "Tout est sur le serveur", "Classement", "Relire les rapports"),
    "es": ("es-ES", "Todo está en el servidor", "Clasificación", "Leer los informes"),
}  # fmt: skip


def whole(page: Page, name: str) -> None:
    """Nothing that axe knows, no small target, nothing cut off."""
    keep_picture(page, name)
    assert page.evaluate(TOO_WIDE) == [], name
    assert page.evaluate(SMALL_TARGETS) == [], name
    assert violations(page) == [], name


@pytest.mark.parametrize("size", ["tablet", "phone"])
@pytest.mark.parametrize("language", SAYS)
def test_every_view_speaks_the_browsers_language_and_nothing_is_cut_off(sized, fresh_site, language, size):
    locale, all_sent, line_up, read = SAYS[language]
    page = sized(size, fresh_site.address, locale)
    enter(page, "judge")
    expect(page.locator("#status")).to_have_text(all_sent)
    expect(page.locator("html")).to_have_attribute("lang", language)
    whole(page, f"{language}-{size}-classes")
    page.locator(".programme .class").nth(3).tap()
    expect(page.locator(".sheet h2 .number")).to_be_visible()
    if size == "phone":
        page.locator("#section-body summary").first.tap()
    for point, stop in (("croup", 6), ("topline", 1)):
        page.locator(f"#point-{point} .stop").nth(stop).tap()
    page.locator("#point-croup .asks summary").tap()
    expect(page.locator("#point-croup .asks p")).to_have_attribute("lang", "en")
    expect(page.locator(".text .words")).to_have_attribute("lang", language)
    whole(page, f"{language}-{size}-sheet")
    page.get_by_role("button", name=line_up).tap()
    expect(page.locator(".order .place").first).to_be_visible()
    whole(page, f"{language}-{size}-line-up")
    page.get_by_role("button", name=read).tap()
    expect(page.locator(".one-critique").first).to_be_visible()
    whole(page, f"{language}-{size}-critiques")
    page.locator("#choose").tap()
    page.locator(".programme .class").last.tap()
    expect(page.locator(".awards")).to_be_visible()
    whole(page, f"{language}-{size}-awards")


def test_another_language_is_spoken_at_once_and_nothing_typed_is_lost(sized, fresh_site):
    page = sized("tablet", fresh_site.address)
    enter(page, "judge")
    page.locator(".programme .class", has_text="Hovawart, dogs, junior class").tap()
    page.get_by_label("In your own words").fill("Ein schöner Rüde.")
    page.get_by_label("Language of page and text").select_option("de")
    expect(page.get_by_label("In eigenen Worten")).to_have_value("Ein schöner Rüde.")
    expect(page.locator("#class-line")).to_have_text("Hovawart, Rüden, Jugendklasse")
    expect(page.locator("#point-croup")).to_have_accessible_name("Kruppe")
    expect(page.locator("#typed-remark")).to_be_focused()
    expect(page.locator(".grade").first).to_have_text("Vorzüglich")
    page.locator("#tongue").focus()
    page.locator("#tongue").select_option("en")
    expect(page.locator("#tongue")).to_be_focused()
    expect(page.get_by_label("In your own words")).to_have_value("Ein schöner Rüde.")
    expect(page.locator("#class-line")).to_have_text("Hovawart, dogs, junior class")
    expect(page.locator("html")).to_have_attribute("lang", "en")


def test_who_competes_for_the_cacib_is_said_in_each_language(sized, fresh_site):
    # FCI Regulations for the CACIB: the first of the intermediate, open, working and champion classes with "excellent".
    said = {
        "en": "Competing: the first of the intermediate, open, working and champion classes, with Excellent.",
        "de": "Im Wettbewerb: Erster: Zwischenklasse, Offene Klasse, Gebrauchshundklasse und Championklasse, "
        "mit Vorzüglich.",
        "fr": "En compétition\u00a0: premier\u00a0: classe intermédiaire, classe ouverte, classe travail et classe "
        "champion, avec Excellent.",
        "es": "Compiten: primero: clase intermedia, clase abierta, clase trabajo y clase campeones, con Excelente.",
    }
    page = sized("tablet", fresh_site.address)
    enter(page, "judge")
    for language, words in said.items():
        page.locator("#tongue").select_option(language)
        expect(page.locator("html")).to_have_attribute("lang", language)
        page.locator(".programme .class").last.tap()
        expect(page.locator(".award .competes").first).to_have_text(words)
        page.locator("#choose").tap()


def test_the_page_speaks_german_without_network_after_the_tablet_was_restarted(playwright, fresh_site, tmp_path):
    def tablet():
        return playwright.chromium.launch_persistent_context(
            tmp_path / "tablet", base_url=fresh_site.address, viewport={"width": 820, "height": 1180},
            has_touch=True, locale="en-US", **QUIET_TABLET,
        )  # fmt: skip

    context = tablet()
    page = context.pages[0]
    enter(page, "judge")
    page.locator("#tongue").select_option("de")
    expect(page.locator(".tablet")).to_contain_text("öffnet sich auch ohne Netz wieder")
    page.locator(".programme .class", has_text="Hovawart, Rüden, Jugendklasse").tap()
    expect(page.locator(".sheet")).to_be_visible()
    address = page.url
    context.close()
    fresh_site.stop()
    context = tablet()
    page = context.pages[0]
    page.goto(address)
    expect(page.locator("html")).to_have_attribute("lang", "de")
    expect(page.locator("#class-line")).to_have_text("Hovawart, Rüden, Jugendklasse")
    page.locator("#point-croup .stop").nth(6).tap()
    expect(page.locator("#point-croup .said")).to_have_text("stark: steil")
    expect(page.locator("#status")).to_have_text("1 Eintrag ist auf diesem Tablet sicher")
    expect(page.locator(".text .words")).to_contain_text("Kruppe")
    context.close()
