import { scaleLinear } from 'd3';
import type { Dynamics } from '../../verdict/assay.ts';
import { secondsText } from '../numbers/secondsText.ts';
import { drawCurve } from '../panels/drawCurve.ts';
import { extentOf } from '../panels/extentOf.ts';
import type { Inks } from '../paper/darkPalette.ts';
import type { Box } from '../paper/page.ts';
import { type Panel, writeText } from '../paper/writeText.ts';
import { eventTimes } from '../step/eventTimes.ts';
import { instantSpan } from '../step/instantSpan.ts';
import type { StepSubject } from '../step/stepSubject.ts';

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
