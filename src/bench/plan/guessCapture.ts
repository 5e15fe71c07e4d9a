/** What a file's name says of a capture. */
export interface GuessedCapture {
  readonly file: string;
  /** What is left of the name, or the folder's: captures of one unit share it. */
  readonly unit: string;
  readonly role: 'sweep' | 'step' | 'transfer';
  /** Null where the name says none. */
  readonly loadW: number | null;
}

const WATTS = /(?:^|[^a-z0-9])(\d+(?:[.,]\d+)?) ?(k?)w(?:att)?(?![a-z])/i;
const NO_LOAD = /(?:^|[^a-z])(?:no[-_ ]?load|idle)(?![a-z])/i;
const STEP = /(?:^|[^a-z])step(?![a-z])/i;
const TRANSFER = /(?:^|[^a-z])(?:transfer|ups|eps)(?![a-z])/i;

/**
 * A guess at unit, role and load from a path such as `red/300w.csv` or `a-red-1.2kw.csv`.
 *
 * @param file - path with / between its parts.
 */
export function guessCapture(file: string): GuessedCapture {
  const parts = file.split('/');
  const name = (parts.at(-1) ?? '').replace(/\.[^.]*$/, '');
  const watts = WATTS.exec(name);
  const noLoad = NO_LOAD.exec(name);
  const step = STEP.exec(name);
  const transfer = TRANSFER.exec(name);
  const loadW =
    watts !== null
      ? Math.round(Number(watts[1]?.replace(',', '.')) * (watts[2] === '' ? 1e3 : 1e6)) / 1e3
      : noLoad !== null
        ? 0
        : null;
  const marks = [watts, noLoad, step, transfer].flatMap((mark) => (mark === null ? [] : [mark.index]));
  const lead = marks.length === 0 ? '' : name.slice(0, Math.min(...marks)).replace(/[^\p{L}\p{N}]+$/u, '');
  return {
    file,
    unit: lead || parts.at(-2) || 'unit',
    role: step !== null ? 'step' : transfer !== null ? 'transfer' : 'sweep',
    loadW,
  };
}
