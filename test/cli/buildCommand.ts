import { execFileSync } from 'node:child_process';
import { copyFileSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  interface ProvidedContext {
    /** Path of the built command's first file. */
    command: string;
  }
}

/**
 * Builds the command once for all of this room's tests, into a folder of its own, so that no stale build is
 * tested. Types are checked elsewhere (npm run types).
 */
export default function buildCommand(project: TestProject): () => void {
  const cache = resolve('node_modules', '.cache');
  mkdirSync(cache, { recursive: true });
  const folder = mkdtempSync(join(cache, 'command-'));
  const compiler = resolve('node_modules', 'typescript', 'bin', 'tsc');
  const flags = ['--noCheck', '--declaration', 'false', '--isolatedDeclarations', 'false'];
  execFileSync(process.execPath, [
    compiler,
    '-p',
    'tsconfig.json',
    '--outDir',
    join(folder, 'dist'),
    ...flags,
  ]);
  copyFileSync('package.json', join(folder, 'package.json'));
  project.provide('command', join(folder, 'dist', 'cli', 'main.js'));
  return () => rmSync(folder, { recursive: true });
}
