import type { MeasureResult } from '../../assay/measureDocument.ts';
import type { Finding } from '../../judge/limits/findings.ts';
import { outcomeWords } from '../../words/claimWords.ts';
import { findingText, worstFindings } from '../../words/limitWords.ts';
import { quantityParts } from '../../words/quantities.ts';
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

/** A sheet shows the worst six; the rest stand in the JSON. */
const shownFindings = 6;
const rowHeight = 35;

/** The worst findings against reference limits, two lines each: what and how it stands, then limit, margin and source. */
export function drawFindings(panel: Panel, { findings, nominal }: MeasureResult, box: Box): void {
  const { x, y, width } = box;
  if (findings.length === 0) {
    writeHeading(panel, 'Against reference limits', '', x, y, width);
    const why = wrapText(
      nominal === null
        ? 'None applies: the limits need a nominal voltage and frequency.'
        : 'None applies to what was captured.',
      width,
      3,
      16,
    );
    writeLines(panel, why, x, y + 26, 20, { sizePx: 16, ink: palette.soft });
    return;
  }
  const shown = oneEach(worstFindings(findings)).slice(0, shownFindings);
  const aside =
    findings.length > shown.length ? `the worst ${shown.length} of ${findings.length}, all in the JSON` : '';
  writeHeading(panel, 'Against reference limits', aside, x, y, width);
  shown.forEach((finding, i) => {
    drawFinding(panel, finding, x, y + 26 + rowHeight * i, width);
  });
}

/** The first finding of each quantity, whatever it is a percentage of: several standards often limit the same one. */
function oneEach(findings: readonly Finding[]): Finding[] {
  const nameOf = (quantity: string): string => quantityParts(quantity).name;
  return findings.filter(
    ({ quantity }, i) => findings.findIndex((other) => nameOf(other.quantity) === nameOf(quantity)) === i,
  );
}

function drawFinding(panel: Panel, finding: Finding, x: number, y: number, width: number): void {
  const text = findingText(finding);
  const isInformation = finding.outcome === 'information';
  const isBad = finding.outcome === 'fail' || finding.outcome === 'conditional fail';
  const words = isInformation ? `${finding.side}, for information` : outcomeWords(finding.outcome);
  const style = {
    sizePx: 16,
    weight: isInformation ? 400 : 600,
    ink: isBad ? palette.outside : palette.ink,
  } as const;
  writeText(panel, words, x + width, y, { ...style, anchor: 'end' });
  const room = width - textWidth(words, 16, style.weight) - 14;
  writeText(panel, cutText(`${text.name}: ${text.value}`, room, 16), x, y, { sizePx: 16 });
  const detail = `${text.limitName} ${text.limit}, ${text.margin}. ${text.source}`;
  writeText(panel, cutText(detail, width, 14), x, y + 15.5, { sizePx: 14, ink: palette.soft });
}
