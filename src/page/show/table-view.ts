import { cellText, isNumeric, type Table } from '../../documents/table/table.ts';
import { element } from './element.ts';

/** A table in a box of its own that scrolls sideways; it can be reached by keyboard. */
export function tableView(table: Table, label: string, note?: string): HTMLElement {
  const { columns, rows, title, notes = [] } = table;
  const isRight = columns.map((_, i) => isNumeric(table, i));
  const kind = (i: number): string | undefined => (isRight[i] === true ? 'number' : undefined);
  return element(
    'figure',
    { class: 'table' },
    element(
      'div',
      { class: 'scrolls', tabindex: 0, role: 'region', 'aria-label': title ?? label },
      element(
        'table',
        {},
        title === undefined ? null : element('caption', {}, title),
        element(
          'thead',
          {},
          element(
            'tr',
            {},
            columns.map(({ name, unit }, i) =>
              element('th', { scope: 'col', class: kind(i) }, name, ' ', element('span', {}, unit)),
            ),
          ),
        ),
        element(
          'tbody',
          {},
          rows.map((row) =>
            element(
              'tr',
              {},
              columns.map((column, i) => {
                const text = cellText(row[i], column);
                return i === 0
                  ? element('th', { scope: 'row', class: kind(i) }, text)
                  : element('td', { class: kind(i) }, text);
              }),
            ),
          ),
        ),
      ),
    ),
    [...notes, ...(note === undefined ? [] : [note])].map((words) => element('p', { class: 'note' }, words)),
  );
}
