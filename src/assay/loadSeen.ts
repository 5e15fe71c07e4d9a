import type { Figure } from '../base/figure.ts';
import { assayError } from './assayErrors.ts';
import type { AssayNotice } from './notices.ts';
import type { EventResult, StepResult } from './stepsDocument.ts';

/** The load that a result's figures stand for, and where that is known from. */
export interface LoadSeen {
  readonly from: 'measured' | 'told' | 'file name';
  /** As a sentence says it: `300 W resistive`, `258 W`, `no load`. */
  readonly text: string;
  /** Rounded as in the text; null where the words tell no power. */
  readonly watts: number | null;
}

export interface LoadEvidence {
  /** Active power on the stretch that the figures describe; null where none can be relied upon. */
  readonly activeW: Figure | null;
  /** As told; absent or empty: not told. */
  readonly told: string | undefined;
  /** Of the capture: a path is read by its last part. */
  readonly file: string;
  /** Rough active powers of the other stretches between which the load steps. */
  readonly elsewhereW: readonly number[];
  /** False where a step shows that the stretch is the one without the load. */
  readonly isLoaded: boolean;
}

/** A load told and one measured differ beyond what plates and words round: common practice, no source. */
const DIFFERS = { share: 0.2, leastW: 5 } as const;
/** So little is no load, whatever a clamp's zero says; and up to the second where it may be nothing at all. */
const NOTHING_W = { sure: 2, doubted: 10 } as const;

/**
 * The load of the stretch that the figures describe: measured where a current was captured, else told, else read from
 * the file's name.
 *
 * @returns `load` null where nothing is known; notice `load.differs` where words and measurement disagree and no other
 * stretch of the record has the load that the words say.
 */
export function loadSeen(evidence: LoadEvidence): {
  readonly load: LoadSeen | null;
  readonly notices: readonly AssayNotice[];
} {
  const { activeW, elsewhereW, isLoaded } = evidence;
  const words = loadInWords(evidence);
  const measured = activeW === null ? null : measuredLoad(activeW);
  if (measured === null) return { load: isLoaded ? words : null, notices: [] };
  const { figure, load } = measured;
  const isDoubt =
    words !== null &&
    words.watts !== null &&
    differ(words.watts, figure.value, figure.uncertainty) &&
    !elsewhereW.some((watts) => !differ(words.watts!, Math.abs(watts), figure.uncertainty));
  if (!isDoubt) return { load, notices: [] };
  const { text, from } = words;
  return { load, notices: [{ code: 'load.differs', words: text, from, measured: load.text }] };
}

/** The load as told, else as the file's name has it; null where neither says one. */
export function loadInWords({ told = '', file }: Pick<LoadEvidence, 'told' | 'file'>): LoadSeen | null {
  const text = told.trim();
  if (text !== '') return { from: 'told', text, watts: wattsInWords(text) };
  const named = loadInFileName(file.split(/[/\\]/).at(-1)!);
  return named === null || named.watts === null
    ? null
    : { from: 'file name', text: wattsText(named.watts), watts: named.watts };
}

function measuredLoad(activeW: Figure): {
  readonly figure: { readonly value: number; readonly uncertainty: number };
  readonly load: LoadSeen;
} | null {
  if (activeW.value === null) return null;
  // A clamp turned round gives the same load with its sign changed.
  const figure = { value: Math.abs(activeW.value), uncertainty: activeW.uncertainty };
  const mostW = figure.value + figure.uncertainty;
  const isSomething = figure.value > figure.uncertainty;
  if (mostW <= (isSomething ? NOTHING_W.sure : NOTHING_W.doubted))
    return { figure, load: { from: 'measured', text: wattsText(0), watts: 0 } };
  const watts = forWords(figure.value);
  return isSomething
    ? { figure, load: { from: 'measured', text: wattsText(watts), watts } }
    : { figure, load: { from: 'measured', text: `at most ${forWords(mostW)} W`, watts: null } };
}

function differ(toldW: number, measuredW: number, uncertaintyW: number): boolean {
  const apartW = Math.abs(toldW - measuredW);
  return apartW > Math.max(uncertaintyW, DIFFERS.share * Math.max(toldW, measuredW), DIFFERS.leastW);
}

/** Three digits, and no more than a tenth of a watt. */
function forWords(watts: number): number {
  return Math.round(Number(watts.toPrecision(3)) * 10) / 10;
}

function wattsText(watts: number): string {
  return watts === 0 ? 'no load' : `${watts} W`;
}

