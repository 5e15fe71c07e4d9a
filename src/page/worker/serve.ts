import { type ErrorData, errorData, MeasureError, wordedError } from '../../entry/measuring.ts';
import { Cancelled, type HeldFiles, type Task } from './heldCaptures.ts';
import { measureHeld, overlayHeld, viewHeld } from './measureHeld.ts';
import { unreadable } from './readBlob.ts';
import type { FromWorker, Requests, ToWorker } from './requests.ts';
import { sweepHeld } from './sweepHeld.ts';

/** What the worker hears and speaks through. */
export interface Port {
  readonly postMessage: (message: FromWorker) => void;
  readonly addEventListener: (type: 'message', hear: (event: MessageEvent<ToWorker>) => void) => void;
}

type Asked = Extract<ToWorker, { readonly ask: unknown }>;

/** How often it is told how far a file is read: more would keep the page from its own work. */
const TELL_EVERY = 0.02;

/** The worker: does what the page asks, one long piece of work at a time, and hears the rest in between. */
export function serve(port: Port): void {
  const files: HeldFiles = new Map();
  const cancelled = new Set<number>();
  const waiting: Asked[] = [];
  let isBusy = false;

  const taskOf = (call: number): Task => {
    let told = 0;
    return {
      tell: (share) => {
        if (share - told < TELL_EVERY) return;
        told = share;
        port.postMessage({ call, share });
      },
      pause: async () => {
        await nextTurn();
        if (cancelled.has(call)) throw new Cancelled();
      },
    };
  };
  const answer = async (asked: Asked): Promise<void> => {
    const { call } = asked;
    try {
      if (cancelled.has(call)) throw new Cancelled();
      port.postMessage({ call, answer: await answerOf(files, asked.ask, asked.given, taskOf(call)) });
    } catch (problem) {
      port.postMessage({ call, ...told(problem) });
    } finally {
      cancelled.delete(call);
    }
  };
  const work = async (): Promise<void> => {
    if (isBusy) return;
    isBusy = true;
    try {
      for (let next = waiting.shift(); next !== undefined; next = waiting.shift()) await answer(next);
    } finally {
      isBusy = false;
    }
  };
  port.addEventListener('message', ({ data }) => {
    if ('cancel' in data) cancelled.add(data.call);
    else if (data.ask === 'measure') {
      if (data.first) waiting.unshift(data);
      else waiting.push(data);
      void work();
    } else void answer(data);
  });
}

/** What the page is told of something thrown. */
function told(problem: unknown): { cancelled: true } | { failed: ErrorData } | { defect: string } {
  if (problem instanceof Cancelled) return { cancelled: true };
  const known =
    problem instanceof DOMException
      ? unreadable()
      : problem instanceof RangeError && /allocation failed|typed array length/i.test(problem.message)
        ? tooLarge()
        : problem;
  if (known instanceof MeasureError) return { failed: errorData(known) };
  return { defect: known instanceof Error ? (known.stack ?? known.message) : String(known) };
}

function tooLarge(): MeasureError {
  return wordedError('file.tooLarge', 'The file holds more than this browser has memory for.', {
    advice: 'save a shorter part of the record, or measure it with the command line',
  });
}

/** After what has been heard meanwhile; sooner than a timer, which browsers slow down. */
function nextTurn(): Promise<void> {
  return new Promise((done) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      done();
    };
    port2.postMessage(null);
  });
}

type Answers = {
  readonly [Ask in keyof Requests]: (
    files: HeldFiles,
    given: Requests[Ask]['given'],
    task: Task,
  ) => Requests[Ask]['answer'] | Promise<Requests[Ask]['answer']>;
};

const answers: Answers = {
  open: (files, { id, name, file }) => {
    files.set(id, { name, file, read: null, measured: null, shown: null, outlet: null });
    return null;
  },
  measure: measureHeld,
  columns: viewHeld,
  overlay: overlayHeld,
  sweep: sweepHeld,
  close: (files, { id }) => {
    files.delete(id);
    return null;
  },
};

/** Answers one request. @throws MeasureError where what was asked can't be had; `Cancelled`. */
async function answerOf<Ask extends keyof Requests>(
  files: HeldFiles,
  ask: Ask,
  given: Requests[keyof Requests]['given'],
  task: Task,
): Promise<Requests[Ask]['answer']> {
  // The page's own side pairs what is given with what is asked.
  return answers[ask](files, given as Requests[Ask]['given'], task);
}
