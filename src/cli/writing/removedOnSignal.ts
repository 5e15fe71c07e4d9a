import { rmSync } from 'node:fs';

/** What ends a process from outside: Ctrl-C, a closed terminal, an order to end. */
const SIGNALS = ['SIGINT', 'SIGHUP', 'SIGTERM'] as const;

/**
 * Does some work on a file that a signal must not leave behind: it is removed, and the process ends as it would have.
 *
 * @param part - need not be there yet.
 */
export async function removedOnSignal<T>(part: string, work: () => Promise<T>): Promise<T> {
  const end = (signal: NodeJS.Signals): void => {
    rmSync(part, { force: true });
    stopListening();
    process.kill(process.pid, signal);
  };
  const stopListening = (): void => {
    for (const signal of SIGNALS) process.removeListener(signal, end);
  };
  for (const signal of SIGNALS) process.on(signal, end);
  try {
    return await work();
  } finally {
    stopListening();
  }
}
