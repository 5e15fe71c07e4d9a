import { expect, test } from 'vitest';
import { escapeFormula } from '../../src/publish/figuresTable.ts';

test.each(['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', ' =1', '"=1+1', '”＝1', '＝1', '－1', "'=1", '\rx'])(
  '%j is disarmed',
  (text) => {
    expect(escapeFormula(text)).toBe(`'${text}`);
  },
);

test.each(['', 'pure sine', '300 W', 'a=b', 'Inverter A (red case)', '“quoted”'])(
  '%j stays as it is',
  (text) => {
    expect(escapeFormula(text)).toBe(text);
  },
);
