import type { Entry } from '../desk/entry.ts';
import type { Ask } from '../desk/workerClient.ts';
import type { DrawingTurns } from './drawingTurns.ts';

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
