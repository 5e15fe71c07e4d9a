import type { Face } from './typeface.ts';

/** SHA-256 of a text's UTF-8 bytes, lower-case hexadecimal: Node and browsers each have their own. */
export type Digest = (text: string) => string;

/** What it takes to make a sheet, handed in, since Node and browsers each have their own. */
export interface Press {
  /** A browser's, or jsdom's; only `createElementNS` and what d3 needs of it. */
  readonly document: Document;
  readonly sha256: Digest;
  /** Put into each sheet as far as its texts need it; empty: what the reader has must do. */
  readonly typeface: readonly Face[];
}
