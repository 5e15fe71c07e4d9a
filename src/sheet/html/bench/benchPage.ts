import type { BenchDocument, BenchUnit } from '../../../bench/benchDocument.ts';
import { benchSpoken } from '../../answer/bench/benchSpoken.ts';
import { fileName } from '../../answer/fileName.ts';
import { isInvented } from '../../answer/isInvented.ts';
import { cleanTexts } from '../../cleanTexts.ts';
import { comparisonSentence } from '../../comparison/comparisonSentence.ts';
import type { OpenedSheet } from '../../evidence/readEvidence.ts';
import { html, type Markup } from '../html.ts';
import { htmlPage, type PagePress } from '../htmlPage.ts';
import { inlinePicture } from '../inlinePicture.ts';
import { type LinkedFile, linkList } from '../linkedFile.ts';
import { sortTables } from '../script/sortTables.ts';
import { comparisonTable } from './comparisonTable.ts';
import { unitSection } from './unitSection.ts';

export interface BenchPage {
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
