import { describe, expect, it } from 'vitest';
import { type Item, itemsOf } from '../../../../src/documents/page/drawing.ts';
import { renderSvg } from '../../../../src/documents/render/svg.ts';
import { layOutTape } from '../../../../src/documents/tape/tape.ts';
import { withRole } from '../ink-box.ts';
import { inventedTape } from '../invented-tape.ts';

const svgOf = (items: readonly Item[], title = 'A title') =>
  renderSvg({ width: 210, height: 297, items }, { title });

describe('renderSvg', () => {
  it('is as large as the paper, in millimetres', () =>
    expect(svgOf([])).toContain('width="210mm" height="297mm" viewBox="0 0 210 297"'));

  it('escapes what XML would read as markup', () => {
    const text = svgOf(
      [{ kind: 'text', x: 1, y: 2, text: `<b> & "c" 'd'\u0000`, size: 3, colour: 'ink' }],
      '</title>',
    );
    expect(text).toContain('>&lt;b&gt; &amp; &quot;c&quot; &#39;d&#39; </text>');
    expect(text).toContain('<title>&lt;/title&gt;</title>');
  });

  it('writes lengths without exponent, trailing zeros or a minus before nothing', () => {
    const line: Item = {
      kind: 'line',
      from: { x: -1e-7, y: 100 },
      to: { x: 1.50001, y: 2.25 },
      colour: 'ink',
      stroke: 0.1,
    };
    expect(svgOf([line])).toContain(
      '<line x1="0" y1="100" x2="1.5" y2="2.25" stroke="#000000" stroke-width="0.1"/>',
    );
  });

  it('draws every kind of item', () => {
    const points = [
      { x: 1, y: 2 },
      { x: 3, y: 4 },
    ];
    const text = svgOf([
      { kind: 'polyline', points, colour: 'lake', stroke: 0.2, dash: [1, 0.5] },
      { kind: 'polyline', points, colour: 'ink', stroke: 0.2, closed: true, fill: 'mist' },
      { kind: 'rect', x: 1, y: 2, width: 3, height: 4, outline: { colour: 'ink', stroke: 0.1 } },
      {
        kind: 'text',
        x: 1,
        y: 2,
        text: 'a',
        size: 3,
        colour: 'ink',
        anchor: 'end',
        weight: 'bold',
        rotation: -90,
      },
    ]);
    expect(text).toContain(
      '<polyline points="1,2 3,4" fill="none" stroke="#12466b" stroke-width="0.2" stroke-dasharray="1 0.5"/>',
    );
    expect(text).toContain('<polygon points="1,2 3,4" fill="#bfc4c8"');
    expect(text).toContain(
      '<rect x="1" y="2" width="3" height="4" fill="none" stroke="#000000" stroke-width="0.1"/>',
    );
    expect(text).toContain('font-weight="bold" text-anchor="end" fill="#000000" transform="rotate(-90 1 2)"');
  });

  it('keeps every tick of a tape to half of 1e-4 mm', () => {
    const [page] = layOutTape(inventedTape(), { paper: 'a4', copies: 1 }).pages;
    const svg = page === undefined ? '' : renderSvg(page, { title: 'Tape' });
    const found = [...svg.matchAll(/<line class="tick" x1="[\d.]+" y1="([\d.]+)"/g)].map(([, y]) =>
      Number(y),
    );
    const wanted = withRole(page === undefined ? [] : itemsOf(page), 'line', 'tick').map(
      ({ from }) => from.y,
    );
    expect(found.length).toBeGreaterThan(3 * 50);
    expect(Math.max(...wanted.map((y, i) => Math.abs(y - (found[i] ?? Number.NaN))))).toBeLessThan(
      0.51e-4 /* mm */,
    );
  });
});
