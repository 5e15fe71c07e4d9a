import { type LogFigure, none } from '../doubt/runFigures.ts';
import type { RatioResults, TogetherResult } from '../energyDocument.ts';
import type { EnergyLog } from '../log/energyLog.ts';
import type { LogAssay, LogTold, ShownRun } from '../logAssay.ts';
import { quotientOf, scaledFigure } from './quotient.ts';

/** The shares of its rating that one log shows, and its round trip where it holds a whole one. */
export function ratiosOf(
  runs: readonly ShownRun[],
  side: EnergyLog['side'],
  { ratedWh, ratedAh }: LogTold,
): RatioResults<LogFigure> {
  const discharge = mostOf(runs, 'discharge');
  const energy = discharge?.energyWh ?? none('the log holds no discharge');
  const charge = discharge?.chargeAh ?? none('the log holds no discharge');
  const unknown = none('which side of the inverter the log is from is not known: say it with --side');
  const roundTrip = roundTripWithin(runs);
  return {
    ...(ratedWh === undefined
      ? {}
      : side === 'ac'
        ? { outletSharePercent: scaledFigure(energy, 100 / ratedWh) }
        : { usableSharePercent: side === 'dc' ? scaledFigure(energy, 100 / ratedWh) : unknown }),
    ...(ratedAh === undefined ? {} : { usableChargeSharePercent: scaledFigure(charge, 100 / ratedAh) }),
    ...(roundTrip === null ? {} : { roundTripPercent: roundTrip }),
  };
}

/** The run of a kind with the most energy; without energy, the longest. */
function mostOf(runs: readonly ShownRun[], kind: ShownRun['kind']): ShownRun | undefined {
  const size = ({ energyWh, durationS }: ShownRun): number => energyWh.value ?? durationS.value ?? 0;
  return runs.filter((run) => run.kind === kind).sort((a, b) => size(b) - size(a))[0];
}

/** A charge to full and the discharge beside it down to where it ends by itself; null: the log holds no such pair. */
function roundTripWithin(runs: readonly ShownRun[]): LogFigure | null {
  const loaded = runs.filter(({ kind }) => kind === 'charge' || kind === 'discharge');
  const pair = loaded.flatMap((charge, i) => {
    if (charge.kind !== 'charge') return [];
    const discharge = [loaded[i + 1], loaded[i - 1]].find((one) => one?.kind === 'discharge');
    return discharge === undefined ? [] : [roundTrip(charge, discharge, 'one meter')];
  });
  return pair.find(({ value }) => value !== null) ?? pair[0] ?? null;
}

/** Between equal states alone: from full to empty and back to full. */
function roundTrip(charge: ShownRun, discharge: ShownRun, meters: 'one meter' | 'two meters'): LogFigure {
  const full = charge.charge?.toFullS;
  if (full?.value === null) return none(`a round trip goes from full to full: ${full.reason}`);
  if (discharge.isOpen && meters === 'one meter')
    return none('a round trip goes from full to full: the discharge does not end in this log');
  return quotientOf(discharge.energyWh, charge.energyWh, meters);
}

/** Runs of one discharge at both sides are as long as each other, within this. Common practice, no source. */
const LIKE_DURATION = 0.02;

/**
 * What two logs of one unit show together.
 *
 * @param input - what flows in: at the DC side of the inverter, or a charge.
 * @param output - what comes out: at the outlet, or a discharge.
 */
export function togetherOf(input: LogAssay, output: LogAssay): TogetherResult<LogFigure> {
  const out = mostOf(output.shown.runs, 'discharge');
  if (out === undefined) return { conversionEfficiencyPercent: none('the output log holds no discharge') };
  const charge = mostOf(input.shown.runs, 'charge');
  const into = mostOf(input.shown.runs, 'discharge');
  return {
    ...(into === undefined ? {} : { conversionEfficiencyPercent: conversion(into, out) }),
    ...(charge === undefined ? {} : { roundTripPercent: roundTrip(charge, out, 'two meters') }),
    ...(into === undefined && charge === undefined
      ? { conversionEfficiencyPercent: none('the input log holds no load') }
      : {}),
  };
}

function conversion(into: ShownRun, out: ShownRun): LogFigure {
  const [a, b] = [into.durationS, out.durationS];
  if (a.value !== null && b.value !== null) {
    const apart = Math.abs(a.value - b.value);
    if (apart > Math.max(LIKE_DURATION * Math.max(a.value, b.value), a.uncertainty + b.uncertainty))
      return none(
        `both sides must be logged over the same discharge: one took ${hours(a.value)}, the other ${hours(b.value)}`,
      );
  }
  return quotientOf(out.energyWh, into.energyWh, 'two meters');
}

function hours(seconds: number): string {
  return `${(seconds / 3600).toFixed(2)} h`;
}
