import type { MeasureError } from '../base/measureError.ts';
import type { LoadKind } from '../judge/loadKind.ts';
import type { MeasuredLoad } from '../measure/power/measureLoad.ts';
import type { PowerFigures } from '../measure/power/powerFigures.ts';
import type { WaveFigures } from '../measure/waveFigures.ts';
import type { Capture, Channel } from '../read/capture.ts';
import { asCurrent } from '../read/joinCurrent.ts';
import { channelNamed } from '../read/selectChannel.ts';
import { assayError } from './assayErrors.ts';
import { currentFigures, withoutBudget } from './channelFigures.ts';
import type { CurrentFigures, PowerDocument } from './measureDocument.ts';
import type { AssayNotice } from './notices.ts';

/** What a current channel adds to a result. */
interface CurrentAndPower {
  readonly current?: CurrentFigures;
  readonly power?: PowerDocument;
  readonly loadKind?: LoadKind;
  readonly notices: readonly AssayNotice[];
}

/**
 * The current of a load, the power that it takes, and what kind of load it is.
 *
 * @param kind - as judged; null where the current has no wave of its own.
 */
export function currentAndPower(
  { channel, power, wave }: MeasuredLoad,
  voltage: WaveFigures,
  kind: LoadKind | null,
): CurrentAndPower {
  const document = powerDocument(channel.name, power);
  if (wave === null || kind === null) {
    const doubt = { code: 'current.noPeriod', channel: channel.name } as const;
    return { power: document, notices: [...power.notices, doubt] };
  }
  return {
    current: currentFigures(channel.name, wave.figures),
    power: document,
    loadKind: kind,
    notices: [...power.notices, ...ownDoubts(channel, wave.figures.notices, voltage.notices)],
  };
}

/** Doubts about the current's own wave, named as such; what the voltage has too is said once. */
function ownDoubts(
  { name }: Channel,
  doubts: readonly AssayNotice[],
  ofVoltage: readonly AssayNotice[],
): readonly AssayNotice[] {
  const said = new Set(ofVoltage.map(({ code }) => code));
  return doubts.filter(({ code }) => !said.has(code)).map((doubt) => ({ ...doubt, of: [name] }));
}

function powerDocument(channel: string, { notices: _, ...power }: PowerFigures): PowerDocument {
  const bare = Object.entries(power).map(([key, value]: [string, unknown]) => [
    key,
    typeof value === 'object' && value !== null && 'uncertainty' in value
      ? withoutBudget(value as PowerFigures['activeW'])
      : value,
  ]);
  return { channel, ...(Object.fromEntries(bare) as Omit<PowerFigures, 'notices'>) };
}

interface CurrentChoice {
  /** Name of the channel; absent: the one that goes with the voltage. */
  readonly current?: string;
  /** Scales that the person gave: a clamp's volts become amperes by one. */
  readonly scales?: readonly { readonly channel: string | null }[];
}

/**
 * The current channel that goes with a voltage: the one named; else, where there are as many currents as
 * voltages, the one of the same rank; else the first.
 *
 * @returns channel null where the capture has no current and none was named.
 * @throws MeasureError `channel.unknown`, `channel.unmeasurable`; `channel.same` where the voltage itself is named.
 */
export function currentOf(
  capture: Capture,
  voltage: Channel,
  { current, scales = [] }: CurrentChoice,
): { readonly channel: Channel | null; readonly notices: readonly AssayNotice[] } {
  if (current !== undefined) {
    const named = channelNamed(capture, current);
    if ([voltage, ...(voltage.differenceOf ?? [])].some(({ name }) => name === named.name))
      throw sameChannel(named.name, capture);
    return asCurrent(
      named,
      scales.some(({ channel }) => channel === named.name),
    );
  }
  const of = (quantity: Channel['quantity']): readonly Channel[] =>
    capture.channels.filter((channel) => channel.quantity === quantity);
  const [voltages, currents] = [of('voltage'), of('current')];
  const rank = voltages.findIndex(({ name }) => name === voltage.name);
  const isPaired = currents.length === voltages.length;
  const channel = (isPaired ? currents[rank] : currents[0]) ?? currents[0] ?? null;
  const left = currents.filter((one) => one !== channel).map(({ name }) => name);
  return {
    channel,
    notices:
      channel === null || left.length === 0 || isPaired
        ? []
        : [{ code: 'channels.currents', channel: channel.name, left }],
  };
}

function sameChannel(name: string, { channels }: Capture): MeasureError {
  const others = channels.map((channel) => channel.name).filter((other) => other !== name);
  return assayError('channel.same', { channel: name, others });
}

/** How much later the current shows an event than the voltage, s; undefined where neither delay was told. */
export function skewOf(
  voltage: string,
  current: string,
  skews: readonly { readonly channel: string; readonly seconds: number }[],
): number | undefined {
  const told = skews.filter(({ channel }) => channel === voltage || channel === current);
  if (told.length === 0) return undefined;
  return told.reduce((sum, { channel, seconds }) => sum + (channel === current ? seconds : -seconds), 0);
}
