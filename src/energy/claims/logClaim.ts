import { normaliseClaim } from '../../judge/claims/parseClaim.ts';
import type { Limit } from '../../judge/decide.ts';
import { energyError } from '../energyErrors.ts';

/** What a maker says of energy and time, by its key in documents. */
type LogQuantity =
  | ('capacityWh' | 'capacityAh' | 'runtimeS' | 'chargeS' | 'chargeTo80S')
  | ('conversionEfficiencyPercent' | 'roundTripPercent' | 'powerW');

export interface LogClaim {
  /** As given. */
  readonly text: string;
  readonly quantity: LogQuantity;
  /** In the quantity's unit. */
  readonly limit: Limit;
  /** A rating without a sign before it: `capacity 380 Wh`; null: a bound or a range was written. */
  readonly rating: number | null;
}

/** Of a claimed quantity's value. */
export type LogClaimUnit = 'Wh' | 'Ah' | 's' | '%' | 'W';

interface ClaimedLogQuantity {
  readonly word: RegExp;
  /** That its values are in. */
  readonly unit: LogClaimUnit;
  /** What may be written behind the number, and how many of the quantity's unit it is. */
  readonly units: Readonly<Record<string, number>>;
  /** The side on which a value alone bounds it: a unit is meant to have so much, or to take no longer. */
  readonly alone: 'min' | 'max';
  readonly example: string;
}

const TIMES = { h: 3600, hour: 3600, hours: 3600, min: 60, minute: 60, minutes: 60, s: 1 };

/** In the order in which a claim is looked for. */
const logQuantities: Readonly<Record<LogQuantity, ClaimedLogQuantity>> = {
  capacityWh: {
    ...{ unit: 'Wh', word: /^capacity\b(?=.*Wh\b)/i, units: { wh: 1, kwh: 1000 } },
    ...{ alone: 'min', example: 'capacity 380 Wh' },
  },
  capacityAh: {
    ...{ unit: 'Ah', word: /^capacity\b(?=.*Ah\b)/i, units: { ah: 1, mah: 0.001 } },
    ...{ alone: 'min', example: 'capacity 100 Ah' },
  },
  runtimeS: {
    ...{ unit: 's', word: /^(?:runtime|run time|runs)\b/i, units: TIMES },
    ...{ alone: 'min', example: 'runtime > 4 h' },
  },
  chargeTo80S: {
    ...{ unit: 's', word: /^charge(?:s|d)? to 80 ?%(?: in)?/i, units: TIMES },
    ...{ alone: 'max', example: 'charge to 80 % < 1 h' },
  },
  chargeS: {
    ...{
      unit: 's',
      word: /^charge(?:s|d)?(?: time)?(?: to (?:full|100 ?%))?(?: in)?(?= ?[<>=:≤≥\d])/i,
      units: TIMES,
    },
    ...{ alone: 'max', example: 'charge < 3 h' },
  },
  conversionEfficiencyPercent: {
    ...{ unit: '%', word: /^(?:(?:conversion|inverter) )?efficiency\b/i, units: { '%': 1 } },
    ...{ alone: 'min', example: 'efficiency > 85 %' },
  },
  roundTripPercent: {
    ...{ unit: '%', word: /^round ?trip(?: efficiency)?\b/i, units: { '%': 1 } },
    ...{ alone: 'min', example: 'round trip > 80 %' },
  },
  powerW: {
    ...{ unit: 'W', word: /^(?:(?:continuous|rated) )?power\b/i, units: { w: 1, kw: 1000 } },
    ...{ alone: 'min', example: 'power 300 W' },
  },
};

/** The unit of a claim's value, by its key in documents. */
export function logClaimUnit(quantity: string): LogClaimUnit | null {
  return Object.hasOwn(logQuantities, quantity) ? logQuantities[quantity as LogQuantity].unit : null;
}

export const logClaimExamples: readonly string[] = Object.values(logQuantities).map(({ example }) => example);

const AMOUNT =
  /^ ?[:=]? ?(<=?|>=?|at least|over|above|from|under|below|at most|up to|within)? ?(\d+(?:[.,]\d+)?) ?([a-z]+|%)$/i;
const RANGE = /^ ?[:=]? ?(\d+(?:[.,]\d+)?) ?(?:\.{2,3}|-|to) ?(\d+(?:[.,]\d+)?) ?([a-z]+|%)$/i;

/**
 * A claim about a log: `capacity 380 Wh`, `runtime > 4 h`, `charge < 3 h`, `charge to 80 % < 1 h`, `efficiency > 85 %`,
 * `round trip > 80 %`, `power 300 W`.
 *
 * @throws MeasureError `claim.grammar`.
 */
export function parseLogClaim(text: string): LogClaim {
  const plain = normaliseClaim(text);
  const quantity = (Object.keys(logQuantities) as LogQuantity[]).find((key) =>
    logQuantities[key].word.test(plain),
  );
  if (quantity === undefined) throw energyError('claim.grammar.ofLog', { text });
  const { word, units, alone } = logQuantities[quantity];
  const rest = plain.replace(word, '');
  const range = RANGE.exec(rest);
  const scaleOf = (unit: string | undefined): number => {
    const scale = units[unit!.toLowerCase()];
    if (scale === undefined) throw energyError('claim.grammar.ofLog', { text });
    return scale;
  };
  const numberIn = (digits: string | undefined): number => Number(digits!.replace(',', '.'));
  if (range !== null) {
    const scale = scaleOf(range[3]);
    const limit = { min: scale * numberIn(range[1]), max: scale * numberIn(range[2]) };
    if (!(limit.min < limit.max)) throw energyError('claim.grammar.ofLog', { text });
    return { text, quantity, limit, rating: null };
  }
  const [, sign, digits, unit] = AMOUNT.exec(rest) ?? [];
  if (digits === undefined) throw energyError('claim.grammar.ofLog', { text });
  const value = scaleOf(unit) * numberIn(digits);
  if (!(value > 0)) throw energyError('claim.grammar.ofLog', { text });
  const side =
    sign === undefined ? alone : /^(?:<|under|below|at most|up to|within)/i.test(sign) ? 'max' : 'min';
  return { text, quantity, limit: { [side]: value }, rating: sign === undefined ? value : null };
}
