// The ring page: opens the day, the class and the dog in hand, and wires the parts together.

import { Book } from "./book.js";
import { loadDay } from "./day.js";
import { fill, h, mark, say } from "./dom.js";
import { footOf } from "./foot.js";
import { lineUpOf } from "./lineup.js";
import { Outbox } from "./outbox.js";
import { outlineOf } from "./outline.js";
import { paceOf } from "./pace.js";
import { classListOf } from "./programme.js";
import { readingOf } from "./reading.js";
import { limit, may } from "./roles.js";
import { sheetOf } from "./sheet.js";
import { standingOf } from "./standing.js";
import { Store } from "./store.js";
import { swapOf } from "./swap.js";
import { textOf } from "./text.js";
import { tabletOf } from "./tablet.js";
import { tilesOf } from "./tiles.js";
import { Tongue } from "./tongue.js";
import { classWords, numberOf, statusWords } from "./words.js";
import { keepPage } from "./worker-desk.js";

const NEWS_MS = 2000;
const root = document.getElementById("ring");
// The page is the same for every ring: which one it is stands in its address alone.
const at = (path) => new URL(path, location.href.split("#")[0]).href;
const store = new Store(`ring-${location.pathname.match(/ring\/(\d+)/)[1]}`);
const book = new Book(store);
const title = document.getElementById("class-line");
const status = document.getElementById("status");
const live = document.getElementById("live");
let day = null;
/** @type {Tongue} */
let tongue;
let parts = [];

const outbox = new Outbox(store, { url: at("edits/"), onStatus: (now) => {
  say(status, statusWords(now));
  mark(status, "data-state", now.state);
} });

/** Where the page is: "#class=3&dog=12", "#class=3&lineup" or "#class=3&critiques". */
function place() {
  const words = new URLSearchParams(location.hash.slice(1));
  const one = day.classes.find((each) => String(each.id) === words.get("class"));
  const entry = one?.entries.find((each) => String(each.id) === words.get("dog"));
  return { one, entry: entry ?? one?.entries[0], lineUp: words.has("lineup"), critiques: words.has("critiques") };
}

function go(one, entry, lineUp = false) {
  location.hash = one ? `class=${one.id}${lineUp ? "&lineup" : entry ? `&dog=${entry.id}` : ""}` : "";
}

async function open() {
  const { one, entry, lineUp, critiques } = place();
  parts = [];
  if (!one) {
    await book.open(day.classes.flatMap((each) => [each.sheet, ...each.entries.map((dog) => dog.sheet)]));
    say(title, `Ring ${day.ring.name}`);
    document.title = `Ring ${day.ring.name}, ${day.show.name}`;
    const list = classListOf(book, day, (chosen) => go(chosen));
    const tablet = tabletOf(store, outbox);
    fill(root, list.element, tablet.element);
    parts = [list, tablet];
  } else {
    await book.open([one.sheet, ...one.entries.map((dog) => dog.sheet)]);
    say(title, classWords(one));
    if (critiques) showCritiques(one);
    else if (lineUp) showLineUp(one);
    else if (entry) showDog(one, entry);
  }
  update();
}

function showLineUp(one) {
  const lineUp = lineUpOf(book, day, one, { advice: at(`classes/${one.id}/advice/`), back: () => go(one), read: () => { location.hash = `class=${one.id}&critiques`; }, announce, maySign: may(day, "sign"), mayDecide: may(day, "write") });
  fill(root, lineUp.element);
  parts = [lineUp];
  lineUp.element.querySelector("h2").focus();
}

function showCritiques(one) {
  const reading = readingOf(book, day, one, tongue, { edit: (entry) => go(one, entry), back: () => go(one, null, true), announce, maySign: may(day, "sign") });
  fill(root, reading.element);
  parts = [reading];
  reading.element.querySelector("h2").focus();
}

function showDog(one, entry) {
  const standard = day.standards[one.breed];
  const tiles = tilesOf(book, one, (chosen) => go(one, chosen));
  const sheet = sheetOf(book, store, standard, entry, tongue);
  const outline = outlineOf(book, day.drawings[one.breed], standard, entry);
  const text = textOf(book, store, day, one, entry, tongue);
  const pace = paceOf(book, one);
  sheet.element.querySelector(".dog").append(swapOf(book, one, entry, announce) ?? "");
  const foot = footOf(book, store, one, entry, { next: () => nextDog(one, entry), lineUp: () => go(one, null, true) });
  limit(day, sheet.element, foot.element);
  tiles.element.append(pace.element);
  fill(root, tiles.element, h("div", { class: "desk" }, sheet.element, h("aside", {}, outline.element, text.element)), foot.element);
  parts = [{ update: () => tiles.update(entry) }, pace, sheet, outline, text, foot];
  scrollTo(0, 0);
  announce(`Number ${numberOf(entry)}`);
}

/** The next dog that has no grade yet, after this one and round again; the line-up where all are done. */
function nextDog(one, entry) {
  const at = one.entries.indexOf(entry);
  const round = [...one.entries.slice(at + 1), ...one.entries.slice(0, at)];
  const next = round.find((each) => ["waiting", "marked"].includes(standingOf(book, one, each)));
  if (next) go(one, next);
  else go(one, null, true);
}

function update() {
  for (const part of parts) part.update();
}

function announce(text) {
  live.textContent = text;
}

async function start() {
  document.getElementById("choose").addEventListener("click", () => go(null));
  addEventListener("hashchange", open);
  book.addEventListener("read", update);
  store.addEventListener("storage-failed", ({ detail }) => announce(detail.full ? "Storage is full" : "Storage failed"));
  keepPage();
  try {
    day = await loadDay(store, at("day/"));
  } catch (error) {
    fill(root, h("p", { class: "lead" }, error.message));
    return;
  }
  tongue = new Tongue(store, day, at);
  await tongue.open();
  outbox.start();
  setInterval(() => document.hidden || outbox.status.silent || outbox.send(), NEWS_MS);
  await open();
}

start();
