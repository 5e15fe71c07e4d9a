import { expect, test } from 'vitest';
import { assayCapture } from '../../src/assay/assayCapture.ts';
import type { AssayResult } from '../../src/assay/measureDocument.ts';
import { readCapture } from '../../src/read/readCapture.ts';
import { type SynthesisOptions, synthesise } from '../../src/synth/synthesise.ts';

const resultOf = (options: SynthesisOptions, perWindow = false): AssayResult =>
  assayCapture(
    readCapture(synthesise({ sampleRateHz: 20_000, ...options }).bytes),
    { file: 'x.csv', sha256: '' },
    { perWindow },
  )[0]!.result;

test('forty cycles hold three windows of twelve: groups under keys that name their unit', () => {
  const { voltage } = resultOf({ shape: 'harmonics', cycles: 40, noiseRatio: 0.002 }, true);
  const groups = voltage!.harmonicGroups!;
  expect([groups.windows, groups.cyclesPerWindow, groups.highestOrder]).toEqual([3, 12, 50]);
  expect(groups.orders[2]).toHaveProperty('subgroupRmsV');
  expect(groups.perWindow!.map((window) => Object.keys(window).sort())).toEqual(
    Array(3).fill(['fundamentalRmsV', 'startS', 'thdGroupsPercent', 'thdPercent', 'thdSubgroupsPercent']),
  );
  // A third harmonic of 5 %: the three factors agree on it but for noise in their lines.
  for (const figure of [groups.thdPercent, groups.thdGroupsPercent, groups.thdSubgroupsPercent]) {
    expect(Math.abs(figure.value! - 5)).toBeLessThan(0.05);
  }
  expect(groups).not.toHaveProperty('budget');
  expect(groups.thdPercent).not.toHaveProperty('budget');
});

test('a short record has no groups, and network standards inform only', () => {
  const { voltage, findings } = resultOf({ shape: 'sine', cycles: 5 });
  expect(voltage!.harmonicGroups).toBeUndefined();
  const network = findings.filter(({ standard }) =>
    ['IEC 61000-2-2', 'IEEE 519', 'EN 50160'].includes(standard),
  );
  expect(network.length).toBeGreaterThan(0);
  expect(network.every(({ outcome }) => outcome === 'information')).toBe(true);
});

test('switching ripple is found with its frequency and RMS', () => {
  const { voltage } = resultOf({
    shape: 'ripple',
    cycles: 30,
    sampleRateHz: 60_000,
    ripple: { order: 333.3, ratio: 0.04 },
    noiseRatio: 0.002,
  });
  const ripple = voltage!.highBands!.ripple!;
  const { frequencyHz } = ripple;
  if (frequencyHz.value === null) throw new Error(JSON.stringify(frequencyHz.reason));
  expect(Math.abs(frequencyHz.value - 333.3 * 60)).toBeLessThan(frequencyHz.uncertainty);
  // 4 % of the fundamental; the RMS of 120 V counts the ripple in.
  expect(Math.abs(ripple.rmsV.value! - (0.04 * 120) / Math.hypot(1, 0.04))).toBeLessThan(0.05);
});

test('the digitiser check is in the document, and says once what to set', () => {
  const { capture, notices } = resultOf({ shape: 'sine', cycles: 6, fullScaleV: 2000, noiseRatio: 0.004 });
  expect(capture.digitiser).toMatchObject({ bits: 8, levelsAvailable: 256 });
  const codes = notices.map(({ code }) => code);
  expect(codes).toContain('digitiser.range');
  expect(codes).not.toContain('resolution.coarse');
});
