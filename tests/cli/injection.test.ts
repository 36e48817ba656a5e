import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { describe, expect, it } from 'vitest';
import { printableText } from '../../src/documents/page/printable-text.ts';
import { readPdf } from '../unit/documents/read-pdf.ts';
import { atTerminal } from './terminal.ts';

/** Each asks several questions and reads PDFs with another program; a busy machine takes ten times as long as an idle one. */
const TIMEOUT = 300_000;

/** What a file from elsewhere may carry in a name: markup, what a terminal obeys, words of a PDF, what ends a string. */
const PAYLOADS: readonly string[] = [
  '"><img src=x onerror=alert(1)></svg><script>alert(1)</script>',
  ']]><!--&lt;b>&amp;&#60;',
  '\u001b[31mred\u001b]0;title\u0007 \u009b31mred',
  'good\rBAD good\b\b\b\bBAD\nBAD\n',
  'a\u202Eb\u2066c a\u2028b\u0085c',
  'a\ud800b\u0000c\u007f',
  ') Tj ET >> /OpenAction << /S /JavaScript /JS (app.alert(1)) >> Tj (',
  'endstream\rendobj\r1 0 obj << /S /URI /URI (http://x) >>',
  'a,b"c\';d {from} ${x %s %n \\',
];
/** What a spreadsheet takes for a formula. */
const FORMULAS: readonly string[] = [
  '=HYPERLINK("http://x","y")',
  '+1+1',
  '-2+3',
  '@SUM(1)',
  '\t=1+1',
  ' =1+1',
  '\uff1d1+1',
];

/** A setup that carries a name wherever there is room for one. */
const setupWith = (name: string): string => {
  const typed = JSON.stringify(name);
  return `title: ${typed}
bow: { peep_height: 4.6 in, draw_length: 29 in, peak_draw_weight: 68 lbf }
arrow:
  diameter: 0.246 in
  mass: 452 gr
  balance: 17.9 in
  parts:
    shaft: { length: 28.5 in, inner_diameter: 0.166 in, mass_per_length: 9.5 gpi, deflection: 300 }
    point: { mass: 125 gr, length: 1.3 in }
    nock: { mass: 10 gr }
    vanes: { count: 3, mass: 7 gr, root_chord: 2.1 in, tip_chord: 0.9 in, height: 0.5 in, thickness: 0.03 in }
    others: [{ name: ${typed}, mass: 8 gr, from_nock: 4 in }]
launch: { speed: 281 fps }
sight: { peep_to_pin: 33 in, zero_range: 20 yd, scale: { travel_per_unit: 1 mm, at_zero: 12.4 } }
marks:
  - { range: 20 yd, reading: 12.4, arrows: 3, date: ${typed}, note: ${typed} }
  - { range: 60 yd, reading: 31.9, arrows: 6, date: ${typed}, note: ${typed} }
places: [{ name: ${typed}, altitude: 7000 ft }]
builds: [{ name: ${typed}, arrow: { mass: 470 gr }, launch: { speed: 276 fps } }]
tuning: { log: [{ step: nock, date: 2026-04-18, serving: [0.109 in], note: ${typed} }] }
`;
};

const ASKED: readonly (readonly string[])[] = [
  ['check', 's.yaml', '--all'],
  ['fit', 's.yaml', '--all'],
  ['marks', 's.yaml', '--every', '40yd'],
  ['tape', 's.yaml', '--place', 'all', '--all'],
  ['compare', 's.yaml', '--arrows', '0', '--every', '30yd', '--all'],
  ['tune', 's.yaml', '--all'],
];
const ROWS: readonly (readonly string[])[] = [
  ['compare', 's.yaml', '--arrows', '0', '--every', '30yd', '--csv'],
  ['tape', 's.yaml', '--place', 'all', '--csv'],
  ['tune', 's.yaml', '--csv'],
];
const DRAWN: readonly (readonly string[])[] = [
  ['tape', 's.yaml', '--place', 'all', '--neighbours', '0'],
  ['compare', 's.yaml', '--arrows', '0', '--every', '30yd'],
];

