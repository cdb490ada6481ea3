// The ring page: opens the day, the class and the dog in hand, and wires the parts together.

import { awardsOf, classesOf } from "./awards.js";
import { Book } from "./book.js";
import { loadDay } from "./day.js";
import { disputeParts } from "./disputes.js";
import { fill, h, mark, say } from "./dom.js";
import { feelFinger, fingerLifted } from "./finger.js";
import { footOf } from "./foot.js";
import { heldOf } from "./held.js";
import { lineUpOf } from "./lineup.js";
import { Outbox } from "./outbox.js";
import { outlineOf } from "./outline.js";
import { paceOf } from "./pace.js";
import { classListOf } from "./programme.js";
import { readingOf } from "./reading.js";
import { takeReasons } from "./reasons.js";
import { spoken, t } from "./say.js";
import { limit, may } from "./roles.js";
import { ofCard } from "./said.js";
import { sheetOf } from "./sheet.js";
import { standingOf } from "./standing.js";
import { Store } from "./store.js";
import { swapOf } from "./swap.js";
import { textOf } from "./text.js";
import { tabletOf } from "./tablet.js";
import { tilesOf } from "./tiles.js";
import { Tongue } from "./tongue.js";
import { troubleOf } from "./trouble.js";
import { classWords, numberOf, statusWords } from "./words.js";
import { worded } from "./worded.js";
import { keepPage } from "./worker-desk.js";

// What one tablet writes is on the others within two seconds, the way there and back among them.
const NEWS_MS = 1500;
const LATER_MS = 8000;
const root = document.getElementById("ring");
// The page is the same for every ring: which one it is stands in its address alone.
const at = (path) => new URL(path, location.href.split("#")[0]).href;
const store = new Store(`ring-${location.pathname.match(/ring\/(\d+)/)[1]}`);
const book = new Book(store);
const title = document.getElementById("class-line");
const status = document.getElementById("status");
const live = document.getElementById("live");
const tongue = new Tongue(store, at);
let told = null;
/** What was told of the day, in the page's language. */
let day = null;
let parts = [];
let opening = 0;
/** Comes once the page stands: a first visit waits for none of it. */
let photos = null;
let beside = () => {};

const outbox = new Outbox(store, { url: at("edits/"), quiet: fingerLifted, onStatus: (now) => {
  say(status, statusWords(now));
  mark(status, "data-state", now.state);
  for (const part of parts) part.told?.();
} });

/** Where the page is: "#class=3&dog=12", "#class=3&lineup", "#class=3&critiques" or "#breed=2" for a breed's awards. */
function place() {
  const words = new URLSearchParams(location.hash.slice(1));
  const one = day.classes.find((each) => String(each.id) === words.get("class"));
  const entry = one?.entries.find((each) => String(each.id) === words.get("dog"));
  const breed = day.breeds?.find((each) => String(each.id) === words.get("breed"));
  return { one, entry: entry ?? one?.entries[0], lineUp: words.has("lineup"), critiques: words.has("critiques"), breed };
}

function go(one, entry, lineUp = false) {
  const before = location.hash;
  location.hash = one ? `class=${one.id}${lineUp ? "&lineup" : entry ? `&dog=${entry.id}` : ""}` : "";
  if (location.hash !== before) root.inert = true;
}

/**
 * Reads the sheets of the place to show. Until it stands the old one takes no finger: a quick one would write on the dog
 * that it just left. False once yet another place was asked for.
 * @param {string[]} sheets
 */
async function reach(sheets) {
  opening += 1;
  const mine = opening;
  root.inert = true;
  try {
    await book.open(sheets);
  } finally {
    if (mine === opening) root.inert = false;
  }
  return mine === opening;
}

