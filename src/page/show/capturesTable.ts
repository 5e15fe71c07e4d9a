import { errorWords, failureLine, fieldOf, type MeasureResult } from '../../entry/measuring.ts';
import {
  cleanText,
  cleanTexts,
  figureText,
  fileName,
  html,
  type Markup,
  mainFigures,
  outcomeWords,
  storyWords,
} from '../../entry/sections.ts';
import { type Entry, knownOf } from '../desk/sitting.ts';

/** What a person does in the table. */
interface TableActions {
  readonly look: (id: number) => void;
  readonly remove: (id: number) => void;
  readonly load: (id: number, load: string) => void;
}

interface CapturesTable {
  readonly show: (entry: Entry) => void;
  readonly drop: (id: number) => void;
  /** Marks the capture that is looked at. */
  readonly mark: (id: number | null) => void;
}

/** The captures on the page, a row each. Rows change cell by cell, so that nobody is interrupted while typing. */
export function capturesTable(host: HTMLElement, actions: TableActions): CapturesTable {
  host.innerHTML =
    html`<table class="data stacks" role="table"><caption class="hidden">Captures on this page</caption>
<thead role="rowgroup"><tr role="row"><th role="columnheader">Capture</th><th role="columnheader">Unit</th><th role="columnheader">Load</th><th role="columnheader">Kind of wave</th><th role="columnheader" class="number">RMS</th><th role="columnheader" class="number">THD</th><th role="columnheader">Claims</th><th role="columnheader"><span class="hidden">Remove</span></th></tr></thead><tbody role="rowgroup"></tbody></table>`.text;
  const body = host.querySelector('tbody')!;
  const rows = new Map<number, HTMLTableRowElement>();

  const rowOf = (entry: Entry): HTMLTableRowElement => {
    const known = rows.get(entry.id);
    if (known !== undefined) return known;
    const row = body.insertRow();
    row.setAttribute('role', 'row');
    rows.set(entry.id, row);
    const name = cleanText(fileName(entry.name));
    row.innerHTML =
      html`<th scope="row" role="rowheader" data-label="Capture"><button type="button" class="link file-name">${name}</button></th>
<td role="cell" data-label="Unit"></td><td role="cell" data-label="Load"><input type="text" aria-label="Load on ${name}"></td>
<td role="cell" data-label="Kind of wave"></td><td role="cell" class="number" data-label="RMS"></td><td role="cell" class="number" data-label="THD"></td><td role="cell" data-label="Claims"></td>
<td role="cell" data-label=""><button type="button" class="link remove" aria-label="Remove ${name}">Remove</button></td>`.text;
    const [look, remove] = row.querySelectorAll('button');
    look?.addEventListener('click', () => actions.look(entry.id));
    remove?.addEventListener('click', () => actions.remove(entry.id));
    const load = row.querySelector('input')!;
    load.addEventListener('input', () => actions.load(entry.id, load.value));
    return row;
  };
  return {
    show: (entry) => {
      const row = rowOf(entry);
      const load = row.querySelector('input')!;
      if (load.value !== entry.told.load) load.value = entry.told.load;
      const [, unit, , kind, rms, thd, claims, end] = row.cells;
      unit!.innerHTML = unitOf(entry).text;
      const cells = cellsOf(entry);
      // What is wrong with a file takes the place of all that would be known of it.
      const isFailed = entry.state.at === 'failed';
      kind!.colSpan = isFailed ? 4 : 1;
      kind!.dataset.label = isFailed ? 'Problem' : 'Kind of wave';
      for (const [i, cell] of [kind!, rms!, thd!, claims!].entries()) {
        cell.innerHTML = cells[i]!.text;
        cell.hidden = isFailed && i > 0;
      }
      const remove = end?.querySelector('button');
      const isRead = entry.state.at !== 'work' || knownOf(entry) !== null;
      const word = isRead ? 'Remove' : 'Cancel';
      if (remove != null && remove.textContent !== word) {
        remove.textContent = word;
        remove.setAttribute('aria-label', `${word} ${cleanText(fileName(entry.name))}`);
      }
    },
    drop: (id) => {
      const row = rows.get(id);
      if (row === undefined) return;
      // Who removes by keys goes on where they were.
      const next = row.nextElementSibling ?? row.previousElementSibling;
      const successor =
        next?.querySelector<HTMLElement>('.remove') ?? host.ownerDocument.getElementById('files');
      if (row.contains(host.ownerDocument.activeElement)) successor?.focus();
      row.remove();
      rows.delete(id);
    },
    mark: (id) => {
      for (const [one, row] of rows) row.setAttribute('aria-current', String(one === id));
    },
  };
}

/** What the unit is called; captures that were not told one are never taken for one unit by that. */
function unitOf({ told }: Entry): Markup {
  const label = cleanText(told.label).trim();
  return label === '' ? html`<span class="soft">not told</span>` : html`${label}`;
}

/** Kind, RMS, THD, claims. */
function cellsOf(entry: Entry): readonly [Markup, Markup, Markup, Markup] {
  const { state } = entry;
  if (state.at === 'failed')
    return [
      html`<span class="outside">${failureLine({ file: entry.name, error: errorWords(state.error, fieldOf) })}</span>`,
      html``,
      html``,
      html``,
    ];
  const known = knownOf(entry);
  if (known === null) {
    const share = state.at === 'work' ? state.share : null;
    const waits = share === null ? html`<span class="soft">waits</span>` : progress(share);
    return [waits, html``, html``, html``];
  }
  const { result } = known.assays[entry.channel] ?? known.assays[0]!;
  const figures = mainFigures(result);
  const outcomes = [...new Set(result.claims.map(({ outcome }) => outcomeWords(outcome)))];
  return [
    html`${kindText(result)}`,
    html`${figures === null ? '' : figureText(figures.rms, figures.unit)}`,
    html`${figures === null ? '' : figureText(figures.thdPercent, '%')}`,
    html`${outcomes.join(', ')}`,
  ];
}

/** What happened, where something did, and what the wave was beside it. */
function kindText(result: MeasureResult): string {
  const story = storyWords(cleanTexts(result));
  const { kind } = result.waveform;
  return story === null ? kind : `${story.brief}; ${kind} ${story.measuredThen}`;
}

function progress(share: number): Markup {
  const percent = Math.round(100 * share);
  return html`<progress class="share" max="100" value="${percent}" aria-label="read">${percent} %</progress>`;
}
