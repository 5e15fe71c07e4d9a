import { cleanText } from './cleanText.ts';

/**
 * A copy of a plain value in which every string is cleaned (see `cleanText`): the one door between what a
 * file or a person said and what is drawn or printed. Numbers and typed arrays pass as they are.
 */
export function cleanTexts<T>(value: T): T {
  return clean(value) as T;
}

function clean(value: unknown): unknown {
  if (typeof value === 'string') return cleanText(value);
  if (Array.isArray(value)) return value.map(clean);
  if (value === null || typeof value !== 'object' || ArrayBuffer.isView(value)) return value;
  return Object.fromEntries(Object.entries(value).map(([key, entry]) => [key, clean(entry)]));
}
