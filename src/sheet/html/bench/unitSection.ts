import type { BenchPoint, BenchUnit } from '../../../bench/benchDocument.ts';
import { benchSpoken } from '../../answer/bench/benchSpoken.ts';
import { fileName } from '../../answer/fileName.ts';
import { cleanTexts } from '../../cleanTexts.ts';
import { carriedCaptures } from '../../evidence/carriedCaptures.ts';
import type { CarriedCapture } from '../../evidence/evidence.ts';
import type { OpenedSheet } from '../../evidence/readEvidence.ts';
import { dataTable } from '../dataTable.ts';
import { fileLink } from '../fileLink.ts';
import { html, type Markup } from '../html.ts';
import { inlinePicture } from '../inlinePicture.ts';
import { unitTables } from './unitTables.ts';

/**
 * All that a bench test says of one unit. Texts must be clean.
 *
 * @param sheet - of its sweep; undefined: it has none.
 * @param says - whether its sentence is said here: not where it heads the page.
 */
export function unitSection(unit: BenchUnit, sheet: OpenedSheet | undefined, says: boolean): Markup {
  const { label, points } = unit;
  return html`<section><h2>${label}</h2>
${says && html`<p>${benchSpoken(unit)[0]}</p>\n`}${sheet !== undefined && inlinePicture(sheet)}${unitTables(unit)}${
  sheet !== undefined &&
  'told' in sheet.evidence &&
  digestTable(cleanTexts(carriedCaptures(sheet.evidence)), points)
}</section>
`;
}

/** By which a reader can check the page; a capture that has a sheet of its own leads to it. */
function digestTable(captures: readonly CarriedCapture[], points: readonly BenchPoint[]): Markup {
  const sheets = new Map(points.map(({ sha256, sheet }) => [sha256, sheet]));
  return dataTable({
    caption: 'Captures and their SHA-256',
    columns: [{ heading: 'Capture' }, { heading: 'SHA-256' }],
    rows: captures.map(({ file, sha256 }) => {
      const sheet = sheets.get(sha256);
      const name = fileName(file);
      return [
        sheet === undefined ? name : html`<a href="${fileLink(fileName(sheet))}">${name}</a>`,
        html`<small>${sha256}</small>`,
      ];
    }),
  });
}
