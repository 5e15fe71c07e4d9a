import { loadInFileName } from '../../verdict/load/loadInFileName.ts';

/** What a file's name says of a capture. */
export interface GuessedCapture {
  readonly file: string;
  /** What is left of the name, or the folder's: captures of one unit share it. */
  readonly unit: string;
  readonly role: 'sweep' | 'step' | 'transfer';
  /** Null where the name says none. */
  readonly loadW: number | null;
}

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
  const load = loadInFileName(parts.at(-1) ?? '');
  const step = STEP.exec(name);
  const transfer = TRANSFER.exec(name);
  const marks = [load?.at, step?.index, transfer?.index].filter((at) => at !== undefined);
  const lead = marks.length === 0 ? '' : name.slice(0, Math.min(...marks)).replace(/[^\p{L}\p{N}]+$/u, '');
  return {
    file,
    unit: lead || parts.at(-2) || 'unit',
    role: step !== null ? 'step' : transfer !== null ? 'transfer' : 'sweep',
    loadW: load?.watts ?? null,
  };
}
