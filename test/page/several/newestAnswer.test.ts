import { expect, test } from 'vitest';
import { MeasureError } from '../../../src/base/measureError.ts';
import type { Ask } from '../../../src/page/desk/workerClient.ts';
import { newestAnswer } from '../../../src/page/several/severalView.ts';

const question = (id: number) => ({
  sides: [
    { id, channel: 0 },
    { id: 0, channel: 0 },
  ] as const,
  sameInstrument: false,
});

/** What asks, with the answers of a worker that are given by hand. */
function asking() {
  const calls: {
    answer: (value: unknown) => void;
    fail: (problem: unknown) => void;
    signal?: AbortSignal;
  }[] = [];
  const shown: unknown[] = [];
  const defects: unknown[] = [];
  const ask = ((_: string, __: unknown, { signal }: { signal?: AbortSignal } = {}) =>
    new Promise((answer, fail) => {
      calls.push({
        answer: answer as (value: unknown) => void,
        fail,
        ...(signal === undefined ? {} : { signal }),
      });
    })) as Ask;
  const inquire = newestAnswer(
    ask,
    'overlay',
    (answer) => shown.push(answer),
    (problem) => defects.push(problem),
  );
  return { calls, shown, defects, inquire };
}

const settled = (): Promise<void> => new Promise((done) => setTimeout(done));

test('an answer that comes after a newer question is dropped, and the worker told that nobody waits', async () => {
  const { calls, shown, inquire } = asking();
  inquire(question(1), []);
  inquire(question(2), []);
  expect(calls.map(({ signal }) => signal?.aborted)).toEqual([true, false]);
  calls[1]?.answer('second');
  calls[0]?.answer('first');
  await settled();
  expect(shown).toEqual(['second']);
});

test('the same question is asked again only where what its answer rests on has changed', () => {
  const { calls, inquire } = asking();
  const [before, after] = [{}, {}];
  inquire(question(1), [before]);
  inquire(question(1), [before]);
  expect(calls).toHaveLength(1);
  inquire(question(1), [after]);
  expect(calls).toHaveLength(2);
});

test('no question ends the one that runs; the same can be asked afresh', async () => {
  const { calls, shown, inquire } = asking();
  inquire(question(1), []);
  inquire(null, []);
  calls[0]?.answer('late');
  await settled();
  expect(shown).toEqual([]);
  inquire(question(1), []);
  expect(calls).toHaveLength(2);
});

test('why there is no answer is shown; a fault of ours is told', async () => {
  const { calls, shown, defects, inquire } = asking();
  const gone = new MeasureError('file.closed', {});
  inquire(question(1), []);
  calls[0]?.fail(gone);
  await settled();
  const fault = new TypeError('no such thing');
  inquire(question(2), []);
  calls[1]?.fail(fault);
  await settled();
  expect([shown, defects]).toEqual([[gone], [fault]]);
});
