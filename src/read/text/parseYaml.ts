import { type Document, isNode, isScalar, LineCounter, type Node, parseDocument, visit } from 'yaml';
import { MeasureError } from '../../base/measureError.ts';

/** YAML as plain data, with the place that each part of it stands at. */
interface YamlText {
  /** Objects, arrays, strings, numbers, booleans and null. */
  readonly data: unknown;
  /** @param path - keys and indices from the top. @returns 1-based; 1 where there is no such part. */
  lineOf(path: readonly (string | number)[]): number;
  /** What stands there, sign by sign (`1.10`, `007`); undefined where that is no single word or text. */
  writtenAt(path: readonly (string | number)[]): string | undefined;
}

/** Longer than anybody writes by hand; the time that parsing takes grows with the length. */
const longest = 4_000_000;

/**
 * YAML 1.2 text to plain data. What would be taken for something else than it says (`*new*` for a reference, `!new`
 * for a type) is refused where it stands.
 *
 * @throws MeasureError `yaml.syntax` with line and column of the first thing that is no YAML, or means more than
 * plain data.
 */
export function parseYaml(text: string): YamlText {
  const lines = new LineCounter();
  const placeOf = (offset: number): { readonly line: number; readonly column: number } => {
    const { line, col } = lines.linePos(offset);
    return { line: Math.max(1, line), column: Math.max(1, col) };
  };
  if (text.length > longest) throw noYaml({ line: 1, column: 1 }, `${Math.ceil(text.length / 1e6)} MB`);
  try {
    const options = { lineCounter: lines, prettyErrors: false, stringKeys: true, resolveKnownTags: false };
    const document = parseDocument(text, options);
    const [problem] = [...document.errors, ...document.warnings];
    if (problem !== undefined) throw noYaml(placeOf(problem.pos[0]), inOurWords(problem));
    const reference = badReference(document, text);
    if (reference !== null) throw noYaml(placeOf(reference.at), reference.received, reference.advice);
    const nodeAt = (path: readonly (string | number)[]): Node | undefined => {
      const node = document.getIn(path, true);
      return isNode(node) ? node : undefined;
    };
    return {
      data: document.toJS() as unknown,
      lineOf: (path) => {
        const at = nodeAt(path)?.range?.[0];
        return at === undefined ? 1 : placeOf(at).line;
      },
      writtenAt: (path) => {
        const node = nodeAt(path);
        return isScalar(node) ? node.source : undefined;
      },
    };
  } catch (error) {
    if (error instanceof MeasureError) throw error;
    // The library's own: of what it can't unfold, such as references to references to references.
    const message = error instanceof Error ? error.message : String(error);
    throw noYaml({ line: 1, column: 1 }, inOurWords({ code: '', message }));
  }
}

interface BadReference {
  readonly at: number;
  readonly received: string;
  readonly advice: string;
}

/** The first `*name` of which there is no `&name` before it, or that stands within its own. */
function badReference(document: Document, text: string): BadReference | null {
  let found: BadReference | null = null;
  visit(document, {
    Alias(_, node, ancestors) {
      const [at, end] = node.range ?? [0, 0];
      const target = node.resolve(document);
      const itself = target !== undefined && ancestors.includes(target);
      if (target !== undefined && !itself) return undefined;
      found = {
        at,
        received: itself
          ? `${text.slice(at, end)}, which refers to what it stands in`
          : `${text.slice(at, end)}, a reference to something that is named nowhere`,
        advice: 'put a text that begins with * between quotes',
      };
      return visit.BREAK;
    },
  });
  return found;
}

function noYaml(
  place: { readonly line: number; readonly column: number },
  received: string,
  advice = 'check the indentation, the colons and the quotes on that line',
): MeasureError {
  const expected = 'lines such as "gainPercent: 3"';
  return new MeasureError('yaml.syntax', 'The file is no YAML.', { ...place, expected, received, advice });
}

const DEEP = 'lists within lists, deeper than anybody writes';

/** What the library says of a fault, but where that is for programmers. */
const OUR_WORDS: Readonly<Record<string, string>> = {
  MULTIPLE_DOCS: 'a second document behind a line of ---',
  BAD_ALIAS: 'a word that begins with * or &, which names a reference',
  RESOURCE_EXHAUSTION: DEEP,
};

function inOurWords({ code, message }: { readonly code: string; readonly message: string }): string {
  // Its parser goes as deep as the stack, and says so when that is full.
  if (/call stack/i.test(message)) return DEEP;
  if (/alias count/i.test(message)) return 'references to references, of which more come than anybody writes';
  return OUR_WORDS[code] ?? firstLine(message);
}

function firstLine(message: string): string {
  return message.split('\n')[0]!;
}
