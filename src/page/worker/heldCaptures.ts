import {
  type Assay,
  type Capture,
  type Channel,
  type ToldOptions,
  wordedError,
} from '../../entry/measuring.ts';

/** A file that the worker keeps, with what it has found of it so far. */
export interface HeldFile {
  readonly name: string;
  readonly file: Blob;
  read: {
    readonly capture: Capture;
    readonly sha256: string;
    readonly sampleRateHz: number | undefined;
  } | null;
  /** The channels that were measured, once somebody looks at them. */
  shown: readonly ShownChannel[] | null;
  measured: { readonly options: ToldOptions; readonly assays: readonly Assay[] } | null;
  /** As a capture of its unit, measured last with these options as JSON. */
  outlet: { readonly options: string; readonly measured: Pick<Assay, 'result' | 'budgets'> } | null;
}

/** A channel that was measured, as it is shown. */
export interface ShownChannel extends Pick<Capture, 'startS' | 'intervalS'> {
  readonly channel: Channel;
  /** Still to be multiplied by: what a meter's reading made of the scale. */
  readonly factor: number;
}

/** Files by the number that the page gave them. */
export type HeldFiles = Map<number, HeldFile>;

/** @throws MeasureError `file.closed` where it was taken away. */
export function heldFile(files: HeldFiles, id: number): HeldFile {
  const held = files.get(id);
  if (held !== undefined) return held;
  throw wordedError('file.closed', 'The capture was taken off the page.', { advice: 'add it again' });
}

/** A piece of work that tells how far it is and stops when nobody wants it any more. */
export interface Task {
  /** @param share - from 0 to 1. */
  readonly tell: (share: number) => void;
  /** Lets what else was asked be heard. @throws Cancelled */
  readonly pause: () => Promise<void>;
}

/** Thrown where nobody waits for the answer any more. */
export class Cancelled extends Error {}
