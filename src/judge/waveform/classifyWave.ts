import { rounded } from '../../base/amountText.ts';
import { hypot } from '../../base/elementary.ts';
import type { MeasuredFigure } from '../../base/figure.ts';
import type { MeasuredWave, PeriodicWave } from '../../measure/measuredWave.ts';
import { alternates } from '../../measure/waveEstimate.ts';
import type { WaveFigures } from '../../measure/waveFigures.ts';
import { sampleCycle } from '../../signal/harmonicSeries.ts';
import { distortionReasons } from './distortionReasons.ts';
import { kindOfLevels } from './kinds.ts';
import type { Waveform } from './waveform.ts';

/** THD up to which a smooth wave is called a pure sine, unless told otherwise. Common practice, no source. */
export const SINE_THD_PERCENT = 5;

/**
 * The kind of wave, with the reasons a person can follow.
 *
 * Plateaus decide before distortion does: at 50 % duty a modified sine has a sine's crest factor and a
 * square wave's THD, and a staircase of 17 levels has the THD of a good sine.
 *
 * @param sineThdPercent - THD up to which a smooth wave is a pure sine.
 */
export function classifyWave(wave: MeasuredWave, sineThdPercent: number = SINE_THD_PERCENT): Waveform {
  if (wave.periodic === null) {
    const reason = {
      noise: 'only noise, in which nothing repeats',
      constant: 'a direct voltage, in which nothing alternates',
      brief: 'voltage for under 1.3 cycles, too short to tell its wave',
      direct: 'a direct voltage, on which what moves does not repeat',
    }[wave.aperiodic ?? 'constant'];
    return { kind: 'not classified', reasons: [reason], levels: 0, atTheEdge: false };
  }
  if (!isAlternating(wave)) {
    const { mean, acRms, frequencyHz } = wave.figures;
    const ripple = `RMS of the ripple ${rounded(acRms.value ?? 0, 2)} at ${rounded(frequencyHz.value ?? 0, 3)} Hz`;
    const reason = `a direct voltage with ripple: mean ${rounded(mean.value ?? 0, 3)}, ${ripple}`;
    return { kind: 'not classified', reasons: [reason], levels: 0, atTheEdge: false };
  }
  return wave.periodic.levels.length > 0
    ? classifyStepped(wave.figures, wave.periodic)
    : classifySmooth(wave.figures, wave.periodic, sineThdPercent);
}

/** Crest factor of a sine, within what half-way honest outlets show. Common practice, no source. */
const SINE_CREST = { min: 1.35, max: 1.49 };

/** One smooth wave: a pure sine where distortion and crest factor are a sine's, else a distorted one. */
function classifySmooth(figures: WaveFigures, periodic: PeriodicWave, sineThdPercent: number): Waveform {
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
    `one smooth wave with ${thdWords(thd, sineThdPercent, fewCodes)}`,
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

function thdWords({ value, notAbove }: MeasuredFigure, sineThdPercent: number, fewCodes: boolean): string {
  const threshold = `${rounded(sineThdPercent, 3)} %`;
  if (value <= sineThdPercent) return `THD ${rounded(value, 2)} %, not above ${threshold}`;
  if (notAbove === undefined) return `THD ${rounded(value, 2)} %, above ${threshold}`;
  const most = `THD not above ${rounded(notAbove, 2)} %`;
  return fewCodes
    ? `${most}, of which rounding to codes makes up to ${rounded(value, 2)} %`
    : `${most}; the ${rounded(value, 2)} % seen may be the scope’s own`;
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

/** A wave that rests at levels: their number tells its kind. */
function classifyStepped(figures: WaveFigures, periodic: PeriodicWave): Waveform {
  const levels = periodic.levels.length;
  const thd = figures.thdPercent.value;
  const other = unlikeAnOutlet(periodic);
  if (other !== null) return { kind: 'not classified', reasons: [other], levels, atTheEdge: false };
  const reasons = [`${levels} levels`];
  if (levels % 2 === 1 && figures.dwellPercent.value !== null) {
    const where = levels === 3 ? 'at zero' : 'at its middle level';
    reasons.push(`${where} for ${rounded(figures.dwellPercent.value, 2)} % of the time`);
  }
  if (thd !== null) reasons.push(`THD ${rounded(thd, 2)} %`);
  if (levels > 3 && thd !== null && thd < 8) {
    reasons.push('many small steps: the distortion is low, but it is a staircase, not a sine');
  }
  return { kind: kindOfLevels(levels), reasons, levels, atTheEdge: false };
}

/** Edges a cycle of a square wave are two, of a modified sine four; ringing through its zero adds a few. */
const MOST_SWITCHES = 10;
/** No ringing of a square wave goes through the middle of two levels; an edge more is one cut by the record's end. */
const MOST_OF_A_SQUARE = 3;
/**
 * Of the power: an inverter that switches more often in a cycle does so alike in both halves, which leaves no even order;
 * pulses and a rest have about as much in even orders as in odd ones.
 */
const MOST_EVEN_SHARE = 0.05;
/** Of the time: a level that is left for less is interrupted by impulses. */
const LEAST_SHARE = 0.1;

/** Why two or three levels make neither a square wave nor a modified sine; null where they do. */
function unlikeAnOutlet({ levels, switchesPerCycle, fit }: PeriodicWave): string | null {
  if (levels.length > 3) return null;
  if (switchesPerCycle > MOST_SWITCHES) {
    return `switches ${rounded(switchesPerCycle, 2)} times a cycle between ${levels.length} levels: pulse-width modulation without its filter`;
  }
  if (levels.length === 2 && switchesPerCycle > MOST_OF_A_SQUARE && evenShare(fit) > MOST_EVEN_SHARE) {
    return `switches ${Math.round(switchesPerCycle)} times a cycle between 2 levels: pulses in bursts, as a signal has them, and no outlet’s wave`;
  }
  const most = levels.reduce((a, b) => (b.share > a.share ? b : a));
  if (most.share <= 1 - LEAST_SHARE) return null;
  return `rests at one level for ${rounded(100 * most.share, 2)} % of the time, between impulses`;
}

/** Share of the even orders in the power of all, 0 to 1. */
function evenShare({ cosine, sine }: PeriodicWave['fit']): number {
  let [even, all] = [0, 0];
  for (let k = 0; k < cosine.length; k++) {
    const power = cosine[k]! ** 2 + sine[k]! ** 2;
    all += power;
    // Index 0 is order 1.
    if (k % 2 === 1) even += power;
  }
  return even / all;
}

/**
 * Whether there is an alternating wave at all, which an outlet's limits and advice are for: neither a direct voltage, with
 * ripple or without, nor noise.
 */
export function isAlternating({ periodic, figures }: MeasuredWave): boolean {
  return periodic !== null && alternates(figures);
}
