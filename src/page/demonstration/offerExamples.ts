import type { NamedFile } from '../desk/sitting.ts';
import { nothingTold } from '../told/told.ts';
import { examples } from './examples.ts';

/** Lists the examples; each is made when somebody asks for it. */
export function offerExamples(list: HTMLElement, add: (file: NamedFile) => void): void {
  for (const { words, make } of examples) {
    const button = list.ownerDocument.createElement('button');
    button.type = 'button';
    button.className = 'link';
    button.textContent = words;
    button.addEventListener('click', () => {
      const { name, bytes, told } = make();
      add({ name, file: new Blob([bytes as Uint8Array<ArrayBuffer>]), told: { ...nothingTold, ...told } });
    });
    const item = list.ownerDocument.createElement('li');
    item.append(button);
    list.append(item);
  }
}
