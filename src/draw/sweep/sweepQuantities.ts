import type { MeasuredFigure } from '../../base/figure.ts';
import type { BenchPoint, BenchUnit } from '../../bench/benchDocument.ts';
import type { Limit } from '../../judge/decide.ts';
import { isForNominal } from '../../judge/limits/limitTable.ts';
import { limitTables } from '../../judge/limits/limitTables.ts';
import { decimalText, significantText, withUnit } from '../../words/numbers.ts';
import { figureText } from '../../words/quantities.ts';

/** Voltage, THD and crest factor of a unit against its load, each with the limits it is held against. */
export function sweepQuantities(unit: BenchUnit): readonly QuantityAgainstLoad[] {
  const { nominal, leavesRange } = unit;
  const range = leavesRange.range;
  const voltageLimits = limitLines(range?.limit ?? {}, 'V', range?.from === 'claim' ? 'claimed' : '±10 %');
  return [
    {
      name: 'RMS voltage',
      aside: 'thin bar: about 95 % sure; thick: what differs from capture to capture',
      unit: 'V',
      points: pointsOf(unit, 'rmsV'),
      limits: voltageLimits,
      exit: exitOf(unit),
      level:
        nominal === null
          ? null
          : {
              value: nominal.voltageV,
              name: `nominal ${withUnit(significantText(nominal.voltageV, 4), 'V')}`,
            },
    },
    {
      name: 'THD',
      aside: '% of the fundamental; bars: about 95 % sure; triangle: at most that',
      unit: '%',
      points: pointsOf(unit, 'thdPercent'),
      limits: [...claimed(unit, 'thdPercent', '%'), ...referenceThd(unit)],
      exit: null,
      level: null,
    },
    {
      name: 'Crest factor',
      aside: 'peak over RMS; bars: about 95 % sure',
      unit: '',
      points: pointsOf(unit, 'crestFactor'),
      limits: claimed(unit, 'crestFactor', ''),
      exit: null,
      level: { value: Math.SQRT2, name: 'a sine’s 1.414' },
    },
  ];
}

function exitOf({ leavesRange: { atW } }: BenchUnit): QuantityAgainstLoad['exit'] {
  return atW.value === null
    ? null
    : { loadW: atW.value, name: `leaves its range at ${figureText(atW, 'W')}` };
}

function pointsOf({ points }: BenchUnit, key: 'rmsV' | 'thdPercent' | 'crestFactor'): LoadPoint[] {
  return points.flatMap((point: BenchPoint): LoadPoint[] => {
    const figure = point[key];
    const { loadW, overload, lost, rmsScatterV } = point;
    if (loadW.value === null || figure.value === null) return [];
    const scatter = key === 'rmsV' ? rmsScatterV : null;
    return [{ loadW: loadW.value, figure, scatter, overload, isLost: lost !== undefined }];
  });
}

function claimed({ claims }: BenchUnit, quantity: string, unit: string): LimitLine[] {
  return claims
    .filter((claim) => claim.quantity === quantity)
    .flatMap(({ limit }) => limitLines(limit ?? {}, unit, 'claimed'));
}

function limitLines({ min, max }: Limit, unit: string, name: string): LimitLine[] {
  const line = (value: number | undefined, side: 'min' | 'max'): LimitLine[] =>
    value === undefined
      ? []
      : [{ value, side, name: `${name} ${withUnit(significantText(value, 4), unit)}` }];
  return [...line(max, 'max'), ...line(min, 'min')];
}

/** The lowest THD that a public table of limits allows for this nominal. */
function referenceThd({ nominal }: BenchUnit): LimitLine[] {
  const rows = limitTables()
    .filter(({ appliesTo }) => isForNominal(appliesTo, nominal))
    .flatMap(({ standard, rows }) => rows.map((row) => ({ standard, ...row })))
    .filter(
      ({ quantity, provenance, limit }) =>
        quantity === 'THD' && provenance === 'public' && limit.max !== undefined,
    )
    .sort((a, b) => a.limit.max! - b.limit.max!);
  return rows.slice(0, 1).map(({ standard, limit }) => ({
    value: limit.max!,
    side: 'max',
    name: `${standard} ${withUnit(significantText(limit.max!, 3), '%')}`,
  }));
}

/** How the figures of a sweep come about, a sentence each. */
export function sweepMethod({ regulation, droop, points, ratedW }: BenchUnit): string[] {
  const { noLoadW, fullLoadW } = regulation;
  const watts = (loadW: number): string => `${significantText(loadW, 4)} W`;
  const { fittedLoadsW, misfit } = droop;
  const isAssumed = points.some(({ currentFrom }) => currentFrom === 'told' || currentFrom === 'file name');
  return [
    ...(noLoadW === null || fullLoadW === null
      ? []
      : [
          `Regulation: what the voltage falls by from ${watts(noLoadW)} to ${watts(fullLoadW)}, in % of the latter; an error of the scope’s gain moves both alike`,
        ]),
    ...(droop.outputImpedanceOhm.value === null
      ? []
      : [
          `Output impedance: volts lost for each ampere, by a straight line through the captures at ${fittedLoadsW.map((loadW) => significantText(loadW, 4)).join(', ')} W${misfit === null ? '' : ` (misfit ${decimalText(misfit, 1)}; about 1 is a good line)`}`,
        ]),
    ...(isAssumed ? ['The current was not measured: load over voltage, for a resistive load'] : []),
    ...(ratedW === null ? [] : [`Captures above ${watts(ratedW)} judge no claim`]),
  ];
}

/** One quantity of a sweep, ready to draw. */
export interface QuantityAgainstLoad {
  readonly name: string;
  /** What the reader needs to know of its bars. */
  readonly aside: string;
  /** Empty for a ratio. */
  readonly unit: string;
  readonly points: readonly LoadPoint[];
  readonly limits: readonly LimitLine[];
  /** Where the line through the points leaves its limits; null: nowhere. */
  readonly exit: { readonly loadW: number; readonly name: string } | null;
  /** A level to read the points against, no limit: nominal, a sine's crest factor. */
  readonly level: { readonly value: number; readonly name: string } | null;
}

export interface LoadPoint {
  readonly loadW: number;
  readonly figure: MeasuredFigure;
  /** The part of the uncertainty that differs from capture to capture, where it is known. */
  readonly scatter: number | null;
  readonly overload: boolean;
  /** True where the output was lost under this load: beside the line through the others. */
  readonly isLost: boolean;
}

/** A limit as a level line. */
export interface LimitLine {
  readonly value: number;
  /** On which side values are outside. */
  readonly side: 'max' | 'min';
  readonly name: string;
}
