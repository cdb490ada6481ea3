// The other kinds of point: one of several, several, a number, yes or no.

import { h, mark, say } from "./dom.js";
import { asks, praiseButton } from "./rows.js";

/** One of several: a tap chooses, a second tap on it clears. */
export function choiceRow(book, sheet, point) {
  const field = `choice.${point.code}`;
  const buttons = point.options.map((option) => h("button", {
    type: "button", class: "option",
    onclick: () => book.set(sheet, field, book.value(sheet, field) === option.code ? null : option.code, point.name),
  }, option.name));
  return framed(book, sheet, point, h("div", { class: "options" }, buttons), () => {
    buttons.forEach((button, index) => mark(button, "aria-pressed", String(point.options[index].code === book.value(sheet, field))));
    return book.value(sheet, field) !== undefined;
  });
}

/** Several of several. */
export function setRow(book, sheet, point) {
  const field = `set.${point.code}`;
  const held = () => book.value(sheet, field) ?? [];
  const buttons = point.options.map((option) => h("button", {
    type: "button", class: "option",
    onclick: () => book.set(sheet, field, toggled(held(), option.code), point.name),
  }, option.name));
  return framed(book, sheet, point, h("div", { class: "options" }, buttons), () => {
    buttons.forEach((button, index) => mark(button, "aria-pressed", String(held().includes(point.options[index].code))));
    return held().length > 0;
  });
}

/** Yes or no. */
export function yesNoRow(book, sheet, point) {
  const field = `yes.${point.code}`;
  const buttons = [["yes", true], ["no", false]].map(([word, value]) => h("button", {
    type: "button", class: "option",
    onclick: () => book.set(sheet, field, book.value(sheet, field) === value ? null : value, point.name),
  }, word));
  return framed(book, sheet, point, h("div", { class: "options" }, buttons), () => {
    buttons.forEach((button, index) => mark(button, "aria-pressed", String(book.value(sheet, field) === (index === 0))));
    return book.value(sheet, field) !== undefined;
  });
}

/** A number with its unit; what is typed stays, even where it cannot be right. */
export function numberRow(book, sheet, point) {
  const field = `number.${point.code}`;
  const id = `number-${point.code}`;
  const wrong = h("p", { class: "wrong", role: "alert", id: `${id}-wrong` });
  const input = h("input", { type: "text", inputmode: "decimal", id, class: "number", autocomplete: "off", "aria-describedby": `${id}-wrong`, onchange: () => keep() });
  const keep = () => {
    const text = input.value.trim().replace(",", ".");
    const value = text === "" ? null : Number(text);
    const known = value === null || (Number.isFinite(value) && value >= point.least && value <= point.most);
    say(wrong, known ? "" : `Give ${point.least} to ${point.most} ${point.unit}.`);
    mark(input, "aria-invalid", known ? null : "true");
    if (known && value !== (book.value(sheet, field) ?? null)) book.set(sheet, field, value, point.name);
  };
  const box = h("div", { class: "measured" }, h("label", { for: id, class: "unseen" }, `${point.name} in ${point.unit}`), input, h("span", {}, point.unit), wrong);
  return framed(book, sheet, point, box, () => {
    const value = book.value(sheet, field);
    if (document.activeElement !== input && !input.hasAttribute("aria-invalid")) input.value = value ?? "";
    return value !== undefined;
  });
}

/** A row with the point's name before what it holds; `isSet` also brings the controls up to date. */
export function framed(book, sheet, point, inside, isSet) {
  const name = praiseButton(book, sheet, point);
  const element = h("div", { class: "row wide", id: `point-${point.code}`, role: "group", "aria-label": point.name },
    h("div", { class: "name" }, name.element), inside, asks(point));
  const update = () => {
    name.update();
    mark(element, "data-set", isSet() ? "yes" : null);
  };
  return { element, update };
}

/** @param {any[]} list @param {any} member @returns {any[]} the list with the member put in or taken out */
export function toggled(list, member) {
  return list.includes(member) ? list.filter((each) => each !== member) : [...list, member];
}
