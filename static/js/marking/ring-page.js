// The marking page in the ring: which dog it is, and in which language, stands in the address alone, so that one kept
// page serves every dog.

import { fill, h, mark, say } from "../../ring/dom.js";
import { speak, t } from "../../ring/say.js";
import { work } from "./work.js";

const [, ring] = location.pathname.match(/^(.*\/ring\/\d+\/)photo\/$/);
const words = new URLSearchParams(location.hash.slice(1));
const [entry, number] = [Number(words.get("dog")), words.get("number") ?? "?"];
const page = JSON.parse(document.getElementById("page").textContent);
const tongue = page.tongues[words.get("language") ?? ""];
if (tongue) speak(tongue.language, tongue.words);
document.documentElement.lang = tongue?.language ?? "en";

/** What the page of every dog has in English, in the language of the ring's page. @param {any} view */
function named(view) {
  const of = (name) => tongue?.names[name] ?? name;
  return {
    ...view,
    name: of(view.name),
    landmarks: view.landmarks.map((one) => ({ ...one, name: of(one.name), where: of(one.where) })),
    numbers: view.numbers.map((one) => ({ ...one, name: of(one.name) })),
  };
}

document.title = t("Measure a photo of number {number}", { number });
fill(document.querySelector("h1"), t("Measure a photo"), " ", h("span", { class: "of" }, h("a", { id: "back", href: `${ring}#class=${Number(words.get("class"))}&dog=${entry}` }, t("back to number {number}", { number }))));
const field = document.querySelector("aside.notice");
if (field) {
  mark(field, "aria-label", t("About this server"));
  say(field.firstElementChild, t("Plain HTTP on a local network: whoever is on it can read along."));
}
work({
  ...page,
  views: page.views.map(named),
  name: t("Number {number}", { number }),
  send: `${ring}dogs/${entry}/photos/00000000-0000-0000-0000-000000000000/`,
  photo: null,
});
