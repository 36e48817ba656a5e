import { expect, it } from 'vitest';
import { renderTableText } from '../../../../src/documents/render/text.ts';
import type { Table } from '../../../../src/documents/table/table.ts';

const table: Table = {
  columns: [
    { name: 'range', unit: 'yd', digits: 0 },
    { name: 'reading', unit: 'scale', digits: 1 },
    { name: 'highest', unit: 'in', digits: 1, minor: true },
    { name: 'lateral', unit: 'in', digits: 1 },
  ],
  rows: [[20, 8.2, 0.5, 0]],
};

it('leaves minor columns out where the room is narrow', () => {
  expect(renderTableText(table, { width: 24, keepsAll: false })).toBe(
    'range  reading  lateral\n   yd    scale       in\n   20      8.2      0.0\n',
  );
});
it('splits the table where that is not enough or all columns are wanted, the first column before every part', () => {
  expect(renderTableText(table, { width: 16, keepsAll: false })).toBe(
    'range  reading\n   yd    scale\n   20      8.2\n\nrange  lateral\n   yd       in\n   20      0.0\n',
  );
  expect(renderTableText(table, { width: 24, keepsAll: true })).toContain('highest');
});
it('has all the room it needs in a file', () => {
  expect(renderTableText(table).split('\n')[0]).toBe('range  reading  highest  lateral');
});
