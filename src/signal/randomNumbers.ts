import { cos, log, sin } from '../base/elementary.ts';

/**
 * A seeded generator of uniform numbers, the same on every machine: xoshiro128**, its state filled from the
 * seed by a 32-bit Weyl sequence through the finaliser of MurmurHash3.
 *
 * @param seed - any whole number; taken modulo 2³².
 * @returns each call gives the next number in [0, 1), a multiple of 2⁻³².
 * @see D. Blackman, S. Vigna, "Scrambled linear pseudorandom number generators", ACM Trans. Math. Softw.
 * 47(4), 2021 (public-domain reference code)
 */
export function randomNumbers(seed: number): () => number {
  const state = new Uint32Array(4);
  for (let i = 0; i < 4; i++) state[i] = mixed(seed + (i + 1) * 0x9e3779b9);
  const next = xoshiro128StarStar(state);
  return () => next() / 2 ** 32;
}

/**
 * The generator itself.
 *
 * @param state - four 32-bit words, not all zero. Changed by every call.
 * @returns each call gives the next whole number in [0, 2³²).
 */
export function xoshiro128StarStar(state: Uint32Array): () => number {
  return () => {
    const [s0, s1, s2, s3] = state as unknown as [number, number, number, number];
    const result = Math.imul(rotated(Math.imul(s1, 5), 7), 9) >>> 0;
    const crossed = s2 ^ s0;
    const folded = s3 ^ s1;
    state[0] = s0 ^ folded;
    state[1] = s1 ^ crossed;
    state[2] = crossed ^ (s1 << 9);
    state[3] = rotated(folded, 11);
    return result;
  };
}

function rotated(word: number, bits: number): number {
  return (word << bits) | (word >>> (32 - bits));
}

function mixed(seed: number): number {
  let word = seed | 0;
  word = Math.imul(word ^ (word >>> 16), 0x85ebca6b);
  word = Math.imul(word ^ (word >>> 13), 0xc2b2ae35);
  return (word ^ (word >>> 16)) >>> 0;
}

/**
 * Numbers of the normal distribution, mean 0, standard deviation 1.
 *
 * @param uniform - gives independent numbers in [0, 1).
 * @see G. E. P. Box, M. E. Muller, Ann. Math. Statist. 29(2), 1958, 610-611
 */
export function gaussianNumbers(uniform: () => number): () => number {
  let spare: number | null = null;
  return () => {
    if (spare !== null) {
      const value = spare;
      spare = null;
      return value;
    }
    const radius = Math.sqrt(-2 * log(1 - uniform()));
    const angle = 2 * Math.PI * uniform();
    spare = radius * sin(angle);
    return radius * cos(angle);
  };
}
