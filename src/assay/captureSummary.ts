import { log2, sin } from '../base/elementary.ts';
import type { MeasuredWave } from '../measure/measuredWave.ts';
import type { Capture, Channel } from '../read/capture.ts';
import { extremes } from '../signal/statistics.ts';
import type { Trace } from './assay.ts';
import type { CaptureSummary } from './measureDocument.ts';
import type { AssayNotice } from './notices.ts';

/** The capture as the result document tells of it; `measured` stands in for the channel of its name. */
export function captureSummary(capture: Capture, measured: Channel, wave: MeasuredWave): CaptureSummary {
  return {
    samples: capture.sampleCount,
    sampleRateHz: 1 / capture.intervalS,
    startS: capture.startS,
    durationS: capture.sampleCount * capture.intervalS,
    bits: measured.bits ?? bitsShown(wave),
    channels: capture.channels.map((channel) => {
      const { name, quantity, unit, scale } = channel.name === measured.name ? measured : channel;
      return { name, quantity, unit, scale };
    }),
    layout: capture.layout,
  };
}

/** Bits that tell apart as many levels as the record spans; null where it shows no levels. */
function bitsShown({ samples, stepSize }: MeasuredWave): number | null {
  if (stepSize === null) return null;
  const { max, min } = extremes(samples);
  return Math.max(1, Math.ceil(log2((max - min) / stepSize + 1)));
}

/**
 * Two cycles of a measured wave over the sine of the same AC RMS and phase, from the first rising zero of
 * the fundamental that leaves room for them.
 *
 * @remarks DC and noise have no cycle: then it is the whole record over its mean.
 */
export function traceOf(wave: MeasuredWave, unit: 'V' | 'A'): Trace {
  const { samples, startS, intervalS, periodic, figures } = wave;
  const mean = figures.mean.value ?? 0;
  const acRms = figures.acRms.value ?? 0;
  if (periodic === null) {
    const whole = cut(samples, 0, samples.length, (n) => ({ timeS: n * intervalS, ideal: mean }));
    return { ...whole, zeroS: startS, unit };
  }
  const { fit, phaseRad, periodSamples } = periodic;
  const phaseAt = (n: number): number => fit.omega * (n - (samples.length - 1) / 2) + phaseRad;
  const risingZero = (-phaseAt(0) / (2 * Math.PI)) * periodSamples;
  const firstZero = risingZero - Math.floor(risingZero / periodSamples) * periodSamples;
  const shown = Math.min(samples.length, Math.ceil(2 * periodSamples) + 1);
  const from = Math.min(Math.ceil(firstZero), samples.length - shown);
  const cycles = cut(samples, from, from + shown, (n) => ({
    timeS: (n - firstZero) * intervalS,
    ideal: mean + Math.SQRT2 * acRms * sin(phaseAt(n)),
  }));
  return { ...cycles, zeroS: startS + firstZero * intervalS, unit };
}

function cut(
  samples: Float64Array,
  from: number,
  to: number,
  at: (n: number) => { timeS: number; ideal: number },
): Omit<Trace, 'zeroS' | 'unit'> {
  const wave = samples.slice(from, to);
  const timeS = new Float64Array(wave.length);
  const ideal = new Float64Array(wave.length);
  for (let n = from; n < to; n++) {
    const point = at(n);
    timeS[n - from] = point.timeS;
    ideal[n - from] = point.ideal;
  }
  return { timeS, wave, ideal, residual: wave.map((v, i) => v - ideal[i]!) };
}

type Code = AssayNotice['code'];

/** The digitiser check says of clipping and range what the first look says too, and says it better. */
const SAID_BETTER: Readonly<Partial<Record<Code, Code>>> = {
  'wave.clipped': 'digitiser.clipped',
  'resolution.coarse': 'digitiser.range',
};

/** Advice to use more of the range, which was exceeded, and doubts whether it was. */
const IN_RANGE: readonly Code[] = [
  'resolution.coarse',
  'digitiser.range',
  'wave.clipped',
  'digitiser.clipped',
];

/**
 * First-look doubts and the digitiser check's notices together, nothing said twice.
 *
 * @param isOverRange - whether the file itself says that the wave went beyond the range.
 */
export function dedupeNotices(
  doubts: readonly AssayNotice[],
  checks: readonly AssayNotice[],
  isOverRange: boolean,
): readonly AssayNotice[] {
  const said = new Set(checks.map(({ code }) => code));
  const isSaid = (code: Code | undefined): boolean => code !== undefined && said.has(code);
  const all = [...doubts.filter(({ code }) => !isSaid(SAID_BETTER[code])), ...checks];
  return isOverRange ? all.filter(({ code }) => !IN_RANGE.includes(code)) : all;
}
