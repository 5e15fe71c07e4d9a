import type { Figure } from '../../base/figure.ts';
import { figureParts } from '../numbers/figureParts.ts';
import { figureText } from '../numbers/figureText.ts';
import { withUnit } from '../numbers/withUnit.ts';

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
