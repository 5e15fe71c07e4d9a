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
 * A guess at unit, role and load from a path such as `red/300w.csv`, `a-red-1.2kw.csv` or `red/300w/ch1.csv`: a scope
 * that makes a folder of each save leaves the load to the folder's name.
 *
 * @param file - path with / between its parts; its first folders may name the unit, never the folder that they lie in.
 */
export function guessCapture(file: string): GuessedCapture {
  const parts = file.split('/');
  const name = (parts.at(-1) ?? '').replace(/\.[^.]*$/, '');
  const step = STEP.exec(name);
  const transfer = TRANSFER.exec(name);
  const named = loadInFileName(parts.at(-1) ?? '');
  const isOfFolder = named === null && parts.length > 1;
  const load = isOfFolder ? loadInFileName(`${parts.at(-2)}/`) : named;
  const marks = [...(isOfFolder ? [] : [load?.at]), step?.index, transfer?.index].filter(
    (at) => at !== undefined,
  );
  const lead = leadOf(name, marks);
  const ofFolder =
    isOfFolder && load !== null ? leadOf(parts.at(-2)!, [load.at]) || parts.at(-3) : parts.at(-2);
  return {
    file,
    unit: lead || ofFolder || 'unit',
    role: step !== null ? 'step' : transfer !== null ? 'transfer' : 'sweep',
    loadW: load?.watts ?? null,
  };
}

/** What stands before the first of the marks; empty where there are none. */
function leadOf(name: string, marks: readonly number[]): string {
  return marks.length === 0 ? '' : name.slice(0, Math.min(...marks)).replace(/[^\p{L}\p{N}]+$/u, '');
}
