// How the page stands beside the core in Node, on this machine, now: from drop to answer, and how long it ever leaves
// a person waiting. Needs a build, and Chromium as the tests of the browser do.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { timeProcess } from './timeProcess.mjs';
import { writeLargeCapture } from './writeLargeCapture.mjs';

const ROUNDS = 5;
const ROWS_OF_1_MB = 27_000;
const ROWS_OF_20_MB = 540_000;
const page = new URL('../../dist/page/sineassay.html', import.meta.url).href;
const folder = mkdtempSync(join(tmpdir(), 'sineassay-page-'));
const median = (values) => [...values].sort((a, b) => a - b)[values.length >> 1];

/** In the page: drops what is in its first file input, tells when the answer has been drawn and how long tasks took. */
async function dropAndWait() {
  const tasks = [];
  const observer = new PerformanceObserver((list) => {
    for (const { duration, startTime } of list.getEntries()) tasks.push({ duration, startTime });
  });
  observer.observe({ type: 'longtask' });
  const transfer = new DataTransfer();
  transfer.items.add(window.dropped);
  const start = performance.now();
  document.body.dispatchEvent(
    new DragEvent('drop', { dataTransfer: transfer, bubbles: true, cancelable: true }),
  );
  const answer = document.getElementById('answer');
  await new Promise((done) => {
    const look = () => {
      if (answer.getAttribute('aria-busy') !== 'false' || document.getElementById('known').hidden) return;
      seen.disconnect();
      done();
    };
    const seen = new MutationObserver(look);
    seen.observe(answer, { attributes: true, childList: true, subtree: true });
  });
  const knownAt = performance.now();
  await new Promise((done) => requestAnimationFrame(() => setTimeout(done)));
  const drawnAt = performance.now();
  // What is drawn once the samples have come.
  await new Promise((done) => setTimeout(done, 500));
  observer.disconnect();
  const longest = (of) => Math.max(0, ...of.map(({ duration }) => duration));
  return {
    wallMs: drawnAt - start,
    longestReadingMs: longest(tasks.filter(({ startTime }) => startTime + 50 < knownAt)),
    longestMs: longest(tasks),
  };
}

async function openWith(browser, file) {
  const tab = await browser.newPage();
  await tab.goto(page);
  await tab.evaluate(() => document.fonts.ready);
  // A file of the file system, taken off an input of ours.
  await tab.evaluate(() => {
    const input = document.createElement('input');
    input.type = 'file';
    input.id = 'to-drop';
    input.addEventListener('change', () => {
      window.dropped = input.files[0];
    });
    document.body.append(input);
  });
  await tab.setInputFiles('#to-drop', file);
  return tab;
}

try {
  const small = join(folder, 'small.csv');
  const large = join(folder, 'large.csv');
  writeLargeCapture(small, ROWS_OF_1_MB);
  writeLargeCapture(large, ROWS_OF_20_MB);
  const browser = await chromium.launch({
    executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
    args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking', '--disable-component-update'],
  });
  const rounds = [];
  for (let round = 0; round < ROUNDS; round++) {
    const core = (await timeProcess('readers/core.mjs', small)).work;
    const tab = await openWith(browser, small);
    const first = await tab.evaluate(dropAndWait);
    await tab.click('.remove');
    const again = await tab.evaluate(dropAndWait);
    await tab.close();
    const other = await openWith(browser, large);
    const read = await other.evaluate(dropAndWait);
    await other.close();
    const one = {
      first: first.wallMs / core.firstMs,
      again: again.wallMs / core.againMs,
      readingMs: read.longestReadingMs,
      longestMs: read.longestMs,
    };
    rounds.push(one);
    process.stderr.write(
      `${round + 1}/${ROUNDS} core ${core.firstMs.toFixed(0)} and ${core.againMs.toFixed(0)} ms, page ${first.wallMs.toFixed(0)} and ${again.wallMs.toFixed(0)} ms; 20 MB ${read.wallMs.toFixed(0)} ms, longest task ${read.longestReadingMs.toFixed(0)} ms while it is read, ${read.longestMs.toFixed(0)} ms at all\n`,
    );
  }
  await browser.close();
  const of = (key) => median(rounds.map((round) => round[key]));
  process.stdout.write(`## The page

Median of ${ROUNDS} rounds, each with a fresh page and a fresh process.

| | |
| --- | --- |
| from drop to answer on 1 MB over the core in Node, the first capture | ${of('first').toPrecision(2)} |
| the same, the second capture | ${of('again').toPrecision(2)} |
| longest task of the page while 20 MB are read (0: none above 50 ms) | ${of('readingMs').toFixed(0)} ms |
| longest task until all is drawn | ${of('longestMs').toFixed(0)} ms |
`);
} finally {
  rmSync(folder, { recursive: true });
}
