/**
 * Landmarks on a photo of a dog to angles, plumb lines, ratios and areas, each with the first-order SD of its clicks.
 * The twin of scoring/measuring: same codes, same numbers, held together by tests/measuring/cases.json. What a value
 * reads beside its target, and why one is withheld, is told by the server.
 *
 * @typedef {[number, number]} Place  pixels, y downward
 * @typedef {{value: number, slopes: Record<string, number>}} Uncertain  a value and its slope along each click coordinate
 * @typedef {{x: Uncertain, y: Uncertain}} Point
 * @typedef {"standing-side" | "moving-side" | "front" | "rear"} View
 * @typedef {{view: View, landmarks: Record<string, Place>, clickSd: number, ground?: [Place, Place] | null}} Photo
 * @typedef {{code: string, value: number | null, sd: number | null}} Measured  null where it is withheld
 */

// Numbers that remember how they depend on the clicks.

/** @param {number} value @param {...[Uncertain, number]} terms @returns {Uncertain} */
function chain(value, ...terms) {
  /** @type {Record<string, number>} */
  const slopes = {};
  for (const [term, factor] of terms) {
    for (const name in term.slopes) slopes[name] = (slopes[name] ?? 0) + factor * term.slopes[name];
  }
  return { value, slopes };
}

const plus = (a, b) => chain(a.value + b.value, [a, 1], [b, 1]);
const minus = (a, b) => chain(a.value - b.value, [a, 1], [b, -1]);
const times = (a, factor) => chain(a.value * factor, [a, factor]);
const product = (a, b) => chain(a.value * b.value, [a, b.value], [b, a.value]);
const negative = (a) => times(a, -1);
const magnitude = (a) => (a.value >= 0 ? a : negative(a));

function quotient(a, b) {
  const value = a.value / b.value;
  return chain(value, [a, 1 / b.value], [b, -value / b.value]);
}

function size(x, y) {
  const value = Math.hypot(x.value, y.value);
  return chain(value, [x, x.value / value], [y, y.value / value]);
}

/** Direction of the vector (x, y) in degrees. */
function angle(y, x) {
  const length = Math.hypot(x.value, y.value);
  const turned = chain(Math.atan2(y.value, x.value), [y, x.value / length / length], [x, -y.value / length / length]);
  return times(turned, 180 / Math.PI);
}

const sdOf = (value, clickSd) => clickSd * Math.hypot(...Object.values(value.slopes));

// Points and plane figures.

/** @param {string} name @param {Place} at @returns {Point} */
function click(name, [x, y]) {
  return { x: { value: x, slopes: { [`${name}.x`]: 1 } }, y: { value: y, slopes: { [`${name}.y`]: 1 } } };
}

const from = (p, q) => ({ x: minus(q.x, p.x), y: minus(q.y, p.y) });
const dot = (u, v) => plus(product(u.x, v.x), product(u.y, v.y));
const cross = (u, v) => minus(product(u.x, v.y), product(u.y, v.x));
const distance = (p, q) => size(minus(q.x, p.x), minus(q.y, p.y));

function vertexAngle(one, vertex, other) {
  const u = from(vertex, one);
  const v = from(vertex, other);
  return angle(magnitude(cross(u, v)), dot(u, v));
}

const triangle = (a, b, c) => times(magnitude(cross(from(a, b), from(a, c))), 0.5);

function offLine(point, start, end) {
  const line = from(start, end);
  return quotient(cross(line, from(start, point)), dot(line, line));
}

// How landmarks lie to each other on any dog: downward, and from the head to the rear.

const DOWNWARD = [
  ["withers", "point-of-shoulder", "elbow", "front-pastern", "front-foot"],
  ["withers", "brisket", "front-foot"],
  ["croup-start", "pin-bone", "hock", "rear-foot"],
  ["croup-start", "hip", "stifle", "hock", "rear-foot"],
  ["withers", "elbow", "front-foot-lead"],
  ["withers", "elbow", "front-foot-trail"],
  ["stifle", "rear-foot-lead"],
  ["stifle", "rear-foot-trail"],
  ...["left", "right"].flatMap((side) => [
    ["shoulder", "elbow", "pastern", "foot"].map((part) => `${side}-${part}`),
    ["hip", "hock", "pastern", "foot"].map((part) => `${side}-${part}`),
  ]),
];
const BACKWARD = [
  ["nose", "withers", "croup-start", "pin-bone"],
  ["nose", "point-of-shoulder", "elbow", "stifle", "hock"],
  ["point-of-shoulder", "withers", "croup-start", "tail-set"],
  ["forechest", "elbow", "stifle", "rear-foot"],
  ["occiput", "withers", "hip", "pin-bone"],
  ["point-of-shoulder", "pin-bone"],
  ["brisket", "croup-start"],
  ["front-foot", "croup-start", "rear-foot"],
  ["front-pastern", "stifle"],
  ["nose", "elbow", "stifle", "rear-foot-trail"],
  ["front-foot-lead", "elbow", "stifle"],
  ["front-foot-lead", "front-foot-trail"],
  ["rear-foot-lead", "rear-foot-trail"],
];

