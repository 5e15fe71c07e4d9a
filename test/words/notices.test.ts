import { describe, expect, it } from 'vitest';
import type { AssayNotice } from '../../src/assay/notices.ts';
import { errorData } from '../../src/base/measureError.ts';
import type { BenchNotice, CompareNotice } from '../../src/bench/notices.ts';
import type { EnergyNotice } from '../../src/energy/notices.ts';
import type { MeterFact } from '../../src/judge/notices.ts';
import { readError } from '../../src/read/readErrors.ts';
import { fieldOf, type OptionName } from '../../src/words/optionNames.ts';
import { worded } from '../../src/words/worded.ts';

const said = (notice: BenchNotice | CompareNotice, option?: OptionName): string =>
  worded({ notices: [notice] }, option).notices[0]!.message;

describe('the sentence of a notice of an energy log', () => {
  it.each<[EnergyNotice, string | RegExp]>([
    [
      { code: 'counter.fixedStep', name: 'kWh', ratioPercent: 93.4, seconds: 5.001 },
      /kWh\) is wrong: it takes each row for 5 s, whatever the clock says, and comes to 93\.4 %/,
    ],
    [{ code: 'holes.left', holes: 1, hours: 0.5 }, /^1 hole in the record \(30 min in all\)/],
    [
      { code: 'holes.counted', holes: 2, hours: 3.21 },
      /^2 holes in the record \(3\.21 h in all\) under load/,
    ],
    [
      { code: 'logMeter.assumed', measured: 'watts', isAc: true, clockPpm: 5000 },
      /assumed watts to 2 % and two steps, its clock to 0\.5 % /,
    ],
    [{ code: 'run.open', kind: 'charge' }, /before the charge was over/],
    [
      { code: 'total.differs', place: 'head', unit: 'Ah', value: 1.1, ratioPercent: 96 },
      /^The total in the log's head, 1\.1 Ah, is 96 %/,
    ],
  ])('%o', (notice, expected) => {
    expect(worded({ notices: [notice] }).notices[0]!.message).toMatch(expected);
  });
});

