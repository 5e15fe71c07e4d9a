import { html } from '../../entry/sections.ts';
import type { Entry } from '../desk/entry.ts';
import type { Measured } from '../worker/requests.ts';

/** Where several channels were measured: which of them is looked at. */
export function channelChoice(
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
