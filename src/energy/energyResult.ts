import type { NamedBudget } from '../assay/assay.ts';
import { withoutBudget } from '../assay/channelFigures.ts';
import type { Figure } from '../base/figure.ts';
import type { DecisionRule } from '../judge/decide.ts';
import { judgeLogClaim } from './claims/judgeLogClaim.ts';
import type { LogClaim } from './claims/logClaim.ts';
import type { LogFigure } from './doubt/runFigures.ts';
import type { EnergyAssay, TogetherResult } from './energyDocument.ts';
import type { LogAssay } from './logAssay.ts';
import { togetherOf } from './ratios/ratios.ts';

/** What is asked of logs. */
export interface LogQuestion {
  readonly claims: readonly LogClaim[];
  readonly rule: DecisionRule;
}

/** A log with its claims judged, figures without their budgets; and the budgets. */
export interface JudgedLog {
  readonly result: EnergyAssay<Figure<string>>;
  readonly budgets: readonly LogBudget[];
}

/** How the uncertainty of a figure is made up; `figure` in words. */
export type LogBudget = Omit<NamedBudget, 'key'>;

/** One log by itself. */
export function judgedLog({ result, shown }: LogAssay, { claims, rule }: LogQuestion): JudgedLog {
  const judged = claims.map((claim) => judgeLogClaim(claim, { logs: [shown], rule }));
  return { result: bare({ ...result, claims: judged }), budgets: budgetsOf(result) };
}

/** Two logs that belong together: each claim is judged by both, and stands with each. */
export function judgedPair(
  input: LogAssay,
  output: LogAssay,
  { claims, rule }: LogQuestion,
): { readonly logs: readonly [JudgedLog, JudgedLog]; readonly together: TogetherResult<Figure<string>> } {
  const together = togetherOf(input, output);
  const logs = [input.shown, output.shown];
  const judged = claims.map((claim) => judgeLogClaim(claim, { logs, together, rule }));
  const { value } = together.conversionEfficiencyPercent ?? { value: null };
  const isTooHigh =
    value !== null &&
    value - (together.conversionEfficiencyPercent as { uncertainty: number }).uncertainty > 100;
  const one = ({ result }: LogAssay): JudgedLog => ({
    result: bare({
      ...result,
      claims: judged,
      notices: isTooHigh
        ? [...result.notices, { code: 'efficiency.tooHigh', percent: value }]
        : result.notices,
    }),
    budgets: budgetsOf(result),
  });
  return { logs: [one(input), one(output)], together: bare(together) };
}

/** Every figure in it without its budget. */
function bare<T>(value: T): Bare<T> {
  const made = (part: unknown): unknown => {
    if (Array.isArray(part)) return part.map(made);
    if (typeof part !== 'object' || part === null) return part;
    if ('budget' in part) return withoutBudget(part as LogFigure);
    return Object.fromEntries(Object.entries(part).map(([key, one]) => [key, made(one)]));
  };
  return made(value) as Bare<T>;
}

type Bare<T> =
  T extends EnergyAssay<LogFigure>
    ? EnergyAssay<Figure<string>>
    : T extends TogetherResult<LogFigure>
      ? TogetherResult<Figure<string>>
      : never;

function budgetsOf({ runs }: EnergyAssay<LogFigure>): readonly LogBudget[] {
  return runs.flatMap(({ kind, energyWh, chargeAh }, i) =>
    kind === 'off' || kind === 'idle'
      ? []
      : [
          { name: `energy of run ${i + 1}, ${kind}`, unit: 'Wh', figure: energyWh },
          { name: `charge of run ${i + 1}, ${kind}`, unit: 'Ah', figure: chargeAh },
        ].flatMap(({ name, unit, figure }) =>
          figure.value === null ? [] : [{ ...figure, figure: name, unit }],
        ),
  );
}
