import { errorOf } from '../../entry/measuring.ts';
import type { FromWorker, Requests, ToWorker } from '../worker/requests.ts';

interface AskOptions {
  /** Before what was asked earlier and waits. Default false. */
  readonly first?: boolean;
  /** Told how much of the file has been read, 0 to 1. */
  readonly tell?: (share: number) => void;
  /** Ends the work where it can be ended. */
  readonly signal?: AbortSignal;
}

/**
 * Asks the worker for something.
 *
 * @returns null where the work was ended by the signal.
 * @throws MeasureError as the request says.
 */
export type Ask = <Name extends keyof Requests>(
  name: Name,
  given: Requests[Name]['given'],
  options?: AskOptions,
) => Promise<Requests[Name]['answer'] | null>;

interface Waiting {
  readonly done: (answer: unknown) => void;
  readonly fail: (problem: unknown) => void;
  readonly tell: ((share: number) => void) | undefined;
}

/**
 * Starts the worker from the page's own script, so that the page stays one file.
 *
 * @param script - its text; in a worker it serves.
 * @param onDefect - told of an error that is a fault of ours.
 */
export function workerClient(script: string, onDefect: (message: string) => void): Ask {
  const address = URL.createObjectURL(new Blob([script], { type: 'text/javascript' }));
  const worker = new Worker(address);
  const waiting = new Map<number, Waiting>();
  let calls = 0;
  worker.addEventListener('message', ({ data }: MessageEvent<FromWorker>) => {
    const one = waiting.get(data.call);
    if (one === undefined) return;
    if ('share' in data) {
      one.tell?.(data.share);
      return;
    }
    waiting.delete(data.call);
    if ('answer' in data) one.done(data.answer);
    else if ('cancelled' in data) one.done(null);
    else if ('defect' in data) one.fail(new Error(data.defect));
    else one.fail(errorOf(data.failed));
  });
  worker.addEventListener('error', (event) => {
    onDefect(event.message);
    for (const { fail } of waiting.values()) fail(new Error(event.message));
    waiting.clear();
  });
  const post = (message: ToWorker): void => worker.postMessage(message);
  return (name, given, { first = false, tell, signal } = {}) =>
    new Promise((done, fail) => {
      const call = ++calls;
      // The answer is of the kind that the request's name says.
      waiting.set(call, { done: done as Waiting['done'], fail, tell });
      const cancel = (): void => {
        if (waiting.has(call)) post({ call, cancel: true });
      };
      signal?.addEventListener('abort', cancel, { once: true });
      post({ call, ask: name, given, first });
    });
}
