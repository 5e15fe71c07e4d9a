import { type Document, isNode, isScalar, LineCounter, type Node, parseDocument, visit } from 'yaml';
import { type ErrorPlace, MeasureError } from '../../base/measureError.ts';
import { readError, type YamlFault } from '../readErrors.ts';

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
  if (text.length > longest) throw noYaml({ line: 1, column: 1 }, { is: 'long', characters: text.length });
  try {
    const options = { lineCounter: lines, prettyErrors: false, stringKeys: true, resolveKnownTags: false };
    const document = parseDocument(text, options);
    const [problem] = [...document.errors, ...document.warnings];
    if (problem !== undefined) throw noYaml(placeOf(problem.pos[0]), faultOf(problem));
    const reference = badReference(document, text);
    if (reference !== null) throw noYaml(placeOf(reference.at), reference.fault);
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
    throw noYaml({ line: 1, column: 1 }, faultOf({ code: '', message }));
  }
}

interface BadReference {
  readonly at: number;
  readonly fault: YamlFault;
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
        fault: {
          is: itself ? 'reference to itself' : 'unknown reference',
          written: text.slice(at, end),
        },
      };
      return visit.BREAK;
    },
  });
  return found;
}

function noYaml(place: ErrorPlace, found: YamlFault): MeasureError {
  return readError('yaml.syntax', { found }, place);
}

/** What we say better than the library, which speaks to programmers there. */
const FAULTS: Readonly<Record<string, YamlFault>> = {
  MULTIPLE_DOCS: { is: 'several documents' },
  BAD_ALIAS: { is: 'reference mark' },
  RESOURCE_EXHAUSTION: { is: 'deep' },
};

function faultOf({ code, message }: { readonly code: string; readonly message: string }): YamlFault {
  // Its parser goes as deep as the stack, and says so when that is full.
  if (/call stack/i.test(message)) return { is: 'deep' };
  if (/alias count/i.test(message)) return { is: 'many references' };
  return FAULTS[code] ?? { library: message.split('\n')[0]! };
}
