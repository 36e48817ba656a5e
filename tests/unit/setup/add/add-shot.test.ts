import { describe, expect, it } from 'vitest';
import { addShot } from '../../../../src/setup/add/add-shot.ts';
import { shotWords } from '../../../../src/setup/add/shot-words.ts';
import { SetupError } from '../../../../src/setup/problem.ts';
import { readSetup } from '../../../../src/setup/read.ts';
import { starterSetup } from '../../../../src/setup/starter.ts';
import { EXAMPLE, SMALLEST } from '../example-text.ts';

describe('what is said of a shot', () => {
  it.each([
    ['60 yd 31.9 6 arrows 5 in', { range: '60 yd', reading: '31.9', arrows: '6', group: '5 in' }],
    ['60 31.9', { range: '60 yd', reading: '31.9' }],
    ['60y, 31.9, six arrows, 5" group', { range: '60y', reading: '31.9', arrows: 'six', group: '5"' }],
    ['60 yd reading 31.9 group 3 1/2 in', { range: '60 yd', reading: '31.9', group: '3 1/2 in' }],
    [
      '60 yd 31.9 1 in left 2" low',
      { range: '60 yd', reading: '31.9', lateral: '1 in left', vertical: '2" low' },
    ],
    ['60 yd, 31,9, left 1 in', { range: '60 yd', reading: '31,9', lateral: '1 in left' }],
    ['20 yd at 12.4 on 2026-11-26', { range: '20 yd', reading: '12.4', date: '2026-11-26' }],
    ['18 m -3.5 note: windy', { range: '18 m', reading: '-3.5', note: 'windy' }],
    ['281 fps', { speed: '281 fps' }],
    ['40 yd 268 FPS', { range: '40 yd', speed: '268 FPS' }],
  ])('%s', (text, said) => expect(shotWords(text, 'imperial')).toEqual(said));

  it('a bare range is in metres with metric units', () =>
    expect(shotWords('60 31.9', 'metric')).toEqual({ range: '60 m', reading: '31.9' }));

  it.each([
    ['60 yd 31.9 sixish', '"sixish" cannot be understood'],
    ['60 yd 31.9 32.5', '"32.5" cannot be understood. It says something that was said before'],
    ['', 'cannot be understood'],
    ['windy', '"windy" cannot be understood'],
  ])('%j is refused', (text, message) => expect(() => shotWords(text, 'imperial')).toThrow(message));
});

const added = (text: string, words: string, day?: string) =>
  addShot(text, 'setup.yaml', words, { units: 'imperial', day });

describe('the entry stands at the end of its list, and all else stays to the byte', () => {
  it('under the marks that are there, in their column', () => {
    const { text, line, entry } = added(EXAMPLE, '80 yd 45.2 6 arrows 7 in 1 in low');
    expect(entry).toBe('{ range: 80 yd, reading: 45.2, arrows: 6, group: 7 in, vertical: -1 in }');
    expect(text).toBe(`${EXAMPLE.trimEnd()}\n  - ${entry}\n`);
    expect(text.split('\n')[line - 1]).toBe(`  - ${entry}`);
    expect(readSetup(text, 'setup.yaml').marks).toHaveLength(3);
  });

  it('before what follows the marks, comments and line ends kept', () => {
    const before = `${EXAMPLE.trimEnd()}   # a gust\n\n# Later.\nlatitude: 45 deg   # camp\n`.replaceAll(
      '\n',
      '\r\n',
    );
    const { text, entry } = added(before, '80 yd 45.2');
    expect(text).toBe(before.replace('# a gust\r\n', `# a gust\r\n  - ${entry}\r\n`));
  });

  it('in a list between brackets', () => {
    const flow = EXAMPLE.slice(0, EXAMPLE.indexOf('marks:')).concat(
      'marks: [{ range: 20 yd, reading: 12.4 }, { range: 60 yd, reading: 31.9 }] # two\n',
    );
    const { text } = added(flow, '80 yd 45.2');
    expect(text).toBe(flow.replace('31.9 }]', '31.9 }, { range: 80 yd, reading: 45.2 }]'));
  });

  it('under keys on lines of their own', () => {
    const block = EXAMPLE.slice(0, EXAMPLE.indexOf('marks:')).concat(
      'marks:\n- range: 20 yd\n  reading: 12.4 # first\nslope: 0 deg\n',
    );
    expect(added(block, '80 yd 45.2').text).toBe(
      block.replace('# first\n', '# first\n- { range: 80 yd, reading: 45.2 }\n'),
    );
  });

  it('in a new list where there is none', () => {
    const start = starterSetup({ units: 'imperial' }).replace(
      / {2}# scale:[\s\S]*?at_zero: 12.4.*\n/,
      '  scale: { travel_per_unit: 1 mm }\n',
    );
    const { text } = added(start, '60 yd 31.9 6 arrows 5 in');
    expect(text).toBe(`${start}\nmarks:\n  - { range: 60 yd, reading: 31.9, arrows: 6, group: 5 in }\n`);
  });

  it('under the name that the file has for the list', () => {
    const shots = EXAMPLE.replace('marks:', 'shots:  # evening');
    expect(added(shots, '80 yd 45.2').text).toBe(`${shots.trimEnd()}\n  - { range: 80 yd, reading: 45.2 }\n`);
  });
});

