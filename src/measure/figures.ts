/** The unit of a channel; `{U}` stands for it in the catalogue. */
export type ChannelUnit = 'V' | 'A';

/** What the catalogue says of a figure. */
interface FigureEntry {
  /** In a document, `{U}` for V or A. Never renamed. */
  readonly key: string;
  readonly name: string;
  /** Where a list of all figures needs more words than `name`. */
  readonly listedAs?: string;
  /** `{U}`, `Hz`, `%`, … ; empty for a ratio. */
  readonly unit: string;
  /** In the words of the README. */
  readonly definition: string;
  /**
   * What must be there for it: `samples`, any; `voltage`, one that is there for most of the record; `period`, a wave
   * that repeats. Without it the figure is missing, for the reason that the record gives.
   */
  readonly needs: 'samples' | 'voltage' | 'period';
  /** Of a voltage alone. */
  readonly only?: 'V';
  /** Rank among all figures of a channel: `--all`, page, sheet's HTML, CSV. */
  readonly listed: number;
  /** The list names the order up to which it counts. */
  readonly toOrder?: true;
  /** Rank among the budgets shown; absent: its budget isn't. */
  readonly budget?: number;
  /** Rank in a comparison of two captures; absent: not compared. */
  readonly compared?: number;
  /** What the comparison calls it, `{quantity}` for voltage or current; absent: `name`. */
  readonly comparedAs?: string;
  /** Compared by its whole uncertainty though it has a budget. */
  readonly scatters?: true;
  /** Sheets, cards and answers show it: no document is without it. A figure added later isn't in earlier documents. */
  readonly drawn?: true;
  /** One for both channels: a current is measured at the frequency of its voltage. */
  readonly ofBoth?: true;
}

/** Every figure of a channel, once, in the order of the document's keys. Ranks leave room between them. */
const CATALOGUE = {
  frequencyHz: {
    key: 'frequencyHz',
    name: 'frequency',
    unit: 'Hz',
    definition: 'of the fundamental, fitted to the whole record together with its harmonics',
    needs: 'period',
    listed: 110,
    budget: 20,
    compared: 20,
    ofBoth: true,
    drawn: true,
  },
  rms: {
    key: 'rms{U}',
    name: 'RMS',
    unit: '{U}',
    definition: '√ mean(v²), DC included: the DC voltage that would heat a resistor as much',
    needs: 'voltage',
    listed: 10,
    budget: 10,
    compared: 10,
    comparedAs: 'RMS {quantity}',
    drawn: true,
  },
  mean: {
    key: 'mean{U}',
    name: 'mean (DC)',
    unit: '{U}',
    definition: 'mean(v)',
    needs: 'voltage',
    listed: 40,
    budget: 60,
    compared: 70,
    drawn: true,
  },
  peak: {
    key: 'peak{U}',
    name: 'peak',
    unit: '{U}',
    definition:
      'highest of the repeating wave, overshoot and ringing included: of the fit where it follows the wave; else of all cycles laid over each other, smoothed by lines on one side of an edge, less what the same would find in noise alone',
    needs: 'period',
    listed: 50,
    budget: 80,
    compared: 90,
    drawn: true,
  },
  trough: {
    key: 'trough{U}',
    name: 'trough',
    unit: '{U}',
    definition: 'lowest of the repeating wave, found as the peak is',
    needs: 'period',
    listed: 60,
    budget: 90,
    compared: 100,
    drawn: true,
  },
  max: {
    key: 'max{U}',
    name: 'highest sample',
    unit: '{U}',
    definition: 'the highest value of the record as it stands: noise pushes it outward',
    needs: 'samples',
    listed: 70,
  },
  min: {
    key: 'min{U}',
    name: 'lowest sample',
    unit: '{U}',
    definition: 'the same of the lowest',
    needs: 'samples',
    listed: 80,
  },
  crestFactor: {
    key: 'crestFactor',
    name: 'crest factor',
    unit: '',
    definition: 'max(peak, −trough) / RMS; 1.414 for a sine, 1 for a square',
    needs: 'period',
    listed: 120,
    budget: 30,
    compared: 30,
    drawn: true,
  },
  formFactor: {
    key: 'formFactor',
    name: 'form factor',
    unit: '',
    definition: 'RMS / mean|v|; 1.111 for a sine',
    needs: 'period',
    listed: 130,
    budget: 100,
    compared: 110,
  },
  thdPercent: {
    key: 'thdPercent',
    name: 'THD',
    listedAs: 'THD of fundamental',
    unit: '%',
    definition:
      '100 % · √(V2² + … + V50²) / V1; what is wrong with the wave at multiples of its frequency. It counts to order 50 (`--orders`), or as far as the sample rate allows',
    needs: 'period',
    listed: 140,
    toOrder: true,
    budget: 40,
    compared: 40,
    drawn: true,
  },
  thdOfRmsPercent: {
    key: 'thdOfRmsPercent',
    name: 'THD of RMS',
    unit: '%',
    definition: 'the same over the RMS',
    needs: 'period',
    listed: 150,
    compared: 60,
  },
  thdNoisePercent: {
    key: 'thdNoisePercent',
    name: 'THD plus noise',
    unit: '%',
    definition:
      '100 % · √(RMS² − mean² − V1²) / V1: everything that isn’t the fundamental, up to the bandwidth',
    needs: 'period',
    listed: 160,
    budget: 50,
    compared: 50,
    // From capture to capture it scatters by more than the parts that one instrument leaves.
    scatters: true,
    drawn: true,
  },
  bandwidthHz: {
    key: 'bandwidthHz',
    name: 'bandwidth',
    unit: 'Hz',
    definition: 'half the sample rate: what lies above isn’t seen',
    needs: 'samples',
    listed: 170,
    drawn: true,
  },
  deviationFactorPercent: {
    key: 'deviationFactorPercent',
    name: 'deviation factor',
    unit: '%',
    definition: 'largest distance of a cycle from the best sine of the same RMS, in % of that sine’s peak',
    needs: 'period',
    listed: 180,
    budget: 110,
    compared: 120,
  },
  dwellPercent: {
    key: 'dwellPercent',
    name: 'time at zero',
    unit: '%',
    definition:
      'share of the cycle that a stepped wave rests at its middle level, or one cut by a switch at zero; missing where a smooth wave only crosses it',
    needs: 'period',
    listed: 190,
    compared: 130,
    drawn: true,
  },
  zeroCrossingsPerCycle: {
    key: 'zeroCrossingsPerCycle',
    name: 'zero crossings a cycle',
    unit: '',
    definition: '2 but for a wave that comes back to zero within its half cycles',
    needs: 'period',
    listed: 200,
  },
  fundamental: {
    key: 'fundamental{U}',
    name: 'fundamental',
    listedAs: 'fundamental, RMS',
    unit: '{U}',
    definition: 'V1, the RMS of the sine at the wave’s own frequency',
    needs: 'period',
    listed: 90,
    budget: 70,
    compared: 80,
  },
  edgeSlope: {
    key: 'edgeSlope{U}PerUs',
    name: 'edge slope',
    unit: '{U}/µs',
    definition: 'of a stepped wave’s edges, 10 to 90 %',
    needs: 'period',
    listed: 100,
    compared: 140,
  },
  acRms: {
    key: 'acRms{U}',
    name: 'RMS without DC',
    unit: '{U}',
    definition: 'what a true-RMS meter shows on its AC range',
    needs: 'voltage',
    only: 'V',
    listed: 20,
    drawn: true,
  },
  averageResponding: {
    key: 'averageResponding{U}',
    name: 'average-responding meter',
    listedAs: 'an average-responding meter',
    unit: '{U}',
    definition: 'what a cheap meter shows on its AC range: 1.1107 · mean|v − DC|',
    needs: 'period',
    only: 'V',
    listed: 30,
    budget: 120,
    drawn: true,
  },
} as const;

