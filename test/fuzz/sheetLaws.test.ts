import { createHash } from 'node:crypto';
import { JSDOM } from 'jsdom';
import { describe, expect, test } from 'vitest';
import { assayCapture } from '../../src/assay/assayCapture.ts';
import { MeasureError } from '../../src/base/measureError.ts';
import type { Evidence } from '../../src/draw/evidence.ts';
import { type SealedEvidence, sealOf } from '../../src/draw/seal.ts';
import { parseClaim } from '../../src/judge/claims/parseClaim.ts';
import { carriedCaptures } from '../../src/publish/evidence/captureEvidence.ts';
import { isSealed, type OpenedSheet, readEvidence } from '../../src/publish/evidence/readEvidence.ts';
import { sealedSheet } from '../../src/publish/evidence/sealedSheet.ts';
import { galleryPage } from '../../src/publish/html/galleryPage.ts';
import { recheckCaptures } from '../../src/publish/recheck/recheckCaptures.ts';
import { recheckSheet } from '../../src/publish/recheck/recheckSheet.ts';
import { readCapture } from '../../src/read/readCapture.ts';
import { jsonText } from '../../src/words/text.ts';
import { firstMutant, mostFailures, seededRandom, sheetMutantCount } from './fuzzCount.ts';
import { sheetMutant } from './sheetMutants.ts';
import { smallCaptures } from './smallCaptures.ts';
import { measuredAgain, program, smallSheets } from './smallSheets.ts';

/**
 * What holds for a sheet whatever was done to it: it is read or refused with a line; it is never the same unless its
 * evidence, drawn and sealed anew, gives it sign by sign; held against captures it gives an answer; and the gallery of
 * its folder is made.
 *
 * The same and yet changed may be only what no picture shows, sealed again by a careful hand (an option, a digit past
 * those that are drawn): the file is then the sheet of its own evidence, and only the capture tells.
 */
const seed = 20_261_201;
const face =
  "@font-face{font-family:'Source Sans 3';font-weight:400;src:url(data:font/woff2;base64,d09GMgABAAAAAA)}";
const press = {
  document: new JSDOM().window.document,
  sha256: (text: string) => createHash('sha256').update(text).digest('hex'),
  typeface: [{ weight: 400 as const, covers: [[0x20, 0x7e] as const], rule: face }],
};
const sheets = Object.entries(smallSheets).map(([name, evidence]) => ({
  name,
  text: sealedSheet(press, evidence),
}));
const good = readEvidence(sheets[0]!.text);

describe(`${sheetMutantCount} mutants of sheets`, () => {
  test('each sheet itself is the same, also against its captures', () => {
    for (const { name, text } of sheets) {
      const opened = readEvidence(text);
      expect({ name, faults: recheckSheet(press, opened, program) }).toEqual({ name, faults: [] });
      const isOfOne = opened.evidence.picture !== 'sweep' && opened.evidence.picture !== 'comparison';
      if (isOfOne) continue;
      expect({ name, ...recheckCaptures(opened.evidence, measuredAgain) }).toMatchObject({
        name,
        differences: [],
      });
    }
  });

  test('are read or refused, never the same, and keep no gallery from being made', () => {
    const failures: string[] = [];
    let drawn = 0;
    for (let i = firstMutant; i < firstMutant + sheetMutantCount; i++) {
      if (failures.length >= mostFailures) break;
      const { name, text } = sheets[i % sheets.length]!;
      const { text: mutant, done } = sheetMutant(text, sealedAgain(text), seededRandom(seed + i));
      const wrong = mutant === text ? null : faultOf(mutant);
      if (wrong === 'drawn') drawn++;
      else if (wrong !== null) failures.push(`${i} (${name}; ${done.join('; ')}): ${wrong}`);
    }
    expect(failures).toEqual([]);
    // A law about nothing would hold for ever.
    expect(drawn).toBeGreaterThan(sheetMutantCount / 20);
  });
});

function faultOf(mutant: string): string | null {
  try {
    let opened: OpenedSheet;
    try {
      opened = readEvidence(mutant);
    } catch (error) {
      if (error instanceof MeasureError) return null;
      throw error;
    }
    const { evidence } = opened;
    const listed = (name: string, own: Evidence) => ({ name, evidence: own, beside: [] });
    const gallery = { program, unread: [], others: [] };
    const page = galleryPage(press, {
      ...gallery,
      sheets: [listed('mutant.svg', evidence), listed('good.svg', good.evidence)],
    });
    if (!page.includes('good.svg')) return 'the gallery lost another sheet';
    const sealed = isSealed(opened, press.sha256);
    const { carried } = recheckCaptures(evidence, measuredAgain);
    if (carried.length === 0 && evidence.picture === 'wave') return 'no capture is named';
    measureAsTold(evidence);
    const faults = recheckSheet(press, opened, program);
    if (faults.length > 0) return 'drawn';
    const { resultSha256: _, evidenceSha256: __, pictureSha256: ___, ...plain } = evidence;
    // Independent of how it was checked: the text itself.
    if (!sealed || sealedSheet(press, plain) !== mutant) return 'it counts as the same';
    return 'drawn';
  } catch (error) {
    if (!(error instanceof Error)) return String(error);
    return (error.stack ?? error.message).split('\n').slice(0, 4).join(' ');
  }
}

/** As `recheck` does it: with whatever options the sheet carries. */
function measureAsTold(evidence: Evidence): void {
  for (const { options } of carriedCaptures(evidence)) {
    const text = JSON.stringify(options);
    if (knownOptions.has(text)) continue;
    const { claims, sampleRateHz, ...others } = options;
    const rate = sampleRateHz === undefined ? {} : { sampleRateHz };
    try {
      const told = { ...others, claims: claims.map(parseClaim) };
      assayCapture(readCapture(sine, rate), { file: 'sine.csv', sha256: '0'.repeat(64) }, told);
    } catch (error) {
      if (!(error instanceof MeasureError)) throw error;
    }
  }
}
const sine = new TextEncoder().encode(smallCaptures.sine);
const knownOptions = new Set(
  Object.values(smallSheets).flatMap((evidence) =>
    carriedCaptures(evidence).map(({ options }) => JSON.stringify(options)),
  ),
);

/** Digests made to fit changed data; the picture and its digest stay. */
function sealedAgain(sheet: string): (json: string) => string {
  const { picture } = readEvidence(sheet);
  return (json) => {
    try {
      const { resultSha256: _, evidenceSha256: __, ...evidence } = JSON.parse(json) as SealedEvidence;
      const { pictureSha256, ...plain } = evidence;
      return jsonText({ ...plain, ...sealOf(plain as Evidence, picture, press.sha256), pictureSha256 });
    } catch {
      // No JSON any more, or too deep: there is nothing to seal.
      return json;
    }
  };
}
