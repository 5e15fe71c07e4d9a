/**
 * How much a run of the tests draws. `npm test` takes a few of each family, so that every room is touched in a minute;
 * `npm run test:all` takes all of them (it sets SINEASSAY_TESTS), and runs the tests tagged `thorough` too.
 */
export const everything: boolean = process.env.SINEASSAY_TESTS === 'all';

/** So many draws, turns or samples. */
export function draws(all: number, few: number): number {
  return everything ? all : few;
}

/** Of a list of like cases: all, or one in so many. */
export function someOf<T>(cases: readonly T[], oneIn = 4): T[] {
  return cases.filter((_, i) => everything || i % oneIn === 0);
}

/**
 * How many random captures a standing test draws: few by itself, as many as `SINEASSAY_DRAWS` says for a thorough
 * search: `SINEASSAY_DRAWS=400 npx vitest run test/measure/peaks.test.ts`.
 */
export function drawsAsked(fewest: number): number {
  const asked = Number(process.env.SINEASSAY_DRAWS ?? draws(fewest, Math.ceil(fewest / 4)));
  if (!(Number.isInteger(asked) && asked > 0))
    throw new RangeError('SINEASSAY_DRAWS must be a whole number above 0');
  return asked;
}
