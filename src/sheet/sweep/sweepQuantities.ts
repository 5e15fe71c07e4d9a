import type { BenchPoint, BenchUnit } from '../../bench/benchDocument.ts';
import { isForNominal } from '../../verdict/limits/isForNominal.ts';
import { limitTables } from '../../verdict/limits/limitTables.ts';
import type { Limit } from '../../verdict/measureDocument.ts';
import { figureText } from '../numbers/figureText.ts';
import { significantText } from '../numbers/significantText.ts';
import { withUnit } from '../numbers/withUnit.ts';
import type { LimitLine, LoadPoint, QuantityAgainstLoad } from './quantityAgainstLoad.ts';

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
