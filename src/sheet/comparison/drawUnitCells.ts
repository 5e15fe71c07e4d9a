import type { BenchUnit } from '../../bench/benchDocument.ts';
import { claimValueText } from '../answer/claimValueText.ts';
import { outcomeWords } from '../answer/outcomeWords.ts';
import { shortText } from '../answer/shortText.ts';
import { worstClaims } from '../answer/worstClaims.ts';
import { significantText } from '../numbers/significantText.ts';
import { withUnit } from '../numbers/withUnit.ts';
import { cutText } from '../paper/cutText.ts';
import { palette } from '../paper/palette.ts';
import { wrapText } from '../paper/wrapText.ts';
import { writeLines } from '../paper/writeLines.ts';
import { type Panel, writeText } from '../paper/writeText.ts';
import { kindRuns } from '../sweep/kindRuns.ts';

/** Three lines a cell: one in strong type, two below. */
const first = -12;
const second = 8;
const leading = 17;

/** A unit's name, and under it the kinds of wave from no load up. */
export function drawUnitName(panel: Panel, unit: BenchUnit, x: number, middle: number, width: number): void {
  const name = unit.earlier === undefined ? unit.label : `${shortText(unit.label, 60)}, earlier`;
  writeText(panel, cutText(name, width, 17, 600), x, middle + first, { sizePx: 17, weight: 600 });
  const kinds = wrapText(kindWords(unit), width, 2, 15);
  writeLines(panel, kinds, x, middle + second, leading, { sizePx: 15, ink: palette.soft });
}

/** How many of a unit's claims hold, and under it the one that stands worst. */
export function drawUnitClaims(
  panel: Panel,
  { claims }: BenchUnit,
  x: number,
  middle: number,
  width: number,
): void {
  if (claims.length === 0) {
    writeText(panel, 'no claim told', x, middle + first, { sizePx: 16, ink: palette.soft });
    return;
  }
  const hold = claims.filter(({ outcome }) => outcome === 'pass' || outcome === 'conditional pass').length;
  const isBad = claims.some(({ outcome }) => outcome === 'fail' || outcome === 'conditional fail');
  const unsure = claims.filter(({ outcome }) => outcome === 'conditional pass').length;
  const all = `${hold} of ${claims.length} ${hold === 1 ? 'holds' : 'hold'}`;
  const total = unsure === 0 ? all : `${all}, ${unsure} only probably`;
  writeText(panel, cutText(total, width, 17, 600), x, middle + first, {
    sizePx: 17,
    weight: 600,
    ink: isBad ? palette.outside : palette.ink,
  });
  const [worst] = worstClaims(claims);
  if (worst === undefined || worst.outcome === 'pass') return;
  const found = claimValueText(worst).value;
  const text = `“${shortText(worst.text, 40)}” ${outcomeWords(worst.outcome)}: ${found}`;
  writeLines(panel, wrapText(text, width, 2, 15), x, middle + second, leading, {
    sizePx: 15,
    ink: palette.soft,
  });
}

/** "pure sine to 900 W; distorted sine to 1500 W"; one kind alone needs no load. */
function kindWords({ points }: BenchUnit): string {
  const runs = kindRuns(points);
  if (runs.length === 0) return points[0]?.kind ?? 'not measured at a steady load';
  if (runs.length === 1) return runs[0]!.words;
  return runs.map(({ words, toW }) => `${words} to ${withUnit(significantText(toW, 4), 'W')}`).join('; ');
}
