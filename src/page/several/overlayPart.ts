import { overlayName } from '../../entry/comparing.ts';
import { errorWords, fieldOf, MeasureError } from '../../entry/measuring.ts';
import { cleanTexts, fileName, html } from '../../entry/sections.ts';
import { compareSentence, differenceTables } from '../../entry/together.ts';
import { type Entry, knownOf } from '../desk/sitting.ts';
import { setChoices } from '../show/answerTexts.ts';
import { saveButtons, savedSheet } from './savedSheet.ts';
import { newestAnswer, type SeveralActions, type SeveralView } from './severalView.ts';

/** Two captures held against each other: which, what differs, and the sheet of both. */
export function overlayPart(part: HTMLElement, { ask, turns, tried, onDefect }: SeveralActions): SeveralView {
  part.innerHTML = html`<h2 id="overlay-heading">Two captures held against each other</h2>
<div class="fields">
<div class="field"><label for="overlay-a">A</label><select id="overlay-a"></select></div>
<div class="field"><label for="overlay-b">B</label><select id="overlay-b"></select></div>
<div class="check"><input type="checkbox" id="overlay-same"><label for="overlay-same">Both through one instrument at one setting</label></div>
</div>
<p class="said" aria-live="polite"></p>
<div class="found">
${saveButtons}<details><summary>What differs, figure by figure, and the sheet</summary>
<div class="tables"></div>
<div class="sheet" role="group" aria-label="Sheet of both captures over each other"></div>
</details>
</div>
`.text;
  const selects = ['a', 'b'].map((side) => part.querySelector<HTMLSelectElement>(`#overlay-${side}`)!);
  const same = part.querySelector<HTMLInputElement>('#overlay-same')!;
  const said = part.querySelector<HTMLElement>('.said')!;
  const found = part.querySelector<HTMLElement>('.found')!;
  const tables = part.querySelector<HTMLElement>('.tables')!;
  const sheet = savedSheet(part, turns, tried);
  let entries: readonly Entry[] = [];
  let chosen: readonly [a: number | null, b: number | null] = [null, null];

  const inquire = newestAnswer(
    ask,
    'overlay',
    (answer) => {
      found.hidden = answer instanceof MeasureError;
      if (answer instanceof MeasureError) {
        said.textContent = errorWords(answer, fieldOf).message;
        sheet.clear();
        return;
      }
      const clean = cleanTexts(answer.shown);
      said.textContent = compareSentence(clean);
      tables.innerHTML = differenceTables(clean).text;
      sheet.show(answer.evidence, overlayName([answer.shown.a.file, answer.shown.b.file]));
    },
    onDefect,
  );
  const refresh = (): void => {
    const [a, b] = sidesOf(entries, chosen);
    part.hidden = a === undefined || b === undefined;
    if (a === undefined || b === undefined) {
      inquire(null, []);
      sheet.clear();
      return;
    }
    const choices = entries.map((entry) => [String(entry.id), wordsOf(entry)] as const);
    for (const [i, side] of [a, b].entries()) setChoices(selects[i]!, choices, String(side.id));
    const sides = [sideOf(a), sideOf(b)] as const;
    inquire({ sides, sameInstrument: same.checked }, [knownOf(a), knownOf(b)]);
  };
  part.addEventListener('change', () => {
    chosen = selects.map(({ value }) => Number(value)) as [number, number];
    refresh();
  });
  return {
    follow: (all) => {
      entries = all;
      refresh();
    },
  };
}

/** Those chosen, as far as they are there; the first two else. */
function sidesOf(
  entries: readonly Entry[],
  [a, b]: readonly [number | null, number | null],
): readonly [Entry | undefined, Entry | undefined] {
  if (entries.length < 2) return [undefined, undefined];
  const by = (id: number | null): Entry | undefined => entries.find((entry) => entry.id === id);
  const second = by(b);
  const first = by(a) ?? entries.find((entry) => entry !== second);
  return [first, second ?? entries.find((entry) => entry !== first)];
}

function sideOf({ id, channel }: Entry): { readonly id: number; readonly channel: number } {
  return { id, channel };
}

function wordsOf({ name, told: { load } }: Entry): string {
  return load.trim() === '' ? fileName(name) : `${fileName(name)} (${load.trim()})`;
}
