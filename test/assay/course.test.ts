import { expect, test } from 'vitest';
import type { Assay } from '../../src/assay/assay.ts';
import { assayCapture } from '../../src/assay/assayCapture.ts';
import type { AssayOptions } from '../../src/assay/assayOptions.ts';
import { parseClaim } from '../../src/judge/claims/parseClaim.ts';
import type { Capture } from '../../src/read/capture.ts';
import { waveOfRms } from '../../src/synth/changedWaves.ts';
import { course, type Evolution, evolvingWave } from '../../src/synth/evolvingWave.ts';
import { sampleEvolvingWave } from '../../src/synth/sampleWave.ts';
import { sineWave } from '../../src/synth/sines.ts';
import { answerSentence } from '../../src/words/answerSentence.ts';
import { worded } from '../../src/words/worded.ts';

const rate = 20_000;
const startS = -0.3;
function assayOf(evolution: Omit<Evolution, 'wave'>, options: AssayOptions = {}, durationS = 1): Assay {
  const wave = evolvingWave({ wave: waveOfRms(sineWave(), 230), ...evolution });
  const samples = sampleEvolvingWave(wave, {
    sampleRateHz: rate,
    durationS,
    startS,
    noiseRms: 1,
    converter: { bits: 8, fullScale: 500 },
  });
  const capture: Capture = {
    channels: [{ name: 'CH1', quantity: 'voltage', unit: 'V', scale: 1, samples, gaps: [], stepSize: null }],
    sampleCount: samples.length,
    startS,
    intervalS: 1 / rate,
    layout: '',
    notices: [],
  };
  return assayCapture(capture, { file: 'x.csv', sha256: '' }, options)[0]!;
}

const loaded = {
  frequencyHz: 50,
  amplitude: course(1, [{ atS: 0, to: 0.97, transient: { by: -0.1, tauS: 0.05 } }]),
};

test('a load step: when, which way, from where to where, and the figures describe the steady rest', () => {
  const { result, dynamics } = assayOf(loaded);
  const [step] = result.steps;
  expect(result.steps.length).toBe(1);
  // 1.5 cycles, 0.2 % and 0.5 % are what the step's definition is held to.
  expect(Math.abs(step!.atS.value)).toBeLessThan(0.03);
  expect(step!.direction).toBe('on');
  expect(Math.abs(step!.beforeV.value / 230 - 1)).toBeLessThan(0.002);
  expect(Math.abs(step!.afterV.value / (0.97 * 230) - 1)).toBeLessThan(0.002);
  expect(step!.thdBeforePercent.value).not.toBeNull();
  expect(step!.curves.every(({ outcome }) => outcome === 'information')).toBe(true);
  expect(step!.curves.map(({ standard }) => standard)).toContain('ISO 8528-5');
  expect(step!.atS).not.toHaveProperty('budget');
  const { spanS, rmsV } = result.voltage!;
  expect(spanS[0]).toBeGreaterThan(0.05);
  expect(Math.abs(rmsV.value! / (0.97 * 230) - 1)).toBeLessThan(0.003);
  expect(result.notices.map(({ code }) => code)).toContain('span.steady');
  expect(dynamics!.timeS.length).toBe(dynamics!.rmsHalfCycle.length);
});

test('a steady record has no step, and is measured whole', () => {
  const { result, dynamics } = assayOf({ frequencyHz: 50 });
  expect([result.steps, result.events, result.excursions, dynamics]).toEqual([[], [], [], null]);
  expect(result.voltage!.spanS[0]).toBe(startS);
});

const transferred = { frequencyHz: 50, breaks: [{ fromS: 0.1, toS: 0.112 }] };

test('a transfer gap of 12 ms is timed, and a claim about it judged', () => {
  const claims = ['transfer < 20 ms', 'transfer < 10 ms'].map(parseClaim);
  const { result } = assayOf(transferred, { claims });
  const [event] = result.events;
  if (event?.kind !== 'transfer') throw new Error('no transfer');
  expect(Math.abs(event.durationS.value - 0.012)).toBeLessThan(0.0005);
  expect(result.claims.map(({ quantity, outcome }) => [quantity, outcome])).toEqual([
    ['transferS', 'pass'],
    ['transferS', 'fail'],
  ]);
});

test('a claim about transfer is not judged on a record without one', () => {
  const { result } = assayOf({ frequencyHz: 50 }, { claims: [parseClaim('UPS, under 20 ms')] });
  expect(result.claims[0]).toMatchObject({
    quantity: 'transferS',
    outcome: 'not judged',
    limit: { max: 0.02 },
  });
});

test('a slow sag has no step, and its steadiest stretch is measured', () => {
  const amplitude = { at: (t: number) => 1 - 0.08 * (t - startS), integral: () => 0 };
  const { result } = assayOf({ frequencyHz: 50, amplitude }, {}, 2);
  expect(result.steps).toEqual([]);
  expect(result.notices.map(({ code }) => code)).toContain('span.steady');
  expect(result.voltage!.spanS[1] - result.voltage!.spanS[0]).toBeLessThan(1);
});

test('a whole record off an inferred nominal is no dip; off a told one it is', () => {
  const low = { frequencyHz: 50, amplitude: course(0.88) };
  expect(assayOf(low).result.excursions).toEqual([]);
  const told = assayOf(low, { nominal: { voltageV: 230, frequencyHz: 50 } }).result;
  expect(told.excursions.map(({ kind }) => kind)).toEqual(['dip']);
});

