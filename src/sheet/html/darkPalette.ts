import type { palette } from '../paper/palette.ts';

/** The sheet's inks on dark paper: the same hues with the same meaning; text 4.5 : 1 or better. */
export const darkPalette: Readonly<Record<keyof typeof palette, string>> = {
  paper: '#15181b',
  ink: '#e9e6de',
  soft: '#a9b1b7',
  line: '#474e54',
  wave: '#8fb9e6',
  bar: '#46698c',
  ideal: '#8f7031',
  idealText: '#dcb468',
  outside: '#f29a6c',
};
