import type { KnownWave } from '../../signal/synthesis/knownWave.ts';
import { principalDegrees } from './principalDegrees.ts';

const ORDERS = 50;

/** Of the whole: what is less is a rounding of nothing. */
const ROUNDING = 1e-12;

/** The truth of a made capture as JSON. Keys as in the result of a measurement, so that both compare by key. */
export interface StatedTruth {
  readonly schema: 'sineassay/truth@1';
  readonly note: string;
  readonly kind: KnownWave['kind'];
  /** Null where the wave does not swing. */
  readonly frequencyHz: number | null;
  readonly rmsV: number;
  readonly meanV: number;
  readonly peakV: number;
  readonly troughV: number;
  /** Null for a wave of nothing. */
  readonly crestFactor: number | null;
  readonly formFactor: number | null;
  readonly fundamentalV: number;
  /** Null where there is no fundamental. */
  readonly thdPercent: number | null;
  readonly thdOrders: number;
  /** Orders 1 to thdOrders; empty where there is no fundamental. */
  readonly harmonics: readonly {
    readonly order: number;
    readonly rmsV: number;
    readonly percent: number;
    readonly phaseDeg: number;
  }[];
  readonly record: RecordSettings;
}

/** How the wave was recorded. */
export interface RecordSettings {
  readonly samples: number;
  readonly sampleRateHz: number;
  readonly noiseRmsV: number;
  readonly bits: number | null;
  readonly seed: number;
  readonly layout: string;
  readonly probeRatio: number;
}

/** The figures of a known wave, in volts at the probe's tip. */
export function statedTruth(
  { kind, truth }: KnownWave,
  frequencyHz: number,
  record: RecordSettings,
): StatedTruth {
  const swings = truth.fundamentalRms > 0;
  return {
    schema: 'sineassay/truth@1',
    note: 'exact figures of the wave itself, before noise and quantisation',
    kind,
    frequencyHz: swings ? frequencyHz : null,
    rmsV: truth.rms,
    meanV: Math.abs(truth.mean) > ROUNDING * truth.rms ? truth.mean : 0,
    peakV: truth.peak,
    troughV: truth.trough,
    crestFactor: truth.rms > 0 ? truth.crestFactor() : null,
    formFactor: truth.rms > 0 ? truth.formFactor() : null,
    fundamentalV: truth.fundamentalRms,
    thdPercent: swings ? 100 * truth.thdRatio(ORDERS) : null,
    thdOrders: ORDERS,
    harmonics: swings ? Array.from({ length: ORDERS }, (_, i) => harmonicOf(truth, i + 1)) : [],
    record,
  };
}

/** Phases are given from a rising zero of the fundamental, as a measurement gives them. */
function harmonicOf(truth: KnownWave['truth'], order: number): StatedTruth['harmonics'][number] {
  const { rms, phaseRad } = truth.harmonic(order);
  if (rms < ROUNDING * truth.fundamentalRms) return { order, rmsV: 0, percent: 0, phaseDeg: 0 };
  const fromFundamental = phaseRad - order * truth.harmonic(1).phaseRad;
  return {
    order,
    rmsV: rms,
    percent: (100 * rms) / truth.fundamentalRms,
    phaseDeg: principalDegrees(fromFundamental),
  };
}
