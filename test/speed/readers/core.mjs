// The core by itself, from a capture's bytes to its answer and what its sheet carries; once, and once more.
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { assayCapture, captureEvidence, readCapture } from '../../../dist/core/index.js';

const [, , file] = process.argv;
const bytes = readFileSync(file);
const timed = () => {
  const start = performance.now();
  const sha256 = createHash('sha256').update(bytes).digest('hex');
  const [assay] = assayCapture(readCapture(bytes), { file, sha256 }, {});
  captureEvidence(assay, 'wave', {}, '0.0.0');
  return performance.now() - start;
};
process.stdout.write(`${JSON.stringify({ firstMs: timed(), againMs: timed() })}\n`);
