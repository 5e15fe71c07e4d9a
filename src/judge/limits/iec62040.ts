import { compatibilityLevels } from './iec61000.ts';
import type { LimitTable } from './limitTable.ts';

const REMARK =
  'for uninterruptible supplies; the letter itself takes two captures, with a linear and with the reference non-linear load';

export const iec62040: LimitTable = {
  standard: 'IEC 62040-3',
  edition: '2021',
  subject: 'uninterruptible power supplies, output letter S',
  saying: {
    inside: 'within the S limits with this load',
    outside: 'outside the S limits with this load',
  },
  rows: [
    {
      clause: '5.3.4.3',
      quantity: 'THD',
      unit: '% of fundamental',
      highestOrder: 50,
      limit: { max: 8 },
      provenance: 'public',
      remark: REMARK,
    },
  ],
  // Its S limits are those of IEC 61000-2-2.
  harmonics: {
    clause: '5.3.4.3',
    unit: '% of fundamental',
    limitPercent: compatibilityLevels.limitPercent,
    provenance: 'public',
    remark: REMARK,
  },
};
