import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { toJsonSchema } from '@valibot/to-json-schema';
import { defineConfig, type Plugin, type RolldownOptions } from 'rolldown';
import { dts } from 'rolldown-plugin-dts';
import { globSync } from 'tinyglobby';
import { typeface } from './src/cli/report/typeface.ts';
import { sittingSchema } from './src/page/save/sittingSchema.ts';
import { documentSchemas, sharedSchemas } from './src/publish/documentSchemas.ts';
import { pageStyle } from './src/publish/html/pageStyle.ts';
import { caution, noCertificate } from './src/words/text.ts';

const { version, dependencies } = JSON.parse(readFileSync('package.json', 'utf8')) as {
  readonly version: string;
  readonly dependencies: Readonly<Record<string, string>>;
};

/** Latin and Greek: what the sheets themselves say. Letters of other scripts come from the reader's own fonts. */
const faces = (await typeface()).filter(({ covers }) =>
  covers.some(([from]) => from === 0x0000 || from === 0x0370),
);

/** Where all is built into. */
const dist = process.env.SINEASSAY_DIST ?? 'dist';

/** The page as one HTML file: script and style inside, and a content policy that forbids all else. */
const page: RolldownOptions = {
  input: 'src/page/main.ts',
  platform: 'browser',
  transform: {
    target: 'es2022',
    define: { SHIPPED_VERSION: JSON.stringify(version), SHIPPED_FACES: JSON.stringify(faces) },
  },
  plugins: [onePage()],
  output: { dir: `${dist}/page`, format: 'iife', minify: true, cleanDir: true },
};

/** Packages stay where they were installed, but of valibot a tenth is used, at each start. */
const packages = Object.keys(dependencies).filter((name) => name !== 'valibot');
const outside = ['#csv', ...packages.map((name) => new RegExp(`^${name}(/|$)`))];

/** The command in a few files: to find and open hundreds of modules takes longer than to compile them. */
const command: RolldownOptions = {
  input: {
    main: 'src/cli/main.ts',
    // What `import … from 'sineassay'` gives.
    package: 'src/package.ts',
    'reading/readWorker': 'src/cli/reading/readWorker.ts',
    'reading/measureWorker': 'src/cli/reading/measureWorker.ts',
    // For tests and the benchmark, which read by it alone.
    'reading/readFileCapture': 'src/cli/reading/readFileCapture.ts',
  },
  platform: 'node',
  plugins: [publishedSchemas()],
  external: outside,
  output: {
    dir: `${dist}/cli`,
    format: 'esm',
    entryFileNames: '[name].js',
    // A folder deep, as the files that look for others beside them are in the source.
    chunkFileNames: 'chunks/[name]-[hash].js',
    cleanDir: true,
  },
};

/** What a program imports from the core, by need; beside it the types of all that a package offers. */
const parts = Object.fromEntries(
  ['src/index.ts', ...globSync('src/entry/*.ts')].map((file) => [basename(file, '.ts'), file]),
);
const core: RolldownOptions = {
  input: parts,
  // Nothing of Node's, nothing of a browser's.
  platform: 'neutral',
  external: outside,
  output: { dir: `${dist}/core`, format: 'esm', chunkFileNames: 'chunks/[name]-[hash].js', cleanDir: true },
};
const types: RolldownOptions = {
  ...core,
  // To take types out takes longer than all else.
  checks: { pluginTimings: false },
  input: { ...parts, package: 'src/package.ts' },
  plugins: [dts({ oxc: true, emitDtsOnly: true, tsconfig: false })],
  output: { dir: `${dist}/types`, format: 'esm', chunkFileNames: 'chunks/[name]-[hash].js', cleanDir: true },
};

export default defineConfig([command, core, types, page]);

/**
 * The JSON Schema of each document: `schemas/measure.json` and others. How long texts and lists may be is asked of
 * what comes in alone; that a number is finite needs no saying in JSON.
 */
function publishedSchemas(): Plugin {
  return {
    name: 'published schemas',
    generateBundle() {
      for (const [name, schema] of Object.entries({ ...documentSchemas, sitting: sittingSchema })) {
        const {
          $schema,
          $defs = {},
          ...described
        } = toJsonSchema(schema, {
          ...{ target: 'draft-2020-12', definitions: sharedSchemas, ignoreActions: ['finite', 'max_length'] },
        });
        const title = `sineassay/${name}@1`;
        const document = { $schema, $id: title, title, ...described, $defs: named($defs, described) };
        const source = `${JSON.stringify(document, null, 2)}\n`;
        this.emitFile({ type: 'asset', fileName: `schemas/${name}.json`, source });
      }
    },
  };
}

/** Those of the definitions that a schema refers to, itself or through one of them. */
function named<T>(definitions: Readonly<Record<string, T>>, from: unknown): Readonly<Record<string, T>> {
  let used: Readonly<Record<string, T>> = {};
  for (let before = -1; before < Object.keys(used).length; ) {
    before = Object.keys(used).length;
    const text = JSON.stringify([from, used]);
    used = Object.fromEntries(
      Object.entries(definitions).filter(([name]) => text.includes(`"#/$defs/${name}"`)),
    );
  }
  return used;
}

function onePage(): Plugin {
  return {
    name: 'one page',
    generateBundle(_, bundle) {
      const [chunk] = Object.values(bundle);
      if (chunk?.type !== 'chunk') throw new Error('the page has one script');
      delete bundle[chunk.fileName];
      // Within a script the end of one would end it.
      const script = chunk.code.replaceAll('</script', '<\\/script').trim();
      const style = [
        pageStyle,
        ...globSync('src/page/**/*.css')
          .sort()
          .map((file) => readFileSync(file, 'utf8')),
      ].join('\n');
      const policy = [
        "default-src 'none'",
        `script-src '${digestOf(script)}'`,
        `style-src '${digestOf(style)}'`,
        'worker-src blob:',
        'font-src data:',
        'img-src blob:',
        "base-uri 'none'",
        "form-action 'none'",
      ].join('; ');
      const parts: Readonly<Record<string, string>> = {
        policy,
        version,
        style,
        script,
        caution,
        noCertificate,
      };
      const source = readFileSync('src/page/page.html', 'utf8').replace(
        /\{\{(\w+)\}\}/g,
        (_, name: string) => {
          const part = parts[name];
          if (part === undefined) throw new Error(`the page has no ${name}`);
          return part;
        },
      );
      this.emitFile({ type: 'asset', fileName: 'sineassay.html', source });
    },
  };
}

function digestOf(text: string): string {
  return `sha256-${createHash('sha256').update(text).digest('base64')}`;
}
