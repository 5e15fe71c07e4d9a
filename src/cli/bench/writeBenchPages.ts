import type { BenchDocument } from '../../entry/benching.ts';
import { readEvidence } from '../../entry/evidence.ts';
import { benchMarkdown, benchPage } from '../../entry/pages.ts';
import { version } from '../program.ts';
import type { Formats } from '../report/formatOptions.ts';
import { linkedFile } from '../report/linkedFile.ts';
import { openPagePress } from '../report/openPagePress.ts';

interface BenchPages {
  readonly formats: Formats;
  /** The sheets as they were written, by the names of their files. */
  readonly drawn: ReadonlyMap<string, string>;
  /** Writes a file of the folder of results. */
  readonly write: (name: string, content: string) => Promise<unknown>;
}

/** Writes a bench test as text to paste and as a page. @throws MeasureError as `write` does. */
export async function writeBenchPages(
  bench: BenchDocument,
  { drawn, formats, write }: BenchPages,
): Promise<void> {
  const program = version;
  const opened = [...drawn].map(([name, svg]) => ({ name, sheet: readEvidence(svg) }));
  if (formats.markdown) {
    const sweeps = new Map(
      opened.flatMap(({ name, sheet: { evidence } }) =>
        evidence.picture === 'sweep' ? [[evidence.result.name, name] as const] : [],
      ),
    );
    const comparison = drawn.has('comparison.svg') ? 'comparison.svg' : null;
    await write('bench.md', benchMarkdown({ program, bench, sweeps, comparison }));
  }
  if (formats.html) {
    const files = [
      ...drawn.keys(),
      'bench.json',
      ...(formats.markdown ? ['bench.md'] : []),
      ...(formats.gallery ? ['index.html'] : []),
    ].map(linkedFile);
    const sheets = opened.map(({ sheet }) => sheet);
    await write('bench.html', benchPage(await openPagePress(), { program, bench, sheets, files }));
  }
}
