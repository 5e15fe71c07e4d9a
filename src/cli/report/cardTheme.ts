import { InvalidArgumentError } from 'commander';
import type { CardTheme } from '../../entry/evidence.ts';

/** A capture may stand where the theme would: then it is said how to tell them apart. */
export function cardTheme(text: string): CardTheme {
  if (text === 'light' || text === 'dark') return text;
  throw new InvalidArgumentError(
    'It is light or dark. A capture or plan stands before --card, or after --card light.',
  );
}
