import type { MeasuredFigure } from '../../base/figure.ts';
import type { ClaimResult } from '../../judge/claims/claim.ts';
import { DECENT_USABLE_SHARE_PERCENT, REACHED_SHARE } from '../../judge/claims/ratings.ts';
import { type DecisionRule, decide, type Limit } from '../../judge/decide.ts';
import { type LogFigure, none } from '../doubt/runFigures.ts';
import type { EnergyLog } from '../log/energyLog.ts';
import type { LogShown, ShownRun } from '../logAssay.ts';
import type { LogClaim } from './logClaim.ts';

/** What one log, or two that belong together, show. */
export interface LogEvidence {
  readonly logs: readonly LogShown[];
  readonly together?: {
    readonly conversionEfficiencyPercent?: LogFigure;
    readonly roundTripPercent?: LogFigure;
  };
  readonly rule: DecisionRule;
}

/**
 * Whether a claim holds on a log.
 *
 * @returns `not judged`, with the reason in words, where the log can't tell: energy at the outlet is a least
 * value of a capacity, which confirms and never refutes. Where the log ends under load, nothing fails outright.
 */
export function judgeLogClaim(claim: LogClaim, evidence: LogEvidence): ClaimResult {
  const shown = shownOf(claim, evidence);
  const { text, quantity } = claim;
  const limit = shown.limit ?? claim.limit;
  const { figure } = shown;
  const known = { text, quantity, value: figure.value, limit };
  if (figure.value === null)
    return { ...known, outcome: 'not judged', probability: null, reason: figure.reason };
  const { outcome, probability } = decide(figure, limit, evidence.rule);
  if (shown.atLeast !== undefined && !isSettled(outcome, limit))
    return { ...known, outcome: 'not judged', probability: null, reason: shown.atLeast };
  if (shown.isOpen === true && outcome === 'fail')
    return { ...known, outcome: 'conditional fail', probability, reason: OPEN };
  return { ...known, outcome, probability, ...(shown.reason === undefined ? {} : { reason: shown.reason }) };
}

/** A least value settles a lower bound that it passes, and an upper one that it exceeds. */
function isSettled(outcome: ClaimResult['outcome'], { max }: Limit): boolean {
  return max === undefined ? outcome.endsWith('pass') : outcome === 'fail';
}

interface Shown {
  readonly figure: LogFigure;
  /** Where it is not the claim's own. */
  readonly limit?: Limit;
  readonly reason?: string;
  /** Why the figure is a least value; absent: it is the value. */
  readonly atLeast?: string;
  /** The log ends under load: a logger may have lost its supply with the outlet, or somebody stopped it. */
  readonly isOpen?: boolean;
}

function shownOf(claim: LogClaim, evidence: LogEvidence): Shown {
  switch (claim.quantity) {
    case 'capacityWh':
      return capacity(claim, evidence, 'energyWh');
    case 'capacityAh':
      return capacity(claim, evidence, 'chargeAh');
    case 'runtimeS':
      return runtime(evidence);
    case 'chargeS':
    case 'chargeTo80S':
      return chargeTime(claim, evidence);
    case 'conversionEfficiencyPercent':
    case 'roundTripPercent':
      return ofBoth(claim.quantity, evidence);
    case 'powerW':
      return power(claim, evidence);
  }
}

type Measured = Extract<LogFigure, MeasuredFigure>;

/** The run of a kind that has most of something. */
function largest(
  { logs }: LogEvidence,
  kinds: readonly string[],
  figureOf: (run: ShownRun) => LogFigure,
): { readonly run: ShownRun; readonly figure: Measured; readonly side: EnergyLog['side'] } | null {
  const [most] = logs
    .flatMap(({ runs, side }) =>
      runs.flatMap((run) => {
        const figure = figureOf(run);
        return !kinds.includes(run.kind) || figure.value === null ? [] : [{ run, figure, side }];
      }),
    )
    .sort((a, b) => b.figure.value - a.figure.value);
  return most ?? null;
}

const OPEN = 'the log ends under load: what is behind its end is not known';

