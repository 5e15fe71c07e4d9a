import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { afterAll, expect, inject, test } from 'vitest';

const root = join(dirname(inject('command')), '..', '..');
const folder = mkdtempSync(join(tmpdir(), 'program-'));
// As who installs it has it.
mkdirSync(join(folder, 'node_modules'));
symlinkSync(root, join(folder, 'node_modules', 'sineassay'));
writeFileSync(join(folder, 'package.json'), '{ "type": "module" }');
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
