import type { Figure } from '../../base/figure.ts';
import type { Notice } from '../../base/notice.ts';
import type { Nominal } from '../measureDocument.ts';
import {
  apartRatio,
  isFrequencyOf,
  mainsNominals,
  type ToldNominal,
  VOLTAGE_REACH,
} from './mainsNominals.ts';
import { scaleDoubts } from './scaleDoubts.ts';

export interface InferredNominal {
  /** `inferred` is true where either half was. Null where nothing fits. */
  readonly nominal: Nominal | null;
  readonly notices: readonly Notice[];
}

/**
 * The voltage and frequency that the outlet is meant to give. What was told stands; what was not is the
 * nearest by ratio among the outlets of the world: the frequency first, then the voltage within 20 %.
 *
 * @param rmsV - of the voltage channel.
 * @param frequencyHz - of its fundamental.
 * @param told - by option, claim or plan; positive numbers.
 * @returns with notices `nominal.none`, `nominal.other`, `frequency.suspect`, `scale.suspect`, `scale.half`.
 * @remarks At 120 V and 60 Hz a 100 V outlet lies within 20 % too, and the notice says so. A frequency
 * within neither range (±15 % of 50 or 60 Hz) gives no nominal: the time axis is the likelier fault.
 */
export function inferNominal(rmsV: Figure, frequencyHz: Figure, told: ToldNominal = {}): InferredNominal {
  const { voltageV, frequencyHz: toldHz } = told;
  const toldWhole =
    voltageV !== undefined && toldHz !== undefined
      ? { voltageV, frequencyHz: toldHz, inferred: false }
      : null;
  if (!rmsV.value || !frequencyHz.value)
    return { nominal: toldWhole, notices: toldWhole ? [] : [noneNotice] };
  const v = rmsV.value;
  const f = frequencyHz.value;

  const candidates = candidatesFor(told);
  const inTime = candidates
    .filter((candidate) => isFrequencyOf(f, candidate.frequencyHz))
    .sort((a, b) => apartRatio(f, a.frequencyHz) - apartRatio(f, b.frequencyHz) || nearerVoltage(v, a, b));
  const [nearestInTime] = inTime;
  const sameTime = inTime.filter((candidate) => candidate.frequencyHz === nearestInTime?.frequencyHz);
  const withinReach = inTime.filter(
    (candidate) => voltageV !== undefined || apartRatio(v, candidate.voltageV) <= VOLTAGE_REACH,
  );
  const nearest = withinReach.find((candidate) => sameTime.includes(candidate));
  const nominal = toldWhole ?? (nearest ? { ...nearest, inferred: true } : null);

  const notices: Notice[] = [];
  const others = withinReach.filter((candidate) => candidate !== nearest);
  const voltages = sameTime.map((candidate) => candidate.voltageV);
  if (nearest && others.length > 0) notices.push(otherNotice(nearest, others));
  if (voltages.length > 0) notices.push(...scaleDoubts(v, voltages));
  else if (candidates.length > 0) notices.push(frequencyNotice(f, toldHz));
  if (!nominal && notices.length === 0) notices.push(noneNotice);
  return { nominal, notices };
}

function candidatesFor({ voltageV, frequencyHz }: ToldNominal): readonly Required<ToldNominal>[] {
  if (voltageV === undefined)
    return mainsNominals.filter((known) => frequencyHz === undefined || known.frequencyHz === frequencyHz);
  const frequencies = frequencyHz === undefined ? [50, 60] : [frequencyHz];
  return frequencies.map((nominalHz) => ({ voltageV, frequencyHz: nominalHz }));
}

function nearerVoltage(v: number, a: Required<ToldNominal>, b: Required<ToldNominal>): number {
  return apartRatio(v, a.voltageV) - apartRatio(v, b.voltageV);
}

const noneNotice: Notice = {
  code: 'nominal.none',
  message:
    'No usual outlet voltage fits this wave, so limits that need one are left out. Tell it with --nominal.',
};

function otherNotice(chosen: Required<ToldNominal>, others: readonly Required<ToldNominal>[]): Notice {
  return {
    code: 'nominal.other',
    message: `Taken for ${inWords(chosen)}, but ${others.map(inWords).join(' or ')} is possible too. Tell which with --nominal.`,
  };
}

function frequencyNotice(f: number, toldHz: number | undefined): Notice {
  const expected = toldHz === undefined ? '50 or 60 Hz' : `${toldHz} Hz`;
  return {
    code: 'frequency.suspect',
    message: `${Number(f.toPrecision(3))} Hz is far from ${expected}: the file's time axis looks wrong, unless the outlet really runs so. It is measured as the file says; if the frequency is real, tell it with --nominal.`,
  };
}

function inWords({ voltageV, frequencyHz }: Required<ToldNominal>): string {
  return `${voltageV} V ${frequencyHz} Hz`;
}
