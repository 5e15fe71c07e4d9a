import { cleanText } from '../cleanText.ts';

const longest = 90;

/** A value as a sentence quotes it: cleaned, short, numbers to nine digits. */
export function shown(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (typeof value === 'number') return String(Number(value.toPrecision(9)));
  const text = cleanText(typeof value === 'string' ? value : (JSON.stringify(value) ?? String(value)));
  return `“${text.length > longest ? `${text.slice(0, longest)}…` : text}”`;
}
