import { type ChannelPlace, channelSetting } from '../head/channelSetting.ts';
import type { Setting } from '../head/setting.ts';
import { settingValue } from '../head/settingValue.ts';

/** How a channel's input was set, as far as the head says it. */
export interface InputSettings {
  readonly coupling: 'AC' | 'DC' | null;
  readonly probeRatio: number | null;
  /** Smallest step, in V or A. */
  readonly stepSize: number | null;
  readonly bits: number | null;
}

const COUPLING = /^((input|vertical|y|channel) )?(coupling|coupl)$/;
const PROBE = /^(probe|attenuation|(probe|input) ?(atten\w*|ratio|scale|factor|gain))$/;
const STEP = /^((vertical|y|voltage) )?(resolution|step( size)?|lsb|increment)$/;
const BITS = /^((adc|vertical|y) )?(bits|resolution|bit depth|resolution bits|number of bits)$/;

export function inputSettings(settings: readonly Setting[], place: ChannelPlace): InputSettings {
  const setting = (key: RegExp): Setting | null => channelSetting(settings, key, place);
  const coupling = /^\W*(ac|dc)/i.exec(setting(COUPLING)?.values[0] ?? '')?.[1]?.toUpperCase();
  // "Resolution" is a number of bits here and a step in volts there: the unit tells.
  const step = channelSetting(settings.filter(isInVoltsOrAmperes), STEP, place);
  const stepValue = step === null ? null : settingValue(step);
  return {
    coupling: coupling === 'AC' || coupling === 'DC' ? coupling : null,
    probeRatio: ratio(setting(PROBE)?.values[0] ?? ''),
    stepSize: stepValue === null ? null : Math.abs(stepValue.value * (stepValue.unit?.factor ?? 1)),
    bits: wholeBits(setting(BITS)?.values[0] ?? ''),
  };
}

function isInVoltsOrAmperes(setting: Setting): boolean {
  const dimension = settingValue(setting)?.unit?.dimension;
  return dimension === 'voltage' || dimension === 'current';
}

/** `10`, `10X`, `x10`, `10:1`, `1:10` are all ten. */
function ratio(text: string): number | null {
  const match = /^[x×]?\s*([\d.]+(?:e[+-]?\d+)?)\s*[x×]?(?::([\d.]+))?$/i.exec(text.trim());
  if (match === null) return null;
  const [a, b] = [Number(match[1]), Number(match[2] ?? 1)];
  const value = a >= b || match[2] === undefined ? a / b : b / a;
  return Number.isFinite(value) && value > 0 ? value : null;
}

function wholeBits(text: string): number | null {
  const match = /^(\d{1,2})(\s*-?bits?)?$/i.exec(text.trim());
  const bits = Number(match?.[1] ?? 0);
  return bits >= 4 && bits <= 32 ? bits : null;
}
