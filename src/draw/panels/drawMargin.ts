import type { WordedAssay } from '../../assay/assay.ts';
import type { Figure } from '../../base/figure.ts';
import type { ClaimResult } from '../../judge/claims/claim.ts';
import { claimValueText, outcomeWords, worstClaims } from '../../words/claimWords.ts';
import { type MainFigures, mainFigures } from '../../words/figureRows.ts';
import { averageMeterPhrase } from '../../words/kindPhrase.ts';
import { withUnit } from '../../words/numbers.ts';
import { figureText } from '../../words/quantities.ts';
import { captureLines } from '../../words/rankNotices.ts';
import { storyWords } from '../../words/storyWords.ts';
import type { Box } from '../paper/page.ts';
import { palette } from '../paper/palette.ts';
import {
  cutText,
  type Panel,
  textWidth,
  wrapText,
  writeHeading,
  writeLines,
  writeText,
} from '../paper/writeText.ts';
import { drawNotes, drawParagraph, elsewhere } from './drawNotes.ts';
import { drawLargeFigure, drawRows } from './drawRows.ts';
import { sheetDoubts } from './drawTitle.ts';

/** Doubts may take this share of what the figures and claims leave; how it was measured takes the rest. */
const doubtShare = 0.75;

/** The right-hand column, block under block: figures, claims, what to doubt, how it was measured. */
export function drawMargin(panel: Panel, { result, method }: WordedAssay, box: Box): void {
  const bottom = box.y + box.height;
  const from = (y: number, share = 1): Box => ({ ...box, y, height: share * (bottom - y) });
  const figures = mainFigures(result);
  let y = box.y;
  if (figures !== null) y = drawFigures(panel, figures, storyWords(result)?.stretch ?? '', from(y));
  y = drawClaims(panel, result.claims, from(y));
  const { meter, notices } = result;
  const isCalibrated = meter?.answer === 'calibrated';
  const doubts = [...(meter === undefined || isCalibrated ? [] : [meter.message]), ...sheetDoubts(notices)];
  const how = [...captureLines(result), ...(isCalibrated ? [meter.message] : []), ...method];
  y = drawNotes(panel, 'What to doubt', doubts, from(y, doubtShare));
  drawParagraph(panel, 'How it was measured', how, from(y));
}

/**
 * The main figures: four large ones, then smaller rows.
 *
 * @param stretch - which part of the record they describe, "before the loss"; empty where it is steady throughout.
 * @param box - its top is the heading's baseline.
 * @returns the y where the next block's heading may stand.
 */
function drawFigures(panel: Panel, figures: MainFigures, stretch: string, box: Box): number {
  const { x, y, width } = box;
  writeHeading(
    panel,
    stretch === '' ? 'Figures' : `Figures ${stretch}`,
    'each ± reads: about 95 % sure',
    x,
    y,
    width,
  );
  const half = (width - 24) / 2;
  const right = x + half + 24;
  const rmsName = figures.unit === 'V' ? 'RMS voltage' : 'RMS current';
  drawLargeFigure(panel, rmsName, figures.rms, figures.unit, x, y + 30, half);
  drawLargeFigure(panel, 'Frequency', figures.frequencyHz, 'Hz', right, y + 30, half);
  drawLargeFigure(panel, 'Crest factor', figures.crestFactor, '', x, y + 92, half);
  drawLargeFigure(
    panel,
    `THD, orders 2 to ${figures.thdOrders}`,
    figures.thdPercent,
    '%',
    right,
    y + 92,
    half,
  );

  const rows: [string, string][] = [
    [`THD plus noise${upTo(figures.bandwidthHz)}`, figureText(figures.thdNoisePercent, '%')],
    ['Mean (DC)', figureText(figures.mean, figures.unit)],
  ];
  const meter = averageMeterPhrase(figures.meter);
  if (meter !== null) rows.push([meter.row, meter.value]);
  return drawRows(panel, rows, x, y + 150, width) + 14;
}

function upTo(bandwidthHz: Figure): string {
  if (bandwidthHz.value === null) return '';
  const { value } = bandwidthHz;
  return value >= 1e4
    ? `, up to ${withUnit(String(Math.round(value / 1e3)), 'kHz')}`
    : `, up to ${withUnit(String(Math.round(value)), 'Hz')}`;
}

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
