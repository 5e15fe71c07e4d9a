import type { MeasureResult } from '../../verdict/measureDocument.ts';
import { decimalText } from '../numbers/decimalText.ts';
import { withUnit } from '../numbers/withUnit.ts';
import { distortionPhrase } from './distortionPhrase.ts';
import { kindName } from './kindName.ts';
import { mainFigures } from './mainFigures.ts';

/**
 * What the wave is, with the figure that shows it: "this is a pure sine: 2.1 % distortion, give or take 0.4".
 *
 * @param sine - what to call a pure sine.
 */
export function kindPhrase(result: MeasureResult, sine = 'a pure sine'): string {
  const { reasons, atTheEdge } = result.waveform;
  const name = kindName(result.waveform, sine);
  const isCurrent = mainFigures(result)?.unit === 'A';
  if (name === null) {
    const why = reasons[0]?.replace(/[.\s]+$/, '');
    const subject = isCurrent ? 'this current' : 'this wave';
    return `${subject} can’t be classified${why === undefined ? '' : `: ${why}`}`;
  }
  const details = [...dwell(result), ...distortion(result)];
  const figures = details.length === 0 ? '' : `: ${details.join(', ')}`;
  return `this ${isCurrent ? 'current ' : ''}is ${name}${atTheEdge ? ', at the edge' : ''}${figures}${insideLimits(result)}`;
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
