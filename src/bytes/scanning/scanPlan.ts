import type { RowShape } from '../readCells.ts';

/** How the body of a file is read in chunks: plain data, to be handed to other threads. */
export interface ScanPlan {
  readonly table: RowShape;
  /** In which line ends and digits are the bytes of ASCII. */
  readonly encoding: 'utf-8' | 'latin-1';
  /** Offsets in the file, half-open: the body without its last rows. A row starts at each. */
  readonly from: number;
  readonly to: number;
  /** In bytes. */
  readonly chunkLength: number;
  /** Rows that a chunk holds, as sampled lines tell. */
  readonly chunkRows: number;
}

/** How many chunks the body has. */
export function chunkCount({ from, to, chunkLength }: ScanPlan): number {
  return Math.ceil((to - from) / chunkLength);
}
