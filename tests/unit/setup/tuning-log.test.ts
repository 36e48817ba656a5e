import { describe, expect, it } from 'vitest';
import { openSetup } from '../../../src/setup/open.ts';
import { SetupError } from '../../../src/setup/problem.ts';
import { readSetup } from '../../../src/setup/read.ts';
import { openTuning } from '../../../src/setup/tuning/open-tuning.ts';
import { readTuningLog } from '../../../src/setup/tuning/read-log.ts';
import { EXAMPLE } from './example-text.ts';
import { problemsOf } from './problems-of.ts';

const INCH = 0.0254;
const withLog = (...entries: readonly string[]): string =>
  `${EXAMPLE}\ntuning:\n  skip: [line]\n  log:\n${entries.map((entry) => `    - { date: 2026-04-18, ${entry} }\n`).join('')}`;

const EVENING = [
  'step: nock, serving: [0.109 in, 2.78 mm], note: new string, changed: [nock]',
  'step: draw, draw_length: 29.25 in, match: 29 in, holding_weight: 14 lbf, late_stop: top, stop_gap: 0.06 in',
  'step: start, far: 50 yd, centred_at: 3 yd',
  'step: torque, range: 50 yd, extension: 6.5 in, left: [1.5 in, 3.3 in, 2.9 in], right: [-2.4 in, -4.5 in]',
  'step: paper, distance: 6 ft, nock_right: -0.4 in, nock_high: 0.1 in, arrow: bare, count: 2, rest_right: 0 mm',
  'step: bare, range: 30 yd, fletched: { arrows: 3, lateral: 0 in, vertical: 0 in }, bare: { arrows: 3, lateral: 5 in, ' +
    'vertical: 0.5 in }',
  'step: bare, fletched_mass: 446 gr, fletched_balance: 17.9 in, bare_mass: 427 gr, bare_balance: 18.61 in',
  'step: line, range: 60 yd, line: vertical, rest_right: -1.6 mm, off_line: [1.9 in, -4.0 in, -2.7 in]',
  'step: line, range: 60 yd, line: horizontal, nock_up: 0 mm, spread: 4.1 in, arrows: 5, done: true',
  'step: arrows, range: 50 yd, set: 2, measured: [{ mass: 449.1 gr, runout: 0.002 in }, { mass: 451 gr, deflection: 300 }]',
  'step: level, range: 40 yd, slope: 30 deg, uphill: [1 in, 2 in], downhill: [0 in]',
  'step: level, tipped: 25 deg, cant: 0.4 deg',
  'step: level, plumb_run: 2 in, plumb_aside: 0.02 in',
];

describe('the log of a tuning evening', () => {
  it('is read with every step, in SI', () => {
    const tuning = readSetup(withLog(...EVENING), 'setup.yaml').tuning;
    expect(tuning?.skip).toEqual(['line']);
    expect(tuning?.log).toHaveLength(EVENING.length);
    expect(tuning?.log?.[3]?.left).toEqual(
      [1.5, 3.3, 2.9].map((inches) => expect.closeTo(inches * INCH, 12)),
    );
  });
  it('alone in a file is the same, with and without its first line', () => {
    const body = withLog(...EVENING).split('\ntuning:\n')[1] ?? '';
    const alone = readTuningLog(body.replace(/^ {2}/gm, ''), 'evening.yaml');
    expect(alone).toEqual(readSetup(withLog(...EVENING), 'setup.yaml').tuning);
    expect(readTuningLog(`tuning:\n${body}`, 'evening.yaml')).toEqual(alone);
  });
});

