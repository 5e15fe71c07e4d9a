/** A doubt about a result that still stands: shown beside it, never an error. */
export interface Notice {
  /** Stable, dotted: `topic.doubt`, for example `unit.assumed`. */
  readonly code: string;
  /** One sentence a person at a bench understands, with what to do where something can be done. */
  readonly message: string;
}
