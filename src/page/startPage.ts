import {
  briefly,
  errorWords,
  type FailedResult,
  fieldOf,
  MeasureError,
  type MeasureResult,
} from '../entry/measuring.ts';
import { offerExamples } from './demonstration/offerExamples.ts';
import { type Entry, knownOf, type NamedFile, openSitting } from './desk/sitting.ts';
import { chosenFiles, droppedFiles, takeDrops } from './desk/takenFiles.ts';
import { workerClient } from './desk/workerClient.ts';
import { saveJson, saveText } from './save/saveResult.ts';
import { readSitting, sittingText } from './save/sittingFile.ts';
import { severalPart } from './several/severalPart.ts';
import { drawingTurns } from './several/severalView.ts';
import { faces, loadTypefaces } from './shipped.ts';
import { answerPart } from './show/answerPart.ts';
import { capturesTable } from './show/capturesTable.ts';

/**
 * Starts the page.
 *
 * @param script - the page's own, which the worker is started from.
 */
export function startPage(document: Document, script: string): void {
  const part = <E extends HTMLElement = HTMLElement>(id: string): E => document.getElementById(id) as E;
  const status = (text: string): void => {
    part('status').textContent = text;
  };
  const onDefect = (problem: unknown): void => {
    const words = problem instanceof Error ? problem.message : String(problem);
    status(`This is a defect of ours, please report it: ${words}`);
  };
  const tried = async (work: () => Promise<string> | string): Promise<void> => {
    try {
      status(await work());
    } catch (problem) {
      if (problem instanceof MeasureError) status(briefly(problem, fieldOf));
      else onDefect(problem);
    }
  };
  loadTypefaces(document, faces).catch(onDefect);

  let looked: number | null = null;
  /** Whether a person chose what is looked at. */
  let isChosen = false;
  const ask = workerClient(script, onDefect);
  const sitting = openSitting(
    ask,
    (id, entry) => {
      if (entry === undefined) table.drop(id);
      else table.show(entry);
      if (looked === id && entry === undefined) look(sitting.entries()[0]?.id ?? null);
      // What others turn out to be can be told of this one: the current in another file.
      else if (looked === id || entry?.state.at !== 'work') showLooked();
      if (!isChosen) lookElsewhere();
      arrange();
    },
    onDefect,
  );
  const table = capturesTable(part('capture-table'), {
    look: (id) => {
      isChosen = true;
      look(id);
      part('answer-heading').focus();
    },
    remove: sitting.remove,
    load: (id, load) => tell(id, { load }),
  });
  const turns = drawingTurns();
  const several = severalPart(part('several'), { ask, turns, tried, onDefect });
  const answer = answerPart(document, {
    ask,
    turns,
    tell: sitting.tell,
    choose: sitting.choose,
    measured: sitting.measured,
    share: (from) => {
      for (const entry of sitting.entries()) {
        if (entry.id === from.id) continue;
        const { load, meterV, voltage, current } = entry.told;
        sitting.tell(entry.id, { ...from.told, load, meterV, voltage, current });
      }
      status('Told the other captures the same.');
    },
    tried,
  });
  const tell = (id: number, told: Partial<Entry['told']>): void => {
    const entry = sitting.entries().find((one) => one.id === id);
    if (entry !== undefined) sitting.tell(id, { ...entry.told, ...told });
  };
  const look = (id: number | null): void => {
    looked = id;
    part('answer').hidden = id === null;
    table.mark(id);
    showLooked();
  };
  const showLooked = (): void => {
    const entry = sitting.entries().find(({ id }) => id === looked);
    if (entry !== undefined) answer.show(entry, sitting.entries());
    several.follow(sitting.entries(), looked);
  };
  /** Of several, the first that can be measured is worth more than one that can't. */
  const lookElsewhere = (): void => {
    const entries = sitting.entries();
    if (entries.find(({ id }) => id === looked)?.state.at !== 'failed') return;
    const better = entries.find(({ state }) => state.at === 'ready');
    if (better !== undefined) look(better.id);
  };
  const arrange = (): void => {
    const entries = sitting.entries();
    part('captures').hidden = entries.length === 0;
    part('welcome').hidden = entries.length > 0;
    part('examples').hidden = entries.length > 0;
    part('remove-all').hidden = entries.length < 2;
    several.follow(entries, looked);
    const busy = entries.filter(({ state }) => state.at === 'work').length;
    if (busy > 0) status(busy === 1 ? 'Measuring…' : `Measuring, ${busy} to go…`);
    else if (/^Measuring/.test(part('status').textContent)) status(measuredWords(entries));
  };
  const add = (files: readonly NamedFile[]): void => {
    if (files.length === 0) return;
    const [first] = sitting.add(files);
    if (looked === null && first !== undefined) look(first);
    arrange();
  };
  const open = async (file: File): Promise<string> => {
    const files = await readSitting(file);
    add(files);
    return `Opened ${files.length === 1 ? 'one capture' : `${files.length} captures`} of the sitting.`;
  };

  const files = part<HTMLInputElement>('files');
  const folder = part<HTMLInputElement>('folder');
  for (const input of [files, folder]) {
    input.addEventListener('change', () => {
      add(chosenFiles(input.files!));
      input.value = '';
    });
  }
  part('folder-choice').hidden = !('webkitdirectory' in folder);
  const sittingInput = part<HTMLInputElement>('sitting');
  sittingInput.addEventListener('change', () => {
    const [file] = sittingInput.files!;
    if (file !== undefined) void tried(() => open(file));
    sittingInput.value = '';
  });
  takeDrops(document, (transfer) => {
    void tried(async () => {
      const dropped = await droppedFiles(transfer);
      const sittings = dropped.filter(({ name }) => /\.json$/i.test(name));
      add(dropped.filter((one) => !sittings.includes(one)));
      const words = [];
      for (const { file } of sittings) words.push(await open(file as File));
      return words.join(' ') || (dropped.length === 0 ? 'Nothing dropped is a file.' : 'Measuring…');
    });
  });

  part('save-all-json').addEventListener('click', () => {
    void tried(async () => {
      await sitting.measured(sitting.entries().map(({ id }) => id));
      return saveJson(document, sitting.entries().flatMap(resultsOf), 'results.json');
    });
  });
  part('save-sitting').addEventListener('click', () => {
    void tried(async () => {
      const text = await sittingText(sitting.entries());
      saveText(document, 'sitting.json', text, 'application/json');
      return 'Saved sitting.json: captures and all that you told of them.';
    });
  });
  part('remove-all').addEventListener('click', () => {
    for (const { id } of sitting.entries()) sitting.remove(id);
  });
  offerExamples(part('example-list'), (file) => {
    add([file]);
    // The button that had the focus is gone.
    part('answer-heading').focus();
  });
}

/** For who hears the page and does not see it. */
function measuredWords(entries: readonly Entry[]): string {
  const failed = entries.filter(({ state }) => state.at === 'failed').length;
  const all = entries.length;
  if (all === 0) return '';
  if (failed === 0) return all === 1 ? 'Measured.' : `Measured all ${all}.`;
  return `Measured ${all - failed} of ${all}; ${failed === 1 ? 'one' : failed} can’t be measured.`;
}

function resultsOf(entry: Entry): readonly (MeasureResult | FailedResult)[] {
  if (entry.state.at === 'failed') return [{ file: entry.name, error: errorWords(entry.state.error) }];
  return knownOf(entry)?.assays.map(({ result }) => result) ?? [];
}
