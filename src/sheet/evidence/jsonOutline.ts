/** What the text of JSON shows before it is read: how deep it nests, and a key that one object has twice. */
export interface JsonOutline {
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