test('output lost under a load that words tell: the event has it, and how long it was held at least', () => {
  const breaks = [{ fromS: 0.2, toS: 9 }];
  const { events } = assayOf({ frequencyHz: 50, breaks }, { load: '1500 W heater' }).result;
  expect(events.map(({ kind, loadW, heldAtLeast }) => [kind, loadW, heldAtLeast])).toEqual([
    ['cut-off', 1500, true],
  ]);
  // Half a second of record before it.
  expect(Math.abs(events[0]!.heldS!.value - 0.5)).toBeLessThan(0.0005);
  const bursts = [0, 1, 2, 3].map((i) => ({ fromS: startS + 0.2 * i + 0.06, toS: startS + 0.2 * i + 0.2 }));
  const kinds = (load?: string): readonly string[] =>
    assayOf({ frequencyHz: 50, breaks: bursts }, load === undefined ? {} : { load }).result.events.map(
      ({ kind }) => kind,
    );
  expect(kinds()).toEqual(['idle bursts']);
  expect(kinds('1500 W heater')).toEqual(['hiccup']);
});

test('figures of a brown-out are held against the outlet that it was before, not taken for half of another', () => {
  const amplitude = course(1, [
    { atS: -0.1, to: 0.5 },
    { atS: 0.6, to: 1 },
  ]);
  const { result } = assayOf({ frequencyHz: 50, amplitude });
  expect(result.events.map(({ kind }) => kind)).toEqual(['brown-out']);
  // It lasts longer than what lies before or after it, so that the figures are its own.
  expect(Math.abs(result.voltage!.rmsV.value! / 115 - 1)).toBeLessThan(0.01);
  expect(result.nominal).toEqual({ voltageV: 230, frequencyHz: 50, inferred: true });
  expect(result.notices.map(({ code }) => code)).not.toContain('scale.half');
});

test('a load that words tell is not that of an event before it came on, nor of one after it went off', () => {
  const away = (fromS: number) => [{ fromS, toS: fromS + 0.03 }];
  const cases = [
    { breaks: away(-0.1), steps: [{ atS: 0.2, to: 0.95 }], loadW: undefined },
    { breaks: away(0.4), steps: [{ atS: 0.1, to: 0.95 }], loadW: 1500 },
    { breaks: away(-0.1), steps: [{ atS: 0.2, to: 1.05 }], loadW: 1500 },
    { breaks: away(0.4), steps: [{ atS: 0.1, to: 1.05 }], loadW: undefined },
  ];
  for (const { breaks, steps, loadW } of cases) {
    const { events } = assayOf(
      { frequencyHz: 50, breaks, amplitude: course(1, steps) },
      { load: '1500 W heater' },
    ).result;
    expect(events.map((event) => [event.kind, event.loadW])).toEqual([['transfer', loadW]]);
  }
});

test.each([1.4, 1.9])(
  'a start that fails after %s cycles tells no kind of wave, and bears no claim',
  (cycles) => {
    const breaks = [
      { fromS: -9, toS: 0.1 },
      { fromS: 0.1 + cycles / 50, toS: 9 },
    ];
    const claims = [parseClaim('pure sine'), parseClaim('230 V ±10 %')];
    const { result } = assayOf({ frequencyHz: 50, breaks }, { claims });
    expect(result.events.map(({ kind }) => kind)).toEqual(['failed start']);
    expect(result.voltage!.rmsV.value).toBeGreaterThan(200);
    expect(result.waveform.kind).toBe('not classified');
    expect(result.claims.map(({ outcome }) => outcome)).toEqual(['not judged', 'not judged']);
    expect(result.findings).toEqual([]);
  },
);

test('a start that fails after 2.5 cycles shows its wave, but bears no claim of the output', () => {
  const breaks = [
    { fromS: -9, toS: 0.1 },
    { fromS: 0.15, toS: 9 },
  ];
  const claims = [parseClaim('pure sine'), parseClaim('230 V ±10 %'), parseClaim('THD < 5 %')];
  const { result } = assayOf({ frequencyHz: 50, breaks }, { claims });
  expect(result.events.map(({ kind }) => kind)).toEqual(['failed start']);
  expect(result.waveform.kind).toBe('pure sine');
  expect(result.claims.map(({ outcome }) => outcome)).toEqual(['not judged', 'not judged', 'not judged']);
  expect(result.claims[0]!.reason).toEqual({ code: 'output.notStarted' });
  const few = result.notices.find(({ code }) => code === 'cycles.few');
  expect(few).toMatchObject({ isPart: true });
});

test('a start that fails within a cycle has a result without a period: the event, and claims that can’t be judged', () => {
  const breaks = [
    { fromS: -9, toS: 0.1 },
    { fromS: 0.118, toS: 9 },
  ];
  const claims = [parseClaim('pure sine'), parseClaim('230 V ±10 %')];
  const { result } = assayOf({ frequencyHz: 50, breaks }, { claims, load: '1500 W' });
  expect(result.events.map(({ kind, loadW }) => [kind, loadW])).toEqual([['failed start', 1500]]);
  expect(result.waveform.kind).toBe('not classified');
  expect(result.voltage!.rmsV).toEqual({
    value: null,
    reason: { code: 'wave.repeatsNot', of: 'brief' },
  });
  expect(result.voltage!.maxV.value).toBeGreaterThan(300);
  expect(result.claims.map(({ outcome }) => outcome)).toEqual(['not judged', 'not judged']);
  expect(result.findings).toEqual([]);
  expect(answerSentence(worded(result)).replaceAll('\u00a0', ' ')).toMatch(
    /^Output does not start: on for 18 ms and gone again, at 1500 W; meanwhile at 1500 W \(as told\), /,
  );
});
