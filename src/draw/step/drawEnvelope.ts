import { line, type ScaleLinear, scaleLinear } from 'd3';
import { curveOutline, type DynamicCurve } from '../../judge/curves/dynamicCurve.ts';
import { significantText, withUnit } from '../../words/numbers.ts';
import { drawTimeAxis, drawValueAxis, type LineName, nameLines } from '../panels/axes.ts';
import { drawCurve, extentOf } from '../panels/drawCurve.ts';
import { type Box, strokePath } from '../paper/page.ts';
import { palette } from '../paper/palette.ts';
import { type Panel, writeHeading } from '../paper/writeText.ts';
import { drawMarks } from './drawInstant.ts';
import type { PicturedStep, StepCurve, StepPicture, StepSubject } from './stepPicture.ts';

/** Room for the values on the left, the names on the right, the marks above and the times below. */
const margin = { left: 58, right: 150, top: 46, bottom: 24 } as const;
/** The scale shows this much either side of nominal, so that a steady voltage looks steady. */
const leastReachRatio = 0.06;
/** Limits farther from nominal than this, for the first milliseconds, would flatten what is measured. */
const farthestLimitRatio = 0.35;
const dashes = ['none', '9 5', '2 4', '12 4 2 4'] as const;

/**
 * Urms(1/2) along the record over the curves that it is held against, with a mark at each step and event.
 *
 * @param curves - of the step that the sheet is about, in volts, one a standard at most.
 * @param box - its top is the heading's baseline.
 */
export function drawEnvelope(
  panel: Panel,
  picture: StepPicture,
  subject: StepSubject,
  nominalV: number | null,
  curves: readonly StepCurve[],
  box: Box,
): void {
  const { timeS, rmsHalfCycle } = picture;
  const aside = 'RMS of each cycle, a new one every half cycle: Urms(1/2)';
  writeHeading(panel, 'The voltage along the record', aside, box.x, box.y, box.width);
  const plot = {
    x: box.x + margin.left,
    y: box.y + margin.top,
    width: box.width - margin.left - margin.right,
    height: box.height - margin.top - margin.bottom,
  };
  const [startS, endS] = extentOf(timeS);
  const pad = (endS - startS) * 0.005 || 0.01;
  const time = scaleLinear([startS - pad, endS + pad], [plot.x, plot.x + plot.width]);
  const [low, high] = extentOf(rmsHalfCycle);
  const lines =
    subject?.kind === 'step' && nominalV !== null
      ? curves.map(({ curve }) => ({
          name: curveName(curve),
          lines: curveLines(curve, subject.step, endS, nominalV),
        }))
      : [];
  const value = scaleLinear(
    valueRange(
      low,
      high,
      nominalV,
      nearestLevels(
        lines.map((curve) => curve.lines),
        nominalV,
      ),
    ),
    [plot.y + plot.height, plot.y],
  );

  drawValueAxis(panel, value, plot, 'V', 40);
  drawTimeAxis(panel, time, plot);
  drawMarks(panel, picture, time, { ...plot, y: box.y + 14, height: plot.y + plot.height - box.y - 14 });

  const names: LineName[] = [];
  if (nominalV !== null) {
    const y = value(nominalV);
    strokePath(panel, `M${plot.x} ${y.toFixed(1)}h${plot.width}`, { ink: palette.line, widthPx: 1 });
    names.push({ text: `nominal ${withUnit(significantText(nominalV, 4), 'V')}`, y, ink: palette.soft });
  }
  lines.forEach((curve, i) => {
    for (const corners of curve.lines) {
      const drawn = insideRange(corners, value.domain() as [number, number]);
      if (drawn === null) continue;
      strokePath(panel, pathOf(drawn, time, value), {
        ink: palette.idealText,
        widthPx: 1.8,
        dash: dashes[i % dashes.length]!,
      });
      names.push({ text: curve.name, y: value(drawn.at(-1)![1]), ink: palette.idealText });
    }
  });
  drawCurve(panel, timeS, rmsHalfCycle, time, value, palette.wave, 2.2);
  names.push({ text: 'as measured', y: value(rmsHalfCycle.at(-1) ?? low), ink: palette.wave });
  nameLines(panel, names, plot, margin.right);
}

/** The levels of the curve that stays nearest to nominal, so that one curve at least is in the picture. */
function nearestLevels(
  curves: readonly (readonly CurveLine[])[],
  nominalV: number | null,
): readonly number[] {
  if (nominalV === null) return [];
  const near = curves.map((lines) =>
    lines
      .flatMap((corners) => corners.map(([, volts]) => volts))
      .filter((v) => Math.abs(v / nominalV - 1) <= farthestLimitRatio),
  );
  const reach = (levels: readonly number[]): number => Math.max(...levels.map((v) => Math.abs(v - nominalV)));
  return near.filter((levels) => levels.length > 0).sort((a, b) => reach(a) - reach(b))[0] ?? [];
}

/** What is measured and the levels given with air around them, nominal with a little either side. */
function valueRange(
  low: number,
  high: number,
  nominalV: number | null,
  levels: readonly number[],
): [number, number] {
  const middle = nominalV ?? (low + high) / 2;
  const least = leastReachRatio * Math.abs(middle);
  const [bottom, top] = [Math.min(low, middle - least, ...levels), Math.max(high, middle + least, ...levels)];
  const air = 0.05 * (top - bottom);
  return [bottom >= 0 ? Math.max(0, bottom - air) : bottom - air, top + air];
}

/** A line as far as it lies in the range; null where it lies outside for all of its way. */
function insideRange(corners: CurveLine, [low, high]: readonly [number, number]): CurveLine | null {
  const inside = corners.filter(([, volts]) => volts >= low && volts <= high);
  return inside.length < 2 ? null : inside;
}

function pathOf(
  corners: CurveLine,
  time: ScaleLinear<number, number>,
  value: ScaleLinear<number, number>,
): string {
  const [, right] = time.domain() as [number, number];
  const path = line<readonly [number, number]>(
    ([t]) => time(Math.min(t, right)),
    ([, v]) => value(v),
  ).digits(1);
  return path(corners.map((corner) => [...corner] as [number, number])) ?? '';
}

/** Corners of a line, in seconds on the file's axis and volts. */
type CurveLine = readonly (readonly [timeS: number, volts: number])[];

/**
 * A published curve as lines in the picture of a step: its upper and lower limits, each a line a stretch.
 *
 * @param endS - of the picture, on the file's axis.
 */
function curveLines(
  curve: DynamicCurve,
  step: PicturedStep,
  endS: number,
  nominalV: number,
): readonly CurveLine[] {
  const atS = step.atS.value;
  const about = { nominal: nominalV, before: step.before.value, after: step.after.value }[curve.about];
  return [curve.upper, curve.lower].flatMap((points) =>
    curveOutline(points, Math.max(endS - atS, 1e-6)).map((corners) =>
      corners.map(([afterS, percent]) => [atS + afterS, about + (percent / 100) * nominalV] as const),
    ),
  );
}

/** A curve's name short enough to stand beside its line: the standard, and the class where there are several. */
export function curveName({ standard, name }: DynamicCurve): string {
  const grade = /\b(?:G\d|curve \d)\b/.exec(name)?.[0];
  return grade === undefined ? standard : `${standard} ${grade}`;
}
