// The other kinds of point: one of several, several, a number, yes or no.

import { h, mark, say } from "./dom.js";
import { latest, press, waits } from "./latest.js";
import { asks, praiseButton, waitingWords } from "./rows.js";
import { t } from "./say.js";

/** One of several: a tap chooses, a second tap on it clears. */
export function choiceRow(book, sheet, point) {
  return oneOf(book, sheet, point, `choice.${point.code}`, point.options.map(({ code, name }) => [name, code]));
}

/** Yes or no. */
export function yesNoRow(book, sheet, point) {
  return oneOf(book, sheet, point, `yes.${point.code}`, [[t("yes"), true], [t("no"), false]]);
}

/** @param {[string, any][]} answers each a word and its value */
function oneOf(book, sheet, point, field, answers) {
  const then = () => latest(book, sheet, field);
  const buttons = answers.map(([word, value]) => h("button", {
    type: "button", class: "option",
    onclick: () => book.set(sheet, field, then() === value ? null : value, point.name),
  }, word));
  return framed(book, sheet, point, field, h("div", { class: "options" }, buttons), () => {
    const now = book.value(sheet, field);
    buttons.forEach((button, index) => press(button, answers[index][1] === now, answers[index][1] === then()));
    return now !== undefined;
  });
}

/** Several of several. */
export function setRow(book, sheet, point) {
  const field = `set.${point.code}`;
  const now = () => book.value(sheet, field) ?? [];
  const then = () => latest(book, sheet, field) ?? [];
  const buttons = point.options.map((option) => h("button", {
    type: "button", class: "option",
    onclick: () => book.set(sheet, field, toggled(then(), option.code), point.name),
  }, option.name));
  return framed(book, sheet, point, field, h("div", { class: "options" }, buttons), () => {
    buttons.forEach((button, index) => press(button, now().includes(point.options[index].code), then().includes(point.options[index].code)));
    return now().length > 0;
  });
}

/** A number with its unit; what is typed stays, even where it cannot be right. */
export function numberRow(book, sheet, point) {
  const field = `number.${point.code}`;
  const id = `number-${point.code}`;
  const then = () => latest(book, sheet, field);
  const wrong = h("p", { class: "wrong", role: "alert", id: `${id}-wrong` });
  const input = h("input", { type: "text", inputmode: "decimal", id, class: "number", autocomplete: "off", "aria-describedby": `${id}-wrong`, onchange: () => keep() });
  const keep = () => {
    const text = input.value.trim().replace(",", ".");
    const value = text === "" ? null : Number(text);
    const known = value === null || (Number.isFinite(value) && value >= point.least && value <= point.most);
    say(wrong, known ? "" : t("Give {least} to {most} {unit}.", point));
    mark(input, "aria-invalid", known ? null : "true");
    if (known && value !== (then() ?? null)) book.set(sheet, field, value, point.name);
  };
  const box = h("div", { class: "measured" }, h("label", { for: id, class: "unseen" }, t("{name} in {unit}", point)), input, h("span", {}, point.unit), wrong);
  return framed(book, sheet, point, field, box, () => {
    if (document.activeElement !== input && !input.hasAttribute("aria-invalid")) input.value = then() ?? "";
    return book.value(sheet, field) !== undefined;
  });
}

/** A row with the point's name before what it holds; `isSet` also brings the controls up to date. */
export function framed(book, sheet, point, field, inside, isSet) {
  const name = praiseButton(book, sheet, point);
  const said = h("span", { class: "said" });
  const element = h("div", { class: "row wide", id: `point-${point.code}`, role: "group", "aria-label": point.name },
    h("div", { class: "name" }, name.element, said), inside, asks(point));
  const update = () => {
    name.update();
    mark(element, "data-set", isSet() ? "yes" : null);
    mark(element, "data-waits", waits(book, sheet, field) ? "yes" : null);
    say(said, waitingWords(book, sheet, point, field));
  };
  return { element, update };
}

/** @param {any[]} list @param {any} member @returns {any[]} the list with the member put in or taken out */
export function toggled(list, member) {
  return list.includes(member) ? list.filter((each) => each !== member) : [...list, member];
}
