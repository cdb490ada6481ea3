// SHA-256 for pages without a secure address, where browsers offer none. Source: FIPS 180-4 (NIST, 2015), 4.1.2, 5, 6.2.

const PRIMES = firstPrimes(64);
const START = PRIMES.slice(0, 8).map((prime) => fractionBits(Math.sqrt(prime)));
const ROUND = PRIMES.map((prime) => fractionBits(Math.cbrt(prime)));

/**
 * The digest of some bytes, in hex.
 * @param {Uint8Array} bytes
 * @returns {string}
 */
export function sha256(bytes) {
  const padded = pad(bytes);
  const hash = Uint32Array.from(START);
  for (let at = 0; at < padded.byteLength; at += 64) {
    mix(hash, schedule(padded, at));
  }
  return Array.from(hash, (word) => word.toString(16).padStart(8, "0")).join("");
}

/** @param {number} count @returns {number[]} */
function firstPrimes(count) {
  const primes = [];
  for (let n = 2; primes.length < count; n += 1) {
    if (primes.every((prime) => n % prime)) primes.push(n);
  }
  return primes;
}

/** The first 32 bits after the point. @param {number} root */
function fractionBits(root) {
  return Math.floor((root - Math.floor(root)) * 2 ** 32) >>> 0;
}

/** The bytes, a one bit, zeros, and the length in bits, in whole blocks of 64. @param {Uint8Array} bytes */
function pad(bytes) {
  const padded = new Uint8Array(Math.ceil((bytes.length + 9) / 64) * 64);
  padded.set(bytes);
  padded[bytes.length] = 0x80;
  const view = new DataView(padded.buffer);
  view.setUint32(padded.length - 8, Math.floor(bytes.length / 2 ** 29));
  view.setUint32(padded.length - 4, bytes.length << 3);
  return view;
}

/** The 64 words that one block of 16 grows into. @param {DataView} view @param {number} at */
function schedule(view, at) {
  const words = new Uint32Array(64);
  for (let i = 0; i < 16; i += 1) words[i] = view.getUint32(at + 4 * i);
  for (let i = 16; i < 64; i += 1) {
    const [early, late] = [words[i - 15], words[i - 2]];
    const near = turn(early, 7) ^ turn(early, 18) ^ (early >>> 3);
    const far = turn(late, 17) ^ turn(late, 19) ^ (late >>> 10);
    words[i] = words[i - 16] + near + words[i - 7] + far;
  }
  return words;
}

/** @param {Uint32Array} hash @param {Uint32Array} words */
function mix(hash, words) {
  let [a, b, c, d, e, f, g, h] = hash;
  for (let i = 0; i < 64; i += 1) {
    const one = h + (turn(e, 6) ^ turn(e, 11) ^ turn(e, 25)) + ((e & f) ^ (~e & g)) + ROUND[i] + words[i];
    const two = (turn(a, 2) ^ turn(a, 13) ^ turn(a, 22)) + ((a & b) ^ (a & c) ^ (b & c));
    [h, g, f, e, d, c, b, a] = [g, f, e, (d + one) | 0, c, b, a, (one + two) | 0];
  }
  [a, b, c, d, e, f, g, h].forEach((word, i) => { hash[i] += word; });
}

/** Turns a word right. @param {number} word @param {number} by */
function turn(word, by) {
  return (word >>> by) | (word << (32 - by));
}
