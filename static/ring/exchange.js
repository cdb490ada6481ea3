// One exchange with the server. Nothing counts as its answer but JSON of the agreed shape: a portal's page, a sign-in
// page or half an answer is no answer.

import { t } from "./say.js";

/** @typedef {import("./replacing.js").Edit} Edit */
/** @typedef {{id: string, digest: string, state: "applied" | "disputed" | "held" | "refused", reason?: string}} Answer */
/** @typedef {{answers: Answer[], edits: Edit[], sequence: number}} Said */

const PATIENCE_MS = 20_000;
const STATES = new Set(["applied", "disputed", "held", "refused"]);

/** Why there was no answer: "sign-in" (the server asks for it), "server" (it failed), "network" (nothing of it came). */
export class NoAnswer extends Error {
  /** @param {"sign-in" | "server" | "network"} why */
  constructor(why) {
    super(why);
    this.why = why;
  }
}

/**
 * Sends edits and gets the server's word on each, with what others wrote since.
 * @param {string} url
 * @param {Edit[]} edits
 * @param {{since: number, device: string, unsent: number}} told `unsent`: how many more edits this tablet holds
 * @param {string} [cookie] name of the cookie that holds the token
 * @returns {Promise<Said>}
 */
export async function sendEdits(url, edits, told, cookie = "csrftoken") {
  const body = JSON.stringify({ edits, ...told });
  const post = () => request(url, {
    method: "POST", body, headers: { "Content-Type": "application/json", "X-CSRFToken": readCookie(cookie) },
  });
  let response = await post();
  if (response.status === 403) {
    await askNews(url, told.since);
    response = await post();
  }
  return readSaid(response);
}

/**
 * What others wrote since; the answer also brings a fresh token.
 * @param {string} url
 * @param {number} since
 * @param {string} [device] named where this tablet holds nothing that is not on the server
 * @returns {Promise<Said>}
 */
export async function askNews(url, since, device) {
  const address = new URL(url, location.href);
  address.searchParams.set("since", String(since));
  if (device) address.searchParams.set("device", device);
  return readSaid(await request(address.href, {}));
}

/**
 * Posts a form; what the server says against it, in words, or nothing where it agrees.
 * @param {string} url
 * @param {Record<string, string>} fields
 * @returns {Promise<string>}
 */
export async function postForm(url, fields) {
  const headers = { "Content-Type": "application/x-www-form-urlencoded", "X-CSRFToken": readCookie("csrftoken") };
  try {
    const { status, text } = await request(url, { method: "POST", body: String(new URLSearchParams(fields)), headers });
    return status === 200 ? "" : parse(text)?.error ?? t("The server did not take it. Try again in a moment.");
  } catch {
    return t("This needs the network: the server does not answer.");
  }
}

async function request(url, options) {
  const stop = new AbortController();
  const timer = setTimeout(() => stop.abort(), PATIENCE_MS);
  const headers = { Accept: "application/json", ...options.headers };
  try {
    const settings = { credentials: "same-origin", cache: "no-store", redirect: "error", signal: stop.signal };
    const response = await fetch(url, { ...settings, ...options, headers });
    return { status: response.status, text: await response.text() };
  } catch {
    throw new NoAnswer("network");
  } finally {
    clearTimeout(timer);
  }
}

function readSaid({ status, text }) {
  if (status === 401) throw new NoAnswer("sign-in");
  if (status < 200 || status > 299) throw new NoAnswer("server");
  const said = parse(text);
  const { answers = [], edits, sequence } = said ?? {};
  const whole = areAll(answers, isAnswer) && areAll(edits, isEdit) && Number.isSafeInteger(sequence);
  if (!whole) throw new NoAnswer("network");
  return { answers, edits, sequence };
}

function parse(text) {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

function areAll(list, check) {
  return Array.isArray(list) && list.every((each) => each !== null && typeof each === "object" && check(each));
}

function isAnswer({ id, digest, state }) {
  return typeof id === "string" && typeof digest === "string" && STATES.has(state);
}

function isEdit({ id, sheet, field, replaces }) {
  return [id, sheet, field].every((text) => typeof text === "string") && Array.isArray(replaces);
}

/** @param {string} name */
function readCookie(name) {
  const pair = document.cookie.split("; ").find((each) => each.startsWith(`${name}=`));
  return pair ? decodeURIComponent(pair.slice(name.length + 1)) : "";
}
