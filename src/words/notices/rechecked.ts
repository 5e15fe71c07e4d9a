import type { FactOf, NoFacts, Notice } from '../../base/notice.ts';
import { flagOf, type OptionName } from '../optionNames.ts';
import { cleanText } from '../text.ts';
import type { SentencesOf } from './sentences.ts';

/** What a sheet differs in from what it should be, in words: by itself, or beside its captures. */
export function differenceWords(fact: FactOf<RecheckNotices>): Notice {
  const made = sentences[fact.code] as string | ((facts: never, option: OptionName) => string);
  return { code: fact.code, message: typeof made === 'string' ? made : made(fact as never, flagOf) };
}

interface RecheckNotices {
  /** `unit`: undefined for a sheet that is of none. */
  'capture.missing': { unit: string | undefined; files: readonly string[] };
  'capture.none': { captures: number };
  'capture.other': { sha256: string; sheetSha256: string };
  'data.other': NoFacts;
  'data.result': NoFacts;
  /** `why`: what the data stumble over, as the program says it. */
  'data.undrawable': { why: string };
  'data.unusable': { why: string };
  'dynamics.differs': NoFacts;
  /** `from`: what the value was derived from. */
  'figure.derived': Values & { from: 'units' | 'captures' };
  'figure.differs': Values;
  'file.bytes': NoFacts;
  'file.form': NoFacts;
  'file.lineEnds': NoFacts;
  'method.differs': NoFacts;
  'picture.digest': NoFacts;
  'picture.other': NoFacts;
  /** Texts of the picture; null: there is none in this place. */
  'picture.text': { found: string | null; right: string | null };
  'program.other': { theirs: string; ours: string };
  'trace.differs': NoFacts;
  'unit.untold': { unit: string };
}

/** One place at which the sheet's value and another differ. */
interface Values {
  readonly path: string;
  readonly before: unknown;
  readonly after: unknown;
}

const longest = 90;

/** A value as a sentence quotes it: cleaned, short, numbers to nine digits. */
function shown(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (typeof value === 'number') return String(Number(value.toPrecision(9)));
  const text = cleanText(typeof value === 'string' ? value : (JSON.stringify(value) ?? String(value)));
  return `“${text.length > longest ? `${text.slice(0, longest)}…` : text}”`;
}

const otherwise = (part: string): string => `The capture gives ${part} otherwise than the sheet carries it.`;

const mostFiles = 20;

const sentences: SentencesOf<RecheckNotices> = {
  'capture.missing': ({ unit, files }) => {
    const named = files.slice(0, mostFiles).join(', ');
    const more = files.length > mostFiles ? ` and ${files.length - mostFiles} more` : '';
    const whose = unit === undefined ? 'Not all of its captures' : `${unit}: not all of its captures`;
    return `${whose} are there to measure it again; missing: ${named}${more}.`;
  },
  'capture.none': ({ captures }) =>
    `${captures === 1 ? 'The capture is none' : `None of the ${captures} captures is one`} of this sheet: their SHA-256 differ.`,
  'capture.other': ({ sha256, sheetSha256 }) =>
    `This is another capture than the sheet’s: its SHA-256 is ${sha256.slice(0, 16)}…, the sheet’s ${sheetSha256.slice(0, 16)}….`,
  'data.other': 'What it carries beside the result was changed after it was written.',
  'data.result': 'The result inside it was changed after it was written.',
  'data.undrawable': ({ why }) => `No picture can be drawn from the data inside it (${why}).`,
  'data.unusable': ({ why }) => `The data inside it can’t be held against its captures (${why}).`,
  'dynamics.differs': otherwise('what changes along the record'),
  'figure.derived': ({ path, before, after, from }) =>
    from === 'units'
      ? `${path}: the sheet carries ${shown(before)}, its units give ${shown(after)}.`
      : `${path}: the sheet carries ${shown(before)}, its two captures give ${shown(after)}.`,
  'figure.differs': ({ path, before, after }) =>
    `${path}: the sheet carries ${shown(before)}, the capture gives ${shown(after)}.`,
  'file.bytes': 'It holds bytes that are no text (UTF-8): the file was changed after it was written.',
  'file.form': 'The data inside it don’t stand there as this program writes them: the file was changed.',
  'file.lineEnds':
    'Its line ends were changed on its way, and nothing else: the file is not the one that was written.',
  'method.differs': otherwise('the method'),
  'picture.digest': 'The picture was changed after it was drawn.',
  'picture.other': 'The picture is not the one that its data draw: it was changed or swapped.',
  'picture.text': ({ found, right }) => {
    if (right === null) return `It shows ${shown(found)}, which its data don’t give.`;
    return found === null
      ? `It doesn’t show ${shown(right)}, which its data give.`
      : `It shows ${shown(found)} where its data give ${shown(right)}.`;
  },
  'program.other': ({ theirs, ours }) =>
    `The picture can’t be checked by this version: the sheet says that it was made by version ${shown(theirs)}, this is ${ours}.`,
  'trace.differs': otherwise('the wave'),
  'unit.untold': ({ unit }) =>
    `${unit}: what the sheet shows of this unit and how its captures were measured don’t belong together.`,
};
