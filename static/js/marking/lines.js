// The lines between marks, as shapes in the picture's pixels. The twin of ringside/photos/drawn.py.

/** @typedef {import("./marks.js").Place} Place */
/** @typedef {{kind: string, landmarks: string[], measurement: string}} Line */

const LEVEL_LENGTH = 0.22;

/**
 * The places that each line runs through; null where a landmark of it is not marked.
 * @param {Line} line
 * @param {Record<string, Place>} places
 * @param {[Place, Place] | null} ground
 * @param {number} height of the picture
 * @returns {Place[] | null}
 */
export function through(line, places, ground, height) {
  const at = line.landmarks.map((name) => places[name]);
  if (at.some((place) => !place)) return null;
  if (line.kind === "plumb") return [at[0], plumbEnd(at[0], ground, height)];
  if (line.kind === "level") return [at[0], levelEnd(at, ground, height)];
  return line.kind === "triangle" ? [...at, at[0]] : at;
}

/** The level's direction as a unit vector to the picture's right. @param {[Place, Place] | null} ground @returns {Place} */
function level(ground) {
  if (!ground) return [1, 0];
  const [[x1, y1], [x2, y2]] = [...ground].sort((one, other) => one[0] - other[0] || one[1] - other[1]);
  const long = Math.hypot(x2 - x1, y2 - y1);
  return long ? [(x2 - x1) / long, (y2 - y1) / long] : [1, 0];
}

function plumbEnd(start, ground, height) {
  if (!ground) return [start[0], height];
  const [x, y] = level(ground);
  const down = (ground[0][1] - start[1]) * x - (ground[0][0] - start[0]) * y;
  return [start[0] - y * down, start[1] + x * down];
}

function levelEnd([start, end], ground, height) {
  const [x, y] = level(ground);
  const long = LEVEL_LENGTH * height * (end[0] > start[0] ? 1 : -1);
  return [start[0] + x * long, start[1] + y * long];
}
