import { describe, expect, it } from 'vitest';
import { EXAMPLE, SMALLEST } from '../example-text.ts';
import { messagesOf, ordersOf } from '../problems-of.ts';

const orders = (day: string, more = '') => ordersOf(`${EXAMPLE}${more}days:\n  - ${day}\n`);
const mark = (keys: string) =>
  ordersOf(EXAMPLE.replace('reading: 31.9, arrows: 6, group: 5 in, lateral: -1 in', keys));

describe('a day', () => {
  it('with all it can have is read', () =>
    expect(
      orders(
        '{ date: 2026-08-30, air: { altitude: 9000 ft }, wind: { speed: 3 mph }, build: heavy, cant: 1 deg, ' +
          'speed: 270 fps, speed_sd: 1 fps, measured_at: 3 ft, marks: [{ range: 40 yd, reading: 22 }], ' +
          'speeds: [{ range: 40 yd, speed: 260 fps }], drops: [{ aimed_with: 20 yd, range: 30 yd, drop: 6 in }] }',
        'builds:\n  - { name: heavy, arrow: { mass: 480 gr } }\n',
      ),
    ).toEqual([]));
  it('needs a date', () =>
    expect(orders('{ speed: 270 fps }')).toEqual([
      'days.0.date: Add "date:" with a few words to that entry',
    ]));
  it('of a build that is not there gets the nearest name', () =>
    expect(
      orders('{ date: a, build: heavey }', 'builds:\n  - { name: heavy, arrow: { mass: 480 gr } }\n'),
    ).toEqual(['days.0.build: Write "heavy"']));
  it('has one temperature', () =>
    expect(orders('{ date: a, temperature: 50 degF, air: { temperature: 50 degF } }')).toEqual([
      'days.0.temperature: Remove one of them',
    ]));
  it('has pressures that agree with its altitude', () =>
    expect(orders('{ date: a, air: { altitude: 9000 ft, pressure: 29.9 inHg } }')[0]).toContain(
      'days.0.air.pressure: Write what the barometer reads there',
    ));
  it('has its own date, and its entries no other', () => {
    expect(orders('{ date: a }\n  - { date: a }')).toEqual([
      'days.1.date: Put both under one day, or write "a afternoon"',
    ]);
    expect(orders('{ date: a, drops: [{ aimed_with: 20 yd, range: 30 yd, drop: 6 in, date: b }] }')).toEqual([
      'days.0.drops.0.date: Remove "date", or move the entry to its own day',
    ]);
  });
  it('names the line of a mark without a reading', () => {
    const [message] = messagesOf(`${EXAMPLE}days:\n  - date: a\n    marks:\n      - { range: 40 yd }\n`);
    expect(message).toContain(`setup.yaml:${EXAMPLE.trimEnd().split('\n').length + 4}:9`);
  });
  it('measures its marks beyond the bow', () =>
    expect(orders('{ date: a, marks: [{ range: 1 yd, reading: 3 }] }')[0]).toContain('days.0.marks.0.range'));
});

describe('hits', () => {
  it('are pairs in brackets', () => {
    expect(mark('reading: 31.9, hits: [[0.4 in, -1.1 in], [-10 mm, 0.6 in]]')).toEqual([]);
    const write = 'Write "hits: [[0.4 in, -1.1 in], [-0.2 in, 0.6 in]]"';
    expect(mark('reading: 31.9, hits: 3 in')).toEqual([`marks.1.hits: ${write}`]);
    expect(mark('reading: 31.9, hits: [[1 in, 2 in, 3 in]]')).toEqual([`marks.1.hits.0: ${write}`]);
    expect(mark('reading: 31.9, hits: [1 in, 2 in]')[0]).toBe(`marks.1.hits.0: ${write}`);
  });
  it('tell the rest of the group by themselves', () =>
    expect(mark('reading: 31.9, hits: [[0.4 in, -1.1 in]], arrows: 6, lateral: 0 in')).toEqual([
      'marks.1.arrows: Remove "arrows", or remove "hits"',
      'marks.1.lateral: Remove "lateral", or remove "hits"',
    ]));
  it('need units', () =>
    expect(mark('reading: 31.9, hits: [[0.4, 1 in]]')[0]).toContain('marks.1.hits.0.0: Write "0.4 in" or'));
});

describe('a pencil line', () => {
  it('stands in place of a reading, and needs no scale', () => {
    expect(mark('on_tape: 28 mm, arrows: 6')).toEqual([]);
    expect(mark('on_tape: 28 mm, reading: 31.9')).toEqual(['marks.1.on_tape: Remove one of them']);
    expect(ordersOf(`${SMALLEST}marks:\n  - { range: 60 yd, on_tape: 28 mm }\n`)).toEqual([]);
  });
});

describe('a speed that nobody measured', () => {
  const unknown = EXAMPLE.replace('speed: 281 fps', 'speed: unknown');
  const bare = SMALLEST.replace('281 fps', 'unknown').replace(
    '33 in',
    '33 in, scale: { travel_per_unit: 1 mm, at_zero: 12.4 }',
  );
  it('needs marks at two ranges on a scale that is known', () => {
    expect(ordersOf(unknown)).toEqual([]);
    expect(ordersOf(`${bare}marks:\n  - { range: 60 yd, reading: 31 }\n`)[0]).toContain('launch.speed');
    expect(
      ordersOf(`${bare}marks:\n  - { range: 60 yd, reading: 31 }\n  - { range: 30 yd, reading: 15 }\n`),
    ).toEqual([]);
    expect(ordersOf(unknown.replace('travel_per_unit: 1 mm', 'travel_per_unit: unknown'))[0]).toContain(
      'launch.speed: Add marks at two ranges',
    );
  });
  it('or the rating of the bow, or a chronograph', () => {
    expect(ordersOf(bare.replace('4.6 in', '4.6 in, rating: { speed: 335 fps }'))).toEqual([]);
    expect(ordersOf(`${bare}days: [{ date: a, speed: 270 fps }]\n`)).toEqual([]);
  });
  it('belongs to no build', () =>
    expect(ordersOf(`${EXAMPLE}builds:\n  - { name: a, launch: { speed: unknown } }\n`)).toEqual([
      'builds.0.launch.speed: Remove "speed" from that build',
    ]));
});
