import { draws } from '../samples.ts';
/**
 * How many mutants of captures a run draws; of sheets, each of which is drawn anew, a tenth. A few hundred in every
 * run of the tests; SINEASSAY_FUZZ asks for more. Mutants are numbered, and a number always gives the same one:
 * SINEASSAY_FUZZ_FROM begins at another than the first.
 */
export const firstMutant: number = Number(process.env.SINEASSAY_FUZZ_FROM ?? 0);
export const captureMutantCount: number = Number(process.env.SINEASSAY_FUZZ ?? draws(300, 40));
export const sheetMutantCount: number = Math.ceil(captureMutantCount / 10);

/** Which of them failed: enough to look into. */
export const mostFailures = 8;

/** Numbers in [0, 1), the same for the same seed (xorshift, Marsaglia 2003; the seed scattered first). */
export function seededRandom(seed: number): () => number {
  let state = (Math.imul(seed + 1, 0x9e3779b1) ^ 0x5bd1e995) >>> 0 || 1;
  const next = (): number => {
    state ^= state << 13;
    state >>>= 0;
    state ^= state >>> 17;
    state ^= state << 5;
    state >>>= 0;
    return state / 2 ** 32;
  };
  for (let i = 0; i < 8; i++) next();
  return next;
}
