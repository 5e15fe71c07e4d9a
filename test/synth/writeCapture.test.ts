import { describe, expect, test } from 'vitest';
import type { WrittenCapture } from '../../src/synth/layoutTexts.ts';
import { captureLayouts, type LayoutName, writeCapture } from '../../src/synth/writeCapture.ts';

const capture: WrittenCapture = {
  channels: [
    { name: 'Output', unit: 'V', samples: Float64Array.of(-169.6875, 0, 1.5625) },
    { name: 'Clamp', unit: 'A', samples: Float64Array.of(0.25, -2, 0) },
  ],
  startS: -2e-5,
  intervalS: 1e-5,
  comment: 'Invented, with a "comma"; and more',
};

function text(layout: LayoutName): string {
  const bytes = writeCapture(layout, capture);
  return new TextDecoder(bytes[0] === 0xff ? 'utf-16le' : 'utf-8', { ignoreBOM: true }).decode(bytes);
}

// Written out by hand from the words of each layout.
const expected: Record<LayoutName, string> = {
  comma: `Remark,"Invented, with a ""comma""; and more"
Time (s),Output (V),Clamp (A)
-0.00002000,-169.6875,0.250000
-0.00001000,0.0000,-2.000000
0.00000000,1.5625,0.000000
`,
  semicolon: `Remark;"Invented, with a ""comma""; and more"
Time;Output;Clamp
(ms);(V);(A)

-0,02000;-169,6875;0,250000
-0,01000;0,0000;-2,000000
0,00000;1,5625;0,000000
`.replaceAll('\n', '\r\n'),
  tab: `Remark\tInvented, with a "comma"; and more
time / s\tOutput / V\tClamp / A
-0.00002000\t-169.6875\t0.250000
-0.00001000\t0.0000\t-2.000000
0.00000000\t1.5625\t0.000000
`,
  blanks: `# Invented, with a "comma"; and more
-0.00002000   -169.6875    0.250000
-0.00001000      0.0000   -2.000000
 0.00000000      1.5625    0.000000
`,
  index: `Remark,"Invented, with a ""comma""; and more"
Samples,3
Sample interval (s),1.000000000e-5
Index,Output (V),Clamp (A)
0,-169.6875,0.250000
1,0.0000,-2.000000
2,1.5625,0.000000
`.replaceAll('\n', '\r\n'),
  increment: `Remark,"Invented, with a ""comma""; and more"
Index,Output,Clamp,Start,Increment
Sequence,V,A,-2.000000000e-5,1.000000000e-5
0,-169.6875,0.250000,,
1,0.0000,-2.000000,,
2,1.5625,0.000000,,
`.replaceAll('\n', '\r\n'),
  preamble: `Remark,"Invented, with a ""comma""; and more"
Record length,3
Sample interval,1.000000000e-5
Horizontal unit,s
Horizontal start,-2.000000000e-5
Vertical unit,V,A
Vertical scale,50,0.5
Vertical position,0,0

Time,Output,Clamp
-0.00002000,-169.6875,0.250000
-0.00001000,0.0000,-2.000000
0.00000000,1.5625,0.000000
`,
  utf16: `\ufeffRemark\tInvented, with a "comma"; and more
time / s\tOutput / V\tClamp / A
-0.00002000\t-169.6875\t0.250000
-0.00001000\t0.0000\t-2.000000
0.00000000\t1.5625\t0.000000
`.replaceAll('\n', '\r\n'),
  values: `# Invented, with a "comma"; and more
-169.6875,0.250000
0.0000,-2.000000
1.5625,0.000000
`,
};

describe('writeCapture', () => {
  test.each(Object.keys(captureLayouts) as LayoutName[])('writes the layout %s', (layout) => {
    expect(text(layout)).toBe(expected[layout]);
  });

  test('leaves the remark out where there is none', () => {
    const { comment: _, ...plain } = capture;
    for (const layout of Object.keys(captureLayouts) as LayoutName[]) {
      const bytes = writeCapture(layout, plain);
      expect(new TextDecoder().decode(bytes)).not.toMatch(/Remark|#|undefined/);
    }
  });

  test('refuses channels of different lengths and an interval of nothing', () => {
    const short = { name: 'short', unit: 'V', samples: Float64Array.of(1) };
    expect(() => writeCapture('comma', { ...capture, channels: [capture.channels[0], short] })).toThrow(
      RangeError,
    );
    expect(() => writeCapture('comma', { ...capture, intervalS: 0 })).toThrow(RangeError);
  });
});
