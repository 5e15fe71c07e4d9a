import type { MeasureResult } from '../assay/measureDocument.ts';
import type { Figure } from '../base/figure.ts';
import { waveformKinds } from '../judge/waveform/kinds.ts';
import { type MainFigures, mainFigures } from './figureRows.ts';
import { decimalText, significantText, withUnit } from './numbers.ts';
import { figureParts, figureText } from './quantities.ts';

/**
 * What the wave is, with the figure that shows it: "this is a pure sine: 2.1 % distortion, give or take 0.4".
 *
 * @param sine - what to call a pure sine.
 * @param isClause - without its verb, to stand in another sentence: "a pure sine, 2.1 % distortion, give or take 0.4".
 */
export function kindPhrase(result: MeasureResult, sine = 'a pure sine', isClause = false): string {
  const { reasons, atTheEdge } = result.waveform;
  const name = kindName(result.waveform, sine);
  const isCurrent = mainFigures(result)?.unit === 'A';
  const part = partPhrase(result);
  if (name === null) {
    const why = reasons[0]?.replace(/[.\s]+$/, '');
    return `${unclassified(result, isClause)}${why === undefined ? '' : `: ${why}`}${part}`;
  }
  const details = [...dwell(result), ...distortion(result)];
  const figures = details.length === 0 ? '' : `${isClause ? ',' : ':'} ${details.join(', ')}`;
  const verb = isClause ? '' : `this ${isCurrent ? 'current ' : ''}is `;
  return `${verb}${name}${atTheEdge ? ', at the edge' : ''}${figures}${insideLimits(result)}${part}`;
}

/** Of what has no kind: "this wave can’t be classified"; where nothing repeats, "there is no wave to classify". */
export function unclassified(result: MeasureResult, isClause = false): string {
  const figures = mainFigures(result);
  if (figures !== null && figures.frequencyHz.value === null)
    return `${isClause ? '' : 'there is '}no wave to classify`;
  return `${isClause ? 'the' : 'this'} ${figures?.unit === 'A' ? 'current' : 'wave'} can’t be classified`;
}

/** Less of the record than this, and the sentence says so. */
const SMALL_PART = 0.5;

/** How little of the record the verdict rests on: " (judged on 7 of 164 ms)"; empty where it is half or more. */
function partPhrase(result: MeasureResult): string {
  const [from, to] = mainFigures(result)?.spanS ?? [0, result.capture.durationS];
  const { durationS } = result.capture;
  if (!(to - from < SMALL_PART * durationS)) return '';
  const [unit, perS] = durationS < 1 ? ['ms', 1e3] : ['s', 1];
  const part = significantText(perS * (to - from), 2);
  return ` (judged on ${part} of ${withUnit(significantText(perS * durationS, 3), unit)})`;
}

/** A modified sine is told by its time at zero, which THD can't show. */
function dwell(result: MeasureResult): string[] {
  const dwellPercent = mainFigures(result)?.dwellPercent;
  if (result.waveform.kind !== 'modified sine' || dwellPercent === undefined) return [];
  if (dwellPercent.value === null) return ['three levels'];
  return [`${withUnit(decimalText(dwellPercent.value, 0), '%')} of the time at zero`];
}

function distortion(result: MeasureResult): string[] {
  const figures = mainFigures(result);
  return figures === null ? [] : [distortionPhrase(figures.thdPercent)];
}

/** A sine that is distorted may still be inside the mains limits: the sentence says both. */
function insideLimits(result: MeasureResult): string {
  if (result.waveform.kind !== 'distorted sine') return '';
  const judged = result.findings.filter(
    ({ quantity, provenance }) => provenance === 'public' && /^(thd|total harmonic|harmonic)/i.test(quantity),
  );
  if (judged.length === 0 || judged.some(({ side }) => side === 'outside')) return '';
  return ', yet inside the reference limits for mains';
}

/**
 * What the wave is called, with what it is not: "a modified sine, not a sine"; null where it has no name.
 *
 * @param sine - what to call a pure sine.
 */
export function kindName({ kind, levels }: MeasureResult['waveform'], sine = 'a pure sine'): string | null {
  if (kind === 'pure sine') return sine;
  return waveformKinds[kind].named?.replace('{levels}', String(levels)) ?? null;
}

/**
 * The THD as people say it: "2.1 % distortion, give or take 0.4"; below what the instrument can resolve,
 * "distortion not above 0.4 %"; a missing one is said to be missing.
 */
export function distortionPhrase(thdPercent: Figure): string {
  if (thdPercent.value === null) return 'distortion not measurable';
  if (thdPercent.notAbove !== undefined) return `distortion ${figureText(thdPercent, '%')}`;
  const parts = figureParts(thdPercent);
  const said = `${withUnit(parts.value, '%')} distortion`;
  return parts.uncertainty === null ? said : `${said}, give or take ${parts.uncertainty}`;
}

/** An average-responding meter is worth a line when it is off by more than this share. */
const noticeableRatio = 0.01;

/**
 * What a meter that is not true-RMS shows on this wave, where that is noticeably off.
 *
 * @returns null where it is not, or can't be told.
 */
export function averageMeterPhrase(
  meter: MainFigures['meter'],
): { readonly row: string; readonly value: string; readonly sentence: string } | null {
  if (meter === null) return null;
  const { acRms, averageResponding } = meter;
  if (acRms.value === null || averageResponding.value === null) return null;
  if (Math.abs(averageResponding.value - acRms.value) <= noticeableRatio * acRms.value) return null;
  const value = figureText(averageResponding, 'V');
  return {
    row: 'A meter that is not true-RMS shows',
    value,
    sentence: `A meter that is not true-RMS shows ${value} here.`,
  };
}
