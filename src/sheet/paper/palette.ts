/**
 * The sheet's inks. Blue against ochre or crimson keeps apart for every common kind of colour vision, and each
 * pair that meets in one panel differs in lightness too, so that a grey print reads the same.
 */
export const palette = {
  paper: '#fdfcf8',
  ink: '#1c2126',
  /** Secondary text; 5.9 : 1 on the paper. */
  soft: '#5a636b',
  /** Axes and hairlines. */
  line: '#b9bfc3',
  /** What was measured. */
  wave: '#16477a',
  /** A bar inside its limit: paler than one outside, so that a grey print tells them apart. */
  bar: '#86a3c0',
  /** What it is held against. */
  ideal: '#e2bf7f',
  idealText: '#8a6414',
  /** Outside a limit, and nothing else. */
  outside: '#a3153a',
} as const;
