import { hypot } from '../../base/elementary.ts';
import type { Figure } from '../../base/figure.ts';
import type { GroupFigures } from '../../measure/groups/groupFigures.ts';
import type { WaveFigures } from '../../measure/waveFigures.ts';
import { type DecisionRule, decide, type Limit, type Outcome } from '../decide.ts';
import { isFrequencyOf, type Nominal, type Outlet } from '../nominal/mainsNominals.ts';
import { waveformKinds } from '../waveform/kinds.ts';
import type { Waveform } from '../waveform/waveform.ts';
import { limitQuantities } from './limitQuantities.ts';
import {
  type HarmonicMethod,
  type HarmonicRow,
  isForNominal,
  type LimitRow,
  type LimitTable,
} from './limitTable.ts';
import { limitTables } from './limitTables.ts';
import { harmonicFigures, type RowFigure, rowFigure } from './rowFigure.ts';

/**
 * How a wave stands against the reference limits that apply to it.
 *
 * @param figures - of a voltage channel.
 * @param waveform - its kind chooses between rows for sines and for other waves.
 * @param nominal - null leaves out every row that needs one.
 * @param groups - of the same record; null where it holds no window of 10 or 12 cycles: single orders then
 * stand in for subgroups.
 * @param doubts - what of the wave is doubted: the outlet that it is meant for, its zero.
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
  { others = [], zero = false }: WaveDoubts = {},
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
          const { unit } = measured;
          return findingOf(table, row, measured, rule, durationS)
            .map(informing(turning))
            .map((finding) => ({ unit, finding }));
        });
      const { saying } = table;
      const grade = saying
        ? graded(
            saying,
            found.map(({ finding }) => finding),
          )
        : (one: Finding) => one;
      return found.filter(({ unit }) => !zero || unit !== 'V').map(({ finding }) => grade(finding));
    });
}

interface WaveDoubts {
  /** Outlets that the wave may be meant for instead of an inferred nominal. */
  readonly others?: readonly Outlet[];
  /** True where its zero is doubted, and with it volts: rows in them are left out. Ratios and hertz stand. */
  readonly zero?: boolean;
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
  const { shape } = waveformKinds[kind];
  return shape === null ? null : shape === 'smooth' ? 'sinusoidal' : 'non-sinusoidal';
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

export interface Finding {
  readonly standard: string;
  readonly edition: string;
  readonly clause: string;
  /** In words with its unit: `RMS voltage (V)`, `harmonic 5 (% of fundamental)`. */
  readonly quantity: string;
  readonly value: number;
  readonly limit: Limit;
  /** Distance to the nearest limit in the quantity's unit; negative outside. */
  readonly margin: number;
  readonly outcome: Outcome | 'information';
  readonly side: 'inside' | 'outside';
  readonly provenance: 'public' | 'memory';
  /** True where the row is for another place than an outlet. */
  readonly elsewhere?: boolean;
  /** What the standard's own statistics ask for and a capture can't give; or whom the row is for. */
  readonly remark?: string;
}

/**
 * The figures with their harmonics taken as a standard takes them.
 *
 * @param method - `subgroups`: each order with its neighbours, mean square over the record's windows; absent: the
 * figures as they are.
 * @param groups - null where the record holds no window; the figures are then as they are.
 * @returns THD and harmonics replaced, to the orders that both hold; everything else unchanged.
 */
function takenBy(
  method: HarmonicMethod | undefined,
  figures: WaveFigures,
  groups: GroupFigures | null,
): WaveFigures {
  if (method === undefined || groups === null || figures.thdPercent.value === null) return figures;
  const [first] = groups.all.orders;
  if (first === undefined) return figures;
  const harmonics = groups.all.orders.flatMap(({ order, subgroupRms }) => {
    const fitted = figures.harmonics[order - 1];
    return fitted === undefined
      ? []
      : [{ ...fitted, rms: subgroupRms, percent: (100 * subgroupRms) / first.subgroupRms }];
  });
  const thd = hypot(...harmonics.slice(1).map(({ percent }) => percent));
  return {
    ...figures,
    harmonics,
    thdOrders: harmonics.length,
    thdPercent: { ...figures.thdPercent, value: thd },
  };
}

/**
 * The same figure and limit as they would stand if the outlet were meant for another voltage or frequency: what hangs on
 * the nominal goes with it, everything else stays.
 *
 * @param measured - against `nominal`.
 */
function againstOutlet(
  measured: RowFigure,
  row: LimitRow | HarmonicRow,
  { appliesTo }: LimitTable,
  nominal: Nominal,
  other: Outlet,
): RowFigure {
  const volts = other.voltageV / nominal.voltageV;
  const hertz = other.frequencyHz / nominal.frequencyHz;
  const { figure, limit } = measured;
  if (!('quantity' in row) || 'highestOrder' in row)
    return row.unit === '% of nominal' ? { ...measured, figure: times(figure, 1 / volts) } : measured;
  const { share } = limitQuantities[row.quantity];
  if (share === undefined) return measured;
  // Volts that a table prints for its own class are the same share of it in another.
  return row.unit === share.unit || appliesTo?.[share.of] !== undefined
    ? { ...measured, limit: scaled(limit, share.of === 'voltageV' ? volts : hertz) }
    : measured;
}

function scaled({ min, max }: Limit, factor: number): Limit {
  return {
    ...(min === undefined ? {} : { min: min * factor }),
    ...(max === undefined ? {} : { max: max * factor }),
  };
}

function times(figure: Figure, factor: number): Figure {
  if (figure.value === null) return figure;
  return { value: figure.value * factor, uncertainty: figure.uncertainty * factor };
}
