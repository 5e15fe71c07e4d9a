import type { LimitTable } from './limitTable.ts';

export const nemaMg1: LimitTable = {
  standard: 'NEMA MG 1',
  edition: 'edition not checked',
  subject: 'generators',
  rows: [
    {
      clause: 'Parts 32 and 33',
      quantity: 'deviation factor',
      unit: '%',
      limit: { max: 10 },
      provenance: 'public',
      remark:
        'for generators with nothing connected; the US guide specification UFGS 16263A asks the same at no load and at full load',
    },
  ],
};
