import { readInstrument } from '../../figures/uncertainty/readInstrument.ts';
import { parseNominal } from '../../verdict/nominal/parseNominal.ts';
import type { CaptureOptions } from './benchPlan.ts';
import { optionalText, parsed, text } from './partValues.ts';
import type { PlanPart } from './planPart.ts';

/** Keys that may stand in a plan, a unit or a capture. */
export const CAPTURE_OPTION_KEYS = ['nominal', 'voltage', 'current', 'scale', 'instrument'] as const;

/** How a capture is read: what stands at this part, over what was inherited. */
export function captureOptions(part: PlanPart, inherited: CaptureOptions): CaptureOptions {
  const nominal = part.at('nominal');
  const voltage = optionalText(part.at('voltage'), 'The name of the voltage channel', 'CH1');
  const current = optionalText(part.at('current'), 'The name of the current channel', 'CH2');
  const scale = part.at('scale');
  const instrument = part.at('instrument');
  return {
    ...inherited,
    ...(nominal.isAbsent
      ? {}
      : { nominal: parsed(nominal, 'The nominal voltage', '120V/60Hz', parseNominal) }),
    ...(voltage === undefined ? {} : { voltage }),
    ...(current === undefined ? {} : { current }),
    ...(scale.isAbsent ? {} : { scales: scalesOf(scale) }),
    ...(instrument.isAbsent ? {} : { instrument: instrumentOf(instrument) }),
  };
}

/** One factor for the measured channel, or one for each channel named. */
function scalesOf(part: PlanPart): NonNullable<CaptureOptions['scales']> {
  const { data } = part;
  if (typeof data !== 'object') return [{ channel: null, factor: factorOf(part) }];
  if (Array.isArray(data))
    throw part.wrong('A scale is a factor, or one for each channel.', '200, or CH1: 200');
  return Object.keys(data ?? {}).map((channel) => ({ channel, factor: factorOf(part.at(channel)) }));
}

function factorOf(part: PlanPart): number {
  const { data } = part;
  if (typeof data !== 'number' || !Number.isFinite(data) || data === 0)
    throw part.wrong('A scale is a number other than zero.', 'the ratio of the probe, such as 200');
  return data;
}

function instrumentOf(part: PlanPart): NonNullable<CaptureOptions['instrument']> {
  if (typeof part.data !== 'object') return text(part, 'The instrument file', 'scope.yaml');
  if (Array.isArray(part.data))
    throw part.wrong('An instrument is a file or "key: number" lines.', 'gainPercent: 3');
  // Key by key, so that a complaint gets the key's own line.
  for (const [key, value] of Object.entries(part.data ?? {})) {
    const line = `${JSON.stringify(key)}: ${JSON.stringify(value)}`;
    parsed({ ...part.at(key), data: line }, 'The instrument', 'gainPercent: 3', readInstrument);
  }
  return part.data as Exclude<CaptureOptions['instrument'], string | undefined>;
}
