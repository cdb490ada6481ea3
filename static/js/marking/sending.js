// Sends what waits on this device. A draft goes only when the answer names it and the digest of what it told.

import { sha256 } from "../../ring/sha256.js";
import { draft, drafts, forget, keep } from "./drafts.js";
import { GROUND } from "./marks.js";

const EVERY_MS = 15_000;
const PATIENCE_MS = 60_000;
const NO_ID = "00000000-0000-0000-0000-000000000000";
/** Answers that will be the same however often the draft is sent. */
const FINAL = new Set([403, 404, 413, 422]);

/** @typedef {import("./drafts.js").Draft} Draft */
/** @typedef {{id: string, state: "sent" | "waiting" | "refused" | "signed-out", address?: string, reason?: string}} Answer */

/** Sends now, and again every now and then and whenever the network may be back. @param {(answer: Answer) => void} told */
export function keepSending(told) {
  let busy = false;
  const round = async () => {
    if (busy) return;
    busy = true;
    try {
      for (const { id } of (await drafts()).filter((one) => one.state === "waiting")) told(await send(id));
    } finally {
      busy = false;
    }
  };
  setInterval(round, EVERY_MS);
  for (const name of ["online", "pageshow"]) addEventListener(name, round);
  document.addEventListener("visibilitychange", () => document.visibilityState === "visible" && round());
  round();
  return round;
}

/** @param {string} id @returns {Promise<Answer>} */
async function send(id) {
  const one = await draft(id);
  if (!one) return { id, state: "waiting" };
  const text = JSON.stringify(toldOf(one));
  const response = await posted(one, text);
  if (!response) return { id, state: "waiting" };
  const answer = await response.json().catch(() => null);
  if (response.ok && answer?.id === id && answer.digest === sha256(new TextEncoder().encode(text))) {
    // Where a full device does not let it go, it is sent once more: the server keeps it once.
    await forget(id).catch(() => {});
    return { id, state: "sent", address: answer.address };
  }
  if (response.status === 401) return { id, state: "signed-out", reason: answer?.error };
  if (!FINAL.has(response.status) || !answer?.error) return { id, state: "waiting" };
  await keep({ ...one, state: "refused", reason: answer.error }).catch(() => {});
  return { id, state: "refused", reason: answer.error };
}

/** The answer, or null where none came. @param {Draft} one @param {string} text */
async function posted(one, text) {
  const body = new FormData();
  body.append("told", text);
  if (one.bytes) body.append("photo", new Blob([one.bytes], { type: "image/jpeg" }), "photo.jpg");
  const token = cookie("csrftoken");
  // A browser that lost its cookies would be refused for want of a token: one comes with the next page or news.
  if (!token) return null;
  const headers = { Accept: "application/json", "X-CSRFToken": token };
  const signal = AbortSignal.timeout?.(PATIENCE_MS);
  try {
    return await fetch(one.send.replace(NO_ID, one.id), { method: "POST", body, headers, redirect: "error", signal });
  } catch {
    return null;
  }
}

/** What the server is told of a draft. @param {Draft} one */
function toldOf(one) {
  const landmarks = Object.fromEntries(Object.entries(one.places).filter(([name]) => !GROUND.includes(name)));
  const [start, end] = GROUND.map((name) => one.places[name]);
  return {
    view: one.view,
    image: [one.width, one.height],
    landmarks,
    ground: start && end ? [start, end] : null,
    again: Object.keys(one.again).length ? one.again : null,
    taken_on: one.takenOn || null,
    withers_height_cm: one.withersHeight ? Number(one.withersHeight) : null,
  };
}

function cookie(name) {
  const pair = document.cookie.split("; ").find((each) => each.startsWith(`${name}=`));
  return pair ? decodeURIComponent(pair.slice(name.length + 1)) : "";
}
