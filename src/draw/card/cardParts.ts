import { type ScaleLinear, scaleLinear } from 'd3';
import type { Dynamics, Trace } from '../../assay/assay.ts';
import { withUnit } from '../../words/numbers.ts';
import { boundText, figureParts, secondsText } from '../../words/quantities.ts';
import { drawCurve, extentOf, spanOf } from '../panels/drawCurve.ts';
import type { Box } from '../paper/page.ts';
import type { Inks } from '../paper/palette.ts';
import { cutText, type Panel, textWidth, writeText } from '../paper/writeText.ts';
import { eventTimes, instantSpan, type StepSubject } from '../step/stepPicture.ts';
import type { CardFigure } from './storyFigures.ts';

/** Room above the curve for its name, and below it for the times. */
const namesHeight = 44;
const timesHeight = 34;

/** Over in an instant: the voltage itself shows it; of anything else its RMS along the record tells more. */
const instants: readonly string[] = ['cut-off', 'transfer', 'outage', 'failed start', 'start-up', 'inrush'];

/**
 * What happened, without an axis of values: the voltage itself around an instant, else its RMS along the record from
 * nothing up, with a pale band over what the message tells of.
 *
 * @param periodS - of one cycle, > 0.
 */
export function drawCardChange(
  panel: Panel,
  dynamics: Dynamics,
  subject: NonNullable<StepSubject>,
  periodS: number,
  inks: Inks,
  box: Box,
): void {
  const isInstant = subject.kind === 'event' && instants.includes(subject.event.kind);
  const curve = (isInstant ? instantOf(dynamics, subject, periodS) : null) ?? {
    ...{ timeS: dynamics.timeS, values: dynamics.rmsHalfCycle },
    name: 'RMS of each cycle along the record, from 0 V up',
  };
  const [fromS, toS] = extentOf(curve.timeS);
  const [low, high] = extentOf(curve.values, Float64Array.of(0));
  const time = scaleLinear([fromS, toS > fromS ? toS : fromS + 1], [box.x, box.x + box.width]);
  const value = scaleLinear(
    [low, high > low ? high : low + 1],
    [box.y + box.height - timesHeight - 6, box.y + namesHeight + 6],
  );
  const { startS, endS } =
    subject.kind === 'step' ? { startS: subject.step.atS.value, endS: null } : eventTimes(subject.event);
  const bandFrom = time(Math.max(startS, fromS));
  const bandTo = time(Math.min(endS ?? (isInstant ? toS : startS), toS));
  panel
    .append('rect')
    .attr('x', bandFrom.toFixed(1))
    .attr('y', box.y + namesHeight)
    .attr('width', Math.max(3, bandTo - bandFrom).toFixed(1))
    .attr('height', box.height - namesHeight - timesHeight)
    .attr('fill', inks.ideal)
    .attr('fill-opacity', 0.35);
  panel
    .append('path')
    .attr('d', `M${box.x} ${value(0).toFixed(1)}h${box.width.toFixed(1)}`)
    .attr('stroke', inks.line)
    .attr('stroke-width', 2);
  drawCurve(panel, curve.timeS, curve.values, time, value, inks.wave, 4);
  writeText(panel, curve.name, box.x, box.y + 18, { sizePx: 26, weight: 600, ink: inks.wave });
  const style = { sizePx: 24, ink: inks.soft } as const;
  const base = box.y + box.height;
  writeText(panel, secondsText(fromS), box.x, base, style);
  writeText(panel, secondsText(toS), box.x + box.width, base, { ...style, anchor: 'end' });
}

interface Curve {
  readonly timeS: Float64Array;
  readonly values: Float64Array;
  readonly name: string;
}

