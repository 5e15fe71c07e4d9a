import { type ChannelPlace, channelSetting } from '../head/names.ts';
import { type Setting, settingValue } from '../head/settings.ts';
import { type Unit, unitOf } from '../head/unitOf.ts';
import type { CountHint } from '../notices.ts';

/** volts (or amperes) = (count − reference) · perCount + origin */
export interface CountScale {
  readonly perCount: number;
  readonly reference: number;
  readonly origin: number;
  readonly unit: 'V' | 'A';
}

const PER_COUNT =
  /^((y|vertical|v|adc) ?(mult\w*|increment|incr?|gain|scale per count)|(volts?|v|amps?|units?) ?(per|\/) ?(count|bit|lsb|code)|(count|lsb|bit|adc) ?(weight|size|value|scale|factor)|lsb|scale( factor)?|conversion factor|multiplier)$/;
const PER_DIVISION = /^((vertical|y|v|volts?) ?(scale|gain|sensitivity|\/ ?div|per div(ision)?)|scale)$/;
const COUNTS_PER_DIVISION = /^(counts?|codes?|levels?|points|lsb) ?(per|\/) ?div(ision)?$/;
const REFERENCE =
  /^((y|vertical|adc) ?(reference|ref)|(y|adc) ?off(set)?( counts?)?|zero (level|count|code)|adc zero|mid ?(scale|code)|(count )?offset|reference)$/;
const ORIGIN = /^(y|vertical) ?(origin|zero)$/;
const UNIT = /^((vertical|y|v) )?(axis )?units?( labels?)?$/;

/**
 * The scale that turns a converter's counts into volts, where the head says enough: a step per count, or
 * a scale per division with the counts of a division.
 *
 * @returns null where it doesn't.
 */
export function countScale(settings: readonly Setting[], place: ChannelPlace): CountScale | null {
  const read = (key: RegExp): { value: number; unit: Unit | null } | null => {
    const setting = channelSetting(settings, key, place);
    return setting === null ? null : settingValue(setting);
  };
  const perDivision = read(PER_DIVISION);
  const countsPerDivision = read(COUNTS_PER_DIVISION);
  const isPerDivision = perDivision !== null && countsPerDivision !== null && countsPerDivision.value > 0;
  const step = isPerDivision ? perDivision : read(PER_COUNT);
  if (step === null || !isPlausible(step.value)) return null;
  const named = unitOf(channelSetting(settings, UNIT, place)?.values[0] ?? '');
  const unit = isAmount(step.unit) ? step.unit : isAmount(named) ? named : null;
  const factor = isAmount(step.unit) ? step.unit.factor : 1;
  const reference = read(REFERENCE);
  const origin = read(ORIGIN);
  return {
    perCount: (step.value * factor) / (isPerDivision ? countsPerDivision.value : 1),
    // An offset in volts is where the trace stood on the screen; only one in counts shifts the codes.
    reference: reference === null || isAmount(reference.unit) ? 0 : reference.value,
    origin: origin === null ? 0 : origin.value * (origin.unit?.factor ?? 1),
    unit: unit?.dimension === 'current' ? 'A' : 'V',
  };
}

/** Codes of a division on most scopes: 8 bits over ten divisions and a little more. Common practice, no source. */
const USUAL_COUNTS_PER_DIVISION = 25;

/**
 * What one count would be if the numbers were codes, where the head hints at it without saying that they are: a step per
 * count, or a scale per division.
 *
 * @returns null where the head gives no such number.
 */
export function impliedScale(settings: readonly Setting[], place: ChannelPlace): CountHint | null {
  const stated = countScale(settings, place);
  if (stated !== null) return { factor: stated.perCount, division: null };
  const setting = channelSetting(settings, PER_DIVISION, place);
  const perDivision = setting === null ? null : settingValue(setting);
  if (perDivision === null || perDivision.value === 0) return null;
  const volts = perDivision.value * (isAmount(perDivision.unit) ? perDivision.unit.factor : 1);
  return {
    factor: volts / USUAL_COUNTS_PER_DIVISION,
    division: { volts, counts: USUAL_COUNTS_PER_DIVISION },
  };
}

/** Whether the head gives the channel a vertical scale at all, of counts or of divisions. */
export function isScaleStated(settings: readonly Setting[], place: ChannelPlace): boolean {
  return [PER_COUNT, PER_DIVISION].some((key) => {
    const setting = channelSetting(settings, key, place);
    return setting !== null && settingValue(setting) !== null;
  });
}

function isAmount(unit: Unit | null): unit is Unit {
  return unit?.dimension === 'voltage' || unit?.dimension === 'current';
}

/** No converter's step is worth less than a femtovolt or more than a gigavolt, whatever its sign. */
function isPlausible(step: number): boolean {
  return Math.abs(step) >= 1e-15 && Math.abs(step) <= 1e9;
}
