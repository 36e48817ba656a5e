import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { displayUnits } from '../../../../src/quantities/display-units.ts';
import { pinLines } from '../../../../src/reports/fit/pin-words.ts';
import { openSetup } from '../../../../src/setup/open.ts';

const text = readFileSync('examples/mountain-hunt/setup.yaml', 'utf8');
const opened = (pins: string, ...marks: readonly string[]) =>
  openSetup(
    `${text.replace('zero_range: 20 yd', `zero_range: 20 yd\n  pins: ${pins}`)}${marks.map((mark) => `  - ${mark}\n`).join('')}`,
    's.yaml',
  );
const measured = (setup: ReturnType<typeof opened>) => setup.assembly.problem.measurements;
const own = measured(opened('[20 yd, 30 yd]')).length;
const INCH = 0.0254;
const YARD = 0.9144;
const linesOf = ({ setup }: ReturnType<typeof opened>): string =>
  pinLines({ setup, units: displayUnits('imperial') }).join('\n');

describe('marks of a fixed pin', () => {
  it('at two ranges are the drop between them: 1 in high at 30 yd is 5/3 in at 50 yd, and 10 in low below that', () => {
    const setup = opened(
      '[20 yd, 30 yd]',
      '{ range: 30 yd, pin: 2, vertical: 1 in }',
      '{ range: 50 yd, pin: 2, vertical: -10 in }',
    );
    const [drop, ...others] = measured(setup).slice(own);
    expect(others).toEqual([]);
    expect(drop).toMatchObject({ kind: 'drop' });
    if (drop?.kind !== 'drop') return;
    expect(drop.aimedWith / YARD).toBeCloseTo(30, 9);
    expect(drop.range / YARD).toBeCloseTo(50, 9);
    expect(Math.abs(drop.drop / INCH - (10 + 5 / 3))).toBeLessThan(1e-9 /* in: rounding */);
    // The farther group is as unsure as any at its range, and the nearer one's error grows by 5/3 on the way.
    expect(drop.sd).toBeGreaterThan(0.01 /* m: half an inch is less than three arrows at 50 yd tell */);
    expect(linesOf(setup)).toContain('Pin 2 was shot at 30 yd and 50 yd: the drop from the one to the other');
  });

  it('at one range only place it, and the answer says so', () => {
    const setup = opened('[20 yd, 30 yd]', '{ range: 30 yd, pin: 2, vertical: -1 in }');
    expect(measured(setup)).toHaveLength(own);
    expect(linesOf(setup)).toContain('Only the place of the pin comes from the marks of pin 2');
  });

  it('are no drop when they were shot on two days', () => {
    const days = [3, 4].map(
      (day) => `  - { date: 2026-06-0${day}, marks: [{ range: ${10 * day} yd, pin: 2, vertical: -1 in }] }\n`,
    );
    const withDays = openSetup(
      `${text.replace('zero_range: 20 yd', 'zero_range: 20 yd\n  pins: [20 yd, 30 yd]')}days:\n${days.join('')}`,
      's.yaml',
    );
    expect(measured(withDays)).toHaveLength(own);
  });
});

describe('marks of a lower pin on a slider', () => {
  it('stand where the top pin would with the reading that much farther: 7.5 mm over the travel of a unit', () => {
    const setup = opened('[0 mm, 7.5 mm]', '{ range: 50 yd, pin: 2, reading: 14 }');
    const [mark] = measured(setup).filter(
      (one) => one.kind === 'mark' && Math.abs(one.range / YARD - 50) < 1e-9 && one.reading !== 14,
    );
    const { scale } = setup.assembly.problem.rig;
    expect(measured(setup)).toHaveLength(own + 1);
    const shift = mark?.kind === 'mark' ? (mark.reading - 14) * (scale?.travelPerUnit ?? Number.NaN) : 0;
    expect(Math.abs(shift * (scale?.direction ?? Number.NaN) - 0.0075)).toBeLessThan(1e-12 /* m: rounding */);
    expect(linesOf(setup)).toContain('Counted at the place of the lower pin that was held: 50 yd (pin 2).');
  });
});

describe('marks under a day', () => {
  const day = '  - { date: 2026-06-03, marks: [{ range: 30 yd, pin: 3 }] }\n';
  it('that name a pin the sight lacks are refused by their place', () =>
    expect(() =>
      openSetup(
        `${text.replace('zero_range: 20 yd', 'zero_range: 20 yd\n  pins: [20 yd, 30 yd]')}days:\n${day}`,
        's.yaml',
      ),
    ).toThrow(/days, entry 1: marks, entry 1: pin: the sight has 2 pins/));
});