/** @param {string[][]} chains @returns {Map<string, [string, string]>} each pair of a chain, once */
function pairsOf(chains) {
  const pairs = new Map();
  for (const names of chains) {
    names.forEach((first, i) => names.slice(i + 1).forEach((second) => pairs.set(`${first}>${second}`, [first, second])));
  }
  return pairs;
}

const ABOVE = [...pairsOf(DOWNWARD).values()];
const AHEAD = [...pairsOf(BACKWARD).values()];

/** How many pairs have their first landmark further along than their second, less those that have not. */
function vote(along, pairs) {
  const known = pairs.filter(([first, second]) => first in along && second in along);
  return known.reduce((sum, [first, second]) => sum + Math.sign(along[first] - along[second]), 0);
}

// The level frame.

const mapped = (record, change) =>
  Object.fromEntries(Object.entries(record).map(([name, value]) => [name, change(value, name)]));

/** The two ground clicks in the order that has the dog upright, else from left to right; null without a line. */
function groundLine(ground, points) {
  if (!ground) return null;
  const [[ax, ay], [bx, by]] = ground;
  if (ax === bx && ay === by) return null;
  const clicks = [click("ground-1", ground[0]), click("ground-2", ground[1])];
  const [start, end] = ax > bx || (ax === bx && ay > by) ? clicks.reverse() : clicks;
  const along = from(start, end);
  const heights = mapped(points, (point) => -cross(along, from(start, point)).value);
  return vote(heights, ABOVE) < 0 ? [end, start] : [start, end];
}

function levelled(points, line) {
  if (!line) return points;
  const [start, end] = line;
  const along = from(start, end);
  const length = distance(start, end);
  return mapped(points, (point) => {
    const to = from(start, point);
    return { x: quotient(dot(along, to), length), y: quotient(cross(along, to), length) };
  });
}

/** 1 facing the picture's right, -1 its left, 0 where the landmarks do not tell. */
function facingOf(level) {
  const along = mapped(level, (point) => point.x.value);
  const ofNose = AHEAD.filter((pair) => pair.includes("nose"));
  return Math.sign(vote(along, AHEAD) || vote(along, ofNose) || vote(along, [["front-foot", "front-pastern"]]));
}

/**
 * Camera roll in degrees, positive where the ground line falls to the right; null without a ground line.
 * @param {Photo} photo @returns {{value: number, sd: number} | null}
 */
export function roll(photo) {
  const points = mapped(photo.landmarks, (at, name) => click(name, at));
  const line = groundLine(photo.ground, points);
  if (!line) return null;
  const along = from(line[0], line[1]);
  const turned = angle(along.y, along.x);
  return { value: turned.value, sd: sdOf(turned, photo.clickSd) };
}

// The measurements. Formulas of a side view have x ahead of the dog and y downward from the ground line.

const fallsAhead = (start, end) => angle(minus(end.y, start.y), minus(end.x, start.x));
const fallsBehind = (start, end) => angle(minus(end.y, start.y), minus(start.x, end.x));
const leansAhead = (top, bottom) => angle(minus(bottom.x, top.x), minus(bottom.y, top.y));
const down = (top, bottom) => minus(bottom.y, top.y);
const upperArm = (withers, shoulder, elbow) => quotient(distance(shoulder, elbow), distance(withers, shoulder));
const frontSet = (withers, foot) => quotient(minus(foot.x, withers.x), down(withers, foot));
const lengthRatio = (shoulder, pin, withers, foot) => quotient(minus(shoulder.x, pin.x), down(withers, foot));
const chestDepth = (withers, brisket, foot) => quotient(down(withers, brisket), down(withers, foot));
const hockHeight = (hock, rearFoot, withers, foot) => quotient(down(hock, rearFoot), down(withers, foot));
const frontReach = (lead, nose, withers) => quotient(minus(lead.x, nose.x), negative(withers.y));
const strideBalance = (...corners) => quotient(triangle(...corners.slice(0, 3)), triangle(...corners.slice(3)));
const bendRight = (top, middle, foot) => negative(offLine(middle, top, foot));
const bendLeft = (top, middle, foot) => offLine(middle, top, foot);

