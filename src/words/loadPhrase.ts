import type { LoadSeen } from '../assay/loadSeen.ts';
import type { InputDocument, MeasureResult, PowerDocument } from '../assay/measureDocument.ts';
import type { NamedFigure } from './figureRows.ts';
import { noBreakSpace } from './numbers.ts';
import { figureText } from './quantities.ts';
import { shortText } from './text.ts';

/** A longer one is cut, so that the sentence around it stays readable. */
const longestLoad = 60;

/** Of a number of them, and before the name of a thing. */
const spokenUnits: Readonly<Record<string, readonly [string, string]>> = {
  W: ['watts', 'watt'],
  kW: ['kilowatts', 'kilowatt'],
  VA: ['volt-amperes', 'volt-ampere'],
  A: ['amperes', 'ampere'],
  '%': ['percent', 'percent'],
};

/** Words that say how a load behaves, where others name a thing: "300 W resistive", "300 W heater". */
const manner =
  /^(?:resistive|inductive|capacitive|ohmic|(?:non-?)?linear|load|total|at|of|on|with|and|plus)\b/i;

/**
 * A clause led by the load and where that is known from, lower case: "at 258 W measured this is a pure sine", "with a
 * 300 W heater (as told) this is …"; where nothing is known of the load, the clause alone.
 *
 * @param spoken - spell the unit, and leave "as told" out: nobody says it.
 */
export function underLoad(seen: LoadSeen | undefined, clause: string, spoken = false): string {
  if (seen === undefined) return clause;
  const load = loadPhrase(seen.text, spoken);
  const from = {
    measured: seen.watts !== 0 ? ' measured' : spoken ? '' : ' (measured)',
    told: spoken ? '' : ' (as told)',
    'file name': spoken ? ', by the file’s name,' : ' (by the file’s name)',
  }[seen.from];
  return `${load}${from} ${clause}`;
}

/**
 * The load beside other facts, with where it is known from: "258 W measured", "300 W heater as told", "300 W by the
 * file’s name".
 */
export function loadText({ text, from, watts }: LoadSeen): string {
  if (from === 'measured') return watts === 0 ? `${text}, measured` : `${text} measured`;
  return from === 'told' ? `${text}, as told` : `${text} by the file’s name`;
}

/**
 * The load as the start of a sentence's predicate, lower case: "at 300 W resistive", "with a 300 W heater", "with a
 * kettle".
 *
 * @param words - not empty.
 * @param spoken - spell the unit of a leading number: "at 300 watts resistive", "with a 300 watt heater".
 */
export function loadPhrase(words: string, spoken = false): string {
  const load = shortText(words, longestLoad);
  const match = /^(\d+(?:[.,]\d+)?)\s*(kW|VA|W|A|%)(?![\p{L}\p{N}])(.*)$/u.exec(load);
  if (match === null) return /^\d|load$/i.test(load) ? `at ${load}` : `with ${load}`;
  const [, number = '', unit = '', rest = ''] = match;
  const [many, one] = spokenUnits[unit]!;
  const said = (word: string): string => `${number}${spoken ? ` ${word}` : `${noBreakSpace}${unit}`}${rest}`;
  return isOneThing(rest) && unit !== '%' ? `with ${articleOf(number)} ${said(one)}` : `at ${said(many)}`;
}

/** Whether what follows the unit is one thing's name: several end in s, but glass does not. */
function isOneThing(rest: string): boolean {
  const name = rest.trim();
  return /^\s+\p{L}/u.test(rest) && !manner.test(name) && !/[^s]s$/i.test(name);
}

/** Eight, eleven and eighteen start with a vowel, with thousands behind them too. */
function articleOf(number: string): string {
  return /^(?:8|11(?:\d{3})?(?!\d)|18(?:\d{3})?(?!\d))/.test(number) ? 'an' : 'a';
}

/** What the load takes and what kind it is, in a sentence; null without a current channel. */
export function powerSentence({ power, current, loadKind, input }: MeasureResult): string | null {
  if (power === undefined) return null;
  const parts = [
    figureText(power.activeW, 'W'),
    ...(current === undefined ? [] : [figureText(current.rmsA, 'A')]),
    `power factor ${figureText(power.powerFactor, '')}`,
  ];
  const kind =
    loadKind === undefined || loadKind.kind === 'not classified'
      ? ''
      : `, ${loadKind.kind === 'inductive' ? 'an' : 'a'} ${loadKind.kind} load`;
  const efficiency = input?.conversionEfficiencyPercent;
  const converted =
    efficiency === undefined
      ? ''
      : ` It takes in ${figureText(input!.activeW, 'W')} of DC: ${figureText(efficiency, '%')} conversion efficiency.`;
  return `Load as measured: ${parts.join(', ')}${kind}.${converted}`;
}

/** Every power. */
export function powerRows(power: PowerDocument): NamedFigure[] {
  return [
    ['active power', power.activeW, 'W'],
    ['apparent power', power.apparentVA, 'VA'],
    ['nonactive power', power.nonactiveVar, 'var'],
    ['power factor', power.powerFactor, ''],
    ['displacement power factor', power.displacementPowerFactor, ''],
    ['displacement angle', power.displacementDeg, '°'],
    ['fundamental apparent power', power.fundamentalApparentVA, 'VA'],
    ['fundamental active power', power.fundamentalActiveW, 'W'],
    ['fundamental reactive power', power.fundamentalReactiveVar, 'var'],
    ['nonfundamental apparent power', power.nonfundamentalApparentVA, 'VA'],
    ['current distortion power', power.currentDistortionVar, 'var'],
    ['voltage distortion power', power.voltageDistortionVar, 'var'],
    ['harmonic apparent power', power.harmonicApparentVA, 'VA'],
    ['harmonic active power', power.harmonicActiveW, 'W'],
    ['harmonic distortion power', power.harmonicDistortionVar, 'var'],
    ['harmonic pollution', power.harmonicPollutionPercent, '%'],
  ];
}

/** What a DC input takes. */
export function inputRows(input: InputDocument): NamedFigure[] {
  return [
    ['active power', input.activeW, 'W'],
    ['mean voltage', input.meanV, 'V'],
    ['mean current', input.meanA, 'A'],
    ['ripple, RMS', input.rippleV, 'V'],
    ['ripple, RMS', input.rippleA, 'A'],
    ['ripple over mean voltage', input.rippleVoltagePercent, '%'],
    ['ripple over mean current', input.rippleCurrentPercent, '%'],
    ...(input.conversionEfficiencyPercent === undefined
      ? []
      : [['conversion efficiency', input.conversionEfficiencyPercent, '%'] as NamedFigure]),
  ];
}
