import { spawn } from 'node:child_process';
import { inject } from 'vitest';

export interface CommandRun {
  readonly code: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** Runs the built command as a process of its own. */
export function runCommand(words: readonly string[], folder: string): Promise<CommandRun> {
  return new Promise((done, failed) => {
    const child = spawn(process.execPath, [inject('command'), ...words], { cwd: folder });
    const stdout: Buffer[] = [];
    const stderr: Buffer[] = [];
    child.stdout.on('data', (chunk: Buffer) => stdout.push(chunk));
    child.stderr.on('data', (chunk: Buffer) => stderr.push(chunk));
    child.on('error', failed);
    child.on('close', (code) =>
      done({ code, stdout: Buffer.concat(stdout).toString(), stderr: Buffer.concat(stderr).toString() }),
    );
  });
}