type Catalogue = typeof CATALOGUE;

/** A figure as it is called inside: by its key without the channel's unit. */
export type FigureName = keyof Catalogue;

/** One value for each figure, under its name inside. */
export type EachFigure<T> = { readonly [N in keyof Catalogue]: T };

/** Those that need what is named. */
export type FigureThatNeeds<Need extends FigureEntry['needs']> = {
  [N in FigureName]: Catalogue[N]['needs'] extends Need ? N : never;
}[FigureName];

/** Those that sheets show. */
export type DrawnFigure = {
  [N in FigureName]: Catalogue[N] extends { readonly drawn: true } ? N : never;
}[FigureName];

/** `rms{U}` is `rmsV`; one of a voltage alone is no key of a current's. */
type KeyIn<Entry extends { readonly key: string }, U extends ChannelUnit> = Entry extends {
  readonly only: 'V';
}
  ? U extends 'V'
    ? WithUnit<Entry['key'], U>
    : never
  : WithUnit<Entry['key'], U>;

type WithUnit<Key extends string, U extends ChannelUnit> = Key extends `${infer Before}{U}${infer After}`
  ? `${Before}${U}${After}`
  : Key;

/** One value for each figure of a channel in that unit, under the keys of a document: `rmsV`, `frequencyHz`. */
export type EachChannelFigure<T, U extends ChannelUnit> = {
  readonly [N in keyof Catalogue as KeyIn<Catalogue[N], U>]: T;
};

/** A figure of a channel of one unit: what the catalogue says of it, the unit filled in. */
export interface ChannelFigure extends FigureEntry {
  readonly figure: FigureName;
}

const entries = Object.entries(CATALOGUE) as unknown as readonly (readonly [FigureName, FigureEntry])[];

/**
 * The figures of a channel.
 *
 * @param list - in the order of this list, those alone that it has; absent: all, in the order of a document's keys.
 */
export function figuresIn(
  unit: ChannelUnit,
  list?: 'listed' | 'budget' | 'compared',
): readonly ChannelFigure[] {
  const own = entries
    .filter(([, { only = unit }]) => only === unit)
    .map(([figure, entry]) => ({
      ...entry,
      figure,
      key: entry.key.replace('{U}', unit),
      unit: entry.unit.replace('{U}', unit),
    }));
  if (list === undefined) return own;
  return own.filter((entry) => entry[list] !== undefined).sort((a, b) => a[list]! - b[list]!);
}

/** The same value for each figure that needs what is named. */
export function figuresThatNeed<Need extends FigureEntry['needs'], T>(
  need: Need,
  value: T,
): Readonly<Record<FigureThatNeeds<Need>, T>> {
  const named = entries.filter(([, { needs }]) => needs === need).map(([figure]) => [figure, value]);
  return Object.fromEntries(named) as Record<FigureThatNeeds<Need>, T>;
}
