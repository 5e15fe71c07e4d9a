import type { ClaimResult } from '../../verdict/measureDocument.ts';
import { claimValueText } from '../answer/claimValueText.ts';
import { outcomeWords } from '../answer/outcomeWords.ts';
import { worstClaims } from '../answer/worstClaims.ts';
import { cutText } from '../paper/cutText.ts';
import type { Box } from '../paper/page.ts';
import { palette } from '../paper/palette.ts';
import { textWidth } from '../paper/textWidth.ts';
import { wrapText } from '../paper/wrapText.ts';
import { writeHeading } from '../paper/writeHeading.ts';
import { writeLines } from '../paper/writeLines.ts';
import { type Panel, writeText } from '../paper/writeText.ts';
import { elsewhere } from './drawNotes.ts';

const rowHeight = 22;
/** Of what was found where it needs a line of its own. */
const reason = { sizePx: 14, leading: 17, mostLines: 4 } as const;

/**
 * The claims, one a row: what was claimed, what was found, how that stands; the worst, where they are too many.
 *
 * @param most - rows at most: a sheet is one page.
 * @returns the y where the next block's heading may stand; unchanged where there is no claim.
 */
export function drawClaims(panel: Panel, claims: readonly ClaimResult[], box: Box, most = 4): number {
  if (claims.length === 0) return box.y;
  const { x, y, width } = box;
  const hidden = claims.length - most;
  writeHeading(panel, 'Claims', elsewhere(hidden), x, y, width);
  const shown = hidden > 0 ? worstClaims(claims).slice(0, most) : claims;
  let at = y + 24;
  for (const claim of shown) {
    const words = outcomeWords(claim.outcome) + sure(claim);
    const bad = claim.outcome === 'fail' || claim.outcome === 'conditional fail';
    writeText(panel, words, x + width, at, {
      sizePx: 16,
      weight: 600,
      anchor: 'end',
      ink: bad ? palette.outside : palette.ink,
    });
    const room = width - textWidth(words, 16, 600) - 14;
    const text = cutText(claim.text, 0.5 * room, 16);
    writeText(panel, text, x, at, { sizePx: 16 });
    const after = textWidth(text, 16) + 12;
    const found = claim.value === claim.text ? '' : claimValueText(claim).named;
    const isWhole = textWidth(found, 16) <= room - after;
    if (isWhole || claim.outcome !== 'not judged') {
      writeText(panel, cutText(found, room - after, 16), x + after, at, { sizePx: 16, ink: palette.soft });
    } else {
      const lines = reasonLines(found, width);
      const style = { sizePx: reason.sizePx, ink: palette.soft };
      at = writeLines(panel, lines, x, at + reason.leading + 1, reason.leading, style) - reason.leading;
    }
    at += rowHeight;
  }
  return at + 16;
}

/** Why a claim can't be judged tells what to do: it is never cut. */
function reasonLines(why: string, width: number): readonly string[] {
  const lines = wrapText(why, width, Number.POSITIVE_INFINITY, reason.sizePx);
  return lines.length <= reason.mostLines ? lines : ['The reason stands in the page and the JSON.'];
}

/** Where the doubt decides between "holds" and "fails", how sure. */
function sure({ outcome, probability }: ClaimResult): string {
  if (probability === null || !outcome.startsWith('conditional')) return '';
  const share = outcome === 'conditional fail' ? 1 - probability : probability;
  return ` (${Math.round(100 * share)}\u00a0%)`;
}