/** What is found, the reason and the order, as the table of faults in the log has them. */
const FAULTS: readonly (readonly [entry: string, path: string, reason: RegExp, write: RegExp])[] = [
  ['step: nock, serving: [2.77, 2.77]', 'serving.0', /"2.77" has no unit/, /"2.77 mm"/],
  [
    'step: nock, serving: [0.109 in, 1.09 in]',
    'serving.1',
    /above the limit. No string is thinner or thicker/,
    /"0.109 in"/,
  ],
  ['step: nock, serving: [0 in, 0 in]', 'serving.0', /below the limit/, /"0.109 in"/],
  ['step: torqe', 'step', /"torqe" is not one of the steps/, /"torque"/],
  [
    'step: torque, range: 50 yd, left: [1 in], right: [2 in]',
    'extension',
    /is missing: where the pin stood/,
    /"extension: 5.75 in"/,
  ],
  [
    'step: torque, range: 50 yd, extension: 5 in, left: [], right: [2 in]',
    'left',
    /is an empty list/,
    /"\[1.5 in, 2 in\]"/,
  ],
  [
    'step: torque, range: 50 yd, extension: 5 in, left: 2 in, right: [2 in]',
    'left',
    /has one value where a list belongs/,
    /"\[2 in\]"/,
  ],
  [
    'step: torque, range: 50 yd, extension: 5 in, left: [61 in], right: [2 in]',
    'left.0',
    /above the limit/,
    /./,
  ],
  ['step: torque, range: 9 yd, extension: 5 in, left: [1 in], right: [2 in]', 'range', /too near/, /10 yd/],
  [
    'step: torque, range: 50 yd, extension: 15 in, left: [1 in], right: [2 in]',
    'extension',
    /above the limit/,
    /./,
  ],
  [
    'step: torque, range: 50 yd, extension: 5 in, left: [1 in], right: [2 in], serving: [0.109 in]',
    'serving',
    /`serving` belongs to the step nock; this entry is torque/,
    /step: nock/,
  ],
  [
    'step: line, range: 60 yd, line: vertical, rest_right: 0 mm, off_line: [1 in]',
    'off_line',
    /one arrow has no spread/,
    /two or more/,
  ],
  [
    'step: line, range: 60 yd, line: vertical, rest_right: 0 mm, off_line: [1 in, 1 in, 1 in]',
    'off_line',
    /all alike/,
    /tenth of an inch/,
  ],
  [
    'step: line, range: 60 yd, line: vertical, rest_right: 0 mm, off_line: [1 in, 2 in], spread: 1 in, arrows: 2',
    'spread',
    /say the same twice/,
    /Keep off_line/,
  ],
  [
    'step: line, range: 60 yd, line: vertical, off_line: [1 in, 2 in]',
    'rest_right',
    /is missing/,
    /rest_right/,
  ],
  [
    'step: line, range: 60 yd, line: vertical, rest_right: 0 mm, off_line: [1 in, 2 in, 3, 1 in]',
    'off_line.2',
    /"3" has no unit/,
    /"3 in"/,
  ],
  [
    'step: paper, distance: 6 ft, nock_right: 40 in, nock_high: 0 in',
    'nock_right',
    /above the limit. A tear is shorter than the arrow/,
    /./,
  ],
  ['step: paper, distance: 1 ft, nock_right: 0 in, nock_high: 0 in', 'distance', /below the limit/, /./],
  [
    'step: bare, range: 50 yd, fletched: { arrows: 3, lateral: 0 in, vertical: 0 in }, bare: { arrows: 3, lateral: 5 ' +
      'in, vertical: 0.5 in }',
    'range',
    /too far/,
    /30 yd/,
  ],
  [
    'step: bare, range: 30 yd, bare: { arrows: 3, lateral: 5 in, vertical: 0.5 in }',
    'fletched',
    /is missing: only the two/,
    /fletched/,
  ],
  [
    'step: level, range: 40 yd, slope: 30 deg, uphill: [1 in]',
    'downhill',
    /is missing: only their difference/,
    /downhill/,
  ],
  [
    'step: level, range: 40 yd, slope: 4 deg, uphill: [1 in], downhill: [1 in]',
    'slope',
    /below the limit/,
    /./,
  ],
  [
    'step: arrows, range: 50 yd, set: 3, measured: [{ mass: 449 gr }, { mass: 450 gr }]',
    'set',
    /more than the 2 arrows/,
    /"2"/,
  ],
  [
    'step: arrows, range: 50 yd, measured: [{ mass: 449 gr }, { mass: 480 gr }]',
    'measured',
    /two kinds of arrow\?/,
    /each kind/,
  ],
];

describe('a faulty entry is refused with its place, the reason and what to write', () => {
  it.each(FAULTS)('%s', (entry, key, reason, write) => {
    const [problem] = problemsOf(withLog('step: start, far: 50 yd', entry));
    expect(problem?.path).toBe(`tuning.log.1.${key}`);
    expect(problem?.message).toMatch(reason);
    expect(problem?.write).toMatch(write);
  });
  it.each(['soon', '2026-02-30', '2101-01-01', '18.4.2026'])('a date of %s is no day', (date) => {
    const [problem] = problemsOf(withLog('step: start, far: 50 yd').replace('2026-04-18', date));
    expect(problem?.message).toContain(`"${date}" is no day`);
    expect(problem?.write).toContain('2026-04-18');
  });
  it('in a file of its own it names that file and the place there', () => {
    const text = 'log:\n  - { date: 2026-04-18, step: nock, serving: [0.109 in, 2] }\n';
    expect(() => readTuningLog(text, 'evening.yaml')).toThrow(
      /^evening.yaml:2:\d+ {2}log, entry 1: serving, entry 2: "2" has no unit/,
    );
  });
});

describe('a log with a setup that cannot answer it', () => {
  const problemsWith = (setup: string, log: string): readonly string[] => {
    try {
      openTuning(openSetup(setup, 'setup.yaml'), {
        name: 'evening.yaml',
        text: `log:\n  - { date: 2026-04-18, ${log} }\n`,
      });
      return [];
    } catch (error) {
      if (error instanceof SetupError) return error.problems.map(({ message }) => message);
      throw error;
    }
  };
  it('torque without sight.extension', () =>
    expect(
      problemsWith(EXAMPLE, 'step: torque, range: 50 yd, extension: 5 in, left: [1 in], right: [2 in]'),
    ).toEqual([
      expect.stringMatching(
        /sight.extension is missing, and torque is in the log.*Add "extension: 5.75 in" under "sight:"/,
      ),
    ]));
  it('paper without parts', () => {
    const plain =
      'bow: { peep_height: 4.6 in }\narrow: { diameter: 0.246 in, mass: 450 gr }\nlaunch: { speed: 280 fps }\nsight: { ' +
      'peep_to_pin: 33 in }\n';
    expect(problemsWith(plain, 'step: paper, distance: 6 ft, nock_right: 0.4 in, nock_high: 0 in')).toEqual([
      expect.stringMatching(/what turns this arrow is not known/),
    ]);
  });
  it('a bare shaft that is not lighter', () =>
    expect(problemsWith(EXAMPLE, 'step: bare, bare_mass: 455 gr, bare_balance: 18.6 in')).toEqual([
      expect.stringMatching(/evening.yaml:2:.*bare shaft is lighter.*Swap the two/),
    ]));
});

it('two logs are joined by day, and those of one day stay as they stand', () => {
  const file =
    'log:\n  - { date: 2026-04-17, step: start, far: 40 yd }\n  - { date: 2026-04-18, step: start, far: 60 yd }\n';
  const { log, skip } = openTuning(openSetup(withLog('step: start, far: 50 yd'), 'setup.yaml'), {
    name: 'evening.yaml',
    text: file,
  });
  expect(log.map(({ far }) => far)).toEqual([40, 50, 60].map((yards) => expect.closeTo(0.9144 * yards, 9)));
  expect(skip).toEqual(['line']);
});
