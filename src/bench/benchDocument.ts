import type { FailedResult } from '../assay/measureDocument.ts';
import type { Figure } from '../base/figure.ts';
import type { Worded } from '../base/notice.ts';
import type { ClaimResult } from '../judge/claims/claim.ts';
import type { Limit } from '../judge/decide.ts';
import type { LoadKindName } from '../judge/loadKind.ts';
import type { Nominal } from '../judge/nominal/mainsNominals.ts';
import type { WaveformKind } from '../judge/waveform/kinds.ts';
import type { BenchNotice } from './notices.ts';
import type { LoadSource } from './shownLoad.ts';

/** The JSON of `bench --json`, also written as bench.json. Keys carry their unit; later versions add keys and rename none. */
export type BenchDocument = Worded<BenchResult>;

/** What the units of a bench test show, without a sentence in it but for what an earlier document said. */
interface BenchResult {
  readonly schema: 'sineassay/bench@1';
  /** In the plan's order; units of earlier documents follow those of today. */
  readonly units: readonly UnitResult[];
  /** The units side by side: one row a figure, `figures` in the order of `units`. Empty for one unit alone. */
  readonly comparison: readonly ComparisonRow[];
  /** Captures that could not be measured. */
  readonly failures: readonly FailedResult[];
}

/** A unit as the document carries it. */
export type BenchUnit = Worded<UnitResult>;

export interface UnitResult {
  /** Short, for the table and file names; unique among the units of one evening. */
  readonly name: string;
  /** As a person calls it: `Inverter A (red case)`. */
  readonly label: string;
  /** The document that this unit was taken from; absent: measured now. */
  readonly earlier?: string;
  readonly nominal: Nominal | null;
  /** What the maker rates the outlet at; captures above it are overload and judge no claim. Null: not told. */
  readonly ratedW: number | null;
  /** Captures at a steady load, by rising load; those of unknown load last. */
  readonly points: readonly BenchPoint[];
  readonly regulation: Regulation;
  readonly droop: Droop;
  /** Load from which the tops are flattened. */
  readonly clipping: Onset;
  /** Load from which the RMS voltage lies outside `range`. */
  readonly leavesRange: Onset & { readonly range: VoltageRange | null };
  /** Each claim over all captures up to the rated load. */
  readonly claims: readonly BenchClaim[];
  readonly steps: readonly BenchStep[];
  /** Breaks of the voltage in captures of a transfer. */
  readonly transfers: readonly BenchTransfer[];
  /** The transfers by direction; absent in earlier documents. */
  readonly transferSides?: readonly TransferSide[];
  /** Loads above the rating, and those under which the output was lost, by rising load; absent in earlier documents. */
  readonly overloads?: readonly BenchOverload[];
  readonly energy: readonly EnergyRun[];
  readonly notices: readonly BenchNotice[];
}

/** One capture of the sweep. */
export interface BenchPoint {
  readonly file: string;
  readonly sha256: string;
  /** A told load is taken as exact. */
  readonly loadW: Figure;
  readonly loadFrom: LoadSource;
  /** Measured, or the load that words tell over the voltage (a power factor of 1 is assumed then). */
  readonly currentA: Figure;
  /** As `loadFrom`: where both come from words it is from the same. */
  readonly currentFrom: LoadSource;
  readonly rmsV: Figure;
  /**
   * The part of `rmsV`'s uncertainty that differs from capture to capture (noise, resolution, edges): gain,
   * probe and offset are common to all of one evening, so that they move the whole sweep and not its shape.
   */
  readonly rmsScatterV: number | null;
  readonly frequencyHz: Figure;
  readonly thdPercent: Figure;
  readonly crestFactor: Figure;
  readonly kind: WaveformKind;
  readonly atTheEdge: boolean;
  /** Above the rated load. */
  readonly overload: boolean;
  /** What the current shows of the load, where it is no resistor: its volts lie off the line of those. */
  readonly loadKind?: Exclude<LoadKindName, 'resistive' | 'not classified'>;
  /** What was seen where the output was lost under this load: `output lost`; its figures are of no use for the sweep. */
  readonly lost?: string;
  /** The worst of the claims that this capture can judge; null: none. */
  readonly outcome: ClaimResult['outcome'] | null;
  /** State of the battery: % charged, or volts at its terminals. */
  readonly battery?: { readonly percent: number } | { readonly directV: number };
  readonly note?: string;
  /** Where the capture's own sheet was written. */
  readonly sheet?: string;
}

