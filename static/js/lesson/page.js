// How a dog is read: wires the list of points to the drawn dog, and says number and words as it moves.

import { mark, say } from "../../ring/dom.js";
import { inside, speak, t } from "../../ring/say.js";
import { written } from "../marking/numbers.js";
import { measure } from "../measuring.js";
import { placesAt } from "./bending.js";
import { Dog } from "./dog.js";

const page = JSON.parse(document.getElementById("page").textContent);
speak(page.language, page.words);
const part = (id) => document.getElementById(id);
const dog = new Dog(part("dog"), page.kinds, moved);
const turns = new Map();
let wanted = null;

const value = (places) => {
  const photo = { view: "standing-side", landmarks: places, ground: dog.turn.ground, clickSd: 1 };
  return measure(photo).find((one) => one.code === dog.turn.measurement).value;
};

/** Where a value stands on the scale between the two faults. @param {number} number */
function along(number) {
  const [low, high] = dog.ends;
  return 12 + 476 * Math.min(Math.max((number - low) / (high - low), 0), 1);
}

function moved(places) {
  const { unit, bands, less, more } = dog.turn;
  const now = value(places);
  say(part("number"), written(now, unit));
  const band = bands.find(([upTo]) => upTo === null || now <= upTo);
  const apart = now - dog.drawn;
  const toward = Math.abs(apart) < (dog.ends[1] - dog.ends[0]) / 40 ? t("as drawn") : t("toward “{end}”", { end: apart < 0 ? less : more });
  say(part("said"), band ? band[1] : toward);
  mark(part("pin"), "cx", along(now).toFixed(1));
  mark(dog.handle, "aria-valuetext", `${part("number").textContent}, ${part("said").textContent}`);
}

async function open(code) {
  wanted = code;
  const button = document.querySelector(`[data-point="${code}"]`);
  try {
    if (!turns.has(code)) turns.set(code, await (await fetch(button.dataset.address)).json());
  } catch {
    say(part("said"), t("No network: this drawing could not be fetched."));
    return;
  }
  if (wanted !== code) return; // another point was chosen while this one was on its way
  const turn = turns.get(code);
  dog.turn = turn;
  const ends = [turn.landmarks[0], turn.landmarks.at(-1)].map(value);
  turn.rises = ends[1] > ends[0];
  dog.ends = turn.rises ? ends : ends.reverse();
  dog.drawn = value(placesAt(turn.landmarks, turn.start));
  for (const each of document.querySelectorAll("[data-point]")) mark(each, "aria-pressed", String(each === button));
  say(part("title"), t("{name}: {words}", { name: button.dataset.name, words: inside(turn.name) }));
  say(part("target"), `${t("{name}: {words}", { name: turn.name, words: turn.what })}. ${turn.target}`);
  button.after(part("target"));
  say(part("fewer"), `‹ ${turn.less}`);
  say(part("greater"), `${turn.more} ›`);
  drawBands(turn);
  dog.show(turn);
}

function drawBands({ bands }) {
  const [from, to] = bands.length ? [along(bands[1][0]), along(bands[2][0])] : [0, 0];
  mark(part("asked"), "x", from.toFixed(1));
  mark(part("asked"), "width", (to - from).toFixed(1));
}

for (const button of document.querySelectorAll("[data-point]")) {
  button.addEventListener("click", () => open(button.dataset.point));
  button.disabled = false; // until now a tap would have been lost
}
for (const [id, by] of [["fewer", -1], ["greater", 1]]) part(id).addEventListener("click", () => dog.turn && dog.set(dog.t + (by * (dog.turn.rises ? 1 : -1)) / 30));
part("back").addEventListener("click", () => dog.turn && dog.set(dog.turn.start));
if (page.first) open(page.first);
