import { expect, test } from 'vitest';
import { parseUnitClaim } from '../../../src/bench/claims/parseUnitClaim.ts';
import { outletQuantities, unitQuantities } from '../../../src/judge/claims/claimedQuantities.ts';
import { parseClaim } from '../../../src/judge/claims/parseClaim.ts';
import { kindNames, waveformKinds } from '../../../src/judge/waveform/kinds.ts';

const examplesOf = (quantities: Readonly<Record<string, { readonly examples: readonly string[] }>>) =>
  Object.entries(quantities).flatMap(([key, { examples }]) => examples.map((example) => [example, key]));

test.each(examplesOf(outletQuantities))('“%s” is a claim of %s', (example, key) => {
  expect(parseClaim(example!)).toMatchObject({ text: example, quantity: key });
});

test.each(examplesOf(unitQuantities))('“%s” is a claim of %s, for a bench test alone', (example, key) => {
  expect(parseUnitClaim(example!)).toMatchObject({ text: example, quantity: key });
  expect(() => parseClaim(example!)).toThrow(expect.objectContaining({ problem: 'claim.grammar.ofUnit' }));
});

test('the first example of a quantity has a tolerance or a bound', () => {
  for (const { examples } of Object.values(outletQuantities)) {
    expect(parseClaim(examples[0])).toMatchObject({ limit: expect.anything() });
  }
});

test('each word for a kind of wave is a claim of that kind, with "wave" behind it too', () => {
  const claimed = kindNames.flatMap((kind) => waveformKinds[kind].claimedAs.map((words) => [words, kind]));
  expect(claimed.length).toBeGreaterThan(4);
  for (const [words, kind] of claimed) {
    expect(parseClaim(words!)).toMatchObject({ quantity: 'waveform', kind });
    expect(parseClaim(`${words} wave`)).toMatchObject({ quantity: 'waveform', kind });
  }
});
