// npm run speed: how reading and measuring stand beside other readers, on this machine, now. Writes results.md.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { timeProcess } from './timeProcess.mjs';
import { writeLargeCapture } from './writeLargeCapture.mjs';

const ROUNDS = 5;
/** For the growth table: each of its rounds takes some runs of each size, of which the first compile the code. */
const GROWTH_ROUNDS = 3;
const COMPILING = 4;
const COMPILED = 5;
const ROWS = 2e6;
const MEASURE = ['../../dist/cli/main.js', 'measure'];
const UNDIGESTED = [['readers/noDigest.mjs', MEASURE[0]], 'measure'];
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
      undigested: UNDIGESTED,
    },
    two,
  );
  const row = (title, a, b, wall, cpu) =>
    `| ${title} | ${ratio(runs[a], runs[b], wall)} | ${ratio(runs[a], runs[b], cpu)} |`;

  const sizes = [0.25, 1, 4, 16];
  const files = sizes.map((millions) => captureOf(millions * 1e6));
  const growth = [];
  for (let round = 0; round < GROWTH_ROUNDS; round++) {
    growth.push([]);
    for (const [i, file] of files.entries()) {
      // A process for each size: what a large capture leaves behind is not another's to clear.
      const { work } = await timeProcess('readers/again.mjs', String(COMPILING + COMPILED), 'one', file);
      const compiled = work.runs[0].slice(COMPILING);
      const read = median(compiled.map(({ readMs }) => readMs));
      const measured = median(compiled.map(({ measureMs }) => measureMs));
      told(`${sizes[i]} M rows: read in ${read.toFixed(0)} ms of CPU, measured in ${measured.toFixed(0)}`);
      growth[round].push({ millions: sizes[i], read, measured, both: read + measured });
    }
  }
  for (const file of files) rmSync(file);
  const MIDDLE = 2;
  /** Median over the rounds of what a size and the middle one give, by the smallest too. */
  const overRounds = (size, ratioOf) => median(growth.map((of) => ratioOf(of[size], of[MIDDLE], of[0])));
  const perRow = (size, key) =>
    overRounds(size, (of, middle) => of[key] / of.millions / (middle[key] / middle.millions)).toFixed(2);
  /** Time for each of the rows beyond those of the smallest file. */
  const slope = (of, smallest) => (of.both - smallest.both) / (of.millions - smallest.millions);
  const perRowBeyond = (size) =>
    size === 0
      ? ''
      : overRounds(size, (of, middle, smallest) => slope(of, smallest) / slope(middle, smallest)).toFixed(2);
  /** How many million rows take as long as all that does not grow with them. */
  const fixedRows = overRounds(0, (of, middle) => of.both / slope(middle, of) - of.millions).toPrecision(2);

  const stages = [];
  for (let round = 0; round < ROUNDS; round++) {
    const whole = (await timeProcess(...MEASURE, two)).wallMs;
    const [[first, second]] = (await timeProcess('readers/again.mjs', '2', 'all', two)).work.runs;
    const start = (await timeProcess('readers/nothing.mjs', two)).wallMs;
    const other = (await timeProcess('readers/polars.mjs', two)).wallMs;
    const load = whole - start - first.readWallMs - first.measureWallMs;
    stages.push({
      other,
      start,
      load,
      read: first.readWallMs,
      first: first.measureWallMs,
      again: second.measureWallMs,
    });
  }
  const share = (key) => median(stages.map((stage) => stage[key] / stage.other)).toFixed(2);

  const ten = captureOf(10e6);
  const most = [];
  for (let round = 0; round < ROUNDS; round++) most.push((await timeProcess(...MEASURE, ten)).maxBytes);
  const maxBytes = Math.max(...most);
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
    row('the same without the digest', 'csvParse', 'undigested', wholeWall, wholeCpu),
    row('our reading over nodejs-polars reading, whole processes', 'ourRead', 'polars', wholeWall, wholeCpu),
    row('`measure` over nodejs-polars reading, whole processes', 'measure', 'polars', wholeWall, wholeCpu),
    '',
    '## Where `measure` spends its time there',
    '',
    'On the clock, over all that nodejs-polars takes as a process, in the same rounds.',
    '',
    '| | over polars |',
    '| --- | --- |',
    `| Node by itself | ${share('start')} |`,
    `| loading the program, printing, ending | ${share('load')} |`,
    `| reading, with the digest | ${share('read')} |`,
    `| measuring, compiled on the way | ${share('first')} |`,
    `| the same once more, compiled | ${share('again')} |`,
    '',
    '## Growth',
    '',
    'A file read by one thread and measured over and over, once all code is compiled: time of all cores for each row, over',
    `that at ${sizes[MIDDLE]} million rows. The last column is the time of the rows beyond those of the smallest file, for each`,
    'of them.',
    '',
    '| million rows | reading | measuring | both | rows beyond |',
    '| --- | --- | --- | --- | --- |',
    ...sizes.map(
      (millions, size) =>
        `| ${millions} | ${perRow(size, 'read')} | ${perRow(size, 'measured')} | ${perRow(size, 'both')} | ${perRowBeyond(size)} |`,
    ),
    '',
    `What does not grow with the rows (spectra, fits of one folded cycle, budgets) takes as long as ${fixedRows} million rows.`,
    '',
    '## Memory',
    '',
    `\`measure\` of 10 million rows with two channels takes ${(maxBytes / (8 * 2 * 10e6)).toFixed(2)} times the 8 bytes of each sample at most,`,
    `in ${ROUNDS} runs: ${(beside / 1e6).toFixed(0)} MB beside them.`,
    '',
  ];
  writeFileSync(new URL('./results.md', import.meta.url), lines.join('\n'));
  process.stdout.write(lines.join('\n'));
} finally {
  rmSync(folder, { recursive: true });
}
