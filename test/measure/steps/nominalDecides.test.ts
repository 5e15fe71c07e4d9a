import { describe, expect, it } from 'vitest';
import { ASSUMED_INSTRUMENT } from '../../../src/measure/doubt/instrument.ts';
import { followSupply } from '../../../src/measure/steps/followSupply.ts';
import {
  againstNominal,
  eventsOf,
  scaledSupply,
  supplyTimeline,
} from '../../../src/measure/steps/supplyTimeline.ts';

const chain = { instrument: ASSUMED_INSTRUMENT, scaleSource: 'scope and probe' } as const;

/** One second of a 50 Hz sine that goes down by so many volts at 0.5 s, in a rising zero. */
function stepDown(rmsV: number, byV: number) {
  const intervalS = 1e-4;
  const samples = Float64Array.from({ length: 10_000 }, (_, n) => {
    const rms = n < 5_000 ? rmsV : rmsV - byV;
    return Math.SQRT2 * rms * Math.sin(2 * Math.PI * 50 * n * intervalS);
  });
  return { samples, intervalS, startS: 0 };
}

describe('nominal decides which changes are steps', () => {
  // A step is 1 % of nominal. With the usual voltage well above it, 1 % of nominal is less than 1 % of that.
  it.each([
    [100, 107, 1.02],
    [100, 107, 1.03],
    [100, 107, 1.045],
    [100, 107, 1.06],
    [110, 120, 1.045],
    [100, 120, 1.02],
    [120, 110, 1.045],
    [230, 230, 1.02],
  ])('told %d V on %d V, a step of %d % is one', (nominal, usual, percent) => {
    const steps = supplyTimeline(stepDown(usual, (percent / 100) * nominal), { nominal })!.steps;
    expect(steps.length).toBe(1);
    // Of whole cycles of a sine without noise: but for what sums of squares round.
    expect(Math.abs(steps[0]!.afterPercent.value! / -percent - 1)).toBeLessThan(1e-6);
    expect(Math.abs(steps[0]!.atS.value - 0.5)).toBeLessThan(steps[0]!.atS.uncertainty);
  });

  it.each([
    [100, 107, 0.98],
    [110, 120, 0.98],
    // Over 1 % of the voltage itself, and no step of what it is told to be.
    [120, 110, 0.95],
    [230, 230, 0.98],
  ])('told %d V on %d V, a change of %d % is none', (nominal, usual, percent) => {
    const { steps } = supplyTimeline(stepDown(usual, (percent / 100) * nominal), { nominal })!;
    expect(steps).toEqual([]);
  });

  it('what is steady is told before nominal is, and stays whatever that is', () => {
    const record = stepDown(107, 1.04);
    const { steady } = supplyTimeline(record)!;
    expect(supplyTimeline(record, { nominal: 100 })!.steady).toEqual(steady);
  });

  it('judges one course against several voltages without following the record again', () => {
    const followed = followSupply(stepDown(107, 1.04), null)!;
    const happened = eventsOf(followed, chain, false);
    const counts = [100, 107, null].map(
      (nominal) => againstNominal(followed, happened, nominal, chain).steps.length,
    );
    expect(counts).toEqual([1, 0, 0]);
  });
});

it('a gain told later scales the course, as following the scaled record does', () => {
  const record = stepDown(57.5, 2);
  // A power of two: both ways round alike.
  const samples = record.samples.map((x) => 4 * x);
  const followed = scaledSupply(followSupply(record, null)!, 4, samples);
  const happened = eventsOf(followed, chain, false);
  const again = supplyTimeline({ ...record, samples }, { nominal: 230, chain })!;
  expect(againstNominal(followed, happened, 230, chain)).toEqual({
    steps: again.steps,
    excursions: again.excursions,
  });
  expect(again.steps.length).toBe(1);
});
