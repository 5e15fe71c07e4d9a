import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { Ajv2020, type AnySchemaObject } from 'ajv/dist/2020.js';
import { afterAll, describe, expect, inject, test } from 'vitest';
import { planText } from '../../src/bench/plan/planText.ts';
import { sittingText } from '../../src/page/save/sittingFile.ts';
import { nothingTold } from '../../src/page/told/told.ts';
import { readEvidence } from '../../src/publish/evidence/readEvidence.ts';
import { parseYaml } from '../../src/read/text/parseYaml.ts';
import { runCommand } from './runCommand.ts';

const folder = mkdtempSync(join(tmpdir(), 'schema-'));
afterAll(() => rmSync(folder, { recursive: true }));

const captures = readdirSync('captures')
  .filter((name) => name.endsWith('.csv'))
  .map((name) => resolve('captures', name));
const names = [
  ...['measure', 'energy', 'bench', 'compare', 'recheck', 'truth', 'sheet', 'sitting'],
  ...['plan', 'instrument'],
];

async function printed(...words: string[]): Promise<string> {
  const { stdout, stderr } = await runCommand(words, folder);
  expect(stderr).toBe('');
  return stdout;
}

async function schemaOf(name: string): Promise<AnySchemaObject> {
  return JSON.parse(await printed('schema', name)) as AnySchemaObject;
}

/** The same where no key may stand that it doesn't name: what it leaves out would show. */
function closed(schema: unknown): unknown {
  if (Array.isArray(schema)) return schema.map(closed);
  if (typeof schema !== 'object' || schema === null) return schema;
  const entries = Object.entries(schema).map(([key, part]) => [key, closed(part)]);
  return {
    ...Object.fromEntries(entries),
    ...('properties' in schema ? { additionalProperties: false } : {}),
  };
}

/** What a standard validator says against a document; none: it is valid. */
function faults(schema: unknown, document: unknown): readonly string[] {
  const validate = new Ajv2020({ strict: true, strictTypes: false }).compile(schema as AnySchemaObject);
  validate(document);
  return (validate.errors ?? []).map(({ instancePath, message }) => `${instancePath} ${message}`);
}

/** Documents as the commands write them over the demonstration. */
const documents: Readonly<Record<string, () => Promise<readonly unknown[]>>> = {
  measure: async () => [
    JSON.parse(await printed('measure', ...captures, '--json')),
    JSON.parse(await printed('measure', captures[0]!, '--json', '--windows', '--claim', 'pure sine')),
  ],
  energy: async () => {
    const rows = Array.from({ length: 400 }, (_, i) => `${10 * i},12.${i % 10},${i < 300 ? 8 : 0},${i / 50}`);
    writeFileSync(join(folder, 'dc.csv'), ['time (s),volts (V),current (A),energy (Wh)', ...rows].join('\n'));
    const told = ['--rated', '100Wh', '--label', 'A', '--claim', 'runtime > 1 h'];
    return [
      JSON.parse(await printed('energy', 'dc.csv', '--json', ...told)),
      JSON.parse(await printed('energy', '--input', 'dc.csv', '--output', 'dc.csv', '--json')),
    ];
  },
  bench: async () => [JSON.parse(await printed('bench', resolve('captures/plan.yaml'), '--json'))],
  compare: async () => [JSON.parse(await printed('compare', captures[0]!, captures[1]!, '--json'))],
  recheck: async () => [
    JSON.parse(
      await printed(
        ...['recheck', resolve('reports/a-red-300w.svg'), resolve('captures/a-red-300w.csv'), '--json'],
      ),
    ),
  ],
  truth: async () => {
    await printed('synth', 'sine', '--out', 'made.csv');
    return [JSON.parse(readFileSync(join(folder, 'made.csv.truth.json'), 'utf8'))];
  },
  sheet: async () =>
    [...readdirSync('reports'), ...readdirSync('reports/bench').map((name) => `bench/${name}`)]
      .filter((name) => name.endsWith('.svg'))
      .map((name) => readEvidence(readFileSync(join('reports', name), 'utf8')).evidence),
  sitting: async () => {
    const told = { ...nothingTold, label: 'A', inverted: true, instrument: { bits: '8' } };
    const state = { at: 'work', share: null, before: null } as const;
    return [
      JSON.parse(
        await sittingText([{ id: 1, name: 'a.csv', told, file: new Blob(['0,1']), channel: 0, state }]),
      ),
    ];
  },
  plan: async () => [
    parseYaml(readFileSync('captures/plan.yaml', 'utf8')).data,
    parseYaml(planText(['red/300w.csv', 'red/step-600w.csv', 'red/transfer.csv'])).data,
    // With what is told of options, each in its shape.
    parseYaml(planText(['a.csv']).replaceAll(/^# (\w+: [^#\n]+)/gm, '$1')).data,
  ],
  instrument: async () => [parseYaml('gainPercent: 1.5\nbits: 12\n').data],
};

describe.each(names)('%s', (name) => {
  test('what is written is as the schema says, and the schema names every key of it', async () => {
    const schema = await schemaOf(name);
    const written = await documents[name]!();
    expect(written.length).toBeGreaterThan(0);
    for (const document of written) {
      expect(faults(schema, document)).toEqual([]);
      // What a sheet carries of course and steps is looked into by who draws it; and keys of two parts stand in one.
      if (name !== 'sheet' && name !== 'bench') expect(faults(closed(schema), document)).toEqual([]);
    }
  });

  test('a document of another schema is refused', async () => {
    expect(faults(await schemaOf(name), { schema: 'sineassay/other@1' })).not.toEqual([]);
  });
});

describe('a damaged document is refused at its place', () => {
  test.each<[string, string, string, string]>([
    ['a figure without its uncertainty', '"uncertainty":', '"doubt":', 'uncertainty'],
    ['a text for a number', '"cyclesUsed":', '"cyclesUsed":"all","other":', 'cyclesUsed'],
    ['a kind that there is not', '"kind":"modified sine"', '"kind":"fine"', 'waveform/kind'],
    ['a digest that is none', '"sha256":"', '"sha256":"../', 'sha256'],
    ['no claims', '"claims":', '"assertions":', 'claims'],
  ])('%s', async (_, from, to, place) => {
    const text = JSON.stringify(
      JSON.parse(await printed('measure', resolve('captures/b-blue-300w.csv'), '--json')),
    );
    expect(text.includes(from)).toBe(true);
    const found = faults(await schemaOf('measure'), JSON.parse(text.replace(from, to)));
    expect(found.join('\n')).toContain(place);
  });
});

test.each([
  ['a key misspelt', 'laod: 300 W', /additional properties/],
  ['a factor of zero', 'scale: 0', /scale/],
  ['a key of an instrument that there is not', 'instrument: { gain: 3 }', /instrument/],
])('a plan with %s is refused, as the command does', async (_, line, said) => {
  const { data } = parseYaml(`units:\n  - name: A\n    captures:\n      - file: a.csv\n        ${line}\n`);
  expect(faults(await schemaOf('plan'), data).join('\n')).toMatch(said);
});

test('each schema that is shipped can be printed, and what there is none of is refused in a line', async () => {
  const shipped = readdirSync(resolve(inject('command'), '../schemas')).map((file) =>
    file.replace('.json', ''),
  );
  expect(shipped.sort()).toEqual([...names].sort());
  const { code, stderr } = await runCommand(['schema', 'film'], folder);
  expect(code).toBe(2);
  expect(stderr).toContain(names.join(', '));
});
