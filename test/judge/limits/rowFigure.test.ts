import { describe, expect, it } from 'vitest';
import { rowFigure } from '../../../src/judge/limits/rowFigure.ts';
import { exactly, figuresWith } from '../../assay/figuresWith.ts';

describe('rowFigure', () => {
  it('takes the larger extreme as the peak, with its own doubt', () => {
    const figures = figuresWith({ peak: exactly(160, 1), trough: exactly(-171, 2) });
    const row = {
      clause: 'none',
      provenance: 'memory',
      remark: 'invented for a test',
      quantity: 'peak voltage',
      unit: '% of nominal RMS',
      limit: { max: 150 },
    } as const;
    expect(rowFigure(row, figures, { voltageV: 120, frequencyHz: 60, inferred: true })).toEqual({
      ...{ quantity: 'peak voltage (V)', unit: 'V' },
      figure: exactly(171, 2),
      limit: { max: 180 },
    });
    expect(rowFigure(row, figures, null)).toBeNull();
  });
});
