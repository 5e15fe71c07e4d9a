import type { BenchUnit, ToldLoad } from '../../entry/benching.ts';
import type { CompareDocument } from '../../entry/comparing.ts';
import type {
  CaptureEvidence,
  ComparisonEvidence,
  OverlayEvidence,
  SweepEvidence,
} from '../../entry/evidence.ts';
import type { ErrorData, MeasureResult, ToldOptions } from '../../entry/measuring.ts';
import type { WaveColumns } from '../wave/waveColumns.ts';

/** What the page asks of its worker, by name: what is given and what comes back. Plain data on both sides. */
export interface Requests {
  /** Keeps a file under a number. Nothing of it is read yet. */
  readonly open: { readonly given: OpenedFile; readonly answer: null };
  /** Reads a kept file, unless it was read already, and measures it. May take long; tells how far it is. */
  readonly measure: {
    readonly given: {
      readonly id: number;
      readonly options: ToldOptions;
      /** What is measured hangs upside down, whatever it is called. */
      readonly isInverted: boolean;
    };
    readonly answer: Measured;
  };
  /** Lowest and highest values of a channel in each of some columns of a stretch of time. */
  readonly columns: {
    readonly given: {
      readonly id: number;
      readonly channel: string;
      readonly fromS: number;
      readonly toS: number;
      readonly count: number;
    };
    readonly answer: WaveColumns;
  };
  /** What the sheet of two measured captures over each other carries, and what differs in the page's own words. */
  readonly overlay: {
    readonly given: {
      readonly sides: readonly [a: OverlaySide, b: OverlaySide];
      /** Told: one scope and probe at one setting took both. */
      readonly sameInstrument: boolean;
    };
    readonly answer: { readonly evidence: OverlayEvidence; readonly shown: CompareDocument };
  };
  /** What the sheets of units carry, each taken from its captures at several loads. */
  readonly sweep: { readonly given: { readonly units: readonly AskedUnit[] }; readonly answer: Sweeps };
  /** Forgets a file and what was measured of it. */
  readonly close: { readonly given: { readonly id: number }; readonly answer: null };
}

interface OpenedFile {
  readonly id: number;
  /** As results name it. */
  readonly name: string;
  readonly file: Blob;
}

/** What a capture turned out to be. */
export interface Measured {
  readonly sha256: string;
  /** The channels of the file, those that were not measured too. */
  readonly channels: readonly FileChannel[];
  readonly startS: number;
  readonly endS: number;
  readonly intervalS: number;
  /** One for each channel asked for: at least one. */
  readonly assays: readonly MeasuredChannel[];
}

export interface OverlaySide {
  readonly id: number;
  /** Which of its results. */
  readonly channel: number;
}

/** A unit and its captures, by number. */
export interface AskedUnit {
  /** No two are alike. */
  readonly label: string;
  /** As worded; ratings among them. */
  readonly claims: readonly string[];
  readonly captures: readonly { readonly id: number; readonly told: ToldLoad }[];
  /** Captures of load steps. */
  readonly steps: readonly number[];
  /** Captures of transfers between sources. */
  readonly transfers: readonly number[];
}

export interface Sweeps {
  /** In the order of the units asked for; `shown`: in the page's own words. */
  readonly sweeps: readonly { readonly evidence: SweepEvidence; readonly shown: BenchUnit }[];
  /** Null for one unit alone. */
  readonly comparison: ComparisonEvidence | null;
}

export interface FileChannel {
  readonly name: string;
  readonly quantity: 'voltage' | 'current' | 'other';
  readonly unit: string;
}

export interface MeasuredChannel {
  /** As documents and sheets carry it. */
  readonly result: MeasureResult;
  /** The same in the page's own words, which name its fields. */
  readonly shown: MeasureResult;
  readonly method: readonly string[];
  /** A rising zero of the fundamental, on the file's own axis. */
  readonly zeroS: number;
  /** What the sheet of its wave carries, and that of its changes where there are any. */
  readonly wave: CaptureEvidence;
  readonly changes: CaptureEvidence | null;
}

/** What goes to the worker. */
export type ToWorker =
  | {
      readonly call: number;
      readonly ask: keyof Requests;
      readonly given: Requests[keyof Requests]['given'];
      /** Done before what was asked earlier and waits: somebody looks at it. */
      readonly first: boolean;
    }
  | { readonly call: number; readonly cancel: true };

/** What comes back. */
export type FromWorker =
  | { readonly call: number; readonly answer: unknown }
  | { readonly call: number; readonly failed: ErrorData }
  | { readonly call: number; readonly cancelled: true }
  /** An error that is a fault of ours, in words. */
  | { readonly call: number; readonly defect: string }
  /** From 0 to 1: how much of a file has been read. */
  | { readonly call: number; readonly share: number };