/** What a terminal obeys, or by which a line reads other than it is. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are what must not be printed
const OBEYED = /\r(?!\n)|[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/;
/** What a spreadsheet runs; numbers begin so too. */
const RUN = /^\s*[=+\-@\uFF1D\uFF0B\uFF0D\uFF20]/;
/** Every tag that our drawings have; no other may be in one. */
const OURS = /<\/?(svg|title|rect|line|polyline|polygon|text)\b[^<>]*>/g;

const given = (name: string) => ({ 's.yaml': setupWith(name) });
const flat = (text: string): string => text.replace(/\s+/g, '');

/** Fields of rows of RFC 4180. */
const fieldsOf = (csv: string): readonly string[] =>
  [...csv.matchAll(/(?:^|,|\r\n)(?:"((?:[^"]|"")*)"|([^",\r\n]*))/g)].map(
    ([, quoted, plain = '']) => quoted?.replaceAll('""', '"') ?? plain,
  );

describe.each([...PAYLOADS, ...FORMULAS].map((name) => [name]))('the name %j', (name) => {
  it(
    'is words and no formula in a spreadsheet',
    async () => {
      for (const argv of ROWS) {
        const { code, out, err } = await atTerminal(argv, given(name));
        expect([code, err]).toEqual([0, '']);
        expect(out).not.toMatch(OBEYED);
        const run = fieldsOf(out).filter((field) => RUN.test(field) && !Number.isFinite(Number(field)));
        expect(run).toEqual([]);
      }
    },
    TIMEOUT,
  );
});

describe.each(PAYLOADS.map((name) => [name]))('the name %j', (name) => {
  it(
    'is shown as text in a terminal',
    async () => {
      let shown = '';
      for (const argv of ASKED) {
        const { code, out, err } = await atTerminal(argv, given(name));
        expect([code, err]).toEqual([0, '']);
        expect(out).not.toMatch(OBEYED);
        shown += out;
      }
      // Joined again where lines were broken, the words that nothing obeys are all there.
      for (const word of printableText(name).split(/[\s\uFFFD]+/)) expect(flat(shown)).toContain(word);
    },
    TIMEOUT,
  );

  it('is itself in JSON, without what a terminal obeys', async () => {
    const { out } = await atTerminal(['compare', 's.yaml', '--arrows', '0', '--json'], given(name));
    expect(out).not.toMatch(OBEYED);
    expect(JSON.stringify(JSON.parse(out))).toContain(JSON.stringify(name));
  });

  it('is text in a drawing', async () => {
    for (const argv of DRAWN) {
      const { files, err } = await atTerminal([...argv, '--out', 'x.svg'], given(name));
      expect([files.size > 0, err]).toEqual([true, '']);
      for (const svg of files.values()) {
        expect(String(svg).replace(OURS, '')).not.toMatch(/[<>]|&(?!(amp|lt|gt|quot|#39);)/);
        expect(svg).not.toMatch(OBEYED);
      }
    }
  });

  it(
    'is text in a PDF, which does nothing when it is opened',
    async () => {
      for (const argv of DRAWN) {
        const { files } = await atTerminal([...argv, '--out', 'x.pdf'], given(name));
        const [pdf] = files.values();
        if (!(pdf instanceof Uint8Array)) throw new Error(`${argv.join(' ')} wrote no PDF`);
        expect(await deedsOf(pdf)).toEqual([]);
        const { title, pages } = await readPdf(pdf);
        expect(title).toContain(printableText(name).trim().slice(0, 20).trim());
        expect(pages.length).toBeGreaterThan(0);
      }
    },
    TIMEOUT,
  );
});

/** What a PDF would do, carry or link to. */
async function deedsOf(pdf: Uint8Array): Promise<readonly unknown[]> {
  const task = getDocument({ data: pdf.slice(), verbosity: 0 });
  const document = await task.promise;
  const deeds: unknown[] = [
    await document.getOpenAction(),
    await document.getJSActions(),
    await document.getAttachments(),
    await document.getFieldObjects(),
  ];
  for (let number = 1; number <= document.numPages; number += 1) {
    const page = await document.getPage(number);
    deeds.push(...(await page.getAnnotations()), await page.getJSActions());
  }
  await task.destroy();
  return deeds.filter((deed) => deed !== null);
}
