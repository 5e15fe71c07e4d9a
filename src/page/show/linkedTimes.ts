import type { MeasureResult } from '../../entry/measuring.ts';
import { Markup } from '../../entry/sections.ts';

/** A time, with or without a doubt: "0.205 ± 0.001 s", "−50.0 ms". */
const time = /([−-]?\d[\d.]*)(?:[ \u00a0]±[ \u00a0][\d.]+)?[ \u00a0\u202f]?(s|ms|µs)(?![\w/²])/g;
/** What tells an instant from a duration: the word before it, or the end of a stretch behind it. */
const before = /\b(?:at|from|to|until) $/i;
const behind = /^ to [−-]?\d/;
const seconds: Readonly<Record<string, number>> = { s: 1, ms: 1e-3, µs: 1e-6 };

/**
 * Makes links of the times that a result's sentences name and that lie within its record, for the picture of the
 * wave to go to: `data-at` holds the time in seconds on the file's own axis.
 */
export function linkedTimes({ text }: Markup, { capture: { startS, durationS } }: MeasureResult): Markup {
  const linked = (words: string): string =>
    words.replace(time, (whole: string, digits: string, unit: string, at: number) => {
      if (!before.test(words.slice(0, at)) && !behind.test(words.slice(at + whole.length))) return whole;
      const atS = Number(digits.replace('−', '-')) * seconds[unit]!;
      // Times are named to three digits: one at the record's end may seem to lie beyond it.
      const slack = 1e-2 * durationS;
      if (!(atS >= startS - slack && atS <= startS + durationS + slack)) return whole;
      return `<a class="time" href="#wave-part" data-at="${atS}">${whole}</a>`;
    });
  return new Markup(text.replace(/(^|>)([^<]+)/g, (_, tag: string, words: string) => tag + linked(words)));
}
