import { type Setting, settingValue } from './settings.ts';
import type { Dimension } from './unitOf.ts';

/** One statement of the sampling interval, under the key that it has in the head. */
export interface StatedInterval {
  readonly key: string;
  readonly intervalS: number;
}

/** What the head says about time. Each null where it says nothing. */
export interface TimeSettings {
  readonly intervalS: number | null;
  /** All that it says of the interval, by interval or rate, in its order; they may contradict each other. */
  readonly stated: readonly StatedInterval[];
  /** Time of the first sample. */
  readonly startS: number | null;
  /** Whole record. */
  readonly spanS: number | null;
  readonly secondsPerDivision: number | null;
  readonly sampleCount: number | null;
  /** Whether the head says that the x axis is a frequency. */
  readonly isSpectrum: boolean;
}

const INTERVAL =
  /^(sampl\w* (interval|period|time|step)|(x |h |horizontal |time )?(increment|interval|incr?|delta|resolution|step)|time (step|per (sample|point))|time ?base (interval|step)|dt|dx|delta ?[tx]|[tx] ?delta|x ?inc\w*|seconds per sample|period per sample)$/;
const RATE =
  /^(sampl\w* (rate|frequency|freq|clock|speed)|samples per sec(ond)?|sa rate|sampling|sps|fs|rate|acquisition rate)$/;
const START =
  /^(start( time)?|time start|first (sample|point)( time)?|(x |h |horizontal |time )(start|zero|origin|offset)|x ?zero|x ?origin|x ?start|[tx] ?0|t ?start|start of (record|acquisition))$/;
const BEFORE_TRIGGER = /^(pre ?trigger( time)?|trigger (time|delay|offset)|time before trigger)$/;
const TRIGGER_SAMPLE = /^(trigger (sample|point|index|position|address)|pre ?trigger (samples|points))$/;
const SPAN =
  /^(duration|record (time|duration)|total time|time span|(time )?window|acquisition time|capture time|sweep time|span)$/;
const PER_DIVISION =
  /^((time|horizontal|h|x) ?(scale|\/ ?div|per div(ision)?)|time ?base|seconds per div(ision)?|time div)$/;
const COUNT =
  /^(record length|memory length|data length|length|(no |number of |num |sample |total )?(points|samples)|sample count|point count|n ?samples)$/;
const X_UNIT = /^(horizontal|x|h)( axis)? units?$/;

/**
 * Collects interval, start and extent from the settings; a number without a unit is in seconds or hertz.
 *
 * @param settings - of one record; the first that answers counts.
 */
export function timeSettings(settings: readonly Setting[]): TimeSettings {
  const find = (key: RegExp, dimensions: readonly Dimension[]): number | null => {
    for (const setting of settings) {
      if (!key.test(setting.key)) continue;
      const read = settingValue(setting);
      if (read === null) continue;
      if (read.unit === null) return read.value;
      if (dimensions.includes(read.unit.dimension)) return read.value * read.unit.factor;
    }
    return null;
  };
  const positive = (value: number | null): number | null => (value !== null && value > 0 ? value : null);
  // Some call the interval "sample rate" and give it in seconds: the unit decides.
  const rate = positive(find(RATE, ['rate', 'frequency']));
  const intervalS =
    positive(find(INTERVAL, ['time'])) ?? (rate === null ? positive(timeUnder(RATE, settings)) : 1 / rate);
  const before = find(BEFORE_TRIGGER, ['time']);
  const triggerSample = find(TRIGGER_SAMPLE, ['index']);
  const startS =
    find(START, ['time']) ??
    (before === null ? null : -Math.abs(before)) ??
    (triggerSample === null || intervalS === null ? null : -triggerSample * intervalS);
  return {
    intervalS,
    stated: settings.flatMap(statedInterval),
    startS,
    spanS: positive(find(SPAN, ['time'])),
    secondsPerDivision: positive(find(PER_DIVISION, ['time'])),
    sampleCount: positive(find(COUNT, ['index'])),
    isSpectrum: settings.some((s) => X_UNIT.test(s.key) && /^[kM]?hz$/i.test(s.values[0] ?? '')),
  };
}

function timeUnder(key: RegExp, settings: readonly Setting[]): number | null {
  for (const setting of settings) {
    const read = key.test(setting.key) ? settingValue(setting) : null;
    if (read?.unit?.dimension === 'time') return read.value * read.unit.factor;
  }
  return null;
}

/** A bare "resolution" or "step" without a unit may be one of volts or bits. */
const AMBIGUOUS = /^(resolution|step|delta|rate)$/;

function statedInterval(setting: Setting): StatedInterval[] {
  const { key } = setting;
  const isRate = RATE.test(key);
  if (!isRate && !INTERVAL.test(key)) return [];
  const read = settingValue(setting);
  if (read === null || !(read.value > 0) || (read.unit === null && AMBIGUOUS.test(key))) return [];
  const dimension = read.unit?.dimension ?? (isRate ? 'rate' : 'time');
  const value = read.value * (read.unit?.factor ?? 1);
  if (dimension === 'time') return [{ key, intervalS: value }];
  return isRate && (dimension === 'rate' || dimension === 'frequency') ? [{ key, intervalS: 1 / value }] : [];
}
