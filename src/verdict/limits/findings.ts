import type { GroupFigures } from '../../figures/harmonicGroups/groupFigures.ts';
import type { WaveFigures } from '../../figures/waveFigures.ts';
import type { Finding, Nominal, Waveform } from '../measureDocument.ts';
import { type DecisionRule, decide } from '../rule/decide.ts';
import { harmonicFigures } from './harmonicFigures.ts';
import { isForNominal } from './isForNominal.ts';
import type { HarmonicRow, LimitRow, LimitTable } from './limitTable.ts';
import { limitTables } from './limitTables.ts';
import { type RowFigure, rowFigure } from './rowFigure.ts';
import { takenBy } from './takenBy.ts';

/**
 * How a wave stands against the reference limits that apply to it.
 *
 * @param figures - of a voltage channel.
 * @param waveform - its kind chooses between rows for sines and for other waves.
 * @param nominal - null leaves out every row that needs one.
 * @param groups - of the same record; null where it holds no window of 10 or 12 cycles: single orders then
 * stand in for subgroups.
 * @returns in the order of the tables, each table's single rows before its harmonics. A row whose figure
 * could not be measured is left out. A row from memory, or one whose statistics take longer than the record, gives
 * `information`, never an outcome: its side says where the value lies.
 * @remarks Network standards speak of means over minutes and statistics over a week; a capture is a moment.
 */
export function findings(
  figures: WaveFigures,
  waveform: Waveform,
  nominal: Nominal | null,
  rule: DecisionRule,
  groups: GroupFigures | null = null,
): readonly Finding[] {
  const durationS = figures.spanS[1] - figures.spanS[0];
  const output = outputOf(waveform);
  return limitTables()
    .filter((table) => isForNominal(table.appliesTo, nominal))
    .flatMap((table) => {
      const found = measuredRows(table, figures, nominal, groups)
        .filter(({ row }) => row.wave === undefined || row.wave === output)
        .flatMap(({ row, measured }) => findingOf(table, row, measured, rule, durationS));
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
  groups: GroupFigures | null,
): readonly MeasuredRow[] {
  const single = rows.flatMap((row) => {
    const measured = rowFigure(row, takenBy('by' in row ? row.by : undefined, figures, groups), nominal);
    return measured ? [{ row, measured }] : [];
  });
  if (!harmonics) return single;
  const byOrder = harmonicFigures(harmonics, takenBy(harmonics.by, figures, groups), nominal);
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
  { clause, provenance, remark, neededS = 0 }: LimitRow | HarmonicRow,
  { quantity, figure, limit }: RowFigure,
  rule: DecisionRule,
  durationS: number,
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
      outcome: provenance === 'memory' || durationS < neededS ? 'information' : decision.outcome,
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
