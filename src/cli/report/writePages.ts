import { readEvidence } from '../../entry/evidence.ts';
import { captureMarkdown, capturePage } from '../../entry/pages.ts';
import { type Formats, linkedFile } from './formatOptions.ts';
import { openPagePress } from './openPress.ts';

export interface CapturePages {
  /** That all files of the capture share. */
  readonly name: string;
  /** The sheets as they were written, that of the wave first. */
  readonly svgs: readonly string[];
  /** True: each sheet has a picture beside it. */
  readonly png: boolean;
  /** True: a card lies beside them, and its picture. */
  readonly card: boolean;
  readonly formats: Formats;
  /** Writes a file whose name ends so. */
  readonly write: (ending: string, content: string) => Promise<void>;
}

/** Writes what a capture's sheets say as text to paste and as a page. @throws MeasureError as `write` does. */
export async function writePages({ name, svgs, png, card, formats, write }: CapturePages): Promise<void> {
  const sheets = svgs
    .map(readEvidence)
    .flatMap(({ evidence, picture }) =>
      evidence.picture === 'wave' || evidence.picture === 'changes' ? [{ evidence, picture }] : [],
    );
  const [wave] = sheets;
  if (wave === undefined) throw new RangeError('a capture has a sheet of its wave');
  if (formats.markdown) await write('.md', captureMarkdown(wave.evidence, `${name}${png ? '.png' : '.svg'}`));
  if (formats.html) {
    const endings = svgs.flatMap((_, i) => ['', '-changes'].slice(i, i + 1));
    const files = [
      ...endings.flatMap((ending) => [`${name}${ending}.svg`, ...(png ? [`${name}${ending}.png`] : [])]),
      ...(card ? [`${name}-card.svg`, `${name}-card.png`] : []),
      ...(formats.markdown ? [`${name}.md`] : []),
      ...(formats.gallery ? ['index.html'] : []),
    ];
    await write('.html', capturePage(await openPagePress(), sheets, files.map(linkedFile)));
  }
}
