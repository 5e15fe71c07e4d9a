import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { defineConfig, type Plugin } from 'rolldown';
import { globSync } from 'tinyglobby';
import { typeface } from './src/cli/report/typeface.ts';
import { caution, noCertificate } from './src/sheet/cautions.ts';
import { pageStyle } from './src/sheet/html/pageStyle.ts';

const { version } = JSON.parse(readFileSync('package.json', 'utf8')) as { readonly version: string };

/** Latin and Greek: what the sheets themselves say. Letters of other scripts come from the reader's own fonts. */
const faces = (await typeface()).filter(({ covers }) =>
  covers.some(([from]) => from === 0x0000 || from === 0x0370),
);

/** The page as one HTML file: script and style inside, and a content policy that forbids all else. */
export default defineConfig({
  input: 'src/page/main.ts',
  platform: 'browser',
  transform: {
    target: 'es2022',
    define: { SHIPPED_VERSION: JSON.stringify(version), SHIPPED_FACES: JSON.stringify(faces) },
  },
  plugins: [onePage()],
  output: { dir: process.env.SINEASSAY_PAGE ?? 'dist/page', format: 'iife', minify: true, cleanDir: true },
});

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
