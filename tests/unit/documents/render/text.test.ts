import { describe, expect, it } from 'vitest';
import { renderTableCsv, renderTableText } from '../../../../src/documents/render/text.ts';
import type { Table } from '../../../../src/documents/table/table.ts';
import { DomainError } from '../../../../src/quantities/domain-error.ts';

const table: Table = {
  title: 'Marks',
  columns: [
    { name: 'range', unit: 'yd', digits: 0 },
    { name: 'mark', unit: 'mm' },
    { name: 'time', unit: 's', digits: 3 },
    { name: 'remark', unit: '' },
  ],
  rows: [
    [20, 12.4, 0.2214, 'zero, shot'],
    [30, 15, null, null],
    [100, -7.25, -0.0001, 'say "far"'],
  ],
  notes: ['Calibrated on one mark.'],
};

describe('renderTableText', () => {
  it('lines up decimal points, names, units and missing values', () =>
    expect(renderTableText(table)).toBe(
      [
        'Marks',
        '',
        'range   mark   time  remark',
        '   yd     mm      s',
        '   20  12.4   0.221  zero, shot',
        '   30  15     -      -',
        '  100  -7.25  0.000  say "far"',
        '',
        'Calibrated on one mark.',
        '',
      ].join('\n'),
    ));

  it('leaves out the line of units when there is none', () =>
    expect(renderTableText({ columns: [{ name: 'a', unit: '' }], rows: [[1]] })).toBe('a\n1\n'));

  it('prints its head when there are no rows', () =>
    expect(renderTableText({ columns: [{ name: 'range', unit: 'm' }], rows: [] })).toBe('range\n    m\n'));

  it('takes a row that is too short as missing values', () =>
    expect(renderTableText({ columns: table.columns.slice(0, 2), rows: [[20]] })).toBe(
      'range  mark\n   yd    mm\n   20     -\n',
    ));

  it('counts characters, not code units', () => {
    const lines = renderTableText({
      columns: [
        { name: '🏹', unit: '' },
        { name: 'b', unit: '' },
      ],
      rows: [['ab', 'c']],
    }).split('\n');
    expect(lines).toEqual(['🏹   b', 'ab  c', '']);
  });

  it('refuses a number that is not finite', () =>
    expect(() => renderTableText({ columns: table.columns, rows: [[Number.NaN]] })).toThrow(DomainError));
});

describe('renderTableCsv', () => {
  it('quotes what RFC 4180 asks to be quoted, and leaves missing values empty', () =>
    expect(renderTableCsv(table)).toBe(
      'range (yd),mark (mm),time (s),remark\r\n' +
        '20,12.4,0.221,"zero, shot"\r\n' +
        '30,15,,\r\n' +
        '100,-7.25,0.000,"say ""far"""\r\n',
    ));

  it('quotes line breaks', () =>
    expect(renderTableCsv({ columns: [{ name: 'a', unit: '' }], rows: [['x\ny']] })).toBe('a\r\n"x\ny"\r\n'));
});

describe('words that a spreadsheet would run as a formula', () => {
  const table = (name: string): string =>
    renderTableCsv({ columns: [{ name: 'build', unit: '' }], rows: [[name]] }).split('\r\n')[1] ?? '';
  it.each(['=1+1', '+1+1', '-1+1', '@SUM(1)', '\t=1', ' =1', '=HYPERLINK("x")'])(
    '%j begins with an apostrophe',
    (name) => expect(table(name).replace(/^"/, '')).toMatch(/^'/),
  );
  it.each(['-5', '+3', 'heavy - light', 'a=b'])('%j stays as it is', (name) =>
    expect(table(name)).toBe(name),
  );
});
