import type { WaveFigures } from '../../figures/waveFigures.ts';
import type { Finding, Nominal, Waveform } from '../measureDocument.ts';
import { type DecisionRule, decide } from '../rule/decide.ts';
import { harmonicFigures } from './harmonicFigures.ts';
import { isForNominal } from './isForNominal.ts';
import type { HarmonicRow, LimitRow, LimitTable } from './limitTable.ts';
import { limitTables } from './limitTables.ts';
import { type RowFigure, rowFigure } from './rowFigure.ts';

/**
 * How a wave stands against the reference limits that apply to it.
 *
 * @param figures - of a voltage channel.
 * @param waveform - its kind chooses between rows for sines and for other waves.
 * @param nominal - null leaves out every row that needs one.
 * @returns in the order of the tables, each table's single rows before its harmonics. A row whose figure
 * could not be measured is left out. A row from memory gives `information`, never an outcome.
 * @remarks The standards speak of means over minutes and statistics over a week; a capture is a moment.
 * Each finding's remark says so: a finding is a comparison with a reference limit and nothing more.
 */
export function findings(
  figures: WaveFigures,
  waveform: Waveform,
  nominal: Nominal | null,
  rule: DecisionRule,
): readonly Finding[] {
  const output = outputOf(waveform);
  return limitTables()
    .filter((table) => isForNominal(table.appliesTo, nominal))
    .flatMap((table) => {
      const found = measuredRows(table, figures, nominal)
        .filter(({ row }) => row.wave === undefined || row.wave === output)
        .flatMap(({ row, measured }) => findingOf(table, row, measured, rule));
      return table.saying ? found.map(graded(table.saying, found)) : found;
    });
}

interface MeasuredRow {
  readonly row: LimitRow | HarmonicRow;
  readonly measured: RowFigure;
}

function measuredRows(
  { rows, harmonics }: LimitTable,
  figures: WaveFigures,
  nominal: Nominal | null,
): readonly MeasuredRow[] {
  const single = rows.flatMap((row) => {
    const measured = rowFigure(row, figures, nominal);
    return measured ? [{ row, measured }] : [];
  });
  if (!harmonics) return single;
  const byOrder = harmonicFigures(harmonics, figures, nominal);
  return [...single, ...byOrder.map((measured) => ({ row: harmonics, measured }))];
}

/** A staircase is no sine by its edges, however low its distortion. */
function outputOf({ kind }: Waveform): 'sinusoidal' | 'non-sinusoidal' | null {
  if (kind === 'not classified') return null;
  return kind === 'pure sine' || kind === 'distorted sine' ? 'sinusoidal' : 'non-sinusoidal';
}

/** One finding, or none where nothing was measured. */
function findingOf(
  { standard, edition }: LimitTable,
  { clause, provenance, remark }: LimitRow | HarmonicRow,
  { quantity, figure, limit }: RowFigure,
  rule: DecisionRule,
): readonly Finding[] {
  const decision = decide(figure, limit, rule);
  if (decision.outcome === 'not judged' || figure.value === null) return [];
  const { margin, side } = decision;
  return [
    {
      standard,
      edition,
      clause,
      quantity,
      value: figure.value,
      limit,
      margin,
      outcome: provenance === 'memory' ? 'information' : decision.outcome,
      side,
      provenance,
      remark,
    },
  ];
}

/** One row outside puts the wave outside the grade, whatever the other rows say. */
function graded(
  saying: NonNullable<LimitTable['saying']>,
  all: readonly Finding[],
): (one: Finding) => Finding {
  const grade = all.every(({ side }) => side === 'inside') ? saying.inside : saying.outside;
  return (one) => ({ ...one, remark: `${grade}; ${one.remark}` });
}
