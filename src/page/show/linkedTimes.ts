import type { MeasureResult } from '../../entry/measuring.ts';
import { Markup } from '../../entry/sections.ts';

/** A time that a sentence names: "at 0.205 ± 0.001 s", "from −50.0 ms to 49.9 ms". */
const named = /\b(at|from|to|until) ([−-]?\d[\d.]*)((?: ± [\d.]+)?)([\s\u00a0\u202f]?)(s|ms|µs)(?![\w/²])/gi;
const seconds: Readonly<Record<string, number>> = { s: 1, ms: 1e-3, µs: 1e-6 };

/**
 * Makes links of the times that a result's sentences name and that lie within its record, for the picture of the
 * wave to go to: `data-at` holds the time in seconds on the file's own axis.
 */
export function linkedTimes({ text }: Markup, { capture: { startS, durationS } }: MeasureResult): Markup {
  const linked = (words: string): string =>
    words.replace(named, (whole, word: string, digits: string, doubt: string, gap: string, unit: string) => {
      const atS = Number(digits.replace('−', '-')) * seconds[unit]!;
      // Times are named to three digits: one at the record's end may seem to lie beyond it.
      const slack = 1e-2 * durationS;
      if (!(atS >= startS - slack && atS <= startS + durationS + slack)) return whole;
      return `${word} <a class="time" href="#wave-part" data-at="${atS}">${digits}${doubt}${gap}${unit}</a>`;
    });
  return new Markup(
    text.replace(/(^|>)([^<]+)/g, (_, before: string, words: string) => before + linked(words)),
  );
}
