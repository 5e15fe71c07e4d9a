/** Runs and times the work alone, without the start of the process, and prints it with the rows that were read. */
export async function timeWork(work) {
  const before = process.cpuUsage();
  const start = performance.now();
  const rows = await work();
  const wallMs = performance.now() - start;
  const { user, system } = process.cpuUsage(before);
  console.log(JSON.stringify({ rows, wallMs, cpuMs: (user + system) / 1000 }));
}