function convergence(leftTop, leftFoot, rightTop, rightFoot) {
  const left = from(leftTop, leftFoot);
  const right = from(rightTop, rightFoot);
  return angle(cross(left, right), dot(left, right));
}

const SLOPE = { level: true, ground: true };
const OVER_HEIGHT = { level: true };
const OF_LOGARITHM = { logarithm: true };
const BLADE = ["withers", "point-of-shoulder"];

const column = (top, middle) => [
  ["column-bend-left", [`left-${top}`, `left-${middle}`, "left-foot"], bendLeft, {}],
  ["column-bend-right", [`right-${top}`, `right-${middle}`, "right-foot"], bendRight, {}],
];
const legs = (top) => ["convergence", [`left-${top}`, "left-foot", `right-${top}`, "right-foot"], convergence, {}];

/** By view: code, landmarks, formula, needs. Of several with one code, the first that is wholly clicked is in force. */
const MEASUREMENTS = {
  "standing-side": [
    ["front-angle", [...BLADE, "elbow"], vertexAngle, {}],
    ["rear-angle", ["pin-bone", "stifle", "hock"], vertexAngle, {}],
    ["hock-angle", ["stifle", "hock", "rear-foot"], vertexAngle, {}],
    ["blade-slope", BLADE, fallsAhead, SLOPE],
    ["arm-slope", ["point-of-shoulder", "elbow"], fallsBehind, SLOPE],
    ["pastern-slope", ["front-pastern", "front-foot"], leansAhead, { ...SLOPE, facing: true }],
    ["croup-slope", ["croup-start", "pin-bone"], fallsBehind, SLOPE],
    ["topline-slope", ["withers", "croup-start"], fallsBehind, SLOPE],
    ["front-set", ["withers", "front-foot"], frontSet, { ...OVER_HEIGHT, facing: true }],
    ["upper-arm-ratio", [...BLADE, "elbow"], upperArm, OF_LOGARITHM],
    ["length-ratio", ["point-of-shoulder", "pin-bone", "withers", "front-foot"], lengthRatio, OVER_HEIGHT],
    ["chest-depth", ["withers", "brisket", "front-foot"], chestDepth, OVER_HEIGHT],
    ["hock-height", ["hock", "rear-foot", "withers", "front-foot"], hockHeight, OVER_HEIGHT],
  ],
  "moving-side": [
    ["front-reach", ["front-foot-lead", "nose", "withers"], frontReach, SLOPE],
    [
      "stride-balance",
      ["elbow", "front-foot-lead", "front-foot-trail", "stifle", "rear-foot-lead", "rear-foot-trail"],
      strideBalance,
      OF_LOGARITHM,
    ],
  ],
  front: [...column("shoulder", "pastern"), legs("shoulder")],
  rear: [...column("hip", "pastern"), ...column("hip", "hock"), legs("hip")],
};

function inForce(view, landmarks) {
  const chosen = new Map();
  const complete = ([, names]) => names.every((name) => name in landmarks);
  for (const entry of MEASUREMENTS[view]) {
    const present = chosen.get(entry[0]);
    if (!present || (!complete(present) && complete(entry))) chosen.set(entry[0], entry);
  }
  return [...chosen.values()];
}

const coincide = (places) =>
  places.some(([x, y], i) => places.slice(i + 1).some(([otherX, otherY]) => x === otherX && y === otherY));

/**
 * Every measurement of the photo's view, in the server's order; withheld ones are null.
 * `sd` is of the logarithm for upper-arm-ratio and stride-balance, else in the unit of the value.
 * @param {Photo} photo @returns {Measured[]}
 */
export function measure(photo) {
  const { view, landmarks, clickSd } = photo;
  const raw = mapped(landmarks, (at, name) => click(name, at));
  const line = groundLine(photo.ground, raw);
  const level = levelled(raw, line);
  const facing = view.endsWith("-side") ? facingOf(level) : 0;
  const ofDog = facing < 0 ? mapped(level, (point) => ({ x: negative(point.x), y: point.y })) : level;
  return inForce(view, landmarks).map(([code, names, formula, needs]) => {
    const withheld = { code, value: null, sd: null };
    if (!names.every((name) => name in landmarks) || coincide(names.map((name) => landmarks[name]))) return withheld;
    if ((needs.ground && !line) || (needs.facing && facing === 0)) return withheld;
    const value = formula(...names.map((name) => (needs.level ? ofDog : raw)[name]));
    const sd = sdOf(value, clickSd) / (needs.logarithm ? Math.abs(value.value) : 1);
    return Number.isFinite(value.value) && Number.isFinite(sd) ? { code, value: value.value, sd } : withheld;
  });
}
