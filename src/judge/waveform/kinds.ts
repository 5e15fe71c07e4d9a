/** What is known of a kind of wave. */
interface KindEntry {
  /** One smooth wave, or one that rests at levels; null: it is told by neither. */
  readonly shape: 'smooth' | 'levels' | null;
  /** How many levels a wave of levels has. */
  readonly levels?: { readonly least: number; readonly most?: number };
  /** As the end of "this is …", `{levels}` for how many there are; null: it has no name. */
  readonly named: string | null;
  /** The same where it stands beside other waves; absent: as `named`. */
  readonly briefly?: string;
  /** What makers call it in a claim, lower case, without "wave"; empty: nobody claims it. */
  readonly claimedAs: readonly string[];
  /** In the words of the README. */
  readonly definition: string;
}

/** Every kind of wave, in the order of the README. */
const KINDS = {
  'modified sine': {
    shape: 'levels',
    levels: { least: 3, most: 3 },
    named: 'a modified sine, not a sine',
    briefly: 'a modified sine',
    claimedAs: ['modified sine'],
    definition: 'three levels, +V, 0, −V; it rests at zero',
  },
  square: {
    shape: 'levels',
    levels: { least: 2, most: 2 },
    named: 'a square wave, not a sine',
    briefly: 'a square wave',
    claimedAs: ['square'],
    definition: 'two levels',
  },
  stepped: {
    shape: 'levels',
    levels: { least: 4 },
    named: 'a stepped wave of {levels} levels',
    briefly: 'a stepped wave',
    claimedAs: ['stepped'],
    definition:
      'more than three levels, at least three codes of the digitiser apart. A sine on fewer than 64 codes is a pure sine "at the edge" (`kind.fewCodes`): a staircase of as many steps would give the same record',
  },
  'pure sine': {
    shape: 'smooth',
    named: 'a pure sine',
    claimedAs: ['pure sine', 'sine', 'true sine'],
    definition:
      'one smooth wave, THD at most 5 % (`--sine-thd`), crest factor 1.35 to 1.49. The 5 % and the crest factors are common practice, without a source. Switching ripple above order 50 leaves it pure and is named',
  },
  'distorted sine': {
    shape: 'smooth',
    named: 'a distorted sine',
    claimedAs: [],
    definition: 'one smooth wave that fails one of these; the reasons say which',
  },
  'not classified': {
    shape: null,
    named: null,
    claimedAs: [],
    definition:
      'direct voltage (with or without ripple), noise, two or three levels switched many times a cycle (modulation without its filter), impulses with rest between them; the reason says which',
  },
} as const;

/** The kinds that a waveform is told apart into, as documents name them. */
export type WaveformKind = keyof typeof KINDS;

/** The kinds by name. */
export const waveformKinds: Readonly<Record<WaveformKind, KindEntry>> = KINDS;

/** Their names. */
export const kindNames: readonly WaveformKind[] = Object.keys(KINDS) as WaveformKind[];

/** Whether a kind is a sine, good or bad: one smooth wave. */
export function isSmooth(kind: WaveformKind): boolean {
  return waveformKinds[kind].shape === 'smooth';
}

/** The kind of a wave that rests at so many levels, two or more. */
export function kindOfLevels(count: number): WaveformKind {
  return kindNames.find((kind) => {
    const { levels } = waveformKinds[kind];
    return levels !== undefined && count >= levels.least && count <= (levels.most ?? count);
  })!;
}

/** The kind that a maker calls so; undefined where there is none. */
export function kindClaimedAs(words: string): WaveformKind | undefined {
  return kindNames.find((kind) => waveformKinds[kind].claimedAs.includes(words));
}
