import type { EventResult } from '../assay/stepsDocument.ts';
import type { Figure, MeasuredFigure } from '../base/figure.ts';
import { decimalText, significantText, withUnit } from './numbers.ts';
import {
  boundText,
  figureParts,
  figureText,
  inMilliseconds,
  isShort,
  secondsFigureText,
  secondsText,
} from './quantities.ts';
import { capitalised } from './text.ts';

/** An event of the supply in words: what was seen, never why. */
interface EventWords {
  /** A clause to lead with or to stand in a table, without a stop: "output lost 0.14 s after 1500 W came on". */
  readonly phrase: string;
  /** The same with its doubts where it has any: "output away for 14.2 ms, give or take 0.3". */
  readonly clause: string;
  /** When, and all that is known of it, as a sentence with its uncertainties. */
  readonly sentence: string;
}

/** Puts an event into words. */
export function eventWords(event: EventResult): EventWords {
  const under = heldPhrase(event);
  const held = heldClause(event);
  switch (event.kind) {
    case 'cut-off': {
      // What was held since the record began tells no moment of its own.
      const isSince = event.heldS !== undefined && event.heldAtLeast !== true;
      return plain(
        isSince ? `output lost ${under}` : `output lost at ${moment(event.startS)}${held}`,
        `Output lost at ${secondsFigureText(event.startS)}${held}.`,
      );
    }
    case 'hiccup': {
      const every = event.periodS.value === null ? '' : `, every ${secondsText(event.periodS.value, 2)}`;
      // How long the load was held is told of the first loss: the others follow each other.
      const first = under === '' ? '' : event.heldS === undefined ? held : `, the first ${under}`;
      const on = event.onS.value === null ? '' : `, on for ${secondsFigureText(event.onS)} each time`;
      return plain(
        `voltage never settles: ${event.count} losses${every}${first}`,
        `Voltage lost ${event.count} times from ${secondsFigureText(event.startS)} on, every ${secondsFigureText(event.periodS)}${on}${first}.`,
      );
    }
    case 'failed start': {
      const forS = secondsText(event.endS.value - event.startS.value, 2);
      return plain(
        `output does not start: on for ${forS} and gone again${held}`,
        `Voltage starts at ${secondsFigureText(event.startS)} and is gone again at ${secondsFigureText(event.endS)}; highest peak ${figureText(event.returnPeakV, 'V')}${held}.`,
      );
    }
    case 'brown-out': {
      const least = event.endS.value === null ? 'at least ' : '';
      const forS = `${least}${secondsText(event.durationS.value, 2)}`;
      return plain(
        `brown-out: voltage fell from ${volts(event.beforeV)} to ${volts(event.lowestV)} for ${forS}${held}`,
        `Brown-out at ${secondsFigureText(event.startS)}: from ${figureText(event.beforeV, 'V')} down to ${figureText(event.lowestV, 'V')}, for ${least}${secondsFigureText(event.durationS)}${held}.`,
      );
    }
    case 'transfer':
    case 'outage': {
      const { durationS, phaseJumpDeg } = event;
      const jump = phaseClause(phaseJumpDeg);
      return {
        phrase: `output away for ${secondsText(durationS.value)}${held}`,
        clause: `output away for ${awayText(durationS)}${held}${jump}`,
        sentence: `${capitalised(event.kind)} at ${secondsFigureText(event.startS)}: no voltage for ${secondsFigureText(durationS)}${jump}${held}.`,
      };
    }
    case 'start-up':
      return plain(
        `output starts at ${moment(event.startS)}`,
        `Voltage starts at ${secondsFigureText(event.startS)}, first peak ${figureText(event.returnPeakV, 'V')}.`,
      );
    case 'idle bursts': {
      const each = event.burstS.value === null ? '' : ` of ${secondsText(event.burstS.value, 2)}`;
      const every = event.intervalS.value === null ? '' : `, every ${secondsText(event.intervalS.value, 2)}`;
      return plain(
        `output only in bursts: ${event.bursts}${each}${every}`,
        `Idle bursts from ${secondsFigureText(event.startS)}: ${event.bursts} of ${secondsFigureText(event.burstS)}, every ${secondsFigureText(event.intervalS)}.`,
      );
    }
    case 'inrush': {
      const least = event.clipped ? 'at least ' : '';
      const peak =
        event.peakA.value === null
          ? 'with an inrush of current'
          : `with an inrush of ${least}${withUnit(significantText(event.peakA.value, 3), 'A')}`;
      return plain(
        `load on at ${moment(event.atS)} ${peak}`,
        `Inrush at ${secondsFigureText(event.atS)}: peak ${least}${figureText(event.peakA, 'A')}.`,
      );
    }
  }
}

