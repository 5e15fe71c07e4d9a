import { expect, test } from 'vitest';
import { draws } from '../samples.ts';
import { families } from './families.ts';
import { trialOf } from './trial.ts';

/** A family; FAMILY_DRAWS asks for more, as `npm run families` does. */
const DRAWS = Number(process.env.FAMILY_DRAWS ?? draws(6, 1));
const ONLY = process.env.FAMILY;
const SEED = Number(process.env.FAMILY_SEED ?? 20_261_130);

/** What the stated intervals, of about 95 %, must hold at least in the long run. */
const HELD = 0.92;

for (const family of families.filter(({ name }) => ONLY === undefined || name.includes(ONLY))) {
  test(`${family.name}: ${DRAWS} drawn captures, no wrong kind, no invented event, intervals that hold`, () => {
    const { faults, figures } = trialOf(family, DRAWS, SEED);
    const shares = [...figures].map(([name, { stated, held }]) => `${name} ${held}/${stated}`);
    if (DRAWS >= 100) console.info(`${family.name}: ${faults.length} faults; ${shares.join(', ')}`);
    const low = [...figures].filter(([, { stated, held }]) => binomialTail(stated, held, HELD) < 1e-4);
    expect([
      ...faults,
      ...low.map(([name, { stated, held }]) => `${name}: ${held} of ${stated} intervals hold`),
    ]).toEqual([]);
  });
}

/** Chance of at most so many of n at a probability, by the sum of its terms in logarithms. */
function binomialTail(n: number, most: number, probability: number): number {
  let [term, sum] = [n * Math.log(1 - probability), 0];
  for (let k = 0; k <= most; k++) {
    sum += Math.exp(term);
    term += Math.log(((n - k) * probability) / ((k + 1) * (1 - probability)));
  }
  return sum;
}
