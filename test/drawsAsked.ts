/**
 * How many random captures a standing test draws: few by itself, as many as `SINEASSAY_DRAWS` says for a thorough
 * search: `SINEASSAY_DRAWS=400 npx vitest run test/figures/peaks.test.ts`.
 */
export function drawsAsked(fewest: number): number {
  const asked = Number(process.env.SINEASSAY_DRAWS ?? fewest);
  if (!(Number.isInteger(asked) && asked > 0))
    throw new RangeError('SINEASSAY_DRAWS must be a whole number above 0');
  return asked;
}
