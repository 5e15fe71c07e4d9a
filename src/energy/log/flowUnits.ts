import { orderStatistic } from '../../signal/statistics.ts';
import { type FlowKey, logError } from './logErrors.ts';
import type { LogUnit } from './logUnits.ts';
import type { LogNotice } from './notices.ts';
import { type Flows, productRatio, thousandsOf, unitOfFactor } from './readings.ts';

export type FlowUnits = { readonly [Key in FlowKey]: LogUnit | null };

const FACTORS = [1, 1e-3, 1e-6];
const KEYS = ['volts', 'amps', 'power'] as const;

/** What a bench with batteries, chargers and inverters has, loaded, in V, A and W: common practice, no source. */
const LARGEST: Readonly<Record<FlowKey, number>> = { volts: 600, amps: 300, power: 5000 };
const SMALLEST: Readonly<Record<FlowKey, number>> = { volts: 0.5, amps: 1e-4, power: 1e-4 };
/** Amperes that anybody may have; beyond, a number without a unit may be milliamperes just as well. */
const EVERYDAY_A = 20;
/** A power factor is no less, mostly; and rounding makes it no more than 1. */
const LEAST_FACTOR = 0.02;
const MOST_FACTOR = 1.05;

interface Guess {
  readonly factors: Readonly<Record<FlowKey, number>>;
}

/**
 * The units of volts, amperes and watts where the file names none: those that make V·I the power, of a size that a
 * bench has, alike where several would do.
 *
 * @throws MeasureError `log.unit` where the numbers may stand in several, and the energy depends on it.
 */
export function flowUnits(flows: Flows): {
  readonly units: FlowUnits;
  readonly notices: readonly LogNotice[];
} {
  const known = (key: FlowKey): number | null => flows[key]?.unit?.factor ?? null;
  const missing = KEYS.filter((key) => flows[key] !== null && flows[key].unit === null);
  const { power, volts, amps } = flows;
  const ratio =
    power && volts && amps
      ? productRatio(volts.column.numbers!, amps.column.numbers!, power.column.numbers!)
      : null;
  if (missing.length === 0) {
    return { units: unitsOf(flows, {}), notices: ratio === null ? [] : contradiction(flows, ratio) };
  }
  const sizes = {
    power: sizeOf(power?.column.numbers),
    volts: sizeOf(volts?.column.numbers),
    amps: sizeOf(amps?.column.numbers),
  };
  const guesses = allFactors(missing)
    .map(
      (factors): Guess => ({
        factors: {
          power: known('power') ?? 1,
          volts: known('volts') ?? 1,
          amps: known('amps') ?? 1,
          ...factors,
        },
      }),
    )
    .filter(({ factors }) => ratio === null || isProduct(ratio, factors))
    .filter(({ factors }) => missing.every((key) => isSized(sizes[key] * factors[key], key)));
  const best = bestGuess(guesses, missing, sizes, ratio !== null);
  if (best === null) {
    const asked = missing.find((key) => key !== 'volts') ?? missing[0]!;
    throw logError('log.unit', {
      key: asked,
      column: flows[asked]!.column.shown,
      most: sizes[asked],
      units: FACTORS.map((factor) => unitOfFactor(asked, factor).symbol),
    });
  }
  const units = unitsOf(flows, best.factors);
  return {
    units,
    notices: [
      {
        code: ratio === null ? 'units.assumed' : 'units.product',
        columns: missing.map((key) => ({ name: flows[key]!.column.shown, unit: units[key]!.symbol })),
      },
    ],
  };
}

function unitsOf(flows: Flows, factors: Partial<Record<FlowKey, number>>): FlowUnits {
  const unit = (key: FlowKey): LogUnit | null =>
    flows[key] === null ? null : (flows[key].unit ?? unitOfFactor(key, factors[key] ?? 1));
  return { power: unit('power'), volts: unit('volts'), amps: unit('amps') };
}

function allFactors(keys: readonly FlowKey[]): Partial<Record<FlowKey, number>>[] {
  return keys.reduce<Partial<Record<FlowKey, number>>[]>(
    (made, key) => made.flatMap((one) => FACTORS.map((factor) => ({ ...one, [key]: factor }))),
    [{}],
  );
}

/** Whether watts are volts times amperes, or, as with AC, somewhat less. */
function isProduct(ratio: number, factors: Readonly<Record<FlowKey, number>>): boolean {
  const scaled = (ratio * factors.power) / (factors.volts * factors.amps);
  return scaled <= MOST_FACTOR && scaled >= LEAST_FACTOR;
}

function isSized(size: number, key: FlowKey): boolean {
  return size === 0 || (size <= LARGEST[key] && size >= SMALLEST[key]);
}

/** The largest reading, but for the hundredth that may be spikes. */
export function sizeOf(numbers: Float64Array | null | undefined): number {
  if (!numbers) return 0;
  const step = Math.max(1, Math.floor(numbers.length / 20_000));
  const sizes: number[] = [];
  for (let row = 0; row < numbers.length; row += step)
    if (!Number.isNaN(numbers[row]!)) sizes.push(Math.abs(numbers[row]!));
  return sizes.length === 0
    ? 0
    : orderStatistic(Float64Array.from(sizes), Math.floor(0.99 * (sizes.length - 1)));
}

/** Base units where they will do; else the same small unit throughout; null where that leaves it open. */
function bestGuess(
  guesses: readonly Guess[],
  missing: readonly FlowKey[],
  sizes: Readonly<Record<FlowKey, number>>,
  isChecked: boolean,
): Guess | null {
  const plain = guesses.find(({ factors }) => missing.every((key) => factors[key] === 1));
  // Amperes without a power to hold them against: 50 may be mA.
  const isOpen =
    !isChecked && missing.includes('amps') && sizes.amps > EVERYDAY_A && sizes.volts < EVERYDAY_A / 2;
  if (plain !== undefined && !isOpen) return plain;
  if (plain !== undefined) return null;
  const alike = guesses.filter(({ factors }) =>
    missing.every((key) => factors[key] === factors[missing[0]!]),
  );
  if (alike.length === 1 && missing.length > 1) return alike[0]!;
  return guesses.length === 1 ? guesses[0]! : null;
}

/** Columns whose units are named, and that don't make the power that stands beside them. */
function contradiction(flows: Flows, ratio: number): LogNotice[] {
  const { power, volts, amps } = flows;
  const scaled = (ratio * power!.unit!.factor) / (volts!.unit!.factor * amps!.unit!.factor);
  if (scaled <= MOST_FACTOR && scaled >= LEAST_FACTOR) return [];
  return [
    {
      code: 'units.contradict',
      columns: [power!, volts!, amps!].map(({ column, unit }) => ({
        name: column.shown,
        unit: unit!.symbol,
      })),
      times: thousandsOf(scaled),
    },
  ];
}
