/**
 * What the measuring chain may be off by: half-widths of rectangular distributions, except where said.
 */
export interface Instrument {
  /** Vertical gain of the scope, % of reading. */
  readonly gainPercent: number;
  /** Probe or divider ratio, % of reading. */
  readonly probePercent: number;
  /** Time base, parts per million. */
  readonly timeBasePpm: number;
  /** The scope's own harmonic distortion, % of the fundamental, of unknown phase. */
  readonly distortionPercent: number;
  /** Vertical offset, % of the range that the record spans. */
  readonly offsetPercent: number;
}

/**
 * Assumed where nobody says better. Common practice for a mid-range 8-bit scope with a differential probe;
 * no source.
 */
export const ASSUMED_INSTRUMENT: Instrument = {
  gainPercent: 3,
  probePercent: 2,
  timeBasePpm: 50,
  distortionPercent: 0.3,
  offsetPercent: 1,
};

/** Accuracy assumed of a multimeter that the gain was tied to, % of reading. Common practice, no source. */
export const ASSUMED_METER_PERCENT = 1;
