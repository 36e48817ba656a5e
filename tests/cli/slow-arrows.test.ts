import { expect, it } from 'vitest';
import { atTerminal } from './terminal.ts';

/** An arrow with vanes that brake, as children and squirrel hunters shoot them, and a light one at that. */
const braked = (slope: string): string => `
title: Braked arrow
launch: { speed: 285 fps }
bow: { peep_height: 3.5 in }
sight: { zero: 15 yd, peep_to_pin: 30 in }
arrow: { mass: 160 gr, diameter: 0.32 in, length: 28 in, drag_coefficient: 8 }
slope: ${slope}
`;

/** What every question has to say of it, however far it is asked about. */
const QUESTIONS: readonly (readonly string[])[] = [
  ['marks', '--to', '150 yd'],
  ['tape', '--out', 'tape.pdf'],
  ['card', '--to', '150 yd', '--out', 'card.pdf'],
  ['fit'],
  ['fit', '--to', '150 yd'],
  ['cant', '--to', '150 yd'],
  ['slope', '--to', '150 yd'],
  ['wind', '--to', '150 yd'],
  ['misjudge', '--to', '150 yd'],
  ['check', '--all'],
  ['fly', '--to', '150 yd'],
];

it.each(QUESTIONS)(
  'an arrow that comes down all but upright has an answer to %s %s %s',
  async (name = '', ...more) => {
    const { code, out, err } = await atTerminal([name, 'braked.yaml', ...more], {
      'braked.yaml': braked('0 deg'),
    });
    expect([code, err]).toEqual([0, '']);
    if (name !== 'fit') expect(out).toMatch(/(carries|could carry) up to 1[0-4]0 yd/);
    expect(out).not.toMatch(/NaN|Infinity/);
  },
);

it.each(['20 deg', '45 deg'])('a shot at %s has rows as far as it gets', async (slope) => {
  const { code, out } = await atTerminal(['fly', 'braked.yaml', '--to', '150 yd', '--json'], {
    'braked.yaml': braked(slope),
  });
  expect(code).toBe(0);
  const { rows } = JSON.parse(out);
  expect(rows.length).toBeGreaterThan(5);
  const told = (await atTerminal(['fly', 'braked.yaml', '--to', '150 yd'], { 'braked.yaml': braked(slope) }))
    .out;
  const last = Math.round(rows.at(-1).range_m / 0.9144);
  expect(told.replaceAll('\n', ' ')).toContain(
    `Rows end at ${last} yd: this shot falls upright before the next row.`,
  );
});

it('a slow bow has a tape though a slower arrow would touch the sight at every range of it', async () => {
  const slow = `
launch: { speed: 90 fps }
bow: { peep_height: 5.5 in }
sight: { zero: 20 yd, peep_to_pin: 40 in }
arrow: { mass: 280 gr, diameter: 0.166 in, length: 28 in, drag_coefficient: 0.5 }
`;
  const { code, out, files } = await atTerminal(['tape', 'slow.yaml', '--out', 'slow.svg'], {
    'slow.yaml': slow,
  });
  expect(code).toBe(0);
  expect(out).toMatch(/Wrote slow\.svg: 20 to 21 yd/);
  const headings = [...String(files.get('slow.svg')).matchAll(/class="heading"[^>]*>([^<]*)/g)].map(
    ([, text]) => text,
  );
  expect(new Set(headings)).toEqual(new Set(['−2 ft/s', '90 ft/s', '+2 ft/s', '+4 ft/s']));
});
