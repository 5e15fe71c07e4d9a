import type { AssayResult } from '../../src/assay/measureDocument.ts';
import { type Chance, drawnCsv, type Scope, type Signal } from './drawnCapture.ts';
import {
  cutSine,
  harmonicSine,
  pulseWidth,
  ringingThreeLevel,
  type Shape,
  shapeTruth,
  staircase,
  threeLevel,
} from './shapes.ts';

/** A capture drawn at random, and what may and must be said of it. */
export interface Draw {
  readonly csv: string;
  /** In words, to find it again. */
  readonly words: string;
  readonly frequencyHz?: number;
  readonly shape?: Shape;
  /** Figures that the shape is a truth of. */
  readonly figures?: readonly ('rmsV' | 'frequencyHz' | 'crestFactor' | 'formFactor' | 'thdPercent')[];
  /** Kinds that are right; absent: any. */
  readonly kinds?: readonly string[];
  /** Kinds of event that must be there; no other may, but for `mayBe`. Absent: none. */
  readonly events?: readonly string[];
  readonly mayBe?: readonly string[];
  /** Most load steps that may be told; default 0. */
  readonly steps?: number;
  /** Active power truth, W, of a resistor: its other powers are zero. */
  readonly resistorW?: number;
  /** What else must be true; a sentence says what is not. */
  readonly also?: (result: AssayResult) => string | null;
}

export interface Family {
  readonly name: string;
  readonly draw: (chance: Chance) => Draw;
}

const MAINS = [
  [120, 60],
  [230, 50],
  [240, 60],
] as const;

/** A periodic voltage alone in its record. */
function periodic(
  chance: Chance,
  made: { shape: (rms: number) => Shape; words: string; peakRatio?: number },
  how: {
    cycles: readonly [number, number];
    perCycle: readonly [number, number];
    bits?: readonly number[];
    noise?: number;
    scope?: Partial<Scope>;
    /** Where in its cycle the record may start; default: anywhere. */
    startsAt?: (phase: number, cycles: number) => boolean;
  },
): { csv: string; words: string; frequencyHz: number; shape: Shape } {
  const [rms, nominalHz] = chance.pick(MAINS);
  const frequencyHz = nominalHz * chance.between(0.985, 1.015);
  const shape = made.shape(rms);
  const sampleRateHz = Math.round(nominalHz * Math.exp(chance.between(...logs(how.perCycle))));
  const cycles = chance.between(...how.cycles);
  let start = chance.between(0, 1);
  while (how.startsAt?.(start, cycles) === false) start = chance.between(0, 1);
  const peak = (made.peakRatio ?? Math.SQRT2 * 1.1) * rms;
  const bits = chance.pick(how.bits ?? [8, 8, 10, 12]);
  const noise = (how.noise ?? chance.pick([0.001, 0.003, 0.01])) * rms;
  const signal: Signal = { name: 'CH1', unit: 'V', at: (t) => shape(start + frequencyHz * t), peak, noise };
  const count = Math.ceil((cycles * sampleRateHz) / frequencyHz);
  const csv = drawnCsv(
    [signal],
    { sampleRateHz, count, bits, fill: chance.between(0.5, 0.9), ...how.scope },
    chance,
  );
  const words = `${made.words}; ${rms} V, ${frequencyHz.toFixed(2)} Hz, ${cycles.toFixed(2)} cycles of ${(sampleRateHz / frequencyHz).toFixed(0)}, ${bits} bits, noise ${noise.toFixed(2)} V`;
  return { csv, words, frequencyHz, shape };
}

function logs([low, high]: readonly [number, number]): [number, number] {
  return [Math.log(low), Math.log(high)];
}

