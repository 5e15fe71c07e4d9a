import type { BenchOverload, BenchUnit, TransferSide } from '../../bench/benchDocument.ts';
import { decimalText, withUnit } from '../numbers.ts';
import { figureText, secondsFigureText, secondsText } from '../quantities.ts';
import { reasonText } from '../reasons.ts';
import { fileName } from '../text.ts';

/** What became of a load, as a clause: "output lost 0.14 s after 1500 W came on", "1500 W held for 0.3 s and more". */
export function overloadPhrase(overload: BenchOverload): string {
  const { lost, seen, heldS, heldAtLeast } = overload;
  const load = overloadText(overload);
  if (heldS.value === null) return `${seen} at ${load}`;
  const held = secondsText(heldS.value, 2);
  if (!lost) return `${load} held for ${held} and more`;
  return heldAtLeast ? `${seen} after at least ${held} at ${load}` : `${seen} ${held} after ${load} came on`;
}

/** "1500 W"; "an unknown load". */
function overloadText({ loadW }: BenchOverload): string {
  return loadW.value === null ? 'an unknown load' : withUnit(decimalText(loadW.value, 0), 'W');
}

/** How long a load was held: "0.14 s", "0.3 s and more". */
function heldText({ heldS, heldAtLeast }: BenchOverload): string {
  if (heldS.value === null) return reasonText(heldS.reason);
  return `${secondsText(heldS.value, 2)}${heldAtLeast ? ' and more' : ''}`;
}

/** The loss that a unit's test leads with: at the lowest load that is not above its rating; null where there is none. */
export function leadingLoss({ overloads = [] }: Pick<BenchUnit, 'overloads'>): BenchOverload | null {
  return overloads.find(({ lost, aboveRating }) => lost && aboveRating !== true) ?? null;
}

/** Fewer than this say little of what comes next. Common practice, no source. */
const ENOUGH_TRANSFERS = 5;

/** "Mains to battery: held 3 times of 3, 11.8 to 14.2 ms; fewer than five". @param isClaimed - a time is claimed. */
export function transferSidePhrase(side: TransferSide, isClaimed: boolean): string {
  const { direction, count, held, shortestS, longestS } = side;
  const verb = isClaimed ? 'held' : 'came back';
  const times = count === 1 && held === 1 ? `${verb} once` : `${verb} ${timesText(held)} of ${count}`;
  const few = count < ENOUGH_TRANSFERS ? '; fewer than five' : '';
  return `${direction ?? 'transfer'}: ${times}${spanText(shortestS, longestS)}${few}`;
}

function timesText(count: number): string {
  return count === 1 ? 'once' : `${count} times`;
}

function spanText(shortest: TransferSide['shortestS'], longest: TransferSide['longestS']): string {
  if (shortest.value === null || longest.value === null) return '';
  if (shortest.value === longest.value) return `, ${secondsText(longest.value)}`;
  return `, ${secondsText(shortest.value)} to ${secondsText(longest.value)}`;
}

/** Heads and rows of a table of overloads: load, for how long it was held, what was seen, in which capture. */
export const overloadHeads = ['Load', 'Held', 'Seen', 'Voltage under it', 'Capture'] as const;

/** A row, in the order of the heads. */
export function overloadRow(overload: BenchOverload): readonly string[] {
  const { seen, rmsV, file, aboveRating } = overload;
  return [
    `${overloadText(overload)}${aboveRating === true ? ', above the rating' : ''}`,
    heldText(overload),
    seen,
    rmsV.value === null ? '–' : figureText(rmsV, 'V'),
    fileName(file),
  ];
}

/** Heads of a table of transfers by direction. */
export const transferHeads = ['Direction', 'Seen', 'Held', 'Shortest', 'Longest'] as const;

/** A row, in the order of the heads. */
export function transferRow({
  direction,
  count,
  held,
  shortestS,
  longestS,
}: TransferSide): readonly string[] {
  return [
    direction ?? 'not known',
    count < ENOUGH_TRANSFERS ? `${count}, fewer than five` : String(count),
    held === 1 && count === 1 ? 'once' : `${held} of ${count}`,
    shortestS.value === null ? reasonText(shortestS.reason) : secondsFigureText(shortestS),
    longestS.value === null ? reasonText(longestS.reason) : secondsFigureText(longestS),
  ];
}
