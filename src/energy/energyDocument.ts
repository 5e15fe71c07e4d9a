import type { FailedResult } from '../assay/measureDocument.ts';
import type { Figure } from '../base/figure.ts';
import type { Worded } from '../base/notice.ts';
import type { ClaimResult } from '../judge/claims/claim.ts';
import type { EnergyLog } from './log/energyLog.ts';
import type { LogLayout } from './log/logLayout.ts';
import type { EnergyNotice } from './notices.ts';
import type { RunKind } from './runs/runs.ts';

/** The JSON of `energy --json`. Keys carry their unit; later versions add keys and rename none. */
export interface EnergyDocument {
  readonly schema: 'sineassay/energy@1';
  readonly results: readonly (EnergyResult | FailedResult)[];
  /** Where two logs were named as one test. */
  readonly together?: TogetherResult<Figure<string>>;
}

/** A result as the document carries it. */
export type EnergyResult = Omit<Worded<EnergyAssay<Figure<string>>>, 'log'> & {
  readonly log: Omit<EnergyAssay<Figure<string>>['log'], 'layout'> & { readonly layout: string };
};

/** What was found in one log, without a sentence in it. `F`: its figures, with their budgets or without. */
export interface EnergyAssay<F> {
  readonly file: string;
  /** Of the file's bytes, lower-case hexadecimal. */
  readonly sha256: string;
  readonly label?: string;
  readonly log: {
    readonly rows: number;
    /** ISO 8601; absent where the clock is not absolute. */
    readonly startTime?: string;
    /** First to last row. */
    readonly durationS: number;
    readonly side: EnergyLog['side'];
    readonly layout: LogLayout;
    readonly columns: EnergyLog['columns'];
  };
  readonly runs: readonly RunResult<F>[];
  readonly gaps: readonly GapResult[];
  readonly counters: readonly {
    readonly name: string;
    readonly energyWh: F;
    readonly chargeAh?: F;
    readonly ratioPercent: F;
  }[];
  readonly ratios: RatioResults<F>;
  readonly claims: readonly ClaimResult[];
  readonly notices: readonly EnergyNotice[];
}

/** Seconds count from the log's first row; energy and charge are positive, the kind says which way they go. */
export interface RunResult<F> {
  readonly kind: RunKind;
  readonly fromS: number;
  readonly toS: number;
  /** Under load. */
  readonly durationS: F;
  readonly energyWh: F;
  readonly chargeAh: F;
  readonly meanPowerW: F;
  readonly maxPowerW: F;
  /** Energy over charge. */
  readonly meanVoltageV: F;
  /** Under load. */
  readonly startVoltageV: F;
  readonly endVoltageV: F;
  /** Mean power over rated energy, per hour. */
  readonly rate: F;
  readonly charge?: {
    readonly ccS: F;
    readonly cvS: F;
    readonly to80S: F;
    readonly toFullS: F;
    readonly sources: F;
  };
  readonly idle?: { readonly powerW: F; readonly emptiesInH: F; readonly autoOffAfterS: F };
  readonly cycle?: { readonly periodS: F; readonly onPercent: F; readonly lostWh: F };
}

/** A hole in the record, and what may have flowed in it; null where the log tells no watts. */
export interface GapResult {
  readonly fromS: number;
  readonly toS: number;
  readonly energyWh: { readonly min: number | null; readonly max: number | null };
}

export interface RatioResults<F> {
  /** DC energy over rating. */
  readonly usableSharePercent?: F;
  /** Energy at the outlet over rating. Never an efficiency. */
  readonly outletSharePercent?: F;
  /** Charge over rated charge. */
  readonly usableChargeSharePercent?: F;
  /** Energy of a whole discharge over that of a whole charge, both in this log. */
  readonly roundTripPercent?: F;
}

export interface TogetherResult<F> {
  /** Energy at the outlet over energy at the DC side, of the same discharge. */
  readonly conversionEfficiencyPercent?: F;
  /** Energy of a whole discharge over that of a whole charge. */
  readonly roundTripPercent?: F;
}
