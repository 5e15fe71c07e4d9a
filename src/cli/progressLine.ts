import { statSync } from 'node:fs';

/** A line on the terminal that says how far a run is. */
export interface ProgressLine {
  /** The next file is begun. */
  begin(file: string): void;
  /** How far it is read, from 0 to 1. */
  read(share: number): void;
  /** It is read, and measured now. */
  measure(): void;
  /** Takes the line away, before anything else is written. */
  clear(): void;
}

/** What a progress line is written to: standard error. */
interface Terminal {
  readonly isTTY?: boolean;
  readonly columns?: number;
  write(text: string): unknown;
}

/** A run shorter than this shows nothing. */
const PATIENCE_MS = 1000;
/** A file of so many bytes takes about as long. */
const LONG_FILE_BYTES = 30e6;
/** Cells of the bar. */
const BAR = 20;
/** Of a file's time, about. */
const READING_SHARE = 0.4;

/**
 * Progress of a run over files, on a terminal only: a pipe, a file or `--quiet` gets nothing.
 *
 * @param total - files.
 */
export function progressLine(
  total: number,
  {
    quiet = false,
    terminal = process.stderr,
  }: { readonly quiet?: boolean | undefined; readonly terminal?: Terminal } = {},
): ProgressLine {
  const nothing = (): void => {};
  if (quiet || terminal.isTTY !== true) {
    return { begin: nothing, read: nothing, measure: nothing, clear: nothing };
  }
  const startMs = performance.now();
  let begun = 0;
  let current = '';
  let shown = '';
  const show = (done: number, stage: string): void => {
    const filled = Math.floor((BAR * done) / total + 1e-9);
    const bar = `[${'#'.repeat(filled)}${'.'.repeat(BAR - filled)}]`;
    const text = `${bar} ${begun} of ${total}  ${stage}${printable(current)}`.slice(
      0,
      (terminal.columns ?? 80) - 1,
    );
    if (text === shown) return;
    terminal.write(`\r\x1b[2K${text}`);
    shown = text;
  };
  const isLate = (): boolean => shown !== '' || performance.now() - startMs > PATIENCE_MS;
  return {
    begin: (file) => {
      current = file;
      begun++;
      if (isLate() || bytesOf(file) > LONG_FILE_BYTES) show(begun - 1, '');
    },
    read: (share) => {
      if (isLate()) show(begun - 1 + READING_SHARE * share, 'reading ');
    },
    measure: () => {
      if (isLate()) show(begun - 1 + READING_SHARE, 'measuring ');
    },
    clear: () => {
      if (shown !== '') terminal.write('\r\x1b[2K');
      shown = '';
    },
  };
}

function bytesOf(file: string): number {
  return statSync(file, { throwIfNoEntry: false })?.size ?? 0;
}

/** A file's name may hold anything; a terminal must not obey it. */
function printable(text: string): string {
  return text.replaceAll(/\p{C}/gu, '\ufffd');
}
