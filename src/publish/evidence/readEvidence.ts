import { type MeasureError, wordedError } from '../../base/measureError.ts';
import { admit, longestText } from '../../base/schema.ts';
import { type Digest, dataEnd, dataStart, type SealedEvidence, sealOf, withData } from '../../draw/seal.ts';
import { evidenceSchema } from './evidenceSchema.ts';

/** What a sheet carries beside its picture. */
interface DrawnSheet {
  readonly evidence: SealedEvidence;
  /** The sheet's text without the element that carries the evidence. */
  readonly picture: string;
}

/** A sheet taken apart. */
export interface OpenedSheet extends DrawnSheet {
  /** The whole file, as it was read. */
  readonly text: string;
}

/** Some hundred times what the largest sheet is long, in characters. */
const longestSheet: number = 32 * 2 ** 20;
/** Four times as deep as a sheet's data go. */
const deepest = 40;

/**
 * What a sheet carries, and its picture without it. Nothing of it is believed here but its shape: whether the two
 * belong together is for `recheckSheet` to say. The time that it takes grows with the text's length alone, whatever
 * stands in it.
 *
 * @param text - of an SVG file, by whomsoever.
 * @throws MeasureError `sheet.none` where nothing is carried, `sheet.damaged` where it can't be read.
 */
export function readEvidence(text: string): OpenedSheet {
  if (text.length > longestSheet) throw damaged(`${Math.ceil(text.length / 1e6)} million characters`);
  const place = placeOfData(text);
  if (place === null) {
    throw wordedError('sheet.none', 'The file carries no result.', {
      expected: 'a sheet as this program writes it (.svg), with the data inside it',
      advice:
        'Take the SVG as it was written: pictures (.png) and sheets saved by another program lose the data',
    });
  }
  const to = text.indexOf('</metadata>', place.dataFrom);
  if (to < 0) throw damaged('data without an end');
  const after = text.startsWith(dataEnd, to) ? to + dataEnd.length : to + '</metadata>'.length;
  if (placeOfData(text, after) !== null) throw damaged('two results in one sheet');
  const evidence = parsed(text.slice(place.dataFrom, to));
  return { evidence, text, picture: text.slice(0, place.from) + text.slice(after) };
}

interface Place {
  /** Where the element begins. */
  readonly from: number;
  /** Where its data begin. */
  readonly dataFrom: number;
}

/**
 * Of the first element with the data, from a place on: as this program writes it, else in any writing, so that what
 * was tampered with is told from what never was a sheet.
 */
