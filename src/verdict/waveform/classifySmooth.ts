import { hypot } from '../../base/elementary/hypot.ts';
import type { MeasuredFigure } from '../../base/figure.ts';
import type { PeriodicWave } from '../../figures/measuredWave.ts';
import type { WaveFigures } from '../../figures/waveFigures.ts';
import { sampleCycle } from '../../signal/harmonicSeries.ts';
import type { Waveform } from '../measureDocument.ts';
import { distortionReasons } from './distortionReasons.ts';
import { rounded } from './rounded.ts';

/** Crest factor of a sine, within what half-way honest outlets show. Common practice, no source. */
const SINE_CREST = { min: 1.35, max: 1.49 };

/** One smooth wave: a pure sine where distortion and crest factor are a sine's, else a distorted one. */
export function classifySmooth(
  figures: WaveFigures,
  periodic: PeriodicWave,
  sineThdPercent: number,
): Waveform {
  const thd = figures.thdPercent;
  const crest = seriesCrest(periodic);
  if (thd.value === null) {
    return { kind: 'not classified', reasons: [thd.reason], levels: 0, atTheEdge: false };
  }
  const { fewCodes } = periodic;
  // What rounding to few codes adds to the distortion and takes from the peak is the digitiser's.
  const thdLow = fewCodes ? Math.min(thd.value - thd.uncertainty, belowFloor(thd)) : thd.value;
  const crestFits = fewCodes || (crest >= SINE_CREST.min && crest <= SINE_CREST.max);
  const thdFits = thdLow <= sineThdPercent;
  const pure = thdFits && crestFits;
  const thdNear = Math.abs(thd.value - sineThdPercent) <= thd.uncertainty;
  const crestDoubt = figures.crestFactor.value === null ? 0 : figures.crestFactor.uncertainty;
  const crestNear =
    Math.min(Math.abs(crest - SINE_CREST.min), Math.abs(crest - SINE_CREST.max)) <= crestDoubt;
  // Doubt about one criterion matters only while the other does not decide.
  const atTheEdge = fewCodes || (thdNear && (crestFits || crestNear)) || (crestNear && (thdFits || thdNear));
  const reasons = [
    `one smooth wave with ${thdWords(thd, sineThdPercent)}`,
    `crest factor ${crestWords(crest, figures)}, ${crest >= SINE_CREST.min && crest <= SINE_CREST.max ? 'within' : 'outside'} ${SINE_CREST.min} to ${SINE_CREST.max}`,
  ];
  if (!pure) reasons.unshift(...distortionReasons(figures, periodic));
  if (periodic.ripple !== null) reasons.push(rippleReason(periodic));
  if (fewCodes) {
    reasons.push('seen on so few codes that a staircase of as many steps would look the same');
  } else if (atTheEdge) reasons.push('at the edge: the uncertainty reaches the threshold');
  return { kind: pure ? 'pure sine' : 'distorted sine', reasons, levels: 0, atTheEdge };
}

/** Nothing where the distortion can't be told from the floor. */
function belowFloor({ notAbove }: MeasuredFigure): number {
  return notAbove === undefined ? Number.POSITIVE_INFINITY : 0;
}

function thdWords({ value, notAbove }: MeasuredFigure, sineThdPercent: number): string {
  const threshold = `${rounded(sineThdPercent, 3)} %`;
  if (value <= sineThdPercent) return `THD ${rounded(value, 2)} %, not above ${threshold}`;
  return notAbove === undefined
    ? `THD ${rounded(value, 2)} %, above ${threshold}`
    : `THD not above ${rounded(notAbove, 2)} %, of which rounding to codes makes up to ${rounded(value, 2)} %`;
}

/** Of the orders counted, without DC: neither noise nor switching ripple nor a probe's offset moves it. */
function seriesCrest({ series }: PeriodicWave): number {
  const cycle = sampleCycle({ ...series, mean: 0 }, 1024);
  const square = cycle.reduce((sum, v) => sum + v * v, 0);
  return cycle.reduce((high, v) => Math.max(high, Math.abs(v)), 0) / Math.sqrt(square / cycle.length);
}

/** The figure beside it holds DC: where that shows, the words say which of the two this is. */
function crestWords(crest: number, { crestFactor }: WaveFigures): string {
  const shown = crest.toFixed(2);
  const isSame = crestFactor.value === null || crestFactor.value.toFixed(2) === shown;
  return isSame ? shown : `${shown} without DC`;
}

function rippleReason({ ripple, fit }: PeriodicWave): string {
  const fundamental = hypot(fit.cosine[0]!, fit.sine[0]!) / Math.SQRT2;
  const kilohertz = rounded(ripple!.frequencyHz / 1000, 3);
  return `switching ripple of ${rounded((100 * ripple!.rms) / fundamental, 2)} % at ${kilohertz} kHz, above the orders counted`;
}