async function open() {
  const { one, entry, lineUp, critiques, breed } = place();
  parts = [];
  if (breed) {
    if (!await reach([breed.sheet, ...classesOf(day, breed).map((each) => each.sheet)])) return;
    say(title, t("{breed}: awards", { breed: breed.name }));
    showAwards(breed);
  } else if (!one) {
    const awards = (day.breeds ?? []).map((each) => each.sheet);
    if (!await reach([...awards, ...day.classes.flatMap((each) => [each.sheet, ...each.entries.map((dog) => dog.sheet)])])) return;
    say(title, t("Ring {name}", { name: day.ring.name }));
    document.title = `${t("Ring {name}", { name: day.ring.name })}, ${day.show.name}`;
    const list = classListOf(book, day, (chosen) => go(chosen), (chosen) => { location.hash = `breed=${chosen.id}`; });
    const held = heldOf(store, day, { url: (id) => at(`held/${id}/`), mayDecide: may(day, "sign"), decided: () => outbox.send() });
    const tablet = tabletOf(store, outbox, tongue);
    fill(root, held.element, list.element, tablet.element);
    parts = [list, held, tablet];
  } else {
    if (!await reach([one.sheet, ...one.entries.map((dog) => dog.sheet)])) return;
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

function showAwards(breed) {
  const awards = awardsOf(book, day, breed, { announce, maySign: may(day, "sign"), mayDecide: may(day, "write") });
  fill(root, awards.element);
  parts = [awards];
  awards.element.querySelector("h2").focus();
}

function showDog(one, entry) {
  const standard = day.standards[one.breed];
  const tiles = tilesOf(book, one, (chosen) => go(one, chosen));
  const sheet = sheetOf(book, store, standard, entry, tongue);
  const outline = outlineOf(book, day.drawings[one.breed], standard, entry);
  const text = textOf(book, store, day, one, entry, tongue);
  const pace = paceOf(book, one);
  sheet.element.querySelector(".dog").append(swapOf(book, one, entry, announce) ?? "");
  const disputes = disputeParts(book, one.sheet, ofCard(one));
  const foot = footOf(book, store, one, entry, { next: () => nextDog(one, entry), lineUp: () => go(one, null, true) });
  sheet.element.querySelector(".dog").after(disputes.element);
  // Its place is kept free, so that nothing moves under the thumb when it comes.
  if (may(day, "presence")) sheet.element.querySelector("header.dog").after(h("div", { class: "photo-place" }));
  beside = () => photos && may(day, "presence") && photos.photosOf(book, standard, one, entry, { at, mayWrite: may(day, "write"), sheet: sheet.element });
  loadPhotos();
  limit(day, sheet.element, foot.element);
  tiles.element.append(pace.element);
  fill(root, tiles.element, h("div", { class: "desk" }, sheet.element, h("aside", {}, outline.element, text.element)), foot.element);
  parts = [{ update: () => tiles.update(entry) }, pace, disputes, sheet, outline, text, foot];
  scrollTo(0, 0);
  announce(t("Number {number}", { number: numberOf(entry) }));
}

async function loadPhotos() {
  if (!photos) {
    const found = await import(root.dataset.photos).catch(() => null);
    if (!found || photos) return;
    photos = found;
    photos.startPhotos(announce);
  }
  beside();
  beside = () => {};
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

let due = false;

/** What a finger set shows in the next frame; what follows from it (text, outline, states of the class) in the one after. */
function read({ detail: changes }) {
  for (const part of parts) part.show?.(changes);
  if (!changes.length || document.hidden) return update();
  if (due) return undefined;
  due = true;
  return requestAnimationFrame(() => setTimeout(() => {
    due = false;
    update();
  }));
}

/** What the page itself says, and the day, in the language of the moment. */
function dress() {
  document.documentElement.lang = spoken();
  say(document.getElementById("choose"), t("Classes"));
  say(status, statusWords(outbox.status));
  const field = document.querySelector("aside.notice");
  if (field) {
    mark(field, "aria-label", t("About this server"));
    say(field.firstElementChild, t("Plain HTTP on a local network: whoever is on it can read along."));
  }
  takeReasons(tongue.names);
  if (told) day = worded(told, tongue.names);
}

/** The same place in another language; what is being typed is kept first, and eye and keyboard stay where they are. */
async function speakAnew() {
  const here = scrollY;
  const focused = document.activeElement;
  if (focused instanceof HTMLElement) focused.blur();
  dress();
  await open();
  const again = focused?.id ? document.getElementById(focused.id) : null;
  if (again instanceof HTMLTextAreaElement) again.value = focused.value;
  again?.focus({ preventScroll: true });
  scrollTo(0, here);
}

function announce(text) {
  live.textContent = text;
}

async function start() {
  feelFinger();
  document.getElementById("choose").addEventListener("click", () => go(null));
  addEventListener("hashchange", open);
  book.addEventListener("read", read);
  store.addEventListener("storage-failed", ({ detail }) => announce(detail.full ? t("Storage is full") : t("Storage failed")));
  keepPage();
  const speaking = tongue.open();
  try {
    [told] = await Promise.all([loadDay(store, at("day/")), speaking]);
  } catch (error) {
    await speaking;
    dress();
    fill(root, h("p", { class: "lead" }, error.message));
    return;
  }
  dress();
  tongue.take(told);
  tongue.addEventListener("spoken", speakAnew);
  document.body.append(troubleOf(book, () => day).element);
  outbox.start();
  setInterval(() => document.hidden || outbox.status.silent || outbox.send(), NEWS_MS);
  await open();
  setTimeout(loadPhotos, LATER_MS);
}

start();
