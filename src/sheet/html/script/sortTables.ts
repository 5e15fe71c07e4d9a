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
