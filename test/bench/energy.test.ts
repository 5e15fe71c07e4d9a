import { expect, test } from 'vitest';
import { isDecentUsableShare } from '../../src/bench/claims/judgeUnitClaim.ts';
import { energyRatios } from '../../src/bench/energyRun.ts';

const exactly = (value: number): { value: number; uncertainty: number } => ({ value, uncertainty: 0 });

// Common practice, no source: the three ratios as bench tests of small power stations give them.
test('209 Wh at DC and 190 Wh at AC of a unit rated 240 Wh: 87 %, 79 % and 91 %', () => {
  const ratios = energyRatios({ ratedWh: 240, directWh: exactly(209), alternatingWh: exactly(190) });
  expect(ratios.usableSharePercent).toMatchObject({ value: (100 * 209) / 240, uncertainty: 0 });
  expect(Math.round(ratios.usableSharePercent.value!)).toBe(87);
  expect(Math.round(ratios.outletSharePercent.value!)).toBe(79);
  expect(Math.round(ratios.conversionEfficiencyPercent.value!)).toBe(91);
});

test('the outlet share is the usable share times the conversion efficiency', () => {
  const { usableSharePercent, outletSharePercent, conversionEfficiencyPercent } = energyRatios({
    ratedWh: 512,
    directWh: exactly(466.1),
    alternatingWh: exactly(401.7),
  });
  const product = (usableSharePercent.value! * conversionEfficiencyPercent.value!) / 100;
  expect(Math.abs(outletSharePercent.value! - product)).toBeLessThan(1e-12);
});

test('the rating adds no uncertainty, the measured energies do', () => {
  const { usableSharePercent, conversionEfficiencyPercent } = energyRatios({
    ratedWh: 200,
    directWh: { value: 180, uncertainty: 5.4 },
    alternatingWh: { value: 153, uncertainty: 6.12 },
  });
  expect(
    Math.abs((usableSharePercent.value === null ? 0 : usableSharePercent.uncertainty) - 2.7),
  ).toBeLessThan(1e-12);
  // 3 % and 4 % make 5 % of 85 %.
  const doubt = conversionEfficiencyPercent.value === null ? 0 : conversionEfficiencyPercent.uncertainty;
  expect(Math.abs(doubt - 4.25)).toBeLessThan(1e-12);
});

test('what was not measured is said, and no ratio takes its place', () => {
  const ratios = energyRatios({ ratedWh: 650, directWh: null, alternatingWh: exactly(520) });
  const reason = { code: 'energy.noneAt', side: 'DC side' };
  expect(ratios.usableSharePercent).toEqual({ value: null, reason });
  expect(ratios.conversionEfficiencyPercent).toEqual({ value: null, reason });
  expect(ratios.outletSharePercent.value).toBe(80);
  expect(() => energyRatios({ ratedWh: 0, directWh: null, alternatingWh: null })).toThrow(RangeError);
});

test('a usable share of 85 % and up is taken as decent (common practice, no source)', () => {
  expect(isDecentUsableShare((100 * 572) / 650)).toBe(true);
  expect(isDecentUsableShare(85)).toBe(true);
  expect(isDecentUsableShare(84.9)).toBe(false);
});
