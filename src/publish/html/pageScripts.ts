/**
 * Makes a gallery's sheets searchable by text, kind of wave and outcome of claims, and puts them in order.
 *
 * @param document - the page's.
 * @remarks Its own text stands in the page, so that it may use nothing but its argument.
 */
export function arrangeGallery(document: Document): void {
  const form = document.querySelector<HTMLFormElement>('#arrange');
  const count = document.querySelector('#count');
  const entries = [...document.querySelectorAll<HTMLElement>('.entry')];
  if (form === null || count === null || entries.length < 2) return;
  const field = (name: string): HTMLInputElement | HTMLSelectElement =>
    form.elements.namedItem(name) as HTMLInputElement | HTMLSelectElement;
  const kindsOf = (entry: HTMLElement): string[] => (entry.dataset.kinds ?? '').split('|').filter(Boolean);
  const plain = (text: string): string => text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();
  const words = new Intl.Collator('en', { numeric: true, sensitivity: 'base' });
  // Without the ending, so that what belongs to a capture follows it.
  const stem = ({ dataset }: HTMLElement): string => (dataset.file ?? '').replace(/\.svg$/, '');
  const texts = new Map(entries.map((entry) => [entry, plain(entry.textContent ?? '')]));

  const offer = (name: string, values: readonly string[]): void => {
    for (const value of [...new Set(values)].sort(words.compare)) {
      const option = document.createElement('option');
      option.value = value;
      option.textContent = value;
      field(name).append(option);
    }
  };
  offer('kind', entries.flatMap(kindsOf));
  offer(
    'outcome',
    entries.map((entry) => entry.dataset.outcome ?? ''),
  );

  const arrange = (): void => {
    const sought = plain(field('text').value).split(/\s+/).filter(Boolean);
    const kind = field('kind').value;
    const outcome = field('outcome').value;
    for (const entry of entries) {
      const text = texts.get(entry) ?? '';
      entry.hidden =
        !sought.every((word) => text.includes(word)) ||
        (kind !== '' && !kindsOf(entry).includes(kind)) ||
        (outcome !== '' && entry.dataset.outcome !== outcome);
    }
    const key = field('order').value;
    const way = (field('down') as HTMLInputElement).checked ? -1 : 1;
    for (const section of document.querySelectorAll<HTMLElement>('.sheets')) {
      const own = entries.filter((entry) => section.contains(entry));
      own.sort((a, b) => {
        const byFile = words.compare(stem(a), stem(b));
        if (key === '') return way * byFile;
        const [x, y] = [a.dataset[key], b.dataset[key]];
        // What has no value comes last either way.
        if (x === undefined || y === undefined) {
          return Number(x === undefined) - Number(y === undefined) || byFile;
        }
        return way * (Number(x) - Number(y)) || byFile;
      });
      section.querySelector('.entries')?.append(...own);
      section.hidden = own.every(({ hidden }) => hidden);
    }
    const shown = entries.filter(({ hidden }) => !hidden).length;
    count.textContent = `${shown} of ${entries.length} shown`;
  };
  form.addEventListener('input', arrange);
  form.addEventListener('submit', (event) => event.preventDefault());
  // What a browser keeps in the fields when a page is loaded anew counts too.
  form.hidden = false;
  arrange();
}

/**
 * Makes the tables of a page sortable: each heading becomes a button that sorts by its column, then the other way
 * round. What has no value comes last either way.
 *
 * @param document - the page's.
 * @remarks Its own text stands in the page, so that it may use nothing but its argument.
 */
export function sortTables(document: Document): void {
  const words = new Intl.Collator('en', { numeric: true, sensitivity: 'base' });
  for (const table of document.querySelectorAll<HTMLTableElement>('table.data')) {
    const body = table.tBodies[0];
    if (body === undefined || body.rows.length < 2) continue;
    const heads = [...table.querySelectorAll<HTMLTableCellElement>('thead th')];
    for (const [column, head] of heads.entries()) {
      const button = document.createElement('button');
      button.type = 'button';
      button.append(...head.childNodes);
      head.append(button);
      button.addEventListener('click', () => {
        const isDown = head.getAttribute('aria-sort') === 'ascending';
        for (const other of heads) other.removeAttribute('aria-sort');
        head.setAttribute('aria-sort', isDown ? 'descending' : 'ascending');
        const way = isDown ? -1 : 1;
        const keyed = [...body.rows].map((row) => {
          const cell = row.cells[column];
          const sort = cell?.dataset.sort;
          const text = cell?.textContent?.trim() ?? '';
          return {
            row,
            text,
            value: Number(sort),
            isMissing: sort === undefined ? text === '' : sort === '',
          };
        });
        keyed.sort(
          (a, b) =>
            Number(a.isMissing) - Number(b.isMissing) ||
            way *
              (Number.isNaN(a.value) || Number.isNaN(b.value)
                ? words.compare(a.text, b.text)
                : a.value - b.value),
        );
        body.append(...keyed.map(({ row }) => row));
      });
    }
  }
}
