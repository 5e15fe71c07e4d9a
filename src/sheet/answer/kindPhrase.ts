import type { MeasureResult } from '../../verdict/measureDocument.ts';
import { decimalText } from '../numbers/decimalText.ts';
import { significantText } from '../numbers/significantText.ts';
import { withUnit } from '../numbers/withUnit.ts';
import { distortionPhrase } from './distortionPhrase.ts';
import { kindName } from './kindName.ts';
import { mainFigures } from './mainFigures.ts';

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
    const subject = `${isClause ? 'the' : 'this'} ${isCurrent ? 'current' : 'wave'}`;
    return `${subject} can’t be classified${why === undefined ? '' : `: ${why}`}${part}`;
  }
  const details = [...dwell(result), ...distortion(result)];
  const figures = details.length === 0 ? '' : `${isClause ? ',' : ':'} ${details.join(', ')}`;
  const verb = isClause ? '' : `this ${isCurrent ? 'current ' : ''}is `;
  return `${verb}${name}${atTheEdge ? ', at the edge' : ''}${figures}${insideLimits(result)}${part}`;
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
