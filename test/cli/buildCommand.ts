import { execFileSync } from 'node:child_process';
import { copyFileSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { TestProject } from 'vitest/node';
import { everything } from '../samples.ts';

declare module 'vitest' {
  interface ProvidedContext {
    /** Path of the built command's first file. */
    command: string;
    /** Folder of the command's files as they are in the source, for thorough tests that run one by itself. */
    modules: string;
    /** Path of the built page. */
    page: string;
  }
}

/**
 * Builds the command and the page once for all tests that run them, into a folder of their own, so that no stale build
 * is tested. Types are checked elsewhere (npm run types).
 */
export default function buildCommand(project: TestProject): () => void {
  const cache = resolve('node_modules', '.cache');
  mkdirSync(cache, { recursive: true });
  const folder = mkdtempSync(join(cache, 'command-'));
  const dist = join(folder, 'dist');
  execFileSync(process.execPath, ['.build.mjs'], { env: { ...process.env, SINEASSAY_DIST: dist } });
  const modules = join(folder, 'modules');
  if (everything) {
    const compiler = resolve('node_modules', 'typescript', 'bin', 'tsc');
    const flags = ['--noCheck', '--declaration', 'false', '--isolatedDeclarations', 'false'];
    execFileSync(process.execPath, [compiler, '-p', 'tsconfig.json', '--outDir', modules, ...flags]);
  }
  copyFileSync('package.json', join(folder, 'package.json'));
  project.provide('command', join(dist, 'cli', 'main.js'));
  project.provide('modules', join(modules, 'cli'));
  project.provide('page', join(dist, 'page', 'sineassay.html'));
  return () => rmSync(folder, { recursive: true });
}
