import { MeasureError, wordedError } from '../../entry/measuring.ts';
import { nothingTold, type Told } from '../told/told.ts';
import { toldOptions } from '../told/toldOptions.ts';
import type { Measured } from '../worker/requests.ts';
import type { Ask } from './workerClient.ts';

export interface NamedFile {
  readonly name: string;
  readonly file: Blob;
  readonly told?: Told;
}

/** The captures of one sitting and what is told of them. Whatever changes is measured anew. */
export interface Sitting {
  readonly entries: () => readonly Entry[];
  /** @returns the numbers of the captures added. */
  readonly add: (files: readonly NamedFile[]) => readonly number[];
  /** Tells something anew; what is no longer wanted of the earlier telling is ended. */
  readonly tell: (id: number, told: Told) => void;
  readonly choose: (id: number, channel: number) => void;
  /** Waits until these are measured as they are told, or are gone. */
  readonly measured: (ids: readonly number[]) => Promise<void>;
  /** Takes a capture away, in the middle of its reading too. */
  readonly remove: (id: number) => void;
}

/** What a capture is refused with where we are at fault. */
const defect: MeasureError = wordedError('defect', 'This capture meets a defect of ours.', {
  advice: 'please report it with the capture',
});

/**
 * @param onChange - told of each entry that changed, and of undefined where it was taken away.
 * @param onDefect - told of an error that is a fault of ours.
 */
export function openSitting(
  ask: Ask,
  onChange: (id: number, entry: Entry | undefined) => void,
  onDefect: (problem: unknown) => void,
): Sitting {
  const entries = new Map<number, Entry>();
  const running = new Map<number, AbortController>();
  const waiting = new Set<{ readonly ids: readonly number[]; readonly done: () => void }>();
  let last = 0;

  const wakeWaiting = (): void => {
    for (const one of waiting) {
      if (one.ids.some((id) => entries.get(id)?.state.at === 'work')) continue;
      waiting.delete(one);
      one.done();
    }
  };

  const change = (id: number, part: Partial<Pick<Entry, 'told' | 'state' | 'channel'>>): void => {
    const entry = entries.get(id);
    if (entry === undefined) return;
    const changed = { ...entry, ...part };
    entries.set(id, changed);
    onChange(id, changed);
    wakeWaiting();
  };
  const measure = async (id: number, first: boolean): Promise<void> => {
    const entry = entries.get(id)!;
    const before = knownOf(entry);
    const { options, faults } = toldOptions(entry.told);
    // The form says what is wrong; until it is right the answer stands as it was, or is had without it.
    if (faults.size > 0 && before !== null) return;
    running.get(id)?.abort();
    const ending = new AbortController();
    running.set(id, ending);
    const set = (state: EntryState): void => {
      if (!ending.signal.aborted) change(id, { state });
    };
    set({ at: 'work', share: null, before });
    try {
      const measured = await ask(
        'measure',
        { id, options, isInverted: entry.told.inverted },
        { first, signal: ending.signal, tell: (share) => set({ at: 'work', share, before }) },
      );
      if (measured === null || ending.signal.aborted) return;
      const { channel } = entries.get(id)!;
      change(id, {
        state: { at: 'ready', measured },
        channel: Math.min(channel, measured.assays.length - 1),
      });
    } catch (problem) {
      if (!(problem instanceof MeasureError)) onDefect(problem);
      set({ at: 'failed', error: problem instanceof MeasureError ? problem : defect });
    }
  };
  return {
    entries: () => [...entries.values()],
    add: (files) =>
      files.map(({ name, file, told = nothingTold }) => {
        const id = ++last;
        const taken = new Set([...entries.values()].map((entry) => entry.name));
        const entry = {
          ...{ id, name: freeName(name, taken), file, told, channel: 0 },
          state: { at: 'work' as const, share: null, before: null },
        };
        entries.set(id, entry);
        onChange(id, entry);
        void ask('open', { id, name: entry.name, file });
        void measure(id, false);
        return id;
      }),
    tell: (id, told) => {
      change(id, { told });
      if (entries.has(id)) void measure(id, true);
    },
    choose: (id, channel) => change(id, { channel }),
    measured: (ids) =>
      new Promise((done) => {
        waiting.add({ ids, done });
        wakeWaiting();
      }),
    remove: (id) => {
      running.get(id)?.abort();
      running.delete(id);
      entries.delete(id);
      void ask('close', { id });
      onChange(id, undefined);
      wakeWaiting();
    },
  };
}

/** A capture on the page. */
export interface Entry {
  readonly id: number;
  /** As results name it; no two on the page are alike. */
  readonly name: string;
  readonly file: Blob;
  readonly told: Told;
  readonly state: EntryState;
  /** Which of its results is looked at, where it has several. */
  readonly channel: number;
}

type EntryState =
  /** @property share - how much has been read, 0 to 1; null: its turn has not come. */
  | { readonly at: 'work'; readonly share: number | null; readonly before: Measured | null }
  | { readonly at: 'ready'; readonly measured: Measured }
  | { readonly at: 'failed'; readonly error: MeasureError };

/** What is known of a capture: while it is measured anew, what was known before; null: nothing yet. */
export function knownOf({ state }: Entry): Measured | null {
  if (state.at === 'ready') return state.measured;
  return state.at === 'work' ? state.before : null;
}

/**
 * A file's name, with a number before its ending where it is taken already.
 *
 * @example freeName('CH1.csv', new Set(['CH1.csv'])) // 'CH1 (2).csv'
 */
export function freeName(name: string, taken: ReadonlySet<string>): string {
  const dot = name.lastIndexOf('.');
  // A dot in a folder's name, or the one before a hidden file's, begins no ending.
  const isEnding = dot > 0 && !/[\\/]/.test(name.slice(dot)) && !/[\\/]/.test(name.charAt(dot - 1));
  const [stem, ending] = isEnding ? [name.slice(0, dot), name.slice(dot)] : [name, ''];
  let free = name;
  for (let number = 2; taken.has(free); number++) free = `${stem} (${number})${ending}`;
  return free;
}