describe('speeds', () => {
  it('the one at the bow takes the place of the one that is there', () => {
    const { text, entry } = added(SMALLEST, '279 FPS');
    expect([text, entry]).toEqual([SMALLEST.replace('281 fps', '279 FPS'), 'speed: 279 FPS']);
  });
  it('the one down range is an entry', () =>
    expect(added(SMALLEST, '40 yd 268 fps').text).toBe(
      `${SMALLEST}\nspeeds:\n  - { range: 40 yd, speed: 268 fps }\n`,
    ));
});

describe('what belongs to a day', () => {
  const days = `days:  # all of them
  - date: 2026-08-15
    marks:
      - { range: 20 yd, reading: 12.4 } # calm
  - date: "rain, late"
    temperature: 40 degF   # cold
places:
  - { name: camp, altitude: 9000 ft }
`;
  const start = EXAMPLE.slice(0, EXAMPLE.indexOf('marks:'));
  const file = start + days;
  const entry = '{ range: 80 yd, reading: 45.2 }';

  it('stands under the marks of that day', () => {
    const { text, line, understood } = added(file, '80 yd 45.2', '2026-08-15');
    expect(text).toBe(file.replace('# calm\n', `# calm\n      - ${entry}\n`));
    expect(text.split('\n')[line - 1]).toBe(`      - ${entry}`);
    expect(understood).toEqual(['day 2026-08-15', 'range 80 yd', 'reading 45.2']);
    expect(readSetup(text, 's.yaml').days?.[0]?.marks).toHaveLength(2);
  });
  it('begins the marks of a day that has none', () => {
    const { text } = added(file, '80 yd 45.2', 'rain, late');
    expect(text).toBe(file.replace('# cold\n', `# cold\n    marks:\n      - ${entry}\n`));
    expect(readSetup(text, 's.yaml').days?.[1]?.marks).toHaveLength(1);
  });
  it('begins a day that is not there, behind the others', () => {
    const { text, understood } = added(file, '80 yd 45.2', 'May: 3');
    const begun = `  - date: "May: 3"\n    marks:\n      - ${entry}\n`;
    expect(text).toBe(file.replace('# cold\n', `# cold\n${begun}`));
    expect(understood[0]).toBe('new day May: 3');
    expect(readSetup(text, 's.yaml').days?.[2]?.date).toBe('May: 3');
  });
  it('begins the days of a file that has none, with its line ends', () => {
    const crlf = start.replaceAll('\n', '\r\n');
    const { text } = added(crlf, '40 yd 268 fps', '2026-08-15');
    const speed = '{ range: 40 yd, speed: 268 fps }';
    expect(text).toBe(`${crlf}\r\ndays:\r\n  - date: 2026-08-15\r\n    speeds:\r\n      - ${speed}\r\n`);
  });
  it('stands between brackets where the day does', () => {
    const flow = `${start}days: [{ date: one, speed: 280 fps }, { date: two, marks: [{ range: 20 yd, reading: 12.4 }] }]\n`;
    expect(added(flow, '80 yd 45.2', 'one').text).toBe(
      flow.replace('280 fps }', `280 fps, marks: [${entry}] }`),
    );
    expect(added(flow, '80 yd 45.2', 'two').text).toBe(flow.replace('12.4 }]', `12.4 }, ${entry}]`));
    expect(added(flow, '80 yd 45.2', 'three').text).toBe(
      flow.replace('] }]', `] }, { date: three, marks: [${entry}] }]`),
    );
  });
  it('is the speed at the bow of that day', () => {
    expect(added(file, '279 fps', 'rain, late').text).toBe(
      file.replace('# cold\n', '# cold\n    speed: 279 fps\n'),
    );
    expect(() => added(file, '279 fps', 'unheard of')).toThrow(/no day "unheard of"/);
  });
  it('has one name only', () =>
    expect(() => added(file, '80 yd 45.2 2026-08-16', '2026-08-15')).toThrow(/has a name already/));
});

describe('nothing is added', () => {
  it.each([
    ['to a file with a fault', EXAMPLE.replace('mass: 452 gr', 'mass: 452 yd'), '80 yd 45.2', SetupError],
    ['that the file could not be read with', SMALLEST, '80 yd 45.2', SetupError],
    ['out of reach', EXAMPLE, '800 yd 45.2', SetupError],
    ['without a range', EXAMPLE, '6 arrows', /Say the range/],
    ['to a speed but its range and date', EXAMPLE, '281 fps 6 arrows', /takes a range and a date only/],
  ])('%s', (_, text, words, error) => expect(() => added(text, words)).toThrow(error));
});
