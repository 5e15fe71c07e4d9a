import { isNode, LineCounter, parseDocument } from 'yaml';
import { MeasureError } from '../base/measureError.ts';

/** YAML as plain data, with the line that each part of it stands on. */
export interface YamlText {
  /** Objects, arrays, strings, numbers, booleans and null. */
  readonly data: unknown;
  /** @param path - keys and indices from the top. @returns 1-based; 1 where there is no such part. */
  lineOf(path: readonly (string | number)[]): number;
}

/**
 * YAML 1.2 text to plain data.
 *
 * @throws MeasureError `yaml.syntax` with line and column of the first thing that is no YAML.
 */
export function parseYaml(text: string): YamlText {
  const lines = new LineCounter();
  const document = parseDocument(text, { lineCounter: lines, prettyErrors: false });
  const [problem] = document.errors;
  if (problem !== undefined) {
    const { line, col } = lines.linePos(problem.pos[0]);
    throw new MeasureError('yaml.syntax', 'The file is no YAML.', {
      line,
      column: col,
      expected: 'lines such as "gainPercent: 3"',
      received: problem.message.split('\n')[0]!,
      advice: 'check the indentation, the colons and the quotes on that line',
    });
  }
  return {
    data: document.toJS() as unknown,
    lineOf(path) {
      const node = document.getIn(path, true);
      const at = isNode(node) ? node.range?.[0] : undefined;
      return at === undefined ? 1 : lines.linePos(at).line;
    },
  };
}
