import { parseWatts, sweepName } from '../../entry/benching.ts';
import type { ComparisonEvidence } from '../../entry/evidence.ts';
import { briefly, fieldOf, MeasureError } from '../../entry/measuring.ts';
import { cleanTexts, fileName, html } from '../../entry/sections.ts';
import {
  benchSentences,
  benchSpoken,
  comparisonSentence,
  comparisonTable,
  unitTables,
} from '../../entry/together.ts';
import { type Entry, knownOf } from '../desk/sitting.ts';
import { setChoices } from '../show/answerTexts.ts';
import { TYPING_MS } from '../told/told.ts';
import type { Sweeps } from '../worker/requests.ts';
import { saveButtons, savedSheet } from './savedSheet.ts';
import { newestAnswer, type SeveralActions, type SeveralView } from './severalView.ts';
import { sweepUnits } from './sweepUnits.ts';

/** Units over their captures at several loads; and the units side by side, where there are two. */
export function sweepPart(part: HTMLElement, { ask, turns, tried, onDefect }: SeveralActions): SeveralView {
  part.innerHTML = html`<h2 id="sweep-heading">Over the load</h2>
<p class="hint soft">Tell the loads of two captures or more in watts, such as “300 W” and “no load”, and see here what the load does to the voltage.</p>
<div class="swept" hidden>
<div class="fields">
<div class="field"><label for="sweep-unit">Unit</label><select id="sweep-unit"></select></div>
<div class="field"><label for="sweep-rated">Rated power, W</label><input id="sweep-rated" type="text" inputmode="decimal" aria-describedby="hint-rated fault-rated" autocomplete="off"><small id="hint-rated">as the box says; above it is overload</small><span class="fault" id="fault-rated" role="alert"></span></div>
</div>
<div class="said" aria-live="polite"></div>
<div class="found">
${saveButtons}<details><summary>Every load in figures, and the sheet</summary>
<div class="tables"></div>
<div class="sheet" role="group" aria-label="Sheet of the unit over its loads"></div>
</details>
</div>
</div>
<section class="beside" aria-labelledby="beside-heading" hidden><h3 id="beside-heading">Units side by side</h3>
<p class="compared"></p>
${saveButtons}<details><summary>Figures of the units, and the sheet</summary>
<div class="beside-tables"></div>
<div class="sheet" role="group" aria-label="Sheet of the units side by side"></div>
</details></section>
`.text;
  const one = <E extends HTMLElement = HTMLElement>(selector: string): E => part.querySelector<E>(selector)!;
  const [hint, swept, said, found] = ['.hint', '.swept', '.said', '.found'].map((name) => one(name));
  const beside = one('.beside');
  const unit = one<HTMLSelectElement>('#sweep-unit');
  const rated = one<HTMLInputElement>('#sweep-rated');
  const sheet = savedSheet(swept!, turns, tried);
  const comparison = savedSheet(beside, turns, tried);
  const ratings = new Map<string, string>();
  let entries: readonly Entry[] = [];
  let looked: number | null = null;
  let leftOut: readonly string[] = [];
  let answer: Sweeps | null = null;
  let typing: ReturnType<typeof setTimeout> | undefined;

  const showUnit = (): void => {
    const sweep = answer?.sweeps.find(({ shown }) => shown.label === unit.value);
    if (sweep === undefined) return;
    const { evidence, shown } = sweep;
    const clean = cleanTexts(shown);
    const [spoken] = benchSpoken(clean);
    said!.innerHTML = html`<p>${spoken}</p><ul class="plain">${benchSentences(clean).map(
      (sentence) => html`<li>${sentence}</li>`,
    )}${leftOut.length > 0 && html`<li class="soft">Left out, for their load in watts or their unit is not told: ${leftOut.map(fileName).join(', ')}.</li>`}</ul>`.text;
    // Its doubts are among the sentences.
    one('.tables').innerHTML = unitTables({ ...clean, notices: [] }).text;
    sheet.show(evidence, sweepName(evidence.result.name));
  };
  const showComparison = (evidence: ComparisonEvidence | null): void => {
    beside.hidden = evidence === null;
    if (evidence === null) {
      comparison.clear();
      return;
    }
    const clean = cleanTexts(evidence.result);
    one('.compared').textContent = comparisonSentence(clean.units);
    one('.beside-tables').innerHTML = comparisonTable(clean).text;
    comparison.show(evidence, 'comparison');
  };
  const inquire = newestAnswer(
    ask,
    'sweep',
    (given) => {
      found!.hidden = given instanceof MeasureError;
      if (given instanceof MeasureError) {
        answer = null;
        said!.textContent = briefly(given, fieldOf);
        sheet.clear();
        showComparison(null);
        return;
      }
      answer = given;
      showUnit();
      showComparison(given.comparison);
    },
    onDefect,
  );
  const refresh = (): void => {
    const { units, leftOut: others } = sweepUnits(entries, looked, ratings);
    leftOut = others;
    part.hidden = entries.length < 2;
    hint!.hidden = units.length > 0;
    swept!.hidden = units.length === 0;
    if (units.length === 0) {
      inquire(null, []);
      sheet.clear();
      showComparison(null);
      return;
    }
    const labels = units.map(({ label }) => label);
    const before = unit.value;
    const chosen = labels.includes(before) ? before : labels[0]!;
    const rating = ratings.get(before);
    if (chosen !== before && rating !== undefined && !ratings.has(chosen)) {
      // Told another name it is still the same unit.
      ratings.delete(before);
      ratings.set(chosen, rating);
      refresh();
      return;
    }
    unit.parentElement!.hidden = labels.length < 2;
    setChoices(
      unit,
      labels.map((label) => [label, label]),
      chosen,
    );
    if (chosen !== before) showRating();
    inquire({ units }, [...entries.map(knownOf), ...leftOut]);
  };
  const showRating = (): void => {
    rated.value = (ratings.get(unit.value) ?? '').replace(/[^\d.]/g, '');
    showFault('');
  };
  const showFault = (fault: string): void => {
    one('#fault-rated').textContent = fault;
    if (fault === '') rated.removeAttribute('aria-invalid');
    else rated.setAttribute('aria-invalid', 'true');
  };
  const rate = (label: string, text: string): void => {
    const { claim, fault } = ratingOf(text);
    showFault(fault);
    if (fault !== '') return;
    if (claim === null) ratings.delete(label);
    else ratings.set(label, claim);
    refresh();
  };
  rated.addEventListener('input', () => {
    clearTimeout(typing);
    typing = setTimeout(rate, TYPING_MS, unit.value, rated.value.trim());
  });
  unit.addEventListener('change', () => {
    showRating();
    showUnit();
  });
  return {
    follow: (all, id) => {
      entries = all;
      looked = id;
      refresh();
    },
  };
}

/** A rating as a claim; null: none is told. */
function ratingOf(text: string): { readonly claim: string | null; readonly fault: string } {
  if (text === '') return { claim: null, fault: '' };
  try {
    const watts = parseWatts(text);
    return watts > 0
      ? { claim: `power ${watts} W`, fault: '' }
      : { claim: null, fault: 'A power above zero is expected.' };
  } catch (problem) {
    if (!(problem instanceof MeasureError)) throw problem;
    return { claim: null, fault: 'Watts are expected, such as 600 or 1.2 kW.' };
  }
}
