// npm run speed: how reading and measuring stand beside other readers, on this machine, now. Writes results.md.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { timeProcess } from './timeProcess.mjs';
import { writeLargeCapture } from './writeLargeCapture.mjs';

const ROUNDS = 5;
/** For each size of the growth table; the largest take long. */
const GROWTH_ROUNDS = 3;
const ROWS = 2e6;
const MEASURE = ['../../dist/cli/main.js', 'measure'];
const folder = mkdtempSync(join(tmpdir(), 'sineassay-speed-'));
const captureOf = (rows) => {
  const file = join(folder, `${rows}.csv`);
  writeLargeCapture(file, rows);
  return file;
};
const median = (values) => [...values].sort((a, b) => a - b)[values.length >> 1];
const told = (text) => process.stderr.write(`${text}\n`);

/** All programs in turn, once a round, so that what else the machine does falls on each alike. */
async function rounds(programs, file) {
  const runs = Object.fromEntries(Object.keys(programs).map((name) => [name, []]));
  for (let round = 0; round < ROUNDS; round++) {
    for (const [name, words] of Object.entries(programs)) {
      const run = await timeProcess(...words, file);
      runs[name].push(run);
      told(`${round + 1}/${ROUNDS} ${name}: ${run.wallMs.toFixed(0)} ms, CPU ${run.cpuMs.toFixed(0)} ms`);
    }
  }
  return runs;
}

/** Median over the rounds of a's time over b's. */
const ratio = (a, b, timeOf) => median(a.map((run, i) => timeOf(run) / timeOf(b[i]))).toPrecision(2);
const wholeWall = (run) => run.wallMs;
const wholeCpu = (run) => run.cpuMs;
const workWall = (run) => run.work.wallMs;
const workCpu = (run) => run.work.cpuMs;

try {
  const two = captureOf(ROWS);
  const runs = await rounds(
    {
      plainBytes: ['readers/plainBytes.mjs'],
      scanner: ['readers/scanner.mjs'],
      ourRead: ['readers/ourRead.mjs'],
      d3Dsv: ['readers/d3Dsv.mjs'],
      csvParse: ['readers/csvParse.mjs'],
      polars: ['readers/polars.mjs'],
      measure: MEASURE,
    },
    two,
  );
  const row = (title, a, b, wall, cpu) =>
    `| ${title} | ${ratio(runs[a], runs[b], wall)} | ${ratio(runs[a], runs[b], cpu)} |`;

  const growth = [];
  for (const millions of [0.25, 1, 4, 16]) {
    const file = captureOf(millions * 1e6);
    const read = [];
    const measured = [];
    for (let round = 0; round < GROWTH_ROUNDS; round++) {
      read.push((await timeProcess('readers/scanner.mjs', file)).work.cpuMs);
      measured.push((await timeProcess(...MEASURE, file)).cpuMs);
    }
    growth.push({ millions, read: median(read), measured: median(measured) });
    told(
      `${millions} M rows: ${growth.at(-1).read.toFixed(0)} and ${growth.at(-1).measured.toFixed(0)} ms of CPU`,
    );
    rmSync(file);
  }
  const [smallest, , middle] = growth;
  /** Time a row over that of the middle size. */
  const perRow = (size, key) => (size[key] / size.millions / (middle[key] / middle.millions)).toFixed(2);
  /** How many million rows more would take as long as the smallest file. */
  const startRows = (key) =>
    (smallest[key] / ((middle[key] - smallest[key]) / (middle.millions - smallest.millions))).toPrecision(2);
  /** The same of the rows beyond those of the smallest file. */
  const perRowMore = (size, key) => {
    if (size === smallest) return '';
    const slope = (of) => (of[key] - smallest[key]) / (of.millions - smallest.millions);
    return (slope(size) / slope(middle)).toFixed(2);
  };

  const ten = captureOf(10e6);
  const { maxBytes } = await timeProcess(...MEASURE, ten);
  const beside = maxBytes - 8 * 2 * 10e6;

  const lines = [
    '# Speed',
    '',
    `Written by \`npm run speed\` on a machine with ${availableParallelism()} cores, Node ${process.versions.node}. All`,
    `programs of a table ran in turn, ${ROUNDS} times, and each figure is the median of the rounds' ratios: of the time on`,
    'the clock, and of the time of all cores together, which what else the machine does changes less.',
    '',
    `## A capture of ${ROWS / 1e6} million rows, three columns`,
    '',
    '| | clock | all cores |',
    '| --- | --- | --- |',
    row('csv-parse over our scanner (one thread, layout known)', 'csvParse', 'scanner', workWall, workCpu),
    row('d3-dsv over our scanner', 'd3Dsv', 'scanner', workWall, workCpu),
    row('our scanner over reading the bytes and nothing else', 'scanner', 'plainBytes', workWall, workCpu),
    row(
      'our whole reading, with layout, threads and digest, over the scanner',
      'ourRead',
      'scanner',
      workWall,
      workCpu,
    ),
    row('csv-parse over `measure`, whole processes', 'csvParse', 'measure', wholeWall, wholeCpu),
    row('our reading over nodejs-polars reading, whole processes', 'ourRead', 'polars', wholeWall, wholeCpu),
    row('`measure` over nodejs-polars reading, whole processes', 'measure', 'polars', wholeWall, wholeCpu),
    '',
    '## Growth',
    '',
    `Time of all cores for each row, over that at ${middle.millions} million rows. What it takes to start weighs on short files: to`,
    'load the program, and to compile what reads and measures. So each second column gives the time of the rows beyond',
    `those of a file of ${smallest.millions} million, for each of them.`,
    '',
    '| million rows | scanner | rows beyond | `measure`, whole process | rows beyond |',
    '| --- | --- | --- | --- | --- |',
    ...growth.map(
      (size) =>
        `| ${size.millions} | ${perRow(size, 'read')} | ${perRowMore(size, 'read')} | ${perRow(size, 'measured')} | ${perRowMore(size, 'measured')} |`,
    ),
    '',
    `A file of ${smallest.millions} million rows takes the scanner as long as ${startRows('read')} million rows more would, and \`measure\``,
    `as long as ${startRows('measured')} million rows more would.`,
    '',
    '## Memory',
    '',
    `\`measure\` of 10 million rows with two channels takes at most ${(maxBytes / (8 * 2 * 10e6)).toFixed(2)} times the 8 bytes of each sample:`,
    `${(beside / 1e6).toFixed(0)} MB beside them.`,
    '',
  ];
  writeFileSync(new URL('./results.md', import.meta.url), lines.join('\n'));
  process.stdout.write(lines.join('\n'));
} finally {
  rmSync(folder, { recursive: true });
}
