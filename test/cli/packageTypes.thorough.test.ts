import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { afterAll, expect, inject, test } from 'vitest';

// Inside the built package, where its own name leads to it, as it does for who installs it.
const root = join(dirname(inject('command')), '..', '..');
const folder = mkdtempSync(join(root, 'program-'));
afterAll(() => rmSync(folder, { recursive: true }));

const PROGRAM = `
import { measure, type MeasureResult } from 'sineassay';
import { answerLines } from 'sineassay/core/measuring';
const [outlet] = measure(new Uint8Array());
const result: MeasureResult | undefined = outlet?.result;
export const lines: readonly string[] = result === undefined ? [] : answerLines(result);
// @ts-expect-error a reason is no number
export const wrong: number = result?.notices[0]?.message;
`;

test('every door has types that a strict compiler takes, and that are more than any', () => {
  const doors = readdirSync(join(root, 'dist', 'core')).filter((name) => name.endsWith('.js'));
  expect(doors.length).toBeGreaterThan(10);
  const imports = doors.map((door, i) => `import * as door${i} from 'sineassay/core/${door.slice(0, -3)}';`);
  writeFileSync(
    join(folder, 'doors.ts'),
    `${imports.join('\n')}\nexport { ${doors.map((_, i) => `door${i}`)} };\n`,
  );
  writeFileSync(join(folder, 'program.ts'), PROGRAM);
  const compiler = resolve('node_modules', 'typescript', 'bin', 'tsc');
  const types = resolve('node_modules', '@types');
  const options = [
    '--noEmit',
    '--strict',
    '--module',
    'nodenext',
    '--target',
    'es2023',
    '--typeRoots',
    types,
  ];
  execFileSync(process.execPath, [compiler, ...options, '--types', 'node', 'doors.ts', 'program.ts'], {
    cwd: folder,
    encoding: 'utf8',
  });
});
