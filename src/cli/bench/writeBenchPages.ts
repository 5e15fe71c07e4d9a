import type { BenchDocument } from '../../entry/benching.ts';
import { readEvidence } from '../../entry/evidence.ts';
import { benchMarkdown, benchPage } from '../../entry/pages.ts';
import { version } from '../program.ts';
import { type Formats, linkedFile } from '../report/formatOptions.ts';
import { openPagePress } from '../report/openPress.ts';

interface BenchPages {
  readonly formats: Formats;
  /** The sheets as they were written, by the names of their files. */
  readonly drawn: ReadonlyMap<string, string>;
  /** True: a picture, or a card with its own, lies beside each sheet. */
  readonly png: boolean;
  readonly card: boolean;
  /** Writes a file of the folder of results. */
  readonly write: (name: string, content: string) => Promise<unknown>;
}

/** Writes a bench test as text to paste and as a page. @throws MeasureError as `write` does. */
export async function writeBenchPages(
  bench: BenchDocument,
  { drawn, formats, png, card, write }: BenchPages,
): Promise<void> {
  const program = version;
  // Many places that articles are pasted into take pictures alone.
  const pictured = (name: string): string => (png ? name.replace(/\.svg$/, '.png') : name);
  const opened = [...drawn].map(([name, svg]) => ({ name, sheet: readEvidence(svg) }));
  if (formats.markdown) {
    const sweeps = new Map(
      opened.flatMap(({ name, sheet: { evidence } }) =>
        evidence.picture === 'sweep' ? [[evidence.result.name, pictured(name)] as const] : [],
      ),
    );
    const comparison = drawn.has('comparison.svg') ? pictured('comparison.svg') : null;
    await write('bench.md', benchMarkdown({ program, bench, sweeps, comparison }));
  }
  if (formats.html) {
    const files = [
      ...[...drawn.keys()].flatMap((name) => [
        name,
        ...(png ? [name.replace(/\.svg$/, '.png')] : []),
        ...(card ? [name.replace(/\.svg$/, '-card.svg'), name.replace(/\.svg$/, '-card.png')] : []),
      ]),
      'bench.json',
      ...(formats.markdown ? ['bench.md'] : []),
      ...(formats.gallery ? ['index.html'] : []),
    ].map(linkedFile);
    const sheets = opened.map(({ sheet }) => sheet);
    await write('bench.html', benchPage(await openPagePress(), { program, bench, sheets, files }));
  }
}