/** What the name of a capture's file says of the load. */
interface NamedLoad {
  /** Null where the name gives more than one power. */
  readonly watts: number | null;
  /** Where in the name it stands. */
  readonly at: number;
}

const NAMED_WATTS = /(?<![a-z0-9.,])(\d+(?:[.,]\d+)?)[-_ ]?(k?)w(?:atts?)?(?![a-z0-9])/gi;
/** Not the `.5kW` of a name without one. */
const EXTENSION = /\.[a-z][a-z0-9]*$/i;
const NO_LOAD = /(?<![a-z])(?:no[-_ ]?load|unloaded|idle)(?![a-z])/i;

/**
 * The load that the name of a file tells: `300w`, `red-1.5kW`, `no-load`, `idle`, `0w`; null where it tells none.
 *
 * @param name - of the file alone, no folder; with or without its extension.
 * @example loadInFileName('red-1.5kW.csv') // { watts: 1500, at: 4 }
 */
export function loadInFileName(name: string): NamedLoad | null {
  const bare = name.replace(EXTENSION, '');
  const powers = [...bare.matchAll(NAMED_WATTS)];
  const noLoad = NO_LOAD.exec(bare);
  const marks = [...powers, ...(noLoad === null ? [] : [noLoad])].map(({ index }) => index);
  if (marks.length === 0) return null;
  const told = new Set([...powers.map(wattsOf), ...(noLoad === null ? [] : [0])]);
  const [watts] = told;
  return { watts: told.size === 1 ? watts! : null, at: Math.min(...marks) };
}

/** To a thousandth of a watt: 1.1 kW is 1100 W. */
function wattsOf([, digits = '', kilo]: RegExpMatchArray): number {
  return Math.round(Number(digits.replace(',', '.')) * (kilo === '' ? 1e3 : 1e6)) / 1e3;
}

/**
 * Whether the load that was told is on at an instant, as far as steps and events show: after a step on, before a step
 * off, and from where an event says that the load before it came on.
 *
 * @param atS - on the file's own time axis.
 * @returns true too where nothing shows otherwise.
 */
export function isLoadedAt(
  atS: number,
  steps: readonly Pick<StepResult, 'atS' | 'direction'>[],
  events: readonly EventResult[],
): boolean {
  const before = steps.filter((step) => step.atS.value <= atS).at(-1);
  if (before !== undefined) return before.direction === 'on';
  const [next] = steps.filter((step) => step.atS.value > atS);
  if (next !== undefined) return next.direction === 'off';
  return !events.some(
    (event) =>
      'startS' in event &&
      event.heldS !== undefined &&
      event.heldAtLeast !== true &&
      event.isAfterLess !== true &&
      event.startS.value - event.heldS.value > atS,
  );
}

const WATTS = /^(\d+(?:[.,]\d+)?) ?(k?)W?$/i;

/**
 * A load in W: `300`, `300 W`, `1.2 kW`, `no load`.
 *
 * @throws MeasureError `load.grammar`.
 * @example parseWatts('1.2kW') // 1200
 */
export function parseWatts(text: string): number {
  if (/^no load$/i.test(text.trim())) return 0;
  const [match, digits = '', kilo = ''] = WATTS.exec(text.trim()) ?? [];
  if (match === undefined) {
    throw assayError('load.grammar', { text });
  }
  // To a thousandth of a watt, so that 1.1 kW is 1100 W and not a rounding beside it.
  return Math.round(Number(digits.replace(',', '.')) * (kilo === '' ? 1e3 : 1e6)) / 1e3;
}

const told = /\bno load\b|\d+(?:[.,]\d+)? ?k?W(?:atts?)?\b/gi;
/** 1,200 W is a kilowatt to some and a little more than a watt to others. */
const grouped = /\d[,.]\d{3}(?!\d)/;

/**
 * The power that the words for a load tell, in watts; null where they tell none, or more than one.
 *
 * @example wattsInWords('300 W heater') // 300
 * @example wattsInWords('no load, then 600 W') // null
 */
export function wattsInWords(words: string): number | null {
  const plain = words.replaceAll(/\s+/g, ' ').trim();
  if (/^\d+(?:[.,]\d+)?$/.test(plain) && !grouped.test(plain)) return parseWatts(plain);
  const [power, another] = plain.match(told) ?? [];
  if (power === undefined || another !== undefined || grouped.test(power)) return null;
  // Two lamps of 100 W are no 100 W: a number before the power may be how many.
  if (/\d/.test(plain.slice(0, plain.indexOf(power)))) return null;
  return parseWatts(power.replace(/atts?$/i, ''));
}
