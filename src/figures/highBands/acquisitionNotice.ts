import type { Notice } from '../../base/notice.ts';
import type { Acquisition } from '../../capture/capture.ts';

const EFFECTS: Readonly<Record<Exclude<Acquisition, 'sample'>, string>> = {
  'peak detect': 'keeps the highest and lowest of each interval, which makes ripple and noise look larger',
  envelope: 'keeps the extremes of many sweeps, which makes ripple and noise look larger',
  average: 'is the mean of many sweeps, in which ripple that runs free of the wave vanishes',
  'high resolution': 'averages neighbouring samples, which makes fast ripple look smaller',
};

/** What the scope's acquisition mode does to everything above 2 kHz; null for plain samples or where unknown. */
export function acquisitionNotice(acquisition: Acquisition | null): Notice | null {
  if (acquisition === null || acquisition === 'sample') return null;
  return {
    code: 'acquisition.mode',
    message: `The scope's acquisition mode (${acquisition}) ${EFFECTS[acquisition]}: set it to plain sampling and save again to judge ripple.`,
  };
}
