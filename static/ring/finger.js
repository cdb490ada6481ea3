// Whether a finger is on the glass. What the tablet does by itself waits until it is lifted and its mark shows.

const MARK_MS = 120;
const LOOK_MS = 30;
// A finger that scrolls stays longer, and what others write is to be seen all the same.
const LONGEST_MS = 500;

let isDown = false;
let quietFrom = 0;

/** From now on the page knows where its finger is. */
export function feelFinger() {
  const now = (down) => () => {
    isDown = down;
    quietFrom = performance.now() + MARK_MS;
  };
  const options = { capture: true, passive: true };
  addEventListener("pointerdown", now(true), options);
  for (const name of ["pointerup", "pointercancel"]) addEventListener(name, now(false), options);
}

/** Resolves when no finger is on the glass and the last one's mark has had its time; after half a second in any case. */
export async function fingerLifted() {
  const latest = performance.now() + LONGEST_MS;
  while ((isDown || performance.now() < quietFrom) && performance.now() < latest) {
    await new Promise((done) => setTimeout(done, LOOK_MS));
  }
}
