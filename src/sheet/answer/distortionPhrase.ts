import type { Figure } from '../../base/figure.ts';
import { decimalText } from '../numbers/decimalText.ts';
import { figureParts } from '../numbers/figureParts.ts';
import { uncertaintyDecimals } from '../numbers/uncertaintyDecimals.ts';
import { withUnit } from '../numbers/withUnit.ts';

/**
 * The THD as people say it: "2.1 % distortion, give or take 0.4"; where the doubt is as large as the
 * figure, "at most 0.7 % distortion"; a missing one is said to be missing.
 */
export function distortionPhrase(thdPercent: Figure): string {
  if (thdPercent.value === null) return 'distortion not measurable';
  const { value, uncertainty } = thdPercent;
  if (uncertainty >= value && uncertainty > 0) {
    const most = decimalText(value + uncertainty, uncertaintyDecimals(uncertainty));
    return `at most ${withUnit(most, '%')} distortion`;
  }
  const parts = figureParts(thdPercent);
  const said = `${withUnit(parts.value, '%')} distortion`;
  return parts.uncertainty === null ? said : `${said}, give or take ${parts.uncertainty}`;
}