/** The voltage around the instant; null where it was not kept. */
function instantOf({ instantaneous }: Dynamics, subject: StepSubject, periodS: number): Curve | null {
  const span = instantSpan(subject, periodS);
  if (instantaneous === null || span === null) return null;
  const { timeS, volts } = instantaneous;
  const first = timeS.findIndex((t) => t >= span.fromS);
  const beyond = timeS.findIndex((t) => t > span.toS);
  const last = beyond < 0 ? timeS.length : beyond;
  if (first < 0 || last - first < 2) return null;
  const values = volts.subarray(first, last);
  return { timeS: timeS.subarray(first, last), values, name: 'the voltage as captured' };
}

/** One number in very large type, its uncertainty beside it, its name below. */
export function drawCardFigure(
  panel: Panel,
  { name, figure, unit }: CardFigure,
  inks: Inks,
  { x, y, width }: Box,
): void {
  const baseline = y + 76;
  const soft = { ink: inks.soft };
  writeText(panel, cutText(name, width, 28), x, baseline + 38, { ...soft, sizePx: 28 });
  if (figure.value === null) {
    writeText(panel, 'not measurable', x, baseline, { ...soft, sizePx: 44 });
    return;
  }
  if (figure.notAbove !== undefined) {
    const value = withUnit(boundText(figure.notAbove), unit);
    const lead = 'under';
    writeText(panel, lead, x, baseline, { ...soft, sizePx: 36 });
    const after = x + textWidth(lead, 36) + 14;
    writeText(panel, value, after, baseline, { ink: inks.ink, sizePx: 84, weight: 600 });
    return;
  }
  const parts = figureParts(figure);
  const doubt = parts.uncertainty === null ? '' : `± ${parts.uncertainty}`;
  const value = withUnit(parts.value, unit);
  const room = width - textWidth(doubt, 34) - 16;
  // A number is never cut: what is left would be another number.
  const sizePx = [84, 72, 60, 48, 36].find((size) => textWidth(value, size, 600) <= room) ?? 28;
  writeText(panel, value, x, baseline, { ink: inks.ink, sizePx, weight: 600 });
  writeText(panel, doubt, x + textWidth(value, sizePx, 600) + 16, baseline, { ...soft, sizePx: 34 });
}

/**
 * The wave over its ideal, without axes: a card shows a shape. Where nothing repeats, the record alone.
 *
 * @param frequencyHz - null where there is no period, and so no ideal.
 * @param stretch - which part of the record is shown, "before the loss"; "as measured" where it is steady throughout.
 */
export function drawCardWave(
  panel: Panel,
  trace: Trace,
  frequencyHz: number | null,
  stretch: string,
  inks: Inks,
  box: Box,
): void {
  const time = scaleLinear(spanOf(trace.timeS), [box.x, box.x + box.width]);
  const [low, high] = frequencyHz === null ? extentOf(trace.wave) : extentOf(trace.wave, trace.ideal);
  const value = scaleLinear([low, high], [box.y + box.height - 6, box.y + namesHeight + 6]);
  drawZero(panel, value, inks, box);
  writeText(panel, `the wave ${stretch}`, box.x, box.y + 18, { sizePx: 26, weight: 600, ink: inks.wave });
  if (frequencyHz !== null) {
    drawCurve(panel, trace.timeS, trace.ideal, time, value, inks.ideal, 12);
    const style = { sizePx: 26, weight: 600, ink: inks.idealText, anchor: 'end' } as const;
    writeText(panel, 'a sine of the same RMS', box.x + box.width, box.y + 18, style);
  }
  drawCurve(panel, trace.timeS, trace.wave, time, value, inks.wave, 4);
}

function drawZero(panel: Panel, value: ScaleLinear<number, number>, inks: Inks, { x, width }: Box): void {
  const [low, high] = value.domain() as [number, number];
  if (low > 0 || high < 0) return;
  panel
    .append('path')
    .attr('d', `M${x} ${value(0).toFixed(1)}h${width.toFixed(1)}`)
    .attr('stroke', inks.line)
    .attr('stroke-width', 2);
}
