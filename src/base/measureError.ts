/** Where in a file an input failed, what stood there, and what the person can do about it. */
export interface ErrorDetail {
  /** 1-based line of the file, where there is one. */
  readonly line?: number;
  /** 1-based column (cell) of that line, where there is one. */
  readonly column?: number;
  /** What was expected there, in words. */
  readonly expected?: string;
  /** What was found instead, in words or as the (shortened) text itself. */
  readonly received?: string;
  /** What to do, as an instruction to a person at a bench. */
  readonly advice?: string;
}

/**
 * An input that can't be read or measured. The message is one sentence that says what is wrong;
 * place, expectation and advice stand in `detail` so that each door (terminal, page, JSON) can lay them out.
 *
 * @remarks A doubtful figure is not an error: it carries a Notice. A programmer's mistake is a
 * RangeError or TypeError.
 */
export class MeasureError extends Error {
  override readonly name = 'MeasureError';
  /** Stable, dotted: `room.problem`, for example `file.empty`. */
  readonly code: string;
  readonly detail: ErrorDetail;

  constructor(code: string, message: string, detail: ErrorDetail = {}) {
    super(message);
    this.code = code;
    this.detail = detail;
  }
}
