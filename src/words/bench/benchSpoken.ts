import type { BenchPoint, BenchUnit } from '../../bench/benchDocument.ts';
import { sweepEnds } from '../../bench/sweep/regulation.ts';
import { claimsVerdict } from '../claimWords.ts';
import { decimalText, uncertaintyDecimals } from '../numbers.ts';
import { shortText } from '../text.ts';
import { leadingLoss, overloadPhrase } from './overloadWords.ts';

/**
 * Two sentences to say on camera: the output lost at a load that it should carry, what the voltage does from no load to full load and how the claims stand,
 * then what the answer is not.
 */
export function benchSpoken(unit: BenchUnit): readonly [string, string] {
  const changes = new Set([...unit.steps, ...unit.transfers].map(({ file }) => file));
  const count = unit.points.length + changes.size;
  const captures = count === 1 ? 'One capture' : `${count} captures of one evening`;
  return [`${name(unit)}: ${lost(unit)}${voltage(unit)}${claims(unit)}.`, `${captures}, not a certificate.`];
}

function name({ label }: BenchUnit): string {
  return shortText(label, 40);
}

/** What happened leads. */
function lost(unit: BenchUnit): string {
  const loss = leadingLoss(unit);
  return loss === null ? '' : `${overloadPhrase(loss)}; `;
}

function voltage(unit: BenchUnit): string {
  const ends = sweepEnds(unit.points);
  const { regulationPercent } = unit.regulation;
  if ('reason' in ends || regulationPercent.value === null) return 'no sweep from no load to full load';
  const percent = Math.abs(regulationPercent.value);
  // Spoken figures have a decimal at most.
  const decimals = Math.max(0, uncertaintyDecimals(Math.max(regulationPercent.uncertainty, 0.3)));
  const moves = regulationPercent.value >= 0 ? 'falls' : 'rises';
  return `from nothing to ${decimalText(ends.fullLoad.loadW, 0)} watts its voltage ${moves} by ${decimalText(percent, decimals)} %`;
}

function claims(unit: BenchUnit): string {
  const verdict = claimsVerdict(unit.claims);
  if (verdict === null) return '';
  const total = unit.claims.length;
  const some = verdict.claims.length;
  const all = total === 1 ? 'the claim' : `${some === total ? 'all' : `${some} of`} ${total} claims`;
  const many = some > 1;
  const words = {
    pass: many ? 'hold' : 'holds',
    'conditional pass': many ? 'only probably hold' : 'only probably holds',
    'not judged': 'can’t be judged',
    'conditional fail': many ? 'probably fail' : 'probably fails',
    fail: many ? 'fail' : 'fails',
  };
  return `, and ${all} ${words[verdict.outcome]}`;
}

/** The kind of wave at a load, with what sets it apart; nothing where no steady stretch was seen under it. */
export function pointKind({ kind, atTheEdge, rmsV, lost, loadKind }: BenchPoint): string {
  if (rmsV.value === null && lost !== undefined) return '–';
  return kind + (atTheEdge ? ', at the edge' : '') + (loadKind === undefined ? '' : `; ${loadKind} load`);
}

/** What stands in place of an outcome where the output was lost or the load lies above the rating; null: neither. */
export function pointState({ lost, overload }: BenchPoint): string | null {
  return lost ?? (overload ? 'overload' : null);
}
