import { statSync } from 'node:fs';

/** A line on the terminal that says how far a run is. */
export interface ProgressLine {
  /** The next file is begun. */
  begin(file: string): void;
  /** Takes the line away, before anything else is written. */
  clear(): void;
}

/** What a progress line is written to: standard error. */
export interface Terminal {
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
  if (quiet || terminal.isTTY !== true) return { begin: () => {}, clear: () => {} };
  const startMs = performance.now();
  let begun = 0;
  let isShown = false;
  return {
    begin: (file) => {
      const isLong = performance.now() - startMs > PATIENCE_MS || bytesOf(file) > LONG_FILE_BYTES;
      const filled = Math.round((BAR * begun) / total);
      begun++;
      if (!isLong) return;
      const bar = `[${'#'.repeat(filled)}${'.'.repeat(BAR - filled)}]`;
      const text = `${bar} ${begun} of ${total}  ${printable(file)}`;
      terminal.write(`\r\x1b[2K${text.slice(0, (terminal.columns ?? 80) - 1)}`);
      isShown = true;
    },
    clear: () => {
      if (isShown) terminal.write('\r\x1b[2K');
      isShown = false;
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