/** A sine with an envelope in time: `gain(t)` multiplies it. */
function evolving(
  chance: Chance,
  words: string,
  how: {
    durationCycles: number;
    gain: (cycles: number) => number;
    perCycle?: readonly [number, number];
    rms?: number;
    current?: (cycles: number, volts: number) => number;
    currentPeak?: number;
    harmonic?: number;
  },
): { csv: string; words: string; frequencyHz: number; shape: Shape } {
  const [nominalRms, nominalHz] = chance.pick(MAINS);
  const rms = how.rms ?? nominalRms;
  const frequencyHz = nominalHz * chance.between(0.99, 1.01);
  const shape = harmonicSine(rms, [
    { order: 3, percent: how.harmonic ?? chance.between(0, 2), phase: chance.between(0, 6) },
  ]);
  const sampleRateHz = Math.round(nominalHz * Math.exp(chance.between(...logs(how.perCycle ?? [150, 600]))));
  const start = chance.between(0, 1);
  const peak = Math.SQRT2 * rms * 1.15;
  const bits = chance.pick([8, 10, 12]);
  const noise = chance.pick([0.001, 0.003, 0.01]) * rms;
  const voltage = (t: number): number => how.gain(frequencyHz * t) * shape(start + frequencyHz * t);
  const signals: Signal[] = [{ name: 'CH1', unit: 'V', at: voltage, peak, noise }];
  if (how.current !== undefined) {
    const amperes = how.current;
    const currentPeak = how.currentPeak ?? 10;
    signals.push({
      name: 'CH2',
      unit: 'A',
      at: (t) => amperes(frequencyHz * t, voltage(t)),
      peak: currentPeak,
      noise: 0.004 * currentPeak,
    });
  }
  const count = Math.ceil((how.durationCycles * sampleRateHz) / frequencyHz);
  const csv = drawnCsv(signals, { sampleRateHz, count, bits, fill: 0.85 }, chance);
  return {
    csv,
    words: `${words}; ${rms.toFixed(0)} V, ${frequencyHz.toFixed(2)} Hz, ${how.durationCycles.toFixed(1)} cycles of ${(sampleRateHz / frequencyHz).toFixed(0)}, ${bits} bits, noise ${noise.toFixed(2)} V`,
    frequencyHz,
    shape,
  };
}

/** A record of so many seconds of one voltage, seen at 85 % of the range. */
function alone(
  c: Chance,
  at: (timeS: number) => number,
  seen: {
    readonly peak: number;
    readonly noise: number;
    readonly seconds: number;
    readonly sampleRateHz: number;
    readonly bits?: number;
    readonly errors?: boolean;
  },
): string {
  const { peak, noise, seconds, sampleRateHz, bits = c.pick([8, 10, 12]), errors = true } = seen;
  const count = Math.ceil(seconds * sampleRateHz);
  const signal: Signal = { name: 'CH1', unit: 'V', at, peak, noise };
  return drawnCsv([signal], { sampleRateHz, count, bits, fill: 0.85, errors }, c);
}

const FIGURES = ['rmsV', 'frequencyHz', 'crestFactor', 'thdPercent'] as const;

