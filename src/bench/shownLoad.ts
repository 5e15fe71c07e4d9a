import { loadInFileName } from '../assay/loadSeen.ts';
import type { AssayResult } from '../assay/measureDocument.ts';
import type { EventResult } from '../assay/stepsDocument.ts';
import type { Figure, MeasuredFigure } from '../base/figure.ts';
import { lacking } from './reasons.ts';

/** What one capture shows of a load: for how long it was held, at which voltage, and how that ended. */
export interface ShownLoad {
  readonly file: string;
  readonly sha256: string;
  readonly note?: string;
  readonly loadW: Figure;
  readonly loadFrom: LoadSource;
  readonly heldS: Figure;
  /** True where the load was on when the record began, or still held when it ended: it was held longer. */
  readonly heldAtLeast: boolean;
  /** Null: held to the record's end. */
  readonly loss: Loss | null;
  /** Under the load. */
  readonly rmsV: Figure;
  /** True where the capture's figures are of the stretch under that load: an onset or a loss leaves others too. */
  readonly isFigured: boolean;
}

/** Where a load is known from. */
export type LoadSource = 'told' | 'measured' | 'file name' | 'unknown';

/** The voltage going under a load. */
interface Loss {
  /** A transfer is a break of up to 200 ms: whether a fault or a change of source, one record can't tell. */
  readonly kind: 'cut-off' | 'outage' | 'transfer' | 'brown-out' | 'hiccup' | 'failed start';
  readonly atS: MeasuredFigure;
  /** What was seen, never why: `output lost`. */
  readonly words: string;
}

/** What is known of a capture's load besides its current. */
interface ToldOfLoad {
  /** Null: not told. */
  readonly loadW: number | null;
  readonly note?: string;
}

/**
 * What a capture shows of its load.
 *
 * @param told - the load as told; where a current was captured, that which the event or the stretch carries counts.
 * @returns one load a capture: that which was lost first, else the one that came on last.
 */
export function shownLoad(result: AssayResult, told: ToldOfLoad): ShownLoad {
  const { file, sha256, events } = result;
  const lost = firstLoss(events);
  const span = loadedSpan(result, lost);
  const known = {
    ...{ file, sha256 },
    ...(told.note === undefined ? {} : { note: told.note }),
    ...(lost !== null && lost.event.loadW === undefined && lost.event.isAfterLess === true
      ? { loadW: WENT_OFF, loadFrom: 'unknown' as const }
      : loadUnder(result, told, { span, atEventW: lost?.event.loadW })),
    rmsV: span.rmsV,
    isFigured: span.isFigured,
  };
  if (lost === null) {
    return {
      ...known,
      heldS: { value: span.toS - span.fromS, uncertainty: 0 },
      heldAtLeast: true,
      loss: null,
    };
  }
  const { event, ...loss } = lost;
  const seen = { value: loss.atS.value - span.fromS, uncertainty: loss.atS.uncertainty };
  return {
    ...known,
    heldS: event.heldS ?? seen,
    heldAtLeast: event.heldS === undefined ? !span.isOnsetSeen : event.heldAtLeast === true,
    loss,
  };
}

/** The load that a capture's figures are of: measured, else told, else read from the file's name. */
function loadOf(
  { power, loadSeen }: Pick<AssayResult, 'power' | 'loadSeen'>,
  { loadW }: ToldOfLoad,
): Pick<ShownLoad, 'loadW' | 'loadFrom'> {
  const seenW = loadSeen?.watts ?? null;
  if (
    loadSeen?.from === 'measured' &&
    seenW !== null &&
    power !== undefined &&
    power.activeW.value !== null
  ) {
    // A clamp turned round gives the same load with its sign changed.
    const { value, uncertainty } = power.activeW;
    return { loadW: { value: seenW === 0 ? 0 : Math.abs(value), uncertainty }, loadFrom: 'measured' };
  }
  if (loadW !== null) return { loadW: { value: loadW, uncertainty: 0 }, loadFrom: 'told' };
  if (loadSeen?.from === 'file name' && seenW !== null)
    return { loadW: { value: seenW, uncertainty: 0 }, loadFrom: 'file name' };
  const isUnmeasured = power !== undefined && power.activeW.value === null;
  return { loadW: isUnmeasured ? power.activeW : NO_LOAD, loadFrom: 'unknown' };
}

const NO_LOAD = lacking({ code: 'load.untold' });

const WENT_OFF = lacking({ code: 'load.wentOff' });

function isOfLoad(
  { voltage }: Pick<AssayResult, 'voltage'>,
  { fromS, toS }: Pick<LoadedSpan, 'fromS' | 'toS'>,
): boolean {
  if (voltage === undefined) return false;
  const [from, to] = voltage.spanS;
  const middleS = (from + to) / 2;
  return middleS >= fromS && middleS <= toS;
}

/** A steady stretch that ends well before the loss ended at an onset that nothing else tells of. */
function reaches({ voltage }: Pick<AssayResult, 'voltage'>, lossS: number): boolean {
  if (voltage === undefined || voltage.frequencyHz.value === null) return false;
  return voltage.spanS[1] >= lossS - NEAR_CYCLES / voltage.frequencyHz.value;
}

/** That a steady stretch keeps away from what it ends at. */
const NEAR_CYCLES = 4;

/**
 * Doubt of a load where none is known better: heaters take a little more or less than their plate says, and scope
 * and probes have some per cent each. Common practice, no source.
 */
const LOAD_DOUBT = 0.05;

