import type { Figure } from '../../base/figure.ts';
import type { Notice } from '../../base/notice.ts';
import { loadInFileName } from './loadInFileName.ts';
import { wattsInWords } from './wattsInWords.ts';

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
  readonly notices: readonly Notice[];
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
  return { load, notices: isDoubt ? [differsNotice(words, load)] : [] };
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

function differsNotice(words: LoadSeen, { text }: LoadSeen): Notice {
  const said = words.from === 'told' ? `Told was ${words.text}` : `The file’s name says ${words.text}`;
  return {
    code: 'load.differs',
    message: `${said}, measured was ${text}: check the load, the scale of the current, and whether this is the capture meant.`,
  };
}

/** Three digits, and no more than a tenth of a watt. */
function forWords(watts: number): number {
  return Math.round(Number(watts.toPrecision(3)) * 10) / 10;
}

function wattsText(watts: number): string {
  return watts === 0 ? 'no load' : `${watts} W`;
}
