import type { Page } from 'playwright-core';

/** What a reader would stumble over on a sheet. */
export interface TextFaults {
  /** Pairs of texts whose ink shares room. */
  readonly overlaps: readonly string[];
  /** Texts that leave the page. */
  readonly outside: readonly string[];
  readonly count: number;
}

/**
 * Finds texts of a sheet that run into each other or off the page, as Chromium lays them out.
 *
 * A text's box is as wide as Chromium sets it, and as high as ink goes in the sheet's typeface: from 0.74 of the
 * size above the baseline (ascenders) to 0.21 below (descenders). The line box that a browser reports is higher
 * (1.26 of the size), with air in it that the lines of a paragraph rightly share.
 */
export async function textFaults(page: Page, svg: string): Promise<TextFaults> {
  await page.setContent(`<!doctype html><body style="margin:0">${svg}</body>`);
  return page.evaluate(() => {
    const sheet = document.querySelector('svg')!;
    const { width, height } = sheet.viewBox.baseVal;
    const boxes = [...sheet.querySelectorAll('text')].map((element) => {
      const { x, width: wide } = element.getBBox();
      const size = Number(element.getAttribute('font-size'));
      const baseline = Number(element.getAttribute('y'));
      return {
        text: (element.textContent ?? '').slice(0, 60),
        ...{ left: x, right: x + wide, top: baseline - 0.74 * size, bottom: baseline + 0.21 * size },
      };
    });
    const touching = 0.5;
    const overlaps = boxes.flatMap((a, i) =>
      boxes
        .slice(i + 1)
        .filter(
          (b) =>
            Math.min(a.right, b.right) - Math.max(a.left, b.left) > touching &&
            Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > touching,
        )
        .map((b) => `“${a.text}” and “${b.text}”`),
    );
    const outside = boxes
      .filter(({ left, right, top, bottom }) => left < 0 || top < 0 || right > width || bottom > height)
      .map(({ text }) => text);
    return { overlaps, outside, count: boxes.length };
  });
}
