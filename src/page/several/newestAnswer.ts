import { MeasureError } from '../../entry/measuring.ts';
import type { Ask } from '../desk/workerClient.ts';
import type { Requests } from '../worker/requests.ts';

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
