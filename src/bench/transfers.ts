import type { AssayResult } from '../assay/measureDocument.ts';
import type { Figure } from '../base/figure.ts';
import { type DecisionRule, decide, type Limit } from '../judge/decide.ts';
import { waveformKinds } from '../judge/waveform/kinds.ts';
import type { BenchTransfer, TransferDirection, TransferSide } from './benchDocument.ts';
import type { MeasuredTransfer } from './measuredUnit.ts';
import { lacking } from './reasons.ts';

/**
 * The breaks of the voltage in a capture of a transfer, each with the source that it leads to, as far as that was told
 * or shows in the wave; an output that does not come back is one without an end.
 */
export function benchTransfers({ result, note, direction }: MeasuredTransfer): readonly BenchTransfer[] {
  const { file, sha256, events, capture } = result;
  const told = direction === undefined ? null : { direction, directionFrom: 'told' as const };
  const seen = [...events]
    .filter(({ kind }) => kind === 'transfer' || kind === 'outage' || kind === 'cut-off')
    .flatMap((event): Omit<BenchTransfer, 'direction' | 'directionFrom'>[] => {
      const common = { file, sha256, ...(note === undefined ? {} : { note }) };
      if (event.kind === 'transfer' || event.kind === 'outage')
        return [{ ...common, atS: event.startS, transferS: event.durationS }];
      if (event.kind !== 'cut-off') return [];
      const notBackS = capture.startS + capture.durationS - event.startS.value;
      return [
        {
          ...common,
          atS: event.startS,
          transferS: lacking({ code: 'transfer.notBack', in: 'record' }),
          notBackS,
        },
      ];
    })
    .sort((a, b) => (a.atS.value ?? 0) - (b.atS.value ?? 0));
  return seen.map((transfer, i) => {
    // What goes away from one source comes back to it.
    const turned =
      told === null ? null : i % 2 === 0 ? told : { ...told, direction: OPPOSITE[told.direction] };
    return { ...transfer, ...(turned ?? seenDirection(result, seen, i)) };
  });
}

const OPPOSITE: Readonly<Record<TransferDirection, TransferDirection>> = {
  'mains to battery': 'battery to mains',
  'battery to mains': 'mains to battery',
};

/** By the wave of the steady stretch, where it has plateaus: on which side of the break it lies. */
function seenDirection(
  { waveform, voltage }: AssayResult,
  transfers: readonly { readonly atS: Figure }[],
  index: number,
): Pick<BenchTransfer, 'direction' | 'directionFrom'> {
  const atS = transfers[index]?.atS.value ?? null;
  // No mains have plateaus.
  const isOfBattery = waveformKinds[waveform.kind].shape === 'levels';
  if (voltage === undefined || atS === null || !isOfBattery) return { direction: null };
  const middleS = (voltage.spanS[0] + voltage.spanS[1]) / 2;
  const before = transfers.filter((one) => (one.atS.value ?? 0) < middleS).length;
  // The battery's wave stands after as many breaks as lie before it, and each break changes the source.
  const isToBattery = (before - 1 - index) % 2 === 0;
  return { direction: isToBattery ? 'mains to battery' : 'battery to mains', directionFrom: 'seen' };
}

/**
 * Transfers by their direction: how many, how long, and how many kept to what is claimed.
 *
 * @param limit - as claimed, s; null: no claim.
 */
export function transferSides(
  transfers: readonly BenchTransfer[],
  limit: Limit | null,
  rule: DecisionRule,
): readonly TransferSide[] {
  return ([...DIRECTIONS, null] as const).flatMap((direction): TransferSide[] => {
    const own = transfers.filter((transfer) => transfer.direction === direction);
    const back = own
      .flatMap(({ transferS }) => (transferS.value === null ? [] : [transferS]))
      .sort((a, b) => a.value - b.value);
    if (own.length === 0) return [];
    const missing = lacking({ code: 'transfer.notBack', in: 'any' });
    const kept = back.filter(
      (transferS) => limit === null || /pass$/.test(decide(transferS, limit, rule).outcome),
    );
    return [
      {
        ...{ direction, count: own.length, held: kept.length },
        ...{ shortestS: back[0] ?? missing, longestS: back.at(-1) ?? missing },
      },
    ];
  });
}

const DIRECTIONS: readonly TransferDirection[] = ['mains to battery', 'battery to mains'];

/**
 * A direction as people write it: `mains to battery`, `to battery`, `battery to mains`, `to mains`; null for other
 * words.
 */
export function directionIn(words: string): TransferDirection | null {
  const [, to = ''] = /\bto (?:the )?(battery|mains|grid)$/i.exec(words.trim()) ?? [];
  if (to === '') return null;
  return to.toLowerCase() === 'battery' ? 'mains to battery' : 'battery to mains';
}
