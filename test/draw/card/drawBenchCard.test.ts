import { JSDOM } from 'jsdom';
import { expect, test } from 'vitest';
import { drawUnitCard } from '../../../src/draw/card/drawBenchCard.ts';
import { benchUnit } from '../../fixtures/benchUnits.ts';
import { texts } from '../itIsASheet.ts';

const { document } = new JSDOM().window;

test('regulation is of the loads that were held: 900 W of a unit rated for more is not called its full load', () => {
  const unit = benchUnit([0, 300, 900]);
  expect(unit.ratedW).toBeGreaterThan(900);
  const said = texts(drawUnitCard(document, unit, 'light'));
  expect(said).toContain('regulation, 0\u00a0W to 900\u00a0W');
  expect(said.join('\n')).not.toMatch(/full load/);
});
