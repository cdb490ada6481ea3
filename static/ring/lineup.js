// The line-up: a shortlist, then places by tapping numbers in order; advice beside it, the judge's word above it.

import { toggled } from "./answers.js";
import { adviceOf } from "./advice.js";
import { fill, h, mark, say } from "./dom.js";
import { signingOf } from "./signing-desk.js";
import { mayBePlaced, placesOf, standingOf } from "./standing.js";
import { numberOf } from "./words.js";

/**
 * @param {import("./book.js").Book} book
 * @param {any} day
 * @param {any} one the class
 * @param {{advice: string, back: () => void, read: () => void, announce: (text: string) => void}} page
 */
export function lineUpOf(book, day, one, page) {
  const places = () => placesOf(book, one);
  const shortlist = () => book.value(one.sheet, "shortlist") ?? [];
  const entryOf = (id) => one.entries.find((entry) => String(entry.id) === id);
  const setPlaces = (list, words) => {
    page.announce(words);
    return book.set(one.sheet, "places", list.length ? list : null, "the places");
  };
  const tiles = one.entries.map((entry) => tileOf(entry));
  function tileOf(entry) {
    const id = String(entry.id);
    const state = h("span", { class: "state" });
    const place = h("button", { type: "button", class: "tile", onclick: () => tap(entry, id) }, h("span", { class: "number" }, numberOf(entry)), state);
    const keep = h("button", { type: "button", class: "plain keep", onclick: () => book.set(one.sheet, "shortlist", toggled(shortlist(), id), "the shortlist") }, "Shortlist");
    return { entry, id, place, keep, state, element: h("div", { class: "choice" }, place, keep) };
  }
  function tap(entry, id) {
    const placed = places().includes(id);
    if (!placed && places().length >= day.show.places) {
      page.announce(`${day.show.places} dogs are placed already. Tap a placed number to take its place back.`);
      return;
    }
    const list = toggled(places(), id);
    setPlaces(list, placed ? `Number ${numberOf(entry)} has no place now` : `Number ${numberOf(entry)} is placed ${list.length}`);
  }
  const order = h("ol", { class: "order" });
  const advice = adviceOf(day, one, page.advice);
  const signing = signingOf(book, one, page.announce, page.maySign, page.read);
  const undo = h("button", { type: "button", class: "plain", onclick: () => book.undo() });
  const element = h("section", { class: "lineup", "aria-label": "Line-up" },
    h("h2", { tabindex: "-1" }, "Line-up"),
    h("p", { class: "help" }, `Tap the numbers in order: first, second, third … A second tap takes the place back. ${day.show.places} places at most.`),
    h("div", { class: "choices" }, tiles.map((tile) => tile.element)),
    h("h3", {}, "Places"), order, advice.element, signing.element,
    h("footer", { class: "foot" }, h("div", { class: "actions" }, undo, h("span", { class: "gap" }), h("button", { type: "button", onclick: page.back }, "Back to the dogs"))));
  if (!page.mayDecide) for (const part of element.querySelectorAll(".choices, .order")) part.inert = true;
  let drawn = null;
  function drawOrder() {
    const key = places().join();
    if (key === drawn) return;
    drawn = key;
    const focused = document.activeElement?.id;
    fill(order, places().map((id, index) => placeRow(id, index)));
    if (focused) document.getElementById(focused)?.focus();
    if (!key) fill(order, h("li", { class: "none" }, "No dog is placed yet."));
  }
  function placeRow(id, index) {
    const entry = entryOf(id);
    const shift = (by) => {
      const list = places().slice();
      [list[index], list[index + by]] = [list[index + by], list[index]];
      setPlaces(list, `Number ${numberOf(entry)} is placed ${index + by + 1} now`);
    };
    const last = index === places().length - 1;
    return h("li", {}, h("span", { class: "place" }, String(index + 1)), h("span", { class: "number" }, entry ? numberOf(entry) : id),
      h("button", { type: "button", class: "plain", id: `up-${id}`, disabled: index === 0, onclick: () => shift(-1), "aria-label": `Number ${entry ? numberOf(entry) : id} one place up` }, "Up"),
      h("button", { type: "button", class: "plain", id: `down-${id}`, disabled: last, onclick: () => shift(1), "aria-label": `Number ${entry ? numberOf(entry) : id} one place down` }, "Down"));
  }
  const update = () => {
    for (const { entry, id, place, keep, state } of tiles) {
      const at = places().indexOf(id);
      const may = mayBePlaced(book, one, entry);
      const standing = standingOf(book, one, entry);
      const grade = one.grades.find((each) => each.code === book.value(one.sheet, `grade.${id}`));
      say(state, at >= 0 ? `placed ${at + 1}` : may && grade ? grade.name : standing);
      place.disabled = !may && at < 0;
      mark(place, "aria-pressed", String(at >= 0));
      mark(place, "data-standing", at >= 0 ? "placed" : standing);
      mark(keep, "aria-pressed", String(shortlist().includes(id)));
      keep.disabled = !may;
      mark(keep, "aria-label", `Shortlist number ${numberOf(entry)}`);
    }
    drawOrder();
    say(undo, book.undoWords ? `Undo ${book.undoWords}` : "Undo");
    undo.disabled = !book.undoWords;
    advice.update(JSON.stringify([places(), one.entries.map((entry) => [...book.values(entry.sheet)]), [...book.values(one.sheet)]]));
    signing.update();
  };
  return { element, update };
}
