import type { AssayNotice, AssayNotices } from '../assay/notices.ts';
import type { Fact, Notice, NoticeSource, Worded } from '../base/notice.ts';
import type { BenchNotices, CompareNotices } from '../bench/notices.ts';
import type { LogNotices } from '../energy/log/notices.ts';
import type { EnergyNotices } from '../energy/notices.ts';
import type { JudgeNotices, MeterFacts } from '../judge/notices.ts';
import type { MeasureNotices } from '../measure/notices.ts';
import type { ReadNotices } from '../read/notices.ts';
import { assayed } from './notices/assayed.ts';
import { benched, compared } from './notices/benched.ts';
import { energyFound } from './notices/energyFound.ts';
import { judged, metered } from './notices/judged.ts';
import { logged } from './notices/logged.ts';
import { measured } from './notices/measured.ts';
import { read } from './notices/read.ts';
import type { SentencesOf } from './notices/sentences.ts';
import { flagOf, type OptionName } from './optionNames.ts';
import { isReason, reasonText } from './reasons.ts';

/**
 * A result, or any part of one, as documents carry it: each notice with its message, each other fact as a sentence.
 * What has its words already, because it came from a document, keeps them.
 *
 * @param option - how the door calls an option; flags, where not told otherwise: documents are read at a terminal.
 */
export function worded<T>(value: T, option: OptionName = flagOf): Worded<T> {
  return inWords(value, option) as Worded<T>;
}

function inWords(value: unknown, option: OptionName): unknown {
  if (Array.isArray(value)) return value.map((one) => inWords(one, option));
  if (typeof value !== 'object' || value === null || ArrayBuffer.isView(value)) return value;
  if ('code' in value) return 'message' in value ? value : sentence(value as Fact, option);
  return Object.fromEntries(
    Object.entries(value).map(([key, part]) => [
      key,
      key === 'notices' ? part.map((notice: AssayNotice) => noticeOf(notice, option)) : inWords(part, option),
    ]),
  );
}

/** @example noticeOf({ code: 'cycles.few', cycles: 2.2, of: ['CH2'] }, flagOf).message // "CH2: Only 2.2 cycles: …" */
function noticeOf(notice: (Fact | Notice) & NoticeSource, option: OptionName): Notice {
  const { code, of = [], alsoOf = [] } = notice;
  const said = 'message' in notice ? notice.message : sentence(notice, option);
  const also = alsoOf.length === 0 ? '' : ` The same doubt of ${alsoOf.join(', ')}.`;
  return { code, message: [...of, said].join(': ') + also };
}

/** Of any doubt, of a capture, a log, a bench test or a comparison. */
export type NoticeCode = Exclude<keyof Codes, keyof MeterFacts>;

/** Every code with its facts; one that stood in two lists with other facts would not compile. */
interface Codes
  extends ReadNotices,
    MeasureNotices,
    JudgeNotices,
    MeterFacts,
    AssayNotices,
    LogNotices,
    EnergyNotices,
    BenchNotices,
    CompareNotices {}

const sentences: SentencesOf<Codes> = {
  ...read,
  ...measured,
  ...judged,
  ...metered,
  ...assayed,
  ...logged,
  ...energyFound,
  ...benched,
  ...compared,
};

type Sentence = string | ((facts: never, option: OptionName) => string);

function sentence(fact: Fact, option: OptionName): string {
  if (isReason(fact)) return reasonText(fact);
  const made = (sentences as Readonly<Record<string, Sentence>>)[fact.code];
  if (made === undefined) throw new RangeError(`there is no sentence for ${fact.code}`);
  return typeof made === 'string' ? made : made(fact as never, option);
}
