import type { BenchDocument, BenchPoint, BenchUnit } from '../../bench/benchDocument.ts';
import type { CarriedCapture } from '../../draw/evidence.ts';
import { isInvented } from '../../words/answerSentence.ts';
import { benchSpoken } from '../../words/bench/benchSpoken.ts';
import { comparisonSentence } from '../../words/bench/comparisonSentence.ts';
import { cleanTexts, fileName } from '../../words/text.ts';
import { carriedCaptures } from '../evidence/captureEvidence.ts';
import type { OpenedSheet } from '../evidence/readEvidence.ts';
import { comparisonTable } from './comparisonTables.ts';
import { dataTable, fileLink, html, inlinePicture, type LinkedFile, linkList, type Markup } from './html.ts';
import { htmlPage, type PagePress } from './htmlPage.ts';
import { sortTables } from './pageScripts.ts';
import { unitTables } from './unitTables.ts';

interface BenchPage {
  /** Version of the program. */
  readonly program: string;
  readonly bench: BenchDocument;
  /** Of its sweeps and its comparison, as this run drew them. */
  readonly sheets: readonly OpenedSheet[];
  /** What lies beside the page. */
  readonly files: readonly LinkedFile[];
}

/**
 * A bench test as one page: how the units compare, then for each of today's its sweep, its claims, its changes and
 * doubts, and the digests of the captures behind it, as tables that can be sorted and copied.
 *
 * @param page - what is from plans and captures in it is cleaned and escaped here.
 */
export function benchPage(press: PagePress, { program, bench: told, sheets, files }: BenchPage): string {
  const bench = cleanTexts(told);
  const today = bench.units.filter(({ earlier }) => earlier === undefined);
  const [first, second] = bench.units;
  const answer =
    second === undefined && first !== undefined ? benchSpoken(first)[0] : comparisonSentence(bench.units);
  const comparison = sheets.find(({ evidence }) => evidence.picture === 'comparison');
  return htmlPage(press, {
    title: `Bench test: ${answer}`,
    description: answer,
    program,
    script: sortTables,
    main: html`<header>
<p class="soft">Bench test</p>
<h1>${answer}</h1>
${today.some(isInvented) && html`<p><strong>Invented data, for demonstration.</strong></p>\n`}</header>
<main>
${linkList(files)}${comparison !== undefined && inlinePicture(comparison)}${
  bench.comparison.length > 0 &&
  html`<section><h2>Side by side</h2>${comparisonTable(bench)}</section>
`
}${today.map((unit) =>
  unitSection(unit, sweepOf(unit, today, told, sheets), second !== undefined),
)}${failures(bench)}</main>`,
  });
}

/** The sheet of a unit's sweep. Cleaned names may be alike, so that it is looked up by the name as told. */
function sweepOf(
  unit: BenchUnit,
  today: readonly BenchUnit[],
  told: BenchDocument,
  sheets: readonly OpenedSheet[],
): OpenedSheet | undefined {
  const name = told.units.filter(({ earlier }) => earlier === undefined)[today.indexOf(unit)]?.name;
  return sheets.find(({ evidence }) => evidence.picture === 'sweep' && evidence.result.name === name);
}

function failures({ failures: failed }: BenchDocument): Markup {
  if (failed.length === 0) return html``;
  return html`<section><h2>Could not be measured</h2><ul class="plain">
${failed.map(({ file, error }) => html`<li>${fileName(file)}: ${error.message}</li>\n`)}</ul></section>
`;
}

/**
 * All that a bench test says of one unit. Texts must be clean.
 *
 * @param sheet - of its sweep; undefined: it has none.
 * @param says - whether its sentence is said here: not where it heads the page.
 */
function unitSection(unit: BenchUnit, sheet: OpenedSheet | undefined, says: boolean): Markup {
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
