import type { SampleRange } from '../../capture/capture.ts';
import { usualPeak } from '../../signal/usualPeak.ts';
import type { ChannelRecord } from '../envelope/halfCycleRms.ts';
import { breakBetween, LEAST_BREAK_CYCLES } from './breakBetween.ts';
import { type DarkRun, darkRuns } from './darkRuns.ts';
import { placeOf } from './departure.ts';
import type { EventFigures } from './eventFigures.ts';
import { type BreakPlace, type DarkSpell, voltageEdges } from './voltageEdges.ts';

/** Of a period: less voltage than this is no side but a run cut by the record's end. */
const SIDE_CYCLES = 0.25;
/** Of a period: a wave may rest at zero by itself for shorter. */
const OWN_REST_CYCLES = 1;
/** Cycles of voltage that prove a shorter rest at the record's end to be none of the wave's own. */
const PROVING_CYCLES = 2;
/** Of a period: the way from no voltage to 15 % of the peak, of a sine. */
const FLANK_CYCLES = 0.024;

/**
 * Every stretch of a record that is without voltage, in time order.
 *
 * @param omega - the fundamental, rough, radians a sample.
 */
export function darkSpells(
  record: ChannelRecord,
  omega: number,
  figures: EventFigures,
): readonly DarkSpell[] {
  const { samples } = record;
  const periodSamples = (2 * Math.PI) / omega;
  const runs = darkRuns(samples, periodSamples, usualPeak(samples));
  const sure = runs.filter((run) => run.sure);
  const spells: DarkSpell[] = [];
  const isSide = ({ from, to }: SampleRange): boolean => to - from >= SIDE_CYCLES * periodSamples;
  for (const run of runs) {
    const before = { from: spells.at(-1)?.range.to ?? 0, to: run.from };
    const after = { from: run.to, to: sure.find(({ from }) => from > run.from)?.from ?? samples.length };
    const atStart = run.sure && !isSide({ from: 0, to: run.from });
    const atEnd = run.sure && !isSide({ from: run.to, to: samples.length });
    // So long a rest is none of the wave's own, however little voltage stands beside it.
    const isLong = run.sure && run.to - run.from >= OWN_REST_CYCLES * periodSamples;
    const spell =
      atStart !== atEnd
        ? endSpell(samples, { before, run, after }, omega, figures, atStart)
        : !atStart && (isLong || (isSide(before) && isSide(after)))
          ? breakBetween(record, { before, run, after }, omega, figures)
          : null;
    if (spell !== null) spells.push(spell);
  }
  return spells;
}

/** The record's start or end without voltage; null where the wave beside it explains the rest. */
function endSpell(
  samples: Float64Array,
  place: BreakPlace & { readonly run: DarkRun },
  omega: number,
  figures: EventFigures,
  atStart: boolean,
): DarkSpell | null {
  const { before, run, after } = place;
  const periodSamples = (2 * Math.PI) / omega;
  const { leaves, joins } = voltageEdges(samples, place, omega, figures.largest(before.from, after.to).value);
  const edge = atStart ? joins : leaves;
  if (run.to - run.from < OWN_REST_CYCLES * periodSamples) {
    const side = atStart ? after.to - after.from : before.to - before.from;
    if (edge === null || side < PROVING_CYCLES * periodSamples) return null;
    const proven = atStart ? edge.earliest - run.from : run.to - edge.latest;
    if (proven < LEAST_BREAK_CYCLES * periodSamples) return null;
  }
  const own = {
    position: atStart ? run.to : run.from,
    halfWidth: Math.max(0.5, FLANK_CYCLES * periodSamples),
  };
  const found = edge === null ? own : placeOf(edge);
  return atStart
    ? { range: { from: 0, to: edge?.latest ?? run.to }, leaves: null, joins: found, event: null }
    : {
        range: { from: edge?.earliest ?? run.from, to: samples.length },
        leaves: found,
        joins: null,
        event: null,
      };
}