/** The energy of the largest discharge; a rating is held against the share of it that is taken as decent. */
function capacity({ rating }: LogClaim, evidence: LogEvidence, key: 'energyWh' | 'chargeAh'): Shown {
  // At the DC side where there is one: the outlet's energy has paid the inverter's losses.
  const direct = evidence.logs.filter(({ side }) => side !== 'ac');
  const logs = direct.length > 0 ? direct : evidence.logs;
  const most = largest({ ...evidence, logs }, ['discharge'], (run) => run[key]);
  if (most === null) {
    const [first] = logs.flatMap(({ runs }) => runs.filter(({ kind }) => kind === 'discharge'));
    const figure = first?.[key];
    return { figure: figure?.value === null ? figure : none('the log holds no discharge') };
  }
  const { figure, run, side } = most;
  const atLeast =
    side === 'ac'
      ? 'the energy at the outlet has paid the inverter’s losses: it can confirm a capacity, not refute it'
      : undefined;
  const share = rating === null ? null : (100 * figure.value) / rating;
  return {
    figure,
    isOpen: run.isOpen,
    ...(atLeast === undefined ? {} : { atLeast }),
    ...(share === null
      ? {}
      : {
          limit: { min: (DECENT_USABLE_SHARE_PERCENT / 100) * rating! },
          reason: `${share.toFixed(0)} % of what is claimed ${side === 'ac' ? 'came out of the outlet' : 'can be used'}; ${DECENT_USABLE_SHARE_PERCENT} % and up is taken as decent, common practice`,
        }),
  };
}

/** At the outlet where a log is from there: it is what somebody waits for. */
function runtime(evidence: LogEvidence): Shown {
  const outlet = evidence.logs.filter(({ side }) => side === 'ac');
  const logs = outlet.length > 0 ? outlet : evidence.logs;
  const most = largest({ ...evidence, logs }, ['discharge'], ({ durationS }) => durationS);
  if (most === null) return { figure: none('the log holds no discharge') };
  return { figure: most.figure, isOpen: most.run.isOpen };
}

/** A charge that does not come to its end in the log can still have taken too long. */
function chargeTime({ quantity }: LogClaim, evidence: LogEvidence): Shown {
  const key = quantity === 'chargeS' ? 'toFullS' : 'to80S';
  const full = largest(evidence, ['charge'], ({ charge }) => charge?.[key] ?? none(''));
  if (full !== null) return { figure: full.figure };
  const most = largest(evidence, ['charge'], ({ durationS }) => durationS);
  if (most === null) return { figure: none('the log holds no charge') };
  const why = most.run.charge?.[key];
  const reason = why?.value === null ? why.reason : OPEN;
  return quantity === 'chargeS' ? { figure: most.figure, atLeast: reason } : { figure: none(reason) };
}

function ofBoth(
  quantity: 'conversionEfficiencyPercent' | 'roundTripPercent',
  { together }: LogEvidence,
): Shown {
  const figure = together?.[quantity];
  if (figure !== undefined) return { figure };
  return {
    figure: none(
      quantity === 'roundTripPercent'
        ? 'it takes a charge and a discharge: name both logs with --input and --output'
        : 'it takes a log of the DC side and one of the outlet: name both with --input and --output',
    ),
  };
}

/** A load that is not reached says nothing of whether the unit could carry it. */
function power({ limit }: LogClaim, evidence: LogEvidence): Shown {
  const most = largest(evidence, ['discharge', 'cycling'], ({ meanPowerW }) => meanPowerW);
  if (most === null) return { figure: none('the log holds no discharge whose watts are known') };
  const { figure, run } = most;
  const least = limit.min;
  if (least === undefined) return { figure };
  if (run.kind === 'cycling') return { figure, reason: 'the load comes and goes: the unit does not hold it' };
  if (figure.value + figure.uncertainty < REACHED_SHARE * least)
    return {
      figure: none(
        `the log’s highest steady load is ${figure.value.toFixed(0)} W: ${Math.round(least)} W was never asked of it`,
      ),
    };
  const minutes = (run.durationS.value ?? 0) / 60;
  return {
    figure,
    limit: { ...limit, min: REACHED_SHARE * least },
    reason: `held for ${minutes < 90 ? `${minutes.toFixed(0)} min` : `${(minutes / 60).toFixed(1)} h`} at ${figure.value.toFixed(0)} W`,
  };
}
