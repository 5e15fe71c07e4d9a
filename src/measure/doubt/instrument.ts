/**
 * What the measuring chain may be off by: half-widths of rectangular distributions, except where said.
 */
export interface Instrument {
  /** Of the digitiser; null: what the record shows. */
  readonly bits: number | null;
  /** Vertical gain of the scope, % of reading. */
  readonly gainPercent: number;
  /** Vertical offset, V (A for a current channel); null: OFFSET_PERCENT_OF_RANGE of the record's range. */
  readonly offsetV: number | null;
  /** Probe or divider ratio, % of reading. */
  readonly probePercent: number;
  /** Time base, parts per million. */
  readonly timeBasePpm: number;
  /** A phasor of up to so many % of the fundamental and unknown phase that the scope may add to a harmonic. */
  readonly distortionPercent: number;
  /** −3 dB of scope and probe together, first order; null: far above what matters. */
  readonly bandwidthHz: number | null;
  /** Multimeter that the scale may be tied to, % of reading. */
  readonly meterPercent: number;
  /** −3 dB of that multimeter; null: not known, so that it proves nothing about waves with edges. */
  readonly meterBandwidthHz: number | null;
  /** Of a meter that logs: volts, amperes and watts, % of reading; null: assumed by what it logs. */
  readonly voltageGainPercent: number | null;
  readonly currentGainPercent: number | null;
  readonly powerGainPercent: number | null;
  /** Its offsets, A and W (that of volts is `offsetV`); null: steps of its readings. */
  readonly offsetA: number | null;
  readonly offsetW: number | null;
  /** Its clock, parts per million; null: assumed by how it tells time. */
  readonly clockPpm: number | null;
}

/**
 * Assumed where nobody says better. Common practice for a mid-range scope with a differential probe and a
 * handheld meter; no source.
 */
export const ASSUMED_INSTRUMENT: Instrument = {
  bits: null,
  gainPercent: 3,
  offsetV: null,
  probePercent: 2,
  timeBasePpm: 50,
  distortionPercent: 0.3,
  bandwidthHz: null,
  meterPercent: 1,
  meterBandwidthHz: null,
  voltageGainPercent: null,
  currentGainPercent: null,
  powerGainPercent: null,
  offsetA: null,
  offsetW: null,
  clockPpm: null,
};

/** Offset assumed of a scope, % of the range that the record spans. Common practice, no source. */
export const OFFSET_PERCENT_OF_RANGE = 1;