describe('the sentence of a notice', () => {
  it.each<[BenchNotice | CompareNotice, string | RegExp]>([
    [
      {
        ...{ code: 'scale.implied', channels: ['CH1', 'CH2'] },
        hints: [{ channel: 'CH1', factor: 0.0048, division: null }],
      },
      "CH1, CH2 holds whole numbers that may be a converter's codes. The head gives this for one count: try --scale CH1=0.0048.",
    ],
    [
      {
        ...{ code: 'counts.unscaled', channels: ['CH1'] },
        hints: [{ channel: 'CH1', factor: 0.0048, division: { volts: 0.12, counts: 25 } }],
      },
      /with --scale\. The head gives 0\.12 for a division, which is 25 counts on most scopes: try --scale CH1=0\.0048\.$/,
    ],
    [
      { code: 'current.scaleAssumed', channel: 'CH2', unit: 'counts' },
      /^CH2 is in counts: .* --scale CH2=FACTOR \(10 for 100 mV\/A\)\.$/,
    ],
    [
      { code: 'rows.malformed', lines: [102, 302, 502], more: 2, found: '"abc"' },
      `Lines 102, 302, 502 and 2 more can't be read as rows of numbers ("abc") and are left out.`,
    ],
    [
      { code: 'rows.malformed', lines: [504], more: 0, found: 'the number 500 again' },
      "Line 504 can't be read as a row of numbers (the number 500 again) and is left out.",
    ],
    [
      {
        ...{ code: 'time.contradicts', best: 'increment', isSupported: true },
        stated: [
          { key: 'interval', intervalS: 1e-4 },
          { key: 'increment', intervalS: 2e-4 },
        ],
      },
      'The settings in the file contradict each other on the time between samples: "interval" means 100 µs, "increment" means 200 µs. "increment" agrees with the rest of the file and counts. Check that the frequency makes sense.',
    ],
    [{ code: 'time.uneven', rows: 'kept on change' }, /the value before is held/],
    [{ code: 'time.uneven', rows: 'uneven', bendPercent: 0.04 }, /by up to 0\.1 % of its span\.$/],
    [
      { code: 'channels.others', first: 'CH1', unit: 'V', others: ['CH2', 'CH3'] },
      'CH1 is measured, the first of 3 channels in V; not measured: CH2, CH3 (--voltage NAME or --voltage all).',
    ],
    [
      { code: 'channels.larger', channel: 'CH4', swing: 38, unit: 'V', first: 'CH1', times: 19 },
      /^CH4 carries 38 V, 19 times as much as CH1, .*--voltage CH4\.$/,
    ],
    [
      {
        ...{ code: 'wave.overRange', channel: 'CH1', unit: 'V', marked: 40, samples: 400 },
        ends: [120, -120],
      },
      /: 40 of 400 samples hold a mark.*cut off at 120 V and -120 V; its RMS and peaks are really higher\. Set more volts per division/,
    ],
    [{ code: 'columns.skipped', why: 'side by side', exports: 2 }, /^The file holds 2 exports side by side/],
    [{ code: 'columns.skipped', why: 'text', names: ['a', 'b'] }, 'Not numbers, and left out: "a", "b".'],
    [{ code: 'columns.skipped', why: 'empty', names: ['a', 'b'] }, /, and left out: a, b\.$/],
    [
      { code: 'gaps.found', channel: 'CH1', gaps: 1, missing: 1, samples: 400 },
      /has one gap: 1 of 400 .*It keeps/,
    ],
    [{ code: 'unit.assumed', volts: ['A', 'B'], amperes: ['C'] }, /volts for A, B, amperes for C\.$/],
    [
      {
        code: 'channels.unmeasured',
        errors: [errorData(readError('channel.unknown', { wanted: 'X', channels: [] }))],
      },
      /^Not measured: .*[^.]\.$/,
    ],
    [{ code: 'bench.loadKind', file: 'a.csv', kind: 'inductive' }, /^a\.csv has an inductive load: /],
    [{ code: 'bench.scaleDiffers', file: '600w.csv', rmsV: 1.204 }, /^600w\.csv shows 1\.2 V, far from/],
    [{ code: 'compare.orders', a: 50, b: 40 }, /to different orders, 50 and 40: .* set --orders\.$/],
    [
      { code: 'ripple.alias', rippleHz: 48_600, sampleRateHz: 100_000, neededHz: 500_000, isNearHalf: true },
      /48\.6 kHz lies close to half the sample rate, 50 kHz: .*Save again at 500 kS\/s or more\.$/,
    ],
    [
      { code: 'ripple.alias', rippleHz: 3100, sampleRateHz: 20_000, neededHz: 200_000, isNearHalf: false },
      /16\.9 kHz or 23\.1 kHz folded down.* 200 kS\/s or more/,
    ],
    [{ code: 'acquisition.mode', acquisition: 'peak detect' }, /\(peak detect\) .* look larger: /],
    [{ code: 'acquisition.mode', acquisition: 'envelope' }, /larger/],
    [{ code: 'acquisition.mode', acquisition: 'average' }, /vanishes/],
    [{ code: 'acquisition.mode', acquisition: 'high resolution' }, /smaller/],
    [
      {
        code: 'digitiser.range',
        ...{ levelsUsed: 43, levelsAvailable: 256, perDivision: 20, unit: 'V', fillPercent: 82.03 },
        ...{ bitsAssumed: false, divisions: 8 },
      },
      "The wave uses 43 of the scope's 256 levels: set 20 V per division, where it fills 82 % of the screen (8 divisions assumed).",
    ],
    [
      {
        code: 'digitiser.range',
        ...{ levelsUsed: 43, levelsAvailable: 256, perDivision: 20, unit: 'A', fillPercent: 82.03 },
        ...{ bitsAssumed: true, divisions: 8 },
      },
      /set 20 A per division.*\(8 bits and 8 divisions assumed\)\.$/,
    ],
    [
      { code: 'digitiser.clipped', ends: 'both', perDivision: 200, unit: 'V' },
      'Samples pile up on the highest and the lowest code of the scope, which cuts the wave off: set 200 V per division and save again.',
    ],
    [
      { code: 'digitiser.clipped', ends: 'top', perDivision: null, unit: 'V' },
      /the highest code that the record holds: .* set more volts per division/,
    ],
    [
      { code: 'digitiser.missingCodes', missing: 1, levels: 200, isOfFile: false },
      /^One level .* never occurs .* passes it: /,
    ],
    [
      { code: 'digitiser.missingCodes', missing: 100, levels: 200, isOfFile: true },
      /^100 of the 200 levels .* coarser than the file makes it look\.$/,
    ],
    [
      { code: 'value.outlier', value: 5, atS: 0.0617, more: 0 },
      /^A single value of 5 at 0\.0617 s stands far off the wave: /,
    ],
    [{ code: 'value.outlier', value: -5, atS: 0.015, more: 1 }, /value of -5 at 0\.015 s .* and 1 more: /],
    [
      { code: 'value.outlier', value: 20_315, atS: 0.005, more: 9, leftOutOf: { name: 'CH1', unit: '' } },
      /^CH1: a single value of 20320 at 0\.005 s, and 9 more like it, are far beyond all others and left out: /,
    ],
    [{ code: 'power.negative', activeW: -8627 }, /-8630 W: .*the wrong way round\. .*\(--invert NAME\)\.$/],
    [{ code: 'power.negative', activeW: null }, /^Power at the DC input comes out negative/],
    [
      { code: 'dc.large', meanV: 461, acRmsV: 230 },
      /^The wave rides on 461 V of DC, .* the RMS without DC: 230 V\.$/,
    ],
    [
      { code: 'nominal.off', nominal: { voltageV: 120, frequencyHz: 60 }, rmsV: 109, off: 109 / 120 - 1 },
      'Taken for 120 V 60 Hz, for which 109 V is 9 % low: if the outlet is meant for another voltage, tell it with --nominal.',
    ],
    [
      {
        ...{ code: 'nominal.other', nominal: { voltageV: 120, frequencyHz: 60 }, rmsV: 132, off: 0.1 },
        others: [{ voltageV: 127, frequencyHz: 60 }],
      },
      'Taken for 120 V 60 Hz, for which 132 V is 10 % high; 127 V 60 Hz is possible too. Tell which with --nominal.',
    ],
    [{ code: 'nominal.none', others: [] }, /left out\. Tell it with --nominal\.$/],
    [
      { code: 'nominal.none', others: [{ voltageV: 208, frequencyHz: 60 }] },
      /left out\. If the outlet is meant for 208 V 60 Hz, tell it with --nominal\.$/,
    ],
    [
      { code: 'frequency.suspect', frequencyHz: 91.3, expectedHz: null },
      /^91\.3 Hz is far from 50 or 60 Hz: the file's time axis looks wrong/,
    ],
    [{ code: 'scale.half', rmsV: 122.4, wholeV: 230 }, /^122 V is about half of 230 V: /],
    [
      {
        ...{ code: 'scale.suspect', rmsV: 1.2 },
        proposals: [
          { ratio: 100, landsOnV: 120 },
          { ratio: 200, landsOnV: 240 },
        ],
      },
      /but --scale 100 would land near 120 V, --scale 200 would land near 240 V\. Check .*\(--scale comes on top/,
    ],
    [{ code: 'scale.suspect', rmsV: 1.65, proposals: [] }, /1\.65 V is no outlet voltage\. Check/],
    [
      { code: 'load.differs', words: '400 W', from: 'told', measured: '258 W' },
      /^Told was 400 W, measured was 258 W: /,
    ],
    [
      { code: 'load.differs', words: '400 W', from: 'file name', measured: '258 W' },
      /^The file’s name says 400 W, measured was 258 W: /,
    ],
    [{ code: 'span.steady', by: 'current', fromS: 0.1, toS: 0.4 }, /^The load’s current steps or drifts/],
    [
      { code: 'cycles.few', cycles: 2.5, isPart: true },
      /^Only 2\.5 cycles of the record are steady: [^.]*\.$/,
    ],
    [{ code: 'cycles.few', cycles: 2.24, isPart: false, of: ['CH2'] }, /^CH2: Only 2\.2 cycles: /],
    [
      { code: 'cycles.few', cycles: 2.24, isPart: false, of: ['a.csv', 'CH2'], alsoOf: ['b.csv', 'c.csv'] },
      /^a\.csv: CH2: Only 2\.2 cycles: .* The same doubt of b\.csv, c\.csv\.$/,
    ],
  ])('%o', (notice, expected) => {
    if (typeof expected === 'string') expect(said(notice)).toBe(expected);
    else expect(said(notice)).toMatch(expected);
  });

  it('calls an option as the door does', () => {
    expect(fieldOf('nominal')).toBe('“Nominal”');
    expect(fieldOf('sampleRateHz')).toBe('“Samples a second”');
    expect(fieldOf('scales')).toBe('“Probe or divider ratio”');
    const negative: AssayNotice = { code: 'power.negative', activeW: -8627 };
    expect(said(negative, fieldOf)).toMatch(/\(“Upside down” NAME\)\.$/);
    const skewed: AssayNotice = { code: 'power.skew', doubtS: 1e-5, doubtW: 12.3 };
    expect(said(skewed)).toMatch(/may be 10 µs apart .* 12 W .* give with --skew\.$/);
    expect(said(skewed, fieldOf)).toMatch(/give with --skew of the command line\.$/);
  });

  it.each<[MeterFact, RegExp]>([
    [
      { code: 'meter.calibrated', factor: 1.013, isCredible: true },
      /factor 1\.013\. .*: --scale 1\.013 \(times any scale already set\)\.$/,
    ],
    [{ code: 'meter.calibrated', factor: 1.7, isCredible: false }, /That is far from 1: /],
    [{ code: 'meter.scale', readingV: 120, fileV: 1.2, ratio: 100 }, /Set --scale 100 /],
    [
      { code: 'meter.average', readingV: 97, fileV: 120, averageV: 98, kind: 'modified sine' },
      /^The meter is probably not true-RMS: it shows 97 V, and on this modified sine .* about 98 V; /,
    ],
  ])('a meter’s answer: %o', (message, expected) => {
    expect(worded({ message }).message).toMatch(expected);
  });

  it('says of an option that the page has no field for that it is the command line’s', () => {
    expect(said({ code: 'compare.orders', a: 50, b: 40 }, fieldOf)).toMatch(
      /set --orders of the command line\.$/,
    );
  });

  it('stays as it is where a document has it already', () => {
    const notice = { code: 'cycles.few', message: 'Only a few.' };
    expect(worded({ notices: [notice] }).notices).toEqual([notice]);
  });
});
