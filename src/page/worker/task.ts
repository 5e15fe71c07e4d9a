/** A piece of work that tells how far it is and stops when nobody wants it any more. */
export interface Task {
  /** @param share - from 0 to 1. */
  readonly tell: (share: number) => void;
  /** Lets what else was asked be heard. @throws Cancelled */
  readonly pause: () => Promise<void>;
}

/** Thrown where nobody waits for the answer any more. */
export class Cancelled extends Error {}
