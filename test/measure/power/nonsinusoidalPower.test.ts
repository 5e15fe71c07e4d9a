import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  displacementDeg,
  nonsinusoidalPower,
  type PowerBasis,
} from '../../../src/measure/power/nonsinusoidalPower.ts';
import { powerRatios } from '../../../src/measure/power/powerFigures.ts';
import { example, examplePowers, exampleRatios, type Phasor, radians } from './phasors.ts';

/** The basis of some phasors, in closed form. */
function basisOf(voltage: readonly Phasor[], current: readonly Phasor[]): PowerBasis {
  const [v, i] = [voltage[0]!, current[0]!];
  const others = (phasors: readonly Phasor[]): number =>
    Math.hypot(...phasors.slice(1).map(({ rms }) => rms));
  return {
    fundamentalV: v.rms,
    harmonicV: others(voltage),
    inPhaseA: i.rms * Math.cos(radians(v.deg - i.deg)),
    laggingA: i.rms * Math.sin(radians(v.deg - i.deg)),
    harmonicA: others(current),
    harmonicActiveW: voltage
      .slice(1)
      .reduce(
        (sum, { rms, deg }, k) =>
          sum + rms * current[k + 1]!.rms * Math.cos(radians(deg - current[k + 1]!.deg)),
        0,
      ),
  };
}

test('the worked example of IEEE Std 1459 and Emanuel 2010 in closed form', () => {
  const basis = basisOf(example.voltage, example.current);
  const powers = nonsinusoidalPower(basis);
  for (const [key, value] of Object.entries(examplePowers)) {
    // Half of the last digit that the recomputed values carry.
    expect(Math.abs(powers[key as keyof typeof examplePowers] - value), key).toBeLessThan(5.1e-7);
  }
  const ratios = powerRatios(basis);
  expect(Math.abs(ratios.powerFactor - exampleRatios.powerFactor)).toBeLessThan(5.1e-7);
  expect(Math.abs(ratios.displacementPowerFactor - exampleRatios.displacementPowerFactor)).toBeLessThan(
    5.1e-7,
  );
  expect(Math.abs(displacementDeg(basis) - 30)).toBeLessThan(1e-12);
  expect(Math.abs(ratios.harmonicPollutionPercent - exampleRatios.harmonicPollutionPercent)).toBeLessThan(
    5.1e-5,
  );
});

test('S² = P² + N² = S1² + SN², SN² = DI² + DV² + SH², SH² = PH² + DH²', () => {
  const rms = fc.double({ min: 0.01, max: 1000, noNaN: true });
  const deg = fc.double({ min: -180, max: 180, noNaN: true });
  const phasors = fc.tuple(rms, deg, rms, deg, rms, deg).map(([a, b, c, d, e, f]) => [
    { order: 1, rms: a, deg: b },
    { order: 3, rms: c, deg: d },
    { order: 5, rms: e, deg: f },
  ]);
  fc.assert(
    fc.property(phasors, phasors, (voltage, current) => {
      const p = nonsinusoidalPower(basisOf(voltage, current));
      const square = p.apparentVA ** 2;
      // Sums of squares in floating point: some ulp of the whole.
      const near = (a: number, b: number): void =>
        expect(Math.abs(a - b)).toBeLessThan(1e-13 * square + 1e-300);
      near(p.activeW ** 2 + p.nonactiveVar ** 2, square);
      near(p.fundamentalApparentVA ** 2 + p.nonfundamentalApparentVA ** 2, square);
      near(
        p.currentDistortionVar ** 2 + p.voltageDistortionVar ** 2 + p.harmonicApparentVA ** 2,
        p.nonfundamentalApparentVA ** 2,
      );
      near(p.fundamentalActiveW ** 2 + p.fundamentalReactiveVar ** 2, p.fundamentalApparentVA ** 2);
      near(p.harmonicActiveW ** 2 + p.harmonicDistortionVar ** 2, p.harmonicApparentVA ** 2);
    }),
    { numRuns: 200, seed: 1459 },
  );
});

test('powerRatios(basis) refuses a load without a fundamental', () => {
  const basis = { ...basisOf(example.voltage, example.current), inPhaseA: 0, laggingA: 0 };
  expect(() => powerRatios(basis)).toThrow(RangeError);
});
