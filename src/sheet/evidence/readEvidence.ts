import { MeasureError } from '../../base/measureError.ts';
import type { Evidence } from './evidence.ts';
import type { SealedEvidence } from './sealOf.ts';

/** A sheet taken apart. */
export interface OpenedSheet {
  readonly evidence: SealedEvidence;
  /** The sheet's text without the element that carries the evidence. */
  readonly picture: string;
}

const element = /<metadata\b[^>]*\bid="evidence"[^>]*>([\s\S]*?)<\/metadata>\n?/g;
const pictures: readonly string[] = [
  'wave',
  'changes',
  'card',
  'overlay',
  'sweep',
  'comparison',
] satisfies Evidence['picture'][];

/**
 * What a sheet carries, and its picture without it. Nothing of it is believed here: whether the two belong
 * together is for `recheckSheet` to say.
 *
 * @param text - of an SVG file, by whomsoever; line ends may have been changed on its way.
 * @throws MeasureError `sheet.none` where nothing is carried, `sheet.damaged` where it can't be read.
 */
export function readEvidence(text: string): OpenedSheet {
  const plain = text.replaceAll('\r\n', '\n');
  const [found, second] = plain.matchAll(element);
  if (found === undefined) {
    throw new MeasureError('sheet.none', 'The file carries no result.', {
      expected: 'a sheet as this program writes it (.svg), with the data inside it',
      advice:
        'Take the SVG as it was written: pictures (.png) and sheets saved by another program lose the data',
    });
  }
  if (second !== undefined) throw damaged('two results in one sheet');
  const evidence = parsed(found[1] ?? '');
  if (!isEvidence(evidence)) throw damaged('data of another kind');
  return { evidence, picture: plain.slice(0, found.index) + plain.slice(found.index + found[0].length) };
}

function parsed(escapedText: string): unknown {
  const text = escapedText.replace(/&(lt|gt|quot|amp);/g, (_, name: string) => unescaped[name] ?? '');
  try {
    return JSON.parse(text);
  } catch {
    throw damaged('text that is no JSON');
  }
}

const unescaped: Readonly<Record<string, string>> = { lt: '<', gt: '>', quot: '"', amp: '&' };

/** The outline only: a value deeper down may still be anything. */
function isEvidence(data: unknown): data is SealedEvidence {
  if (typeof data !== 'object' || data === null) return false;
  const { schema, program, picture, result, options, told, sides } = data as Record<string, unknown>;
  return (
    schema === 'sineassay/sheet@1' &&
    typeof program === 'string' &&
    typeof picture === 'string' &&
    pictures.includes(picture) &&
    typeof result === 'object' &&
    result !== null &&
    (isOptions(options) || Array.isArray(told) || Array.isArray(sides))
  );
}

function isOptions(options: unknown): boolean {
  return (
    typeof options === 'object' &&
    options !== null &&
    Array.isArray((options as Record<string, unknown>).claims)
  );
}

function damaged(received: string): MeasureError {
  return new MeasureError('sheet.damaged', 'The data inside the sheet can’t be read.', {
    expected: 'the data as they were written',
    received,
    advice: 'They were edited or cut: draw the sheet anew from the capture',
  });
}
