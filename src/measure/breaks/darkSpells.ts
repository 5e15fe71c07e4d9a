import type { Figure } from '../../base/figure.ts';
import type { SampleRange } from '../../read/capture.ts';
import { usualPeak } from '../../signal/strayValues.ts';
import { budgeted } from '../doubt/budget.ts';
import { scatter } from '../doubt/component.ts';
import { missing } from '../reasons.ts';
import { type BreakPlace, type DarkSpell, largestSize, voltageEdges } from './eventFigures.ts';
import { type Departure, placeOf, type SteadySide } from './steadySide.ts';
import { type DarkRun, zeroVoltageRuns } from './zeroVoltageRuns.ts';

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
export function darkSpells(samples: Float64Array, omega: number): readonly DarkSpell[] {
  const periodSamples = (2 * Math.PI) / omega;
  const runs = zeroVoltageRuns(samples, periodSamples, usualPeak(samples));
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
        ? endSpell(samples, { before, run, after }, omega, atStart)
        : !atStart && (isLong || (isSide(before) && isSide(after)))
          ? breakBetween(samples, { before, run, after }, omega)
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
  atStart: boolean,
): DarkSpell | null {
  const { before, run, after } = place;
  const periodSamples = (2 * Math.PI) / omega;
  const { leaves, joins } = voltageEdges(samples, place, omega, largestSize(samples, before.from, after.to));
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
    ? { range: { from: 0, to: edge?.latest ?? run.to }, leaves: null, joins: found, between: null }
    : {
        range: { from: edge?.earliest ?? run.from, to: samples.length },
        leaves: found,
        joins: null,
        between: null,
      };
}

/** Of a period: less contradicts neither side for sure and is no break. 0.6 ms at 50 Hz. */
export const LEAST_BREAK_CYCLES = 0.03;
/** Of the peak: what is left in a break, RMS; more is a dip. */
const LEFT_RATIO = 0.1;

/**
 * A break of the voltage, timed against the waves before and after as if each went on.
 *
 * @param omega - the fundamental, rough, radians a sample.
 * @returns null where the waves before and after explain the run between them, as when a stepped wave's
 * pulses grow narrower, or where too much voltage is left; else the break and the samples it covers.
 */
function breakBetween(
  samples: Float64Array,
  place: BreakPlace & { readonly run: DarkRun },
  omega: number,
): DarkSpell | null {
  const { before, run, after } = place;
  const periodSamples = (2 * Math.PI) / omega;
  const peak = largestSize(samples, before.from, after.to);
  const { left, right, leaves, joins } = voltageEdges(samples, place, omega, peak);
  // Without the waves beside it a run that one of them could explain proves nothing.
  const isOwnRest = !run.sure || run.to - run.from < OWN_REST_CYCLES * periodSamples;
  if (isOwnRest && (left === null || right === null)) return null;
  const [start, end] = [leaves ?? at(run.from), joins ?? at(run.to)];
  if (end.earliest - start.latest < LEAST_BREAK_CYCLES * periodSamples) return null;
  // What is left behind as it dies out is larger.
  const away = samples.subarray(Math.max(start.latest, run.from), end.earliest);
  if (away.length === 0) return null;
  if (rmsOf(away) > LEFT_RATIO * peak) return null;
  const [startAt, endAt] = [placeOf(start), placeOf(end)];
  return {
    range: { from: start.earliest, to: end.latest },
    leaves: startAt,
    joins: endAt,
    between: {
      away: { from: start.latest, to: end.earliest },
      phaseJumpDeg: phaseJump(left, right, endAt.position),
    },
  };
}

function rmsOf(samples: Float64Array): number {
  return Math.sqrt(samples.reduce((sum, v) => (Number.isNaN(v) ? sum : sum + v * v), 0) / samples.length);
}

/** Where a side is too short to be carried on, the dark run's own end stands. */
const at = (n: number): Departure => ({ earliest: n, latest: n });

/** How far the wave after is ahead of the one before, carried on, degrees. */
export function phaseJump(left: SteadySide | null, right: SteadySide | null, position: number): Figure {
  if (left === null || right === null) {
    return missing({ code: 'break.shortSide' });
  }
  const turns = (right.phaseRadAt(position) - left.phaseRadAt(position)) / (2 * Math.PI);
  const wrapped = 360 * (turns - Math.ceil(turns - 0.5));
  const degrees = (side: SteadySide): number => (180 / Math.PI) * side.phaseDeviationRadAt(position);
  return budgeted(wrapped, [
    scatter('phase of the wave before, carried on', degrees(left), '°'),
    scatter('phase of the wave after, carried back', degrees(right), '°'),
  ]);
}
