import { JSDOM } from 'jsdom';
import { expect, test } from 'vitest';
import type { BenchUnit } from '../../../src/bench/benchDocument.ts';
import { thumbnail } from '../../../src/publish/html/thumbnail.ts';
import { benchUnit } from '../../fixtures/benchUnits.ts';

const picture = (result: BenchUnit): Element =>
  JSDOM.fragment(
    thumbnail({ schema: 'sineassay/sheet@1', program: '0.0.0', picture: 'sweep', told: [] as never, result })
      .text,
  ).firstElementChild!;
const corners = (svg: Element): number => svg.querySelector('.wave')!.getAttribute('d')!.split('L').length;

test('a load under which the output was lost is a cross beside the line of a sweep', () => {
  const unit = benchUnit([0, 300, 600, 900]);
  const last = unit.points.at(-1)!;
  const lost = picture({ ...unit, points: [...unit.points.slice(0, -1), { ...last, lost: 'output lost' }] });
  expect([
    lost.querySelectorAll('.dot').length,
    lost.querySelectorAll('.lost').length,
    corners(lost),
  ]).toEqual([3, 1, 3]);
  const whole = picture(unit);
  expect([
    whole.querySelectorAll('.dot').length,
    whole.querySelectorAll('.lost').length,
    corners(whole),
  ]).toEqual([4, 0, 4]);
});