/** What became of a load that went too far. */
export interface BenchOverload {
  readonly file: string;
  readonly sha256: string;
  readonly note?: string;
  readonly loadW: Figure;
  /** Absent: not known. */
  readonly loadFrom?: 'told' | 'measured' | 'file name';
  /** Null where no rating was told. */
  readonly aboveRating: boolean | null;
  readonly heldS: Figure;
  /** True where it was held before the record began, or still when it ended: `heldS` is a lower bound. */
  readonly heldAtLeast: boolean;
  readonly lost: boolean;
  /** In words, never why: `output lost`. */
  readonly seen: string;
  /** Under the load. */
  readonly rmsV: Figure;
}

/** 100 · (no-load voltage − full-load voltage) / full-load voltage: positive where the voltage falls. */
export interface Regulation {
  readonly regulationPercent: Figure;
  /** The captures it is taken from; null where there are none. */
  readonly noLoadW: number | null;
  readonly fullLoadW: number | null;
}

/** A straight line through the sweep: rms = openCircuit − impedance · current. */
export interface Droop {
  /** What the RMS voltage falls by for each ampere; the resistive part of the output impedance under a resistive load. */
  readonly outputImpedanceOhm: Figure;
  /** The line at no current. */
  readonly openCircuitV: Figure;
  /** What the line falls by up to the full load, in % of `openCircuitV`. */
  readonly droopPercent: Figure;
  /** Loads of the captures that the line goes through: up to the rated load and before the tops flatten. */
  readonly fittedLoadsW: readonly number[];
  /** Root of the weighted sum of squares over the degrees of freedom; well above 1: no straight line. Null: two points only. */
  readonly misfit: number | null;
}

/** Where on the way up in load something sets in. */
export interface Onset {
  /** Straight between the two captures around it, with the farther of the two as its uncertainty. */
  readonly atW: Figure;
  /** The last load before and the first load after; null where `atW` has no value. */
  readonly betweenW: readonly [number, number] | null;
  /** What shows it, in words: `crest factor 1.412 to 1.253`; empty where `atW` has no value. */
  readonly shownBy: string;
}

export interface VoltageRange {
  readonly limit: Limit;
  readonly from: 'claim' | 'nominal ±10 %';
}

/** A claim with its worst case. */
export interface BenchClaim extends ClaimResult {
  /** The capture that decides, as given; null where none could. */
  readonly worstFile: string | null;
  readonly worstLoadW: number | null;
}

/** One load step of one capture. Percentages are signed, of nominal. */
export interface BenchStep {
  readonly file: string;
  readonly fromW: number | null;
  readonly toW: number | null;
  /** Null: not told. */
  readonly resistive: boolean | null;
  readonly note?: string;
  readonly atS: Figure;
  readonly direction: 'on' | 'off';
  readonly beforeV: Figure;
  readonly afterV: Figure;
  readonly extremeV: Figure;
  readonly deviationPercent: Figure;
  readonly afterPercent: Figure;
  readonly recoveryS: Figure;
}

/** From which source to which. */
export type TransferDirection = 'mains to battery' | 'battery to mains';

/** One break of the voltage. */
export interface BenchTransfer {
  readonly file: string;
  readonly sha256?: string;
  /** Null where it was neither told nor shows in the wave; absent in earlier documents. */
  readonly direction?: TransferDirection | null;
  /** Told in the plan, or seen by a wave with plateaus, which no mains have. */
  readonly directionFrom?: 'told' | 'seen';
  readonly note?: string;
  readonly atS: Figure;
  readonly transferS: Figure;
  /** Where the voltage did not come back: for how long the record goes on without. */
  readonly notBackS?: number;
}

/** All transfers in one direction. */
export interface TransferSide {
  /** Null: of unknown direction. */
  readonly direction: TransferDirection | null;
  readonly count: number;
  /** How many came back, within what is claimed where a time is. */
  readonly held: number;
  readonly shortestS: Figure;
  readonly longestS: Figure;
}

/** One discharge, with the three ratios that are often taken for one another. */
export interface EnergyRun {
  readonly note?: string;
  readonly ratedWh: number;
  readonly dcWh: Figure;
  readonly acWh: Figure;
  /** DC energy over rating. */
  readonly usableSharePercent: Figure;
  /** AC energy over rating; never an efficiency. */
  readonly outletSharePercent: Figure;
  /** AC energy over DC energy. */
  readonly conversionEfficiencyPercent: Figure;
}

export interface ComparisonRow {
  /** The key it stands under in a unit: `regulationPercent`. */
  readonly quantity: string;
  /** In words: `regulation, no load to full load`. */
  readonly name: string;
  /** Empty for a ratio. */
  readonly unit: string;
  readonly figures: readonly Figure[];
}
