import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

const source = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface Axe {
  readonly run: () => Promise<{
    readonly violations: readonly {
      readonly id: string;
      readonly nodes: readonly { readonly html: string }[];
    }[];
  }>;
}

/** What axe finds wrong with a page as it stands, a line each with the first element concerned. */
export async function axeViolations(page: Page): Promise<string[]> {
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(source);
  return page.evaluate(async () => {
    const { violations } = await (window as unknown as { axe: Axe }).axe.run();
    return violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`);
  });
}
