// Bends one drawing into the next: the numbers of a path between those of two drawings of the same shape.

const NUMBER = /-?\d+(?:\.\d+)?/g;

/** @typedef {{text: string[], numbers: number[][]}} Bent  a path's text between its numbers, its numbers in each drawing */

/** @param {string[][]} frames the paths of every drawing @returns {Bent[]} one for each path */
export function bent(frames) {
  return frames[0].map((_, index) => ({
    text: frames[0][index].split(NUMBER),
    numbers: frames.map((paths) => (paths[index].match(NUMBER) ?? []).map(Number)),
  }));
}

/** The path at `t`, 0 the first drawing, 1 the last. @param {Bent} path @param {number} t */
export function pathAt({ text, numbers }, t) {
  const [low, part] = split(numbers.length, t);
  const [from, to] = [numbers[low], numbers[low + 1]];
  let data = text[0];
  for (let i = 0; i < from.length; i += 1) data += (from[i] + (to[i] - from[i]) * part).toFixed(1) + text[i + 1];
  return data;
}

/** The landmarks at `t`. @param {Record<string, [number, number]>[]} landmarks @param {number} t */
export function placesAt(landmarks, t) {
  const [low, part] = split(landmarks.length, t);
  const between = (a, b) => a + (b - a) * part;
  return Object.fromEntries(
    Object.entries(landmarks[low]).map(([name, [x, y]]) => {
      const [toX, toY] = landmarks[low + 1][name];
      return [name, [between(x, toX), between(y, toY)]];
    }),
  );
}

/**
 * The `t` at which the handle lies nearest to a place.
 * @param {[number, number][]} along the handle's place in every drawing
 * @param {[number, number]} place
 */
export function nearestT(along, [x, y]) {
  let best = { apart: Infinity, t: 0 };
  for (let i = 0; i + 1 < along.length; i += 1) {
    const [[x1, y1], [x2, y2]] = [along[i], along[i + 1]];
    const square = (x2 - x1) ** 2 + (y2 - y1) ** 2 || 1;
    const part = Math.min(Math.max(((x - x1) * (x2 - x1) + (y - y1) * (y2 - y1)) / square, 0), 1);
    const apart = Math.hypot(x1 + (x2 - x1) * part - x, y1 + (y2 - y1) * part - y);
    if (apart < best.apart) best = { apart, t: (i + part) / (along.length - 1) };
  }
  return best.t;
}

function split(count, t) {
  const at = Math.min(Math.max(t, 0), 1) * (count - 1);
  const low = Math.min(Math.floor(at), count - 2);
  return [low, at - low];
}