function placeOfData(text: string, start = 0): Place | null {
  const own = text.indexOf(dataStart, start);
  if (own >= 0) return { from: own, dataFrom: own + dataStart.length };
  for (let from = text.indexOf('<metadata', start); from >= 0; ) {
    const end = tagEnd(text, from);
    if (end < 0) return null;
    if (/\bid\s{0,9}=\s{0,9}["']evidence["']/.test(text.slice(from, end))) return { from, dataFrom: end };
    from = text.indexOf('<metadata', end);
  }
  return null;
}

function parsed(escapedText: string): SealedEvidence {
  const json = escapedText.replace(/&(lt|gt|quot|amp);/g, (_, name: string) => unescaped[name] ?? '');
  const { depth, doubledKey } = jsonOutline(json);
  if (depth > deepest) throw damaged('data nested deeper than any sheet’s');
  let data: unknown;
  try {
    data = JSON.parse(json);
  } catch {
    throw damaged('text that is no JSON');
  }
  if (doubledKey !== null) throw damaged(`the key “${doubledKey.slice(0, 60)}” twice in one place`);
  const unfit = unfitPart(data);
  if (unfit !== null) throw otherwise(data, unfit.join('.'));
  return admit(data, evidenceSchema, ({ place }) => otherwise(data, place)) as SealedEvidence;
}

/** Data that are read and not as a sheet of this version has them: another version's may be so, unedited. */
function otherwise(data: unknown, place: string): MeasureError {
  const { program } = Object(data) as { readonly program?: unknown };
  const version =
    typeof program === 'string' ? `, or are of another version (they say ${program.slice(0, 20)})` : '';
  return damaged(
    place === '' ? 'data of another kind' : `something else than expected at “${place.slice(0, 90)}”`,
    version,
  );
}

/**
 * Numbers that are finite and texts that somebody may have written, whatever they are called: the schema doesn't look
 * into what it has no name for.
 *
 * @returns the place of the first part that is neither; null where there is none.
 */
function unfitPart(value: unknown): string[] | null {
  if (typeof value === 'number') return Number.isFinite(value) ? null : [];
  if (typeof value === 'string') return value.length <= longestText ? null : [];
  if (typeof value !== 'object' || value === null) return null;
  for (const [name, part] of Object.entries(value)) {
    const unfit = unfitPart(part);
    if (unfit !== null) return [name, ...unfit];
  }
  return null;
}

const unescaped: Readonly<Record<string, string>> = { lt: '<', gt: '>', quot: '"', amp: '&' };

function damaged(received: string, orElse = ''): MeasureError {
  return wordedError('sheet.damaged', 'The data inside the sheet can’t be read.', {
    expected: 'the data as they were written',
    received,
    advice: `They were edited or cut${orElse}: draw the sheet anew from the capture`,
  });
}

/** What the text of JSON shows before it is read: how deep it nests, and a key that one object has twice. */
interface JsonOutline {
  readonly depth: number;
  /** Null where each object has each key once. */
  readonly doubledKey: string | null;
}

/** Code units of the signs that JSON is built of. */
const Code = {
  quote: 0x22,
  colon: 0x3a,
  openBracket: 0x5b,
  backslash: 0x5c,
  closeBracket: 0x5d,
  openBrace: 0x7b,
  closeBrace: 0x7d,
} as const;

/**
 * One pass over JSON by whomsoever, in time that grows with its length, whatever stands in it. Of two keys of one
 * name readers of JSON each take another, so that such a text says different things to different readers.
 *
 * @param text - need not be JSON; what isn't has an outline too.
 */
export function jsonOutline(text: string): JsonOutline {
  const keys: (Set<string> | null)[] = [];
  let depth = 0;
  let doubledKey: string | null = null;
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code === Code.openBrace || code === Code.openBracket) {
      keys.push(code === Code.openBrace ? new Set() : null);
      depth = Math.max(depth, keys.length);
    } else if (code === Code.closeBrace || code === Code.closeBracket) {
      keys.pop();
    } else if (code === Code.quote) {
      const end = endOfString(text, i);
      const own = keys.at(-1) ?? null;
      if (own !== null && isBeforeColon(text, end)) {
        const key = keyOf(text.slice(i + 1, end));
        if (own.has(key)) doubledKey ??= key;
        own.add(key);
      }
      i = end;
    }
  }
  return { depth, doubledKey };
}

/** Of the closing quote; of the text where there is none. */
function endOfString(text: string, start: number): number {
  let i = start + 1;
  while (i < text.length && text.charCodeAt(i) !== Code.quote) {
    i += text.charCodeAt(i) === Code.backslash ? 2 : 1;
  }
  return i;
}

function isBeforeColon(text: string, end: number): boolean {
  let i = end + 1;
  while (i < text.length && text.charCodeAt(i) <= 0x20) i++;
  return text.charCodeAt(i) === Code.colon;
}

/** The same key may be written in many ways: `a` and `\\u0061`. */
function keyOf(written: string): string {
  if (!written.includes('\\')) return written;
  try {
    return JSON.parse(`"${written}"`) as string;
  } catch {
    // No JSON: reading the whole will say so.
    return written;
  }
}

/**
 * Where a tag of XML ends: behind the first `>` that stands in no quoted attribute.
 *
 * @param from - of its `<`.
 * @returns −1 where it has no end. The time grows with the tag's length alone.
 */
export function tagEnd(text: string, from: number): number {
  let quote = '';
  for (let i = from; i < text.length; i++) {
    const sign = text[i]!;
    if (quote !== '') {
      if (sign === quote) quote = '';
    } else if (sign === '"' || sign === "'") {
      quote = sign;
    } else if (sign === '>') {
      return i + 1;
    }
  }
  return -1;
}

/**
 * Whether a sheet's data and picture are as they were written, by its own digests, and nothing else stands in the
 * file. `recheckSheet` says what isn't, and draws anew.
 */
export function isSealed({ evidence: sealed, picture, text }: OpenedSheet, sha256: Digest): boolean {
  const { resultSha256, evidenceSha256, pictureSha256, ...evidence } = sealed;
  const seal = sealOf(evidence, picture, sha256);
  return (
    seal.resultSha256 === resultSha256 &&
    seal.evidenceSha256 === evidenceSha256 &&
    seal.pictureSha256 === pictureSha256 &&
    withData(picture, sealed) === text
  );
}
