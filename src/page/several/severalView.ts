import { MeasureError } from '../../entry/measuring.ts';
import type { Entry } from '../desk/sitting.ts';
import type { Ask } from '../desk/workerClient.ts';
import type { Requests } from '../worker/requests.ts';

export interface SeveralActions {
  readonly ask: Ask;
  readonly turns: DrawingTurns;
  /** Does something that may fail, and says what came of it. */
  readonly tried: (work: () => Promise<string> | string) => Promise<void>;
  /** Told of an error that is a fault of ours. */
  readonly onDefect: (problem: unknown) => void;
}

export interface SeveralView {
  /**
   * @param entries - captures that were measured.
   * @param looked - the one that is looked at.
   */
  readonly follow: (entries: readonly Entry[], looked: number | null) => void;
}

/** Draws one picture at a time, so that the page answers in between. */
export interface DrawingTurns {
  /** Draws when its turn comes, unless another picture is wanted at the same place by then. */
  readonly draw: (place: HTMLElement, work: () => void) => void;
  /** Nothing is wanted at a place any more. */
  readonly drop: (place: HTMLElement) => void;
  /** While held nothing is drawn. */
  readonly hold: (held: boolean) => void;
}

/** Opens the queue of pictures. */
export function drawingTurns(): DrawingTurns {
  const wanted = new Map<HTMLElement, () => void>();
  let isHeld = false;
  let isAsked = false;
  const next = (): void => {
    if (isAsked || isHeld || wanted.size === 0) return;
    isAsked = true;
    // After the frame that is due: what was typed or chosen shows before a picture is drawn.
    requestAnimationFrame(() => setTimeout(turn));
  };
  const turn = (): void => {
    isAsked = false;
    const [first] = wanted;
    if (isHeld || first === undefined) return;
    const [place, work] = first;
    wanted.delete(place);
    try {
      work();
    } finally {
      next();
    }
  };
  return {
    draw: (place, work) => {
      wanted.set(place, work);
      next();
    },
    drop: (place) => wanted.delete(place),
    hold: (held) => {
      isHeld = held;
      next();
    },
  };
}

/**
 * Asks anew when what is asked for has changed; of answers that come late only that to the newest question counts.
 *
 * @param show - given the answer, or why there is none.
 * @returns what asks: given the question and the results that its answer rests on; null ends it.
 */
export function newestAnswer<Name extends 'overlay' | 'sweep'>(
  ask: Ask,
  name: Name,
  show: (answer: Requests[Name]['answer'] | MeasureError) => void,
  onDefect: (problem: unknown) => void,
): (given: Requests[Name]['given'] | null, rests: readonly unknown[]) => void {
  let last: readonly unknown[] = [];
  let running = new AbortController();
  return (given, rests) => {
    const now = [JSON.stringify(given), ...rests];
    if (now.length === last.length && now.every((one, i) => one === last[i])) return;
    last = now;
    running.abort();
    running = new AbortController();
    const { signal } = running;
    if (given === null) return;
    ask(name, given, { signal }).then(
      (answer) => {
        if (answer !== null && !signal.aborted) show(answer);
      },
      (problem) => {
        if (!(problem instanceof MeasureError)) onDefect(problem);
        else if (!signal.aborted) show(problem);
      },
    );
  };
}
