import { writeSync } from 'node:fs';

// Loaded before a program that is timed: says on a pipe of its own what the whole process took.
process.on('exit', () => {
  const { userCPUTime, systemCPUTime, maxRSS } = process.resourceUsage();
  writeSync(3, JSON.stringify({ cpuMs: (userCPUTime + systemCPUTime) / 1000, maxBytes: 1024 * maxRSS }));
});
