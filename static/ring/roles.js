// What the page lets each role do; the server decides, this only does not offer what it would refuse.

import { h } from "./dom.js";
import { t } from "./say.js";

const MAY = { sign: ["judge"], write: ["judge", "writer"], presence: ["judge", "writer", "steward"] };

/** @param {any} day @param {"sign" | "write" | "presence"} doing */
export function may(day, doing) {
  return day.roles.some((role) => MAY[doing].includes(role));
}

/** Leaves out what this role does not do. @param {any} day @param {HTMLElement} sheet @param {HTMLElement} foot */
export function limit(day, sheet, foot) {
  if (!may(day, "sign")) foot.querySelector(".again button")?.remove();
  if (may(day, "write")) return;
  const role = may(day, "presence") ? "steward" : "onlooker";
  for (const part of sheet.querySelectorAll(".section, .typed, .disputes, .swap")) part.inert = true;
  for (const part of foot.querySelectorAll(role === "steward" ? ".grading, .why, .clear" : ".grading, .why, .clear, .absent, .undo")) part.remove();
  sheet.prepend(h("p", { class: "help", role: "note" }, role === "steward" ? t("As steward you mark who is present.") : t("You can read here; the judge and the writer write.")));
}