export const families: readonly Family[] = [
  {
    name: 'sines with a few harmonics',
    draw: (c) => {
      const harmonics = [3, 5, 7].map((order) => ({
        order,
        percent: c.between(0, 2),
        phase: c.between(-3, 3),
      }));
      const made = { shape: (rms: number) => harmonicSine(rms, harmonics), words: 'sine' };
      return {
        ...periodic(c, made, { cycles: [2.1, 12], perCycle: [150, 2000] }),
        figures: FIGURES,
        kinds: ['pure sine'],
      };
    },
  },
  {
    name: 'modified sines that ring',
    draw: (c) => {
      const [duty, damping, ratio] = [c.between(0.5, 0.85), c.between(0.15, 0.6), c.between(50, 200)];
      const made = {
        shape: (rms: number) => ringingThreeLevel(rms / Math.sqrt(duty), duty, ratio, damping),
        words: `duty ${duty.toFixed(2)}, corner ${ratio.toFixed(0)} × f, damping ${damping.toFixed(2)}`,
        peakRatio: (1 + Math.exp((-Math.PI * damping) / Math.sqrt(1 - damping ** 2))) / Math.sqrt(duty),
      };
      return {
        ...periodic(c, made, { cycles: [2.4, 10], perCycle: [Math.max(400, 4 * ratio), 2000] }),
        figures: [...FIGURES, 'formFactor'],
        kinds: ['modified sine'],
      };
    },
  },
  {
    name: 'cut sines',
    draw: (c) => {
      const edge = c.pick(['leading', 'trailing'] as const);
      const degrees = c.between(50, 130);
      const made = {
        shape: (rms: number) => cutSine(rms, edge, degrees),
        words: `${edge} cut at ${degrees.toFixed(0)}°`,
      };
      return {
        ...periodic(c, made, { cycles: [2.4, 10], perCycle: [400, 2000] }),
        figures: [...FIGURES, 'formFactor'],
        kinds: ['distorted sine'],
      };
    },
  },
  {
    name: 'pure sines on few codes',
    draw: (c) => {
      const codes = c.between(6, 40);
      const made = { shape: (rms: number) => harmonicSine(rms), words: `sine on ${codes.toFixed(1)} codes` };
      const fill = codes / 256;
      return {
        ...periodic(
          c,
          { ...made, peakRatio: Math.SQRT2 },
          { cycles: [2.4, 10], perCycle: [150, 1500], bits: [8], noise: 0, scope: { fill } },
        ),
        figures: ['rmsV', 'frequencyHz', 'thdPercent'],
        kinds: ['pure sine'],
      };
    },
  },
  {
    name: 'a wave for a part of the record',
    draw: (c) => {
      const how = c.pick(['start-up', 'cut-off'] as const);
      const cycles = c.between(6, 40);
      const on = c.between(0.25, 0.6) * cycles;
      const from = how === 'start-up' ? cycles - on : 0;
      const gain = (x: number): number => (x >= from && x < from + on ? 1 : 0);
      return {
        ...evolving(c, `${how}: on for ${on.toFixed(1)} cycles`, { durationCycles: cycles, gain }),
        figures: ['rmsV', 'frequencyHz', 'thdPercent'],
        kinds: on < 2.2 ? undefined : ['pure sine'],
        events: [how],
      } as Draw;
    },
  },
  {
    name: 'two steps close together',
    draw: (c) => {
      const apart = c.between(2.5, 8);
      const first = c.between(8, 12);
      const [a, b] = [c.between(0.88, 0.96), c.between(0.88, 1.08)];
      const gain = (x: number): number => (x < first ? 1 : x < first + apart ? a : b);
      return {
        ...evolving(c, `to ${a.toFixed(3)}, then ${b.toFixed(3)}, ${apart.toFixed(1)} cycles apart`, {
          durationCycles: first + apart + c.between(8, 20),
          gain,
        }),
        kinds: ['pure sine'],
        steps: 2,
      };
    },
  },
  {
    name: 'short gaps',
    draw: (c) => {
      const cycles = c.between(8, 30);
      const length = c.between(0.06, 0.12);
      // A gap is seen where the wave would not have been near zero anyhow.
      const wholes = Math.floor(c.between(3, cycles - 3));
      const phase = c.pick([0.25, 0.75]) + c.between(-0.08, 0.08) - length / 2;
      let offset = 0;
      const chanceOf = {
        ...c,
        between: (low: number, high: number) => {
          const value = c.between(low, high);
          if (low === 0 && high === 1) offset = value;
          return value;
        },
      };
      const gain = (x: number): number => {
        const at = x + offset - wholes;
        return at >= phase && at < phase + length ? 0 : 1;
      };
      return {
        ...evolving(chanceOf, `gap of ${length.toFixed(3)} cycles`, {
          durationCycles: cycles,
          gain,
          perCycle: [300, 1500],
        }),
        figures: ['frequencyHz'],
        kinds: ['pure sine', 'distorted sine'],
        events: ['transfer'],
      };
    },
  },
  {
    name: 'half waves, pulses and squares of few cycles',
    draw: (c) => {
      const [name, shape] = c.pick<readonly [string, (rms: number) => Shape]>([
        ['half wave', (rms) => (p) => Math.max(0, 2 * rms * Math.sin(2 * Math.PI * p))],
        ['square', (rms) => threeLevel(rms, 1)],
        ['modified sine', (rms) => threeLevel(rms * 1.4, 0.5)],
        ['modified sine of little duty', (rms) => threeLevel(rms * 1.8, 0.3)],
        ['pulses', (rms) => (p) => (p % 1 < 0.2 ? 2 * rms : 0)],
      ]);
      // Half waves: where what comes twice is hardly more than rest, there is one half wave, and no period.
      const lit = (upTo: number): number => Math.floor(upTo) / 2 + Math.min(0.5, upTo % 1);
      const isHalfSeen = (phase: number, cycles: number): boolean =>
        lit(phase + cycles - 1) - lit(phase) > 0.1;
      // Where two levels are all, one whole stay between two edges shows no period: a rise, or a fall, must be there twice.
      const edgeSeen =
        (fallsAt: number) =>
        (phase: number, cycles: number): boolean =>
          phase + cycles > 2.03 || (phase < fallsAt - 0.03 && phase + cycles > 1 + fallsAt + 0.03);
      const seenTwice: Readonly<Record<string, (phase: number, cycles: number) => boolean>> = {
        'half wave': isHalfSeen,
        pulses: edgeSeen(0.2),
        square: edgeSeen(0.5),
      };
      const startsAt = seenTwice[name];
      return {
        ...periodic(
          c,
          { shape, words: name, peakRatio: 2.1 },
          {
            cycles: [1.4, 3],
            perCycle: [200, 1500],
            ...(startsAt === undefined ? {} : { startsAt }),
          },
        ),
        figures: ['frequencyHz'],
      };
    },
  },
  {
    name: 'sines beside interharmonics',
    draw: (c) => {
      const otherHz = c.between(90, 1900);
      const percent = c.between(0.5, 2);
      const turn = c.between(0, 6);
      const [rms, hz] = c.pick(MAINS);
      const f = hz * c.between(0.99, 1.01);
      const start = c.between(0, 1);
      const sampleRateHz = hz * c.whole(200, 600);
      const at = (t: number): number =>
        Math.SQRT2 *
        rms *
        (Math.sin(2 * Math.PI * (start + f * t)) +
          (percent / 100) * Math.sin(2 * Math.PI * otherHz * t + turn));
      const cycles = c.between(2.4, 12);
      const seconds = cycles / f;
      const csv = alone(c, at, { peak: 1.5 * rms, noise: 0.002 * rms, seconds, sampleRateHz });
      return {
        csv,
        words: `${percent.toFixed(2)} % at ${otherHz.toFixed(0)} Hz beside ${f.toFixed(2)} Hz, ${cycles.toFixed(2)} cycles`,
        frequencyHz: f,
        shape: harmonicSine(rms),
        figures: ['frequencyHz', 'thdPercent'],
      };
    },
  },
  {
    name: 'sines under a decaying DC',
    draw: (c) => {
      const [rms, hz] = c.pick(MAINS);
      const f = hz * c.between(0.99, 1.01);
      const [percent, tau, start] = [c.between(3, 12), c.between(0.03, 0.1), c.between(0, 1)];
      const sampleRateHz = hz * c.whole(200, 600);
      const at = (t: number): number =>
        Math.SQRT2 * rms * (Math.sin(2 * Math.PI * (start + f * t)) + (percent / 100) * Math.exp(-t / tau));
      const cycles = c.between(3, 12);
      const seconds = cycles / f;
      const csv = alone(c, at, { peak: 1.6 * rms, noise: 0.002 * rms, seconds, sampleRateHz });
      return {
        csv,
        words: `DC of ${percent.toFixed(1)} % decays in ${(1000 * tau).toFixed(0)} ms, ${cycles.toFixed(2)} cycles of ${f.toFixed(2)} Hz`,
        frequencyHz: f,
        shape: harmonicSine(rms),
        figures: ['frequencyHz'],
      };
    },
  },
  {
    name: 'sines with folded ripple',
    draw: (c) => {
      const [rms, hz] = c.pick(MAINS);
      const f = hz * c.between(0.99, 1.01);
      const sampleRateHz = 20_000;
      const [rippleHz, percent, start] = [
        sampleRateHz + c.between(20, 400),
        c.between(0.3, 2),
        c.between(0, 1),
      ];
      const at = (t: number): number =>
        Math.SQRT2 *
        rms *
        (Math.sin(2 * Math.PI * (start + f * t)) + (percent / 100) * Math.sin(2 * Math.PI * rippleHz * t));
      const cycles = c.between(3, 12);
      const seconds = cycles / f;
      const csv = alone(c, at, { peak: 1.5 * rms, noise: 0.002 * rms, seconds, sampleRateHz });
      return {
        csv,
        words: `${percent.toFixed(2)} % at ${(rippleHz / 1000).toFixed(3)} kHz, ${cycles.toFixed(2)} cycles of ${f.toFixed(2)} Hz`,
        frequencyHz: f,
        shape: harmonicSine(rms),
        figures: ['frequencyHz'],
      };
    },
  },
  {
    name: 'interpolated memory',
    draw: (c) => {
      const harmonics = [3, 5].map((order) => ({ order, percent: c.between(0, 3), phase: c.between(-3, 3) }));
      const interpolated = c.whole(2, 10);
      const made = {
        shape: (rms: number) => harmonicSine(rms, harmonics),
        words: `one sample in ${interpolated} is real`,
      };
      return {
        ...periodic(c, made, {
          cycles: [2.4, 10],
          perCycle: [1000, 4000],
          noise: 0.01,
          scope: { interpolated },
        }),
        figures: FIGURES,
      };
    },
  },
  {
    name: 'coarse time stamps',
    draw: (c) => {
      const made = {
        shape: (rms: number) => harmonicSine(rms, [{ order: 3, percent: c.between(0, 2), phase: 1 }]),
        words: 'stamps of few decimals',
      };
      return {
        ...periodic(c, made, {
          cycles: [3, 10],
          perCycle: [200, 1500],
          scope: { timeDecimals: c.pick([4, 5]) },
        }),
        figures: ['rmsV', 'frequencyHz', 'thdPercent'],
        kinds: ['pure sine'],
      };
    },
  },
  {
    name: 'stamps of milliseconds',
    draw: (c) => {
      const [rms, hz] = c.pick(MAINS);
      const f = hz * c.between(0.985, 1.015);
      // Ticks and samples that go up into each other, nearly do, and don't.
      const sampleRateHz = 1000 * c.whole(2, 60) * (1 + c.pick([0, 1e-4, 1e-3, 5e-3]) * c.between(-1, 1));
      const seconds = c.between(0.05, 0.3);
      const firstS = c.pick([0, c.between(0, 1e-3), -seconds / 2]);
      const shape = harmonicSine(rms, [{ order: 3, percent: c.between(0, 2), phase: 1 }]);
      const start = c.between(0, 1);
      const at = (t: number): number => shape(start + f * t);
      const isCut = c.pick([false, true]);
      const stamp = (i: number): string => {
        const t = firstS + i / sampleRateHz;
        return (isCut ? Math.trunc(1000 * t) / 1000 : t).toFixed(3);
      };
      const [head, ...rows] = alone(c, at, { peak: 1.6 * rms, noise: 0.003 * rms, seconds, sampleRateHz })
        .trimEnd()
        .split('\n');
      const stamped = rows.map((row, i) => stamp(i) + row.slice(row.indexOf(',')));
      return {
        csv: `${[head, ...stamped].join('\n')}\n`,
        words: `${isCut ? 'cut' : 'rounded'}, ${sampleRateHz.toFixed(1)} samples a second for ${seconds.toFixed(3)} s, ${f.toFixed(2)} Hz`,
        frequencyHz: f,
        shape,
        figures: ['rmsV', 'frequencyHz', 'thdPercent'],
        kinds: ['pure sine'],
      };
    },
  },
  {
    name: 'resistors',
    draw: (c) => {
      const ohms = c.between(20, 120);
      const made = evolving(c, `${ohms.toFixed(0)} Ω`, {
        durationCycles: c.between(3, 12),
        gain: () => 1,
        current: (_, volts) => volts / ohms,
        currentPeak: 400 / ohms,
      });
      const rms = shapeTruth(made.shape, 5).rms;
      return { ...made, figures: FIGURES, kinds: ['pure sine'], resistorW: (rms * rms) / ohms };
    },
  },
  {
    name: 'staircases',
    draw: (c) => {
      const levels = 2 * c.whole(2, 20) + 1;
      const made = {
        shape: (rms: number) => staircase(rms, levels),
        words: `${levels} levels`,
        peakRatio: Math.SQRT2,
      };
      return {
        ...periodic(c, made, {
          cycles: [2.4, 10],
          perCycle: [600, 3000],
          bits: [10, 12],
          noise: c.pick([0.0003, 0.001]),
        }),
        figures: FIGURES,
        kinds: ['stepped'],
      };
    },
  },
  {
    name: 'pulses without a filter',
    draw: (c) => {
      const [levels, ratio] = [c.pick([2, 3] as const), c.whole(9, 41)];
      const depth = c.between(0.7, 0.98);
      const made = {
        shape: (rms: number) => pulseWidth(rms * 1.5, levels, ratio, depth),
        words: `${levels} levels, ${ratio} pulses a cycle`,
        peakRatio: 1.55,
      };
      return {
        ...periodic(c, made, { cycles: [2.4, 8], perCycle: [1500, 4000] }),
        kinds: ['stepped', 'not classified', 'square'],
      };
    },
  },
  {
    name: 'impulses between long rests',
    draw: (c) => {
      const width = c.between(0.03, 0.06);
      const made = {
        shape: (rms: number) => (p: number) => (p % 1 < width ? 2 * rms : 0),
        words: `impulses of ${(100 * width).toFixed(1)} %`,
        peakRatio: 2.2,
      };
      return {
        ...periodic(c, made, { cycles: [3, 8], perCycle: [800, 3000] }),
        kinds: ['not classified', 'distorted sine'],
      };
    },
  },
  {
    name: 'brown-outs',
    draw: (c) => {
      const [at, length, depth] = [c.between(8, 15), c.between(5, 15), c.between(0.2, 0.8)];
      const gain = (x: number): number => (x >= at && x < at + length ? depth : 1);
      return {
        ...evolving(c, `to ${depth.toFixed(2)} for ${length.toFixed(1)} cycles`, {
          durationCycles: at + length + c.between(6, 15),
          gain,
        }),
        figures: ['frequencyHz'],
        kinds: ['pure sine'],
        events: ['brown-out'],
      };
    },
  },
  {
    name: 'hiccups',
    draw: (c) => {
      const [on, off, losses] = [c.between(4, 8), c.between(5, 12), c.whole(3, 5)];
      // Up for longer than any try after it: without that, or a current, bursts of a search for a load look the same.
      const first = on + c.between(2, 6);
      const gain = (x: number): number => (x < first ? 1 : (x - first) % (on + off) < off ? 0 : 1);
      return {
        ...evolving(c, `${losses} losses, on ${on.toFixed(1)}, off ${off.toFixed(1)} cycles`, {
          durationCycles: first + losses * (on + off) - 0.5,
          gain,
        }),
        kinds: ['pure sine'],
        events: ['hiccup'],
      };
    },
  },
  {
    name: 'failed starts',
    draw: (c) => {
      // Under 0.65 cycles one side of zero may show too little to tell a start from a pulse.
      const [at, length] = [c.between(2, 12), c.between(0.65, 2.7)];
      const gain = (x: number): number => (x >= at && x < at + length ? 1 : 0);
      return {
        ...evolving(c, `on for ${length.toFixed(2)} cycles`, {
          durationCycles: at + length + c.between(5, 12),
          gain,
        }),
        events: ['failed start'],
      };
    },
  },
  {
    name: 'inrush of a load',
    draw: (c) => {
      const at = c.between(8, 14);
      const [times, tau] = [c.between(3, 8), c.between(1, 4)];
      const current = (x: number, volts: number): number =>
        x < at ? 0 : (volts / 200) * (1 + (times - 1) * Math.exp(-(x - at) / tau));
      const gain = (x: number): number => (x < at ? 1 : 0.97);
      return {
        ...evolving(c, `inrush of ${times.toFixed(1)} times`, {
          durationCycles: at + c.between(15, 30),
          gain,
          current,
          currentPeak: 18,
          rms: 230,
        }),
        kinds: ['pure sine'],
        events: ['inrush'],
        steps: 1,
        also: ({ loadSeen }) => {
          // The scales of both channels are off by up to 5 %, and a load within 5 % of its rest counts as settled.
          const settledW = (0.97 * 230) ** 2 / 200;
          const watts = loadSeen?.watts ?? 0;
          return watts < 1.2 * settledW ? null : `${watts} W for a load of ${settledW.toFixed(0)} W`;
        },
      };
    },
  },
  {
    name: 'a load thrown on that the output does not survive',
    draw: (c) => {
      const [at, held] = [c.between(8, 14), c.between(4, 10)];
      const ohms = c.between(25, 60);
      const gain = (x: number): number => (x < at ? 1 : x < at + held ? 0.96 : 0);
      const current = (x: number, volts: number): number => (x < at ? 0 : volts / ohms);
      return {
        ...evolving(c, `lost ${held.toFixed(1)} cycles after ${ohms.toFixed(0)} Ω`, {
          durationCycles: at + held + c.between(6, 12),
          gain,
          current,
          currentPeak: 400 / ohms,
        }),
        kinds: ['pure sine'],
        events: ['cut-off'],
        steps: 1,
      };
    },
  },
  {
    name: 'bursts',
    draw: (c) => {
      const [on, off, first] = [c.between(3.5, 7), c.between(8, 20), c.between(0, 8)];
      const gain = (x: number): number => (x >= first && (x - first) % (on + off) < on ? 1 : 0);
      return {
        ...evolving(c, `bursts of ${on.toFixed(1)} in ${(on + off).toFixed(1)} cycles`, {
          durationCycles: first + 3 * (on + off) + c.between(0, off),
          gain,
        }),
        figures: ['rmsV', 'frequencyHz', 'thdPercent'],
        kinds: ['pure sine'],
        mayBe: ['idle bursts', 'hiccup', 'start-up', 'cut-off', 'outage', 'transfer'],
      };
    },
  },
  {
    name: 'modified sines that drift',
    draw: (c) => {
      const [hz, rms] = [c.pick([50, 60]), c.pick([120, 230])];
      const [duty, drift, sag] = [c.between(0.5, 0.8), c.between(-0.01, 0.01), c.between(-0.03, 0.03)];
      const shape = threeLevel(rms / Math.sqrt(duty), duty);
      const [sampleRateHz, cycles, start] = [hz * c.whole(300, 1000), c.between(4, 12), c.between(0, 1)];
      const f = hz * c.between(0.99, 1.01);
      const lasts = cycles / f;
      // From f·(1 − drift/2) to f·(1 + drift/2), its size alike: their means over the record are f and rms.
      const along = (t: number): number => t / lasts - 0.5;
      const at = (t: number): number =>
        (1 + sag * along(t)) * shape(start + f * t + (f * drift * lasts * along(t) ** 2) / 2);
      const seconds = lasts;
      const csv = alone(c, at, { peak: 1.6 * rms, noise: 0.002 * rms, seconds, sampleRateHz });
      return {
        csv,
        words: `duty ${duty.toFixed(2)}, frequency drifts by ${(100 * drift).toFixed(2)} %, size by ${(100 * sag).toFixed(1)} %, ${cycles.toFixed(2)} cycles of ${f.toFixed(2)} Hz`,
        frequencyHz: f,
        shape,
        figures: ['rmsV', 'frequencyHz'],
        kinds: ['modified sine'],
      };
    },
  },
  {
    name: 'lines in a band of 200 Hz',
    draw: (c) => {
      const [rms, hz] = c.pick(MAINS);
      const centreHz = 2100 + 200 * c.whole(0, 10);
      // The last line of a band is 100 Hz above its middle, the first 95 Hz below (IEC 61000-4-7, annex B); short records
      // have lines 10 Hz apart and more, so that one at the first stands between two.
      const lineHz = centreHz + c.pick([100, 50, 0, -50, -85]);
      const [cycles, start, turn] = [c.between(2.2, 11), c.between(0, 1), c.between(0, 6)];
      const at = (t: number): number =>
        Math.SQRT2 *
        rms *
        (Math.sin(2 * Math.PI * (start + hz * t)) + 0.02 * Math.sin(2 * Math.PI * lineHz * t + turn));
      const sampleRateHz = hz * c.whole(300, 1000);
      const seconds = cycles / hz;
      const csv = alone(c, at, {
        peak: 1.5 * rms,
        noise: 0.001 * rms,
        seconds,
        sampleRateHz,
        bits: 12,
        errors: false,
      });
      return {
        csv,
        words: `a line at ${lineHz} Hz, ${cycles.toFixed(2)} cycles of ${hz} Hz`,
        kinds: ['pure sine'],
        also: ({ voltage }) => {
          const bands = voltage?.highBands?.bands ?? [];
          const [largest] = [...bands].sort((a, b) => b.rmsV - a.rmsV);
          return largest?.centreHz === centreHz ? null : `largest band ${largest?.centreHz ?? 'none'} Hz`;
        },
      };
    },
  },
  {
    name: 'records of a peak detector',
    draw: (c) => {
      const [rms, hz] = c.pick(MAINS);
      const sampleRateHz = hz * c.whole(200, 800);
      const [start, spread, cycles] = [c.between(0, 1), c.between(0.015, 0.06) * rms, c.between(3, 10)];
      // A lowest and a highest value in turn, half the spread of noise below and above the wave.
      const at = (t: number): number =>
        Math.SQRT2 * rms * Math.sin(2 * Math.PI * (start + hz * t)) +
        (Math.round(t * sampleRateHz) % 2 === 0 ? -spread : spread);
      const seconds = cycles / hz;
      const csv = alone(c, at, { peak: 1.5 * rms, noise: 0.2 * spread, seconds, sampleRateHz, bits: 8 });
      return {
        csv,
        words: `lowest and highest ${(2 * spread).toFixed(1)} V apart, ${cycles.toFixed(1)} cycles of ${rms} V`,
        also: ({ notices }) =>
          notices.some(({ code }) => code === 'acquisition.pairs')
            ? null
            : 'no word of lowest and highest values',
      };
    },
  },
  {
    name: 'a current that is noise',
    draw: (c) => ({
      ...evolving(c, 'noise for a current', {
        durationCycles: c.between(8, 30),
        gain: () => 1,
        current: () => 0,
        currentPeak: c.pick([0.5, 10]),
      }),
      kinds: ['pure sine'],
    }),
  },
];
