import { type FieldName, fields } from '../../entry/grammar.ts';
import { html } from '../../entry/sections.ts';
import { setChoices } from '../show/answerTexts.ts';
import type { FileChannel } from '../worker/requests.ts';
import { type Told, toldAsTyped, typedInto } from './told.ts';

interface ToldForm {
  /** Shows what was told of a capture. What is being typed is left alone. */
  readonly show: (told: Told, faults: ReadonlyMap<FieldName, string>) => void;
  /** Offers channels: its own, and currents of other files as `FILE:NAME`. */
  readonly offer: (channels: readonly FileChannel[], others: readonly string[]) => void;
}

/**
 * Fills a form with fields for all that can be told of a capture.
 *
 * @param onTold - given all that the form says, whenever that changes.
 * @param onDone - told when a field is left, or something was chosen: nothing more is being typed.
 * @param onShare - asked to tell the other captures the same, but for the load and the meter's reading.
 */
export function toldForm(
  form: HTMLFormElement,
  onTold: (told: Told) => void,
  onDone: () => void,
  onShare: () => void,
): ToldForm {
  form.innerHTML = html`<div class="fields">${fields.filter(({ isRare }) => !isRare).map(fieldMarkup)}</div>
<details><summary>Instrument and more</summary>
<p class="soft">What your scope, probe and meter may be off by: half-widths, as the data sheets give them.</p>
<div class="fields">${fields.filter(({ isRare }) => isRare).map(fieldMarkup)}</div>
</details>
<div class="actions"><button type="button" id="share-told" hidden>Tell the other captures the same, but for load and meter</button></div>
`.text;
  const control = (field: FieldName): HTMLInputElement => form.elements.namedItem(field) as HTMLInputElement;
  const told = (): Told =>
    toldAsTyped(({ name, kind }) => (kind === 'check' ? control(name).checked : control(name).value));
  form.addEventListener('input', () => onTold(told()));
  form.addEventListener('change', onDone);
  form.addEventListener('submit', (event) => event.preventDefault());
  form.querySelector('#share-told')?.addEventListener('click', onShare);

  return {
    show: (shown, faults) => {
      for (const one of fields) {
        const { name, kind } = one;
        const field = control(name);
        const value = typedInto(shown, one);
        if (kind === 'check') field.checked = value === true;
        else if (field.value !== value) setValue(field, String(value));
        const fault = faults.get(name);
        field.toggleAttribute('aria-invalid', false);
        if (fault !== undefined) field.setAttribute('aria-invalid', 'true');
        const line = form.querySelector(`#fault-${name}`);
        if (line !== null) line.textContent = fault ?? '';
      }
    },
    offer: (channels, others) => {
      const names = (quantity: string): string[] =>
        channels.filter((channel) => channel.quantity === quantity).map(({ name }) => name);
      const [volts, amperes] = [names('voltage'), names('current')];
      const rest = channels
        .map(({ name }) => name)
        .filter((name) => !volts.includes(name) && !amperes.includes(name));
      const [a, b] = volts;
      offerChoices(control('voltage') as unknown as HTMLSelectElement, [
        ...[...volts, ...amperes, ...rest].map((name) => [name, name] as const),
        ...(a === undefined || b === undefined
          ? []
          : ([
              [`${a}-${b}`, `${a} less ${b}`],
              ['all', 'each of them'],
            ] as const)),
      ]);
      offerChoices(control('current') as unknown as HTMLSelectElement, [
        ...amperes.map((name) => [name, name] as const),
        ...others.map((name) => [name, `of another file: ${name}`] as const),
      ]);
    },
  };
}

/** A select keeps a value that it does not offer yet. */
function setValue(field: HTMLInputElement | HTMLSelectElement, value: string): void {
  field.value = value;
  if (field instanceof HTMLSelectElement && field.value !== value) {
    field.append(new Option(value, value));
    field.value = value;
  }
}

/** Offers what there is, and nothing; what is told stays told where it isn't offered. */
function offerChoices(
  select: HTMLSelectElement,
  options: readonly (readonly [value: string, words: string])[],
): void {
  const { value } = select;
  const isOffered = value === '' || options.some(([name]) => name === value);
  setChoices(
    select,
    [['', 'not chosen'], ...options, ...(isOffered ? [] : [[value, value] as const])],
    value,
  );
}

function fieldMarkup({ name, label, hint, kind, offers }: (typeof fields)[number]): ReturnType<typeof html> {
  const id = `field-${name}`;
  const described = `hint-${name} fault-${name}`;
  const notes = html`<small id="hint-${name}">${hint}</small><span class="fault" id="fault-${name}" role="alert"></span>`;
  switch (kind) {
    case 'check':
      return html`<div class="check"><input type="checkbox" id="${id}" name="${name}"><label for="${id}">${label}</label></div>`;
    case 'channel':
      return html`<div class="field"><label for="${id}">${label}</label><select id="${id}" name="${name}" aria-describedby="${described}"><option value="">not chosen</option></select>${notes}</div>`;
    case 'lines':
      return html`<div class="field wide"><label for="${id}">${label}</label><textarea id="${id}" name="${name}" rows="3" aria-describedby="${described}" spellcheck="false"></textarea>${notes}</div>`;
    default:
      return html`<div class="field"><label for="${id}">${label}</label><input id="${id}" name="${name}" type="text" aria-describedby="${described}"${kind === 'number' && html` inputmode="decimal"`}${offers !== undefined && html` list="offers-${name}"`}>${offers !== undefined && html`<datalist id="offers-${name}">${offers.map((offer) => html`<option value="${offer}"></option>`)}</datalist>`}${notes}</div>`;
  }
}
