import { select } from 'd3';
import { JSDOM } from 'jsdom';
import { expect, test } from 'vitest';
import { drawClaims } from '../../../src/draw/panels/drawMargin.ts';
import { drawNotes, drawParagraph } from '../../../src/draw/panels/drawNotes.ts';
import type { Panel } from '../../../src/draw/paper/writeText.ts';

const { document } = new JSDOM().window;

/** What is written, a line each. */
function drawn(draw: (panel: Panel) => unknown): string[] {
  const svg = document.createElementNS('http://www.w3.org/2000/svg', 'svg');
  draw(select<SVGGElement, unknown>(svg as unknown as SVGGElement).append('g') as unknown as Panel);
  return [...svg.querySelectorAll('text')].map(({ textContent }) => textContent ?? '');
}

const box = { x: 0, y: 0, width: 460, height: 120 };
const note = (i: number): string =>
  `Doubt ${i} names what was seen in this capture, why the figures may be off by it, and then what to set on the scope.`;

test('drawNotes writes notes whole, the first before all others, and says how many more stand elsewhere', () => {
  const notes = [1, 2, 3, 4, 5].map(note);
  const lines = drawn((panel) => drawNotes(panel, 'What to doubt', notes, box));
  const [heading, aside, ...text] = lines;
  const shown = text.join(' ');
  expect(heading).toBe('What to doubt');
  expect(lines.join()).not.toContain('…');
  const whole = notes.filter((one) => shown.includes(one));
  expect(whole.length).toBeGreaterThan(0);
  expect(whole).toEqual(notes.slice(0, whole.length));
  expect(shown).toBe(whole.join(' '));
  expect(aside).toBe(`${5 - whole.length} more in the page and the JSON`);
});

test('drawNotes never shows a lesser note in place of a long first one', () => {
  const long = Array.from({ length: 12 }, (_, i) => note(i)).join(' ');
  const lines = drawn((panel) => drawNotes(panel, 'What to doubt', [long, 'Little.'], box));
  expect(lines).toEqual(['What to doubt', '2 in the page and the JSON']);
});

test('drawParagraph leaves sentences out whole where there is no room, and says so', () => {
  const sentences = Array.from({ length: 12 }, (_, i) => note(i));
  const lines = drawn((panel) => drawParagraph(panel, 'How it was measured', sentences, box));
  const text = lines.slice(1).join(' ');
  expect(text.startsWith(note(0))).toBe(true);
  expect(text.endsWith(' More in the page and the JSON.')).toBe(true);
  expect(text).not.toContain('…');
  expect(drawn((panel) => drawParagraph(panel, 'How', ['One.', 'Two'], box))).toEqual(['How', 'One. Two.']);
});

test('drawClaims writes whole why a claim can’t be judged', () => {
  const reason =
    'a value alone says nothing of how far it may be off: write for example 120 V ±5 %, or give a range';
  const lines = drawn((panel) =>
    drawClaims(
      panel,
      [
        {
          text: '120 V',
          quantity: 'rmsV',
          value: 119,
          limit: null,
          outcome: 'not judged',
          probability: null,
          reason,
        },
      ],
      box,
    ),
  );
  expect(lines.join(' ')).toContain(reason);
});
