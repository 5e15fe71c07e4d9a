import type { GroupFigures } from '../../figures/harmonicGroups/groupFigures.ts';
import type { WaveFigures } from '../../figures/waveFigures.ts';
import type { Finding, Nominal, Waveform } from '../measureDocument.ts';
import { isFrequencyOf, type Outlet } from '../nominal/mainsNominals.ts';
import { type DecisionRule, decide } from '../rule/decide.ts';
import { againstOutlet } from './againstOutlet.ts';
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
 * @param others - outlets that the wave may be meant for instead of an inferred nominal.
 * @returns in the order of the tables, each table's single rows before its harmonics. Empty where the wave runs at no
 * frequency of the mains: the tables are for those. A row whose figure could not be measured is left out. A row from
 * memory, one whose statistics take longer than the record, or one that another possible outlet would turn, gives
 * `information`, never an outcome: its side says where the value lies.
 * @remarks Network standards speak of means over minutes and statistics over a week; a capture is a moment.
 */
export function findings(
  figures: WaveFigures,
  waveform: Waveform,
  nominal: Nominal | null,
  rule: DecisionRule,
  groups: GroupFigures | null = null,
  others: readonly Outlet[] = [],
): readonly Finding[] {
  const { value: frequencyHz } = figures.frequencyHz;
  if (frequencyHz !== null && ![50, 60].some((hz) => isFrequencyOf(frequencyHz, hz))) return [];
  const durationS = figures.spanS[1] - figures.spanS[0];
  const output = outputOf(waveform);
  return limitTables()
    .filter((table) => isForNominal(table.appliesTo, nominal))
    .flatMap((table) => {
      const found = measuredRows(table, figures, nominal, groups)
        .filter(({ row }) => row.wave === undefined || row.wave === output)
        .flatMap(({ row, measured }) => {
          const turning = nominal && turningOutlet(table, row, measured, nominal, others);
          return findingOf(table, row, measured, rule, durationS).map(informing(turning));
        });
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

/** The first of the other outlets by which the value would lie on the other side; null where none does. */
function turningOutlet(
  table: LimitTable,
  row: MeasuredRow['row'],
  measured: RowFigure,
  nominal: Nominal,
  others: readonly Outlet[],
): Outlet | null {
  const sideOf = ({ figure, limit }: RowFigure): string | null => decide(figure, limit, 'simple').side;
  const side = sideOf(measured);
  return others.find((other) => sideOf(againstOutlet(measured, row, table, nominal, other)) !== side) ?? null;
}

/** What hangs on a nominal that is doubted judges nothing. */
function informing(turning: Outlet | null): (finding: Finding) => Finding {
  if (turning === null) return (finding) => finding;
  const { voltageV, frequencyHz } = turning;
  const turns = `the other way round if the outlet is meant for ${voltageV} V ${frequencyHz} Hz`;
  return (finding) => ({
    ...finding,
    outcome: 'information',
    remark: finding.remark === undefined ? turns : `${turns}; ${finding.remark}`,
  });
}

/** One finding, or none where nothing was measured. */
function findingOf(
  { standard, edition }: LimitTable,
  { clause, provenance, remark, neededS = 0, elsewhere = false }: LimitRow | HarmonicRow,
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
      ...(elsewhere ? { elsewhere } : {}),
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
