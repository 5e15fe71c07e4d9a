import type { Figure } from '../base/figure.ts';
import type { Nominal } from '../judge/nominal/mainsNominals.ts';
import type { PhaseJump } from '../measure/breaks/seams.ts';
import type { SupplyEvent } from '../measure/breaks/supplyEvent.ts';
import { type MeasuringChain, withEnds } from '../measure/envelope.ts';
import { type FollowedSupply, followSupply } from '../measure/steps/followSupply.ts';
import { againstNominal, type SupplyCourse, type SupplyHappenings } from '../measure/steps/supplyTimeline.ts';
import type { Capture, Channel, SampleRange } from '../read/capture.ts';
import type { AssayNotice } from './notices.ts';

/** Where something happens to a voltage along its record; null where nothing repeats. */
export function followed(
  { intervalS, startS }: Capture,
  { samples }: Channel,
  current: Channel | null,
): FollowedSupply | null {
  return followSupply({ samples, intervalS, startS }, current?.samples ?? null);
}

/** The course of a supply against its nominal voltage: excursions of an inferred one count only where it comes and goes. */
export function courseWithNominal(
  supply: FollowedSupply,
  happened: SupplyHappenings,
  nominal: Nominal | null,
  chain: MeasuringChain,
): SupplyCourse {
  const judged = againstNominal(supply, happened, nominal?.voltageV ?? null, chain);
  const excursions =
    nominal?.inferred === true
      ? withEnds(judged.excursions, supply.envelope, nominal.voltageV)
      : judged.excursions;
  return { ...supply, ...happened, steps: judged.steps, excursions };
}

/** The RMS that tells which outlet this is: that of the figures, but where they describe a brown-out alone, the one before it. */
export function outletRms(
  acRms: Figure,
  [fromS, toS]: readonly [number, number],
  events: readonly SupplyEvent[],
): Figure {
  for (const event of events) {
    if (event.kind !== 'brown-out') continue;
    const { startS, endS, before } = event;
    const isOver = endS.value !== null && toS > endS.value + endS.uncertainty;
    if (fromS >= startS.value - startS.uncertainty && !isOver) return before;
  }
  return acRms;
}

/** Says which stretch the figures describe, where that is not the whole record. */
export function steadyNotice(
  { from, to }: SampleRange,
  supply: FollowedSupply | null,
  { startS, intervalS }: Capture,
): AssayNotice {
  const at = (sample: number): number => startS + sample * intervalS;
  const by = supply?.steady.byCurrent === true ? 'current' : 'voltage';
  return { code: 'span.steady', by, fromS: at(from), toS: at(to) };
}

/** Says where the wave goes on at another phase, which is neither a load step nor a break. */
export function jumpNotices(jumps: readonly PhaseJump[]): readonly AssayNotice[] {
  return jumps.map(({ atS, degrees }) => ({
    code: 'phase.jump',
    atS: atS.value,
    degrees: degrees.value,
  }));
}