/** How long, with its doubt where three digits don't carry it. */
function awayText(durationS: MeasuredFigure): string {
  if (durationS.uncertainty < 0.01 * durationS.value) return secondsText(durationS.value);
  const given = isShort(durationS) ? givenText(inMilliseconds(durationS), 'ms') : givenText(durationS, 's');
  return given ?? secondsText(durationS.value);
}

function plain(phrase: string, sentence: string): EventWords {
  return { phrase, clause: phrase, sentence };
}

/** Under which load, and for how long, before the event: "0.14 s after 1500 W came on"; empty where unknown. */
function heldPhrase(event: EventResult): string {
  const { loadW, heldS, heldAtLeast = false, isAfterLess = false } = event;
  if (heldS === undefined) return loadW === undefined ? '' : atLoad(loadW);
  const held = secondsText(heldS.value, 2);
  // How long the record shows of a load that nobody knows tells nothing.
  if (heldAtLeast) return loadW === undefined ? '' : `after at least ${held} ${atLoad(loadW)}`;
  const isOff = loadW === undefined ? isAfterLess : isNothing(loadW);
  if (isOff) return `${held} after the load went off`;
  if (isAfterLess) return `${held} after the load went down to ${wattsText(loadW!)}`;
  const load = loadW === undefined ? 'the load' : wattsText(loadW);
  // What can't be told from nothing is no time to name.
  return heldS.value <= heldS.uncertainty ? `as ${load} came on` : `${held} after ${load} came on`;
}

/** The same behind what has told something else. */
function heldClause(event: EventResult): string {
  const held = heldPhrase(event);
  return held === '' ? '' : `, ${held}`;
}

function atLoad(loadW: number): string {
  return isNothing(loadW) ? 'at no load' : `at ${wattsText(loadW)}`;
}

/** What no meter would call a load. */
function isNothing(loadW: number): boolean {
  return Math.abs(loadW) < 0.5;
}

function wattsText(loadW: number): string {
  return withUnit(significantText(loadW, 3), 'W');
}

function volts(figure: MeasuredFigure): string {
  return withUnit(significantText(figure.value, 3), 'V');
}

/** A moment as people say it: two figures behind a second, or of it. */
function moment({ value }: MeasuredFigure): string {
  return Math.abs(value) < 1 ? secondsText(value, 2) : withUnit(decimalText(value, 2), 's');
}

/** How the wave after a break stands to the one before, carried on. */
function phaseClause(jump: Figure): string {
  if (jump.value === null) return '';
  if (Math.abs(jump.value) <= Math.max(jump.uncertainty, 1)) return ', and came back in step';
  return `, and came back ${decimalText(Math.abs(jump.value), 0)}° ${jump.value > 0 ? 'ahead' : 'behind'}`;
}

/**
 * A figure as people say it: "8.4 %, give or take 0.6"; "not above 0.43 %" below what can be resolved.
 *
 * @param unit - as printed; empty for a ratio.
 * @returns null where it could not be measured.
 */
export function givenText(figure: Figure, unit: string): string | null {
  if (figure.value === null) return null;
  if (figure.notAbove !== undefined) return `not above ${withUnit(boundText(figure.notAbove), unit)}`;
  const { value, uncertainty } = figureParts(figure);
  const said = withUnit(value, unit);
  return uncertainty === null ? said : `${said}, give or take ${uncertainty}`;
}