/** Whether a load surely lies above a rating: by more than its own doubt, and by more than loads are good for. */
export function isAbove(loadW: Figure, ratedW: number): boolean {
  if (loadW.value === null) return false;
  return loadW.value - Math.max(loadW.uncertainty, LOAD_DOUBT * ratedW) > ratedW;
}

/** "0.14 s", "53 ms". @param seconds - ≥ 0. */
export function briefSeconds(seconds: number): string {
  if (seconds < 0.1) return `${Number((1000 * seconds).toPrecision(2))} ms`;
  return `${Number(seconds.toPrecision(seconds < 10 ? 2 : 3))} s`;
}

/** The event tells the load that it ended; the figures theirs, where they are of the loaded stretch. */
function loadUnder(
  { power, ...result }: AssayResult,
  told: ToldOfLoad,
  { span, atEventW }: { readonly span: LoadedSpan; readonly atEventW: number | undefined },
): Pick<ShownLoad, 'loadW' | 'loadFrom'> {
  if (atEventW === undefined) {
    const ofStretch = loadOf(span.isFigured && power !== undefined ? { ...result, power } : result, told);
    // The stretch without the load has no load of the file's name, but the stretch with it has.
    const named = ofStretch.loadFrom === 'unknown' ? loadInFileName(lastPart(result.file))?.watts : undefined;
    return named === undefined || named === null
      ? ofStretch
      : { loadW: { value: named, uncertainty: 0 }, loadFrom: 'file name' };
  }
  const value = Math.abs(atEventW);
  // Without a current it is the one that words told.
  const words = { power, ...result }.power === undefined ? loadOf(result, told) : null;
  if (words !== null && words.loadW.value === value) return words;
  return { loadW: { value, uncertainty: LOAD_DOUBT * value }, loadFrom: 'measured' };
}

function lastPart(path: string): string {
  return path.split(/[\\/]/).at(-1) ?? path;
}

type LossEvent = Extract<EventResult, { readonly kind: Loss['kind'] }>;

function firstLoss(events: readonly EventResult[]): SeenLoss | null {
  return events.map(lossOf).find((one) => one !== null) ?? null;
}

function lossOf(event: EventResult): SeenLoss | null {
  switch (event.kind) {
    case 'cut-off':
      return { kind: event.kind, atS: event.startS, words: 'output lost', event };
    case 'outage':
    case 'transfer': {
      const words = `output lost for ${briefSeconds(event.durationS.value)}`;
      return { kind: event.kind, atS: event.startS, words, event };
    }
    case 'brown-out': {
      const words = `voltage down to ${event.lowestV.value.toFixed(0)} V`;
      return { kind: event.kind, atS: event.startS, words, event };
    }
    case 'hiccup': {
      const words = `output lost ${event.count} times`;
      return { kind: event.kind, atS: event.startS, words, event };
    }
    case 'failed start': {
      const words = 'output started and was lost again';
      return { kind: event.kind, atS: event.endS, words, event };
    }
    default:
      return null;
  }
}

/** When a capture shows its load, s on the file's own axis. */
interface LoadedSpan {
  readonly fromS: number;
  readonly toS: number;
  /** False: the load was on when the record began. */
  readonly isOnsetSeen: boolean;
  readonly isFigured: boolean;
  readonly rmsV: Figure;
}

type SeenLoss = Loss & { readonly event: LossEvent };

/** From when the load came on to when it went, the voltage went or the record ended. */
function loadedSpan(result: AssayResult, lost: SeenLoss | null): LoadedSpan {
  const { capture, steps, events, voltage } = result;
  const endS = lost?.atS.value ?? capture.startS + capture.durationS;
  const measured = voltage?.rmsV ?? lacking({ code: 'capture.noVoltage' });
  const measuredIn = (span: Omit<LoadedSpan, 'rmsV' | 'isFigured'>): LoadedSpan => {
    const isFigured = isOfLoad(result, span) && (lost === null || reaches(result, lost.atS.value));
    return { ...span, isFigured, rmsV: isFigured ? measured : NO_VOLTAGE };
  };
  const held = lost?.event.heldS;
  if (lost !== null && held !== undefined)
    return measuredIn({
      ...{ fromS: endS - held.value, toS: endS },
      isOnsetSeen: lost.event.heldAtLeast !== true,
    });
  const before = steps.filter(({ atS }) => atS.value <= endS);
  const last = before.at(-1);
  const start = events.find((event) => event.kind === 'start-up' || event.kind === 'failed start');
  const recordS = start?.startS.value ?? capture.startS;
  if (last === undefined) {
    // Nothing but the current's peak may tell when the load came on.
    const inrush = events.find((event) => event.kind === 'inrush');
    const onsetS = inrush?.atS.value ?? start?.startS.value;
    return measuredIn({ fromS: onsetS ?? recordS, toS: endS, isOnsetSeen: onsetS !== undefined });
  }
  // Where the load went off, it is the stretch before that which was under load.
  const isOff = last.direction === 'off' && lost === null;
  const on = before.slice(0, isOff ? -1 : undefined).findLast(({ direction }) => direction === 'on');
  const span = { fromS: on?.atS.value ?? recordS, toS: isOff ? last.atS.value : endS };
  return {
    ...span,
    isOnsetSeen: on !== undefined || start !== undefined,
    isFigured: isOfLoad(result, span),
    rmsV: isOff ? last.beforeV : last.afterV,
  };
}

const NO_VOLTAGE = lacking({ code: 'load.tooShort' });
