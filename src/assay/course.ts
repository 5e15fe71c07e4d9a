import type { PhaseJump } from '../measure/breaks/seams.ts';
import type { FollowedSupply } from '../measure/steps/followSupply.ts';
import type { Capture, SampleRange } from '../read/capture.ts';
import type { AssayNotice } from './notices.ts';

/** Says which stretch the figures describe, where that is not the whole record. */
export function steadyNotice(
  { from, to }: SampleRange,
  supply: FollowedSupply | null,
  { startS, intervalS }: Capture,
): AssayNotice {
  const at = (sample: number): number => startS + sample * intervalS;
  const by = supply?.steady.byCurrent === true ? 'current' : 'voltage';
  return { code: 'span.steady', by, fromS: at(from), toS: at(to) };
}

/** Says where the wave goes on at another phase, which is neither a load step nor a break. */
export function jumpNotices(jumps: readonly PhaseJump[]): readonly AssayNotice[] {
  return jumps.map(({ atS, degrees }) => ({
    code: 'phase.jump',
    atS: atS.value,
    degrees: degrees.value,
  }));
}
