import type { BenchDocument, BenchUnit } from '../../bench/benchDocument.ts';
import { benchClaimsSentence } from '../../words/bench/benchLines.ts';
import { benchSpoken, pointKind, pointState } from '../../words/bench/benchSpoken.ts';
import { unitFigures } from '../../words/bench/benchTable.ts';
import { comparisonSentence } from '../../words/bench/comparisonSentence.ts';
import { overloadHeads, overloadRow, transferHeads, transferRow } from '../../words/bench/overloadWords.ts';
import { outcomeWords } from '../../words/claimWords.ts';
import { significantText, withUnit } from '../../words/numbers.ts';
import { figureText } from '../../words/quantities.ts';
import { cleanTexts, fileName, shortText } from '../../words/text.ts';
import { markdownFoot, markdownPicture, markdownTable, markdownText } from './markdown.ts';

interface BenchMarkdown {
  /** Version of the program. */
  readonly program: string;
  readonly bench: BenchDocument;
  /** The sheet of each of today's sweeps by the unit's name, and that of the comparison. */
  readonly sweeps: ReadonlyMap<string, string>;
  readonly comparison: string | null;
}

/**
 * A bench test as Markdown to paste into an article: how the units compare, then each of today's with its sweep.
 *
 * @param document - what is from plans and captures in it is cleaned and escaped here.
 */
export function benchMarkdown({ program, bench, sweeps, comparison }: BenchMarkdown): string {
  const sentence = comparisonSentence(cleanTexts(bench.units));
  const today = bench.units.filter(({ earlier }) => earlier === undefined);
  return [
    ...(bench.units.length < 2 ? [] : [`**${markdownText(sentence)}**`]),
    ...(comparison === null ? [] : [markdownPicture(comparison, sentence)]),
    ...today.flatMap((unit) => unitParts(unit, sweeps.get(unit.name))),
    'Each ± reads: about 95 % sure that the true value lies within.',
    `Measured with sineassay ${markdownText(program)}; the sheets carry the data, and \`sineassay recheck\` checks them.`,
    markdownFoot,
  ].join('\n\n');
}

function unitParts(told: BenchUnit, sheet: string | undefined): string[] {
  const unit = cleanTexts(told);
  const { points, claims, overloads = [], transferSides = [] } = unit;
  const [sentence] = benchSpoken(unit);
  const figures = unitFigures(unit).filter(([, figure]) => figure.value !== null);
  return [
    `**${markdownText(sentence)}**`,
    ...(sheet === undefined ? [] : [markdownPicture(sheet, sentence)]),
    ...(overloads.length === 0 ? [] : [textTable(overloadHeads, overloads.map(overloadRow))]),
    ...(points.length === 0 ? [] : [pointsTable(unit)]),
    ...(transferSides.length === 0 ? [] : [textTable(transferHeads, transferSides.map(transferRow))]),
    ...(claims.length === 0 ? [] : [`Claims: ${markdownText(benchClaimsSentence(claims))}`]),
    ...(figures.length === 0
      ? []
      : [
          markdownTable(
            [{ heading: 'Over the sweep' }, { heading: 'Value', isNumber: true }],
            figures.map(([name, figure, unitText]) => [name, figureText(figure, unitText)]),
          ),
        ]),
    ...(points.length === 0
      ? []
      : [
          points
            .map(
              ({ file, sha256 }) =>
                `- ${markdownText(shortText(fileName(file), 120))}, SHA-256 \`${sha256}\``,
            )
            .join('\n'),
        ]),
  ];
}

function textTable(heads: readonly string[], rows: readonly (readonly string[])[]): string {
  return markdownTable(
    heads.map((heading) => ({ heading })),
    rows,
  );
}

function pointsTable({ points }: BenchUnit): string {
  return markdownTable(
    [
      { heading: 'Load', isNumber: true },
      { heading: 'RMS', isNumber: true },
      { heading: 'Frequency', isNumber: true },
      { heading: 'Crest factor', isNumber: true },
      { heading: 'THD', isNumber: true },
      { heading: 'Kind' },
      { heading: 'Claims' },
    ],
    points.map((point) => [
      point.loadW.value === null ? 'unknown' : withUnit(significantText(point.loadW.value, 4), 'W'),
      figureText(point.rmsV, 'V'),
      figureText(point.frequencyHz, 'Hz'),
      figureText(point.crestFactor, ''),
      figureText(point.thdPercent, '%'),
      pointKind(point),
      pointState(point) ?? (point.outcome === null ? 'none' : outcomeWords(point.outcome)),
    ]),
  );
}
