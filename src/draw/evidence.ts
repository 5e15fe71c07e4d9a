import type { Dynamics, Trace, WordedAssay } from '../assay/assay.ts';
import type { AssayOptions } from '../assay/assayOptions.ts';
import type { MeasureResult } from '../assay/measureDocument.ts';
import type { Worded } from '../base/notice.ts';
import type { BenchDocument, BenchUnit } from '../bench/benchDocument.ts';
import type { CompareDocument } from '../bench/compare/compareDocument.ts';
import type { MeasuredCapture, MeasuredStep, MeasuredUnit, ToldTransfer } from '../bench/measuredUnit.ts';
import type { ReadCaptureOptions } from '../read/readCapture.ts';

/**
 * What a sheet carries inside it: all that its picture is drawn from, so that whoever has the sheet can draw it
 * again, and whoever has the capture too can measure it again. Plain data: it survives JSON unchanged.
 */
export type Evidence = CaptureEvidence | CardEvidence | OverlayEvidence | SweepEvidence | ComparisonEvidence;

interface Carried {
  readonly schema: 'sineassay/sheet@1';
  /** Which version of the program made it: `0.1.0`. */
  readonly program: string;
}

/** Of one capture. */
export interface CaptureEvidence extends OneCapture {
  readonly picture: 'wave' | 'changes';
}

/** Of one capture, shown as a card. */
export interface CardEvidence extends OneCapture {
  readonly picture: 'card';
  readonly theme: CardTheme;
}

/** Ink on light paper, or light on dark. */
export type CardTheme = 'light' | 'dark';

export interface OneCapture extends Carried {
  readonly options: CarriedOptions;
  readonly result: MeasureResult;
  readonly method: WordedAssay['method'];
  readonly trace: CarriedTrace;
  /** Null where the record is steady throughout. */
  readonly dynamics: CarriedDynamics | null;
}

/** Of two captures compared. */
export interface OverlayEvidence extends Carried {
  readonly picture: 'overlay';
  readonly sides: readonly [a: OneCapture, b: OneCapture];
  /** What the uncertainties of the differences come from: budgets of captures measured then, or results alone. */
  readonly basis: 'budgets' | 'results';
  readonly result: CompareDocument;
}

/** Of several captures of one unit. */
export interface SweepEvidence extends Carried {
  readonly picture: 'sweep';
  /** Shown as a card; absent: as a sheet. */
  readonly card?: CardTheme;
  /** What was told of it. */
  readonly told: readonly [CarriedUnit];
  readonly result: BenchUnit;
}

/** Of several units. */
export interface ComparisonEvidence extends Carried {
  readonly picture: 'comparison';
  /** Shown as a card; absent: as a sheet. */
  readonly card?: CardTheme;
  /** What was told of each unit of today; earlier ones come with their results alone. */
  readonly told: readonly CarriedUnit[];
  readonly result: BenchDocument;
}

/** A capture that stands behind a bench test, with what it takes to measure it again. */
export interface CarriedCapture {
  readonly file: string;
  readonly sha256: string;
  readonly options: CarriedOptions;
}

/** What was told of a unit, with the captures that stand behind its results; claims as they were worded. */
export interface CarriedUnit extends Pick<MeasuredUnit, 'name' | 'label' | 'rule' | 'energy'> {
  readonly claims: readonly string[];
  readonly sweep: readonly (CarriedCapture & Pick<MeasuredCapture, 'told'>)[];
  readonly steps: readonly (CarriedCapture & Pick<MeasuredStep, 'told'>)[];
  readonly transfers: readonly (CarriedCapture & ToldTransfer)[];
}

/** What was told of a capture; claims as they were worded. */
export interface CarriedOptions extends Omit<AssayOptions, 'claims'>, ReadCaptureOptions {
  readonly claims: readonly string[];
}

/** Two cycles, decimated and rounded for drawing. Shape N each; null where the file holds no value. */
export interface CarriedTrace {
  readonly timeS: readonly number[];
  readonly wave: readonly (number | null)[];
  readonly ideal: readonly number[];
  readonly unit: 'V' | 'A';
}

export interface CarriedDynamics
  extends Pick<Worded<Dynamics>, 'steps' | 'events' | 'curves' | 'distortion'> {
  readonly timeS: readonly number[];
  readonly rmsHalfCycle: readonly number[];
  /** Around the instant that the sheet is about, decimated and rounded. */
  readonly instantaneous: {
    readonly timeS: readonly number[];
    readonly volts: readonly (number | null)[];
  } | null;
}

/** The assay that a sheet's picture is drawn from. Budgets are not carried: no picture shows them. */
export function assayOf({ result, method, trace, dynamics }: OneCapture): WordedAssay {
  return { result, method, trace: traceOf(trace), dynamics: dynamicsOf(dynamics), budgets: [] };
}

function traceOf({ timeS, wave, ideal, unit }: CarriedTrace): Trace {
  const samples = Float64Array.from(wave, orNan);
  return {
    ...{ unit, wave: samples },
    timeS: Float64Array.from(timeS),
    ideal: Float64Array.from(ideal),
    residual: samples.map((v, i) => v - (ideal[i] ?? Number.NaN)),
  };
}

function dynamicsOf(carried: CarriedDynamics | null): WordedAssay['dynamics'] {
  if (carried === null) return null;
  const { timeS, rmsHalfCycle, instantaneous, ...others } = carried;
  return {
    ...others,
    timeS: Float64Array.from(timeS),
    rmsHalfCycle: Float64Array.from(rmsHalfCycle),
    instantaneous:
      instantaneous === null
        ? null
        : {
            timeS: Float64Array.from(instantaneous.timeS),
            volts: Float64Array.from(instantaneous.volts, orNan),
          },
  };
}

/** JSON knows no NaN: null stands for "no value". */
export function orNull(value: number): number | null {
  return Number.isNaN(value) ? null : value;
}

/** The other way: NaN for null. */
function orNan(value: number | null): number {
  return value ?? Number.NaN;
}
