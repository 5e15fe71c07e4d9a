import { errorWords, failureLine, fieldOf } from '../../entry/measuring.ts';
import { cleanText, fileName, html } from '../../entry/sections.ts';
import { type Entry, knownOf, type Sitting } from '../desk/sitting.ts';
import type { Ask } from '../desk/workerClient.ts';
import { type Saving, saveResult } from '../save/saveResult.ts';
import { inlineSheet } from '../several/savedSheet.ts';
import type { DrawingTurns } from '../several/severalView.ts';
import { type Told, TYPING_MS } from '../told/told.ts';
import { toldForm } from '../told/toldForm.ts';
import { toldOptions } from '../told/toldOptions.ts';
import type { Measured, MeasuredChannel } from '../worker/requests.ts';
import { answerTexts } from './answerTexts.ts';
import { picturesOf } from './picturesOf.ts';

interface AnswerPart {
  readonly show: (entry: Entry, all: readonly Entry[]) => void;
}

interface AnswerActions extends Pick<Sitting, 'tell' | 'choose' | 'measured'> {
  readonly ask: Ask;
  readonly turns: DrawingTurns;
  /** Tells the other captures the same. */
  readonly share: (from: Entry) => void;
  /** Does something that may fail, and says what came of it. */
  readonly tried: (work: () => Promise<string> | string) => Promise<void>;
}

/** The part of the page about the capture that is looked at. */
export function answerPart(document: Document, actions: AnswerActions): AnswerPart {
  const part = (id: string): HTMLElement => document.getElementById(id)!;
  let entry: Entry | null = null;
  let shown: MeasuredChannel | null = null;
  let typing: ReturnType<typeof setTimeout> | undefined;
  let typed: { readonly id: number; readonly told: Told } | null = null;

  const finishTyping = (): void => {
    clearTimeout(typing);
    if (typed !== null) actions.tell(typed.id, typed.told);
    typed = null;
  };
  const form = toldForm(
    part('told') as HTMLFormElement,
    (told) => {
      if (entry === null) return;
      typed = { id: entry.id, told };
      showFaults(told);
      clearTimeout(typing);
      typing = setTimeout(finishTyping, TYPING_MS);
    },
    finishTyping,
    () => {
      finishTyping();
      if (entry !== null) actions.share(entry);
    },
  );
  const changesPlace = part('changes');
  const changes = inlineSheet(changesPlace, actions.turns);
  const pictures = picturesOf(document, actions.ask);
  const showFaults = (told: Told): void => {
    form.show(told, toldOptions(told).faults);
  };

  part('save').addEventListener('click', (event) => {
    const what = (event.target as HTMLElement).closest('button')?.dataset.save;
    if (what === undefined || entry === null) return;
    finishTyping();
    const { id } = entry;
    void actions.tried(async () => {
      // As it is told by now, not as it was measured before.
      await actions.measured([id]);
      const channel = entry?.id === id ? knownOf(entry)?.assays[entry.channel] : undefined;
      return channel === undefined ? 'Nothing to save.' : saveResult(document, what as Saving, channel);
    });
  });
  part('answer').addEventListener('click', (event) => {
    const atS = (event.target as HTMLElement).closest<HTMLElement>('a.time')?.dataset.at;
    if (atS === undefined) return;
    // To follow the link would take the focus from the picture.
    event.preventDefault();
    part('wave-part').scrollIntoView();
    pictures.goTo(Number(atS));
  });

  return {
    show: (next, all) => {
      const isOther = entry?.id !== next.id;
      if (isOther) finishTyping();
      entry = next;
      const known = knownOf(next);
      const { state } = next;
      const failed =
        state.at === 'failed'
          ? failureLine({ file: next.name, error: errorWords(state.error, fieldOf) })
          : '';
      part('failure').hidden = failed === '';
      part('failure').textContent = failed;
      part('known').hidden = known === null;
      part('wave-part').hidden = known === null;
      part('course').hidden = known === null;
      part('details').hidden = known === null;
      part('answer').setAttribute('aria-busy', String(state.at === 'work'));
      // What is being typed is newer than what was told.
      if (isOther || typed === null) showFaults(next.told);
      part('share-told').hidden = all.length < 2;
      if (known === null) {
        part('question').textContent = '';
        part('subject').textContent = '';
        part('invented').hidden = true;
        part('answer-heading').textContent =
          state.at === 'failed'
            ? 'This capture can’t be measured as it is told'
            : cleanText(fileName(next.name));
        shown = null;
        return;
      }
      const channel = known.assays[next.channel] ?? known.assays[0]!;
      // Other captures come and go while this one stays.
      form.offer(
        known.channels,
        all
          .filter(({ id }) => id !== next.id)
          .flatMap((other) =>
            (knownOf(other)?.channels ?? [])
              .filter(({ quantity }) => quantity === 'current')
              .map(({ name }) => `${other.name}:${name}`),
          ),
      );
      if (channel === shown && !isOther) return;
      shown = channel;
      const texts = answerTexts(channel);
      part('question').textContent = texts.question;
      part('answer-heading').innerHTML = texts.answer.text;
      part('subject').textContent = texts.subject;
      part('invented').hidden = !texts.isInvented;
      part('headline').innerHTML = texts.headline.text;
      part('say').innerHTML = html`<p>${texts.say}</p>`.text;
      part('course').innerHTML = texts.course.text;
      // After the sentence and before the tables, which are long.
      part('course').querySelector('p')?.after(changesPlace);
      changes.show(channel.changes);
      part('parts').innerHTML = texts.parts.text;
      channelChoice(part('outcomes'), next, known, (chosen) => actions.choose(next.id, chosen));
      pictures.show(next, known, channel);
    },
  };
}

/** Where several channels were measured: which of them is looked at. */
function channelChoice(
  host: HTMLElement,
  { channel }: Entry,
  { assays }: Measured,
  choose: (channel: number) => void,
): void {
  if (assays.length < 2) {
    host.replaceChildren();
    return;
  }
  const names = assays.map(({ result: { voltage, current } }) => (voltage ?? current)?.channel ?? '');
  host.innerHTML =
    html`<div class="fields"><div class="field"><label for="channel-choice">Result of channel</label>
<select id="channel-choice">${names.map((name, i) => html`<option value="${i}">${name}</option>`)}</select></div></div>`.text;
  const select = host.querySelector('select')!;
  select.value = String(channel);
  select.addEventListener('change', () => choose(Number(select.value)));
}
