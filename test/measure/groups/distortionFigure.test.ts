import { expect, test } from 'vitest';
import { within } from '../../../src/measure/doubt/component.ts';
import { distortionFigure } from '../../../src/measure/groups/groupFigures.ts';
import { harmonicGroups } from '../../../src/measure/groups/harmonicGroups.ts';
import { gaussianNumbers, randomNumbers } from '../../../src/signal/randomNumbers.ts';
import { fitAt, toneSum } from './toneSum.ts';

const RATE = 10_000;
const scope = (percent: number) => within("the scope's own distortion", percent, '%', 1);

function groupsOf(samples: Float64Array) {
  return harmonicGroups({ intervalS: 1 / RATE, fit: fitAt(samples, 50, RATE), nominalFrequencyHz: 50 })!;
}

test('one window without noise: the scope alone is in doubt', () => {
  const groups = groupsOf(
    toneSum(
      [
        [50, 200],
        [150, 6, 1],
        [155, 8, 2],
      ],
      RATE,
      2000,
    ),
  );
  const options = { highestOrder: 40, noise: 0, intervalS: 1 / RATE, distortion: scope(0.3) };
  // 6/200 and, with the line beside it, 10/200.
  const thd = distortionFigure(groups, { ...options, kind: 'thdRatio' })!;
  expect(Math.abs(thd.value - 3)).toBeLessThan(1e-6);
  // 95.45 % of a rectangle of ± 0.3.
  expect(Math.abs(thd.uncertainty - 0.9545 * 0.3)).toBeLessThan(1e-3);
  expect(thd.notAbove).toBe(undefined);
  for (const kind of ['thdGroupsRatio', 'thdSubgroupsRatio'] as const) {
    expect(Math.abs(distortionFigure(groups, { ...options, kind })!.value - 5)).toBeLessThan(1e-6);
  }
  expect(distortionFigure(groups, { ...options, kind: 'thdRatio', highestOrder: 45 })).toBe(null);
});

test('noise is inside the doubt, and a figure made of noise alone gets a bound', () => {
  const normal = gaussianNumbers(randomNumbers(9));
  const noisy = (tones: Parameters<typeof toneSum>[0]) =>
    groupsOf(toneSum(tones, RATE, 10 * 2000).map((x) => x + 2 * normal()));
  const options = { highestOrder: 40, noise: 2, intervalS: 1 / RATE, distortion: scope(0) };
  for (const kind of ['thdRatio', 'thdSubgroupsRatio', 'thdGroupsRatio'] as const) {
    const real = distortionFigure(
      noisy([
        [50, 230],
        [150, 6, 1],
      ]),
      { ...options, kind },
    )!;
    expect(Math.abs(real.value - 600 / 230)).toBeLessThan(real.uncertainty);
    const floor = distortionFigure(noisy([[50, 230]]), { ...options, kind })!;
    // √(2 · 39 · lines · 4 / 2000) / 230.
    const lines = { thdRatio: 1, thdSubgroupsRatio: 3, thdGroupsRatio: 10 }[kind];
    const expected = (100 * Math.sqrt((2 * 39 * lines * 4) / 2000)) / 230;
    // Ten windows of 39 lines scatter by 1/√390/2 = 2.5 %: four times that.
    expect(Math.abs(floor.value / expected - 1)).toBeLessThan(0.1);
    expect(floor.notAbove).toBe(floor.value + floor.uncertainty);
  }
});

test('windows that differ add the deviation of their mean', () => {
  const [low, high] = [4, 8].map((rms) =>
    toneSum(
      [
        [50, 200],
        [250, rms],
      ],
      RATE,
      2000,
    ),
  );
  const groups = groupsOf(Float64Array.from([...low!, ...high!, ...low!, ...high!]));
  const options = { highestOrder: 40, noise: 0, intervalS: 1 / RATE, distortion: scope(0) };
  const figure = distortionFigure(groups, { ...options, kind: 'thdRatio' })!;
  // 2, 4, 2, 4 %: s = √(4/3), of the mean half that; Student's factor for three degrees of freedom 3.31 (GUM, G.2).
  expect(Math.abs(figure.value - Math.sqrt(10))).toBeLessThan(1e-6);
  expect(Math.abs(figure.uncertainty / (3.31 * Math.sqrt(1 / 3)) - 1)).toBeLessThan(0.01);
});
