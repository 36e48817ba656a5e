import { bareShaft } from '../../src/advice/tuning/bare-shaft.ts';
import { STEPS, type Step } from '../../src/advice/tuning/next-step.ts';
import { type StartFlights, startFlights } from '../../src/advice/tuning/start-flights.ts';
import { CLEAN, type Disturbance } from '../../src/flight/rigid-launch.ts';
import { randomStream } from '../../src/numerics/random.ts';
import { DEGREE, FOOT, INCH, YARD } from '../../src/quantities/exact.ts';
import { si } from '../../src/quantities/quantity.ts';
import { inUnits } from '../../src/reports/session.ts';
import { standingOf } from '../../src/reports/tune/standing.ts';
import { eveningOf } from '../../src/reports/tune/step-answer.ts';
import { type OpenSetup, openSetup } from '../../src/setup/open.ts';
import { openTuning } from '../../src/setup/tuning/open-tuning.ts';
import { huntingSetup } from '../reference/hunting-setup.ts';

/** What is true of the bow of an invented evening, and what the archer's shots scatter by. */
export interface Truth {
  /** Where torque does not matter, in. */
  readonly null: number;
  /** From left to right, rad; each shot's own share of it is normal with mean 1 and this deviation. */
  readonly torque: number;
  readonly torqueSd: number;
  /** One arrow in one direction, in/yd. */
  readonly spread: number;
  /** Best place of the rest, mm right of where it begins, and what a millimetre to the right of it does. */
  readonly bestRest: number;
  readonly ratePerMm: number;
  readonly degreesPerMm: number;
  /** In every tear at one distance, in. */
  readonly bending: number;
  /** Of the third axis, deg. */
  readonly thirdAxis: number;
  /** -1 for the mirrored archer. */
  readonly side: 1 | -1;
}

export const TRUTH: Truth = {
  null: 5.3,
  torque: 0.11,
  torqueSd: 0.25,
  spread: 0.03,
  bestRest: 0.7,
  ratePerMm: 0.3,
  degreesPerMm: 0.17,
  bending: 0.1,
  thirdAxis: 0.8,
  side: 1,
};

export const tuningSetup = (turn = 'right'): OpenSetup =>
  openSetup(
    huntingSetup(
      { turn },
      'marks:\n  - { range: 20 yd, reading: 12.4 }\n  - { range: 60 yd, reading: 31.9 }\n',
    ).replace(
      'peep_to_pin: 33 in',
      'peep_to_pin: 33 in, extension: 5.75 in, scale: { travel_per_unit: unknown, increases: down }',
    ),
    'setup.yaml',
  );

/** What an evening came to. */
export interface Evening {
  readonly path: readonly Step[];
  readonly log: string;
  readonly arrows: number;
  /** in, and mm. */
  readonly extension: number;
  readonly rest: number;
  readonly finished: boolean;
}

const D = 27.25; // in: peep to grip
const MOST_ARROWS = 200;
const DAY = '2026-04-18';

/** An archer who writes down what is drawn, and does what the tool says until nothing is left to do. */
export function evening(opened: OpenSetup, truth: Truth, seed: number): Evening {
  const { normal } = randomStream(seed, 14);
  const session = inUnits({ ...opened, calibration: opened.calibration }, 'imperial');
  const flights = trueFlights(opened);
  const entries: string[] = [];
  const path: Step[] = [];
  const bow = { serving: 0.1125, draw: 29.25, rest: 0, extension: 5.75, axis: truth.thirdAxis };
  let arrows = 0;
  const text = () =>
    `skip: [line]\nlog:\n${entries.map((entry) => `  - { date: ${DAY}, ${entry} }\n`).join('')}`;
  const seen = () => eveningOf(session, openTuning(opened, { name: 'evening.yaml', text: text() }));
  const write = (entry: string) => entries.push(entry);
  const alter = (change: string) => {
    entries.push(`${entries.pop() ?? ''}, changed: [${change}]`);
  };
  const answer = (step: Step) => standingOf(seen(), step).answer;
  const number = (data: object, ...keys: readonly string[]): number =>
    Number(keys.reduce<unknown>((at, key) => (at as Readonly<Record<string, unknown>>)[key], data));
  const inches = (value: number): string => `${(truth.side * value).toFixed(3)} in`;
  const start = (): Disturbance => {
    const off = bow.rest - truth.bestRest;
    return {
      ...CLEAN,
      tailLeft: si(off * truth.degreesPerMm * DEGREE),
      tailLeftRate: si(off * truth.ratePerMm),
    };
  };

  const act: Readonly<Record<Step, () => void>> = {
    nock: () => {
      write(
        `step: nock, serving: [${[1, 2, 3].map(() => `${(bow.serving + 0.0003 * normal()).toFixed(4)} in`).join(', ')}]`,
      );
      if (!answer('nock').done) {
        alter('nock');
        bow.serving = 0.1092;
      }
    },
    draw: () => {
      write(`step: draw, draw_length: ${bow.draw} in, match: 29 in`);
      if (!answer('draw').done) {
        alter('draw_length');
        bow.draw = 29.06;
      }
    },
    paper: () => {
      for (const feet of [4, 12]) {
        const { right, high } = flights.tear(start(), si(feet * FOOT), 'fletched');
        const bent = truth.bending * Math.cos((2 * Math.PI * feet * FOOT * 88) / (280 * FOOT));
        const torn = right / INCH + bent + 0.06 * normal();
        write(
          `step: paper, distance: ${feet} ft, nock_right: ${inches(torn)}, ` +
            `nock_high: ${(high / INCH + 0.06 * normal()).toFixed(3)} in, ` +
            `rest_right: ${(truth.side * bow.rest).toFixed(3)} mm`,
        );
        arrows += 1;
      }
      const { done, data } = answer('paper');
      if (!done) bow.rest += 1000 * truth.side * number(data, 'move', 'rest_right_m');
    },
    start: () => void write('step: start, far: 50 yd'),
    torque: () => {
      const share = truth.null / (D + truth.null) - bow.extension / (D + bow.extension);
      const hits = (side: number): string =>
        [1, 2, 3]
          .map(
            () =>
              1800 * ((side * truth.torque * (1 + truth.torqueSd * normal())) / 2) * share +
              truth.spread * 50 * normal(),
          )
          .map(inches)
          .join(', ');
      const [front, back] = [hits(-1), hits(1)];
      const [left, right] = truth.side > 0 ? [front, back] : [back, front];
      write(
        `step: torque, range: 50 yd, extension: ${bow.extension.toFixed(3)} in, left: [${left}], right: [${right}]`,
      );
      arrows += 6;
      const { verdict, data } = answer('torque');
      if (verdict === 'first move' || verdict === 'move') bow.extension += number(data, 'move_m') / INCH;
      else if (verdict !== 'done') bow.extension += bow.extension > 5 ? -2 : 2;
    },
    arrows: () =>
      void write(
        'step: arrows, range: 50 yd, measured: [{ mass: 449.1 gr }, { mass: 450.3 gr }, { mass: 450.6 gr }]',
      ),
    bare: () => {
      const { right, high } = flights.offset(start(), si(30 * YARD));
      const scatter = () => (truth.spread * 30 * normal()) / Math.sqrt(3);
      const group = (lateral: number, vertical: number) =>
        `{ arrows: 3, lateral: ${inches(lateral + scatter())}, vertical: ${(vertical + scatter()).toFixed(3)} in }`;
      write(
        `step: bare, range: 30 yd, rest_right: ${(truth.side * bow.rest).toFixed(3)} mm, fletched: ${group(0, 0)}, ` +
          `bare: ${group(right / INCH, high / INCH)}`,
      );
      arrows += 6;
      const { done, data } = answer('bare');
      if (!done) bow.rest += 1000 * truth.side * number(data, 'move', 'rest_right_m');
    },
    line: () => {},
    level: () => {
      const cant = Math.asin(Math.tan(bow.axis * DEGREE) * Math.tan(25 * DEGREE)) / DEGREE;
      write(`step: level, tipped: 25 deg, cant: ${(truth.side * (cant + 0.02 * normal())).toFixed(2)} deg`);
      if (!answer('level').done) {
        alter('level');
        bow.axis = 0.05;
      }
    },
    marks: () => {},
  };

  /** Steps are looked at one by one, as far as the first that is open or stale. */
  const next = (): Step | undefined => {
    const tonight = seen();
    return STEPS.find((step) => ['open', 'stale'].includes(standingOf(tonight, step).state));
  };
  for (let step = next(); step !== undefined && arrows < MOST_ARROWS; step = next()) {
    path.push(step);
    act[step]();
  }
  return {
    path,
    log: text(),
    arrows,
    extension: bow.extension,
    rest: bow.rest,
    finished: next() === undefined,
  };
}

/** How the true arrow flies: for the mirrored archer everything that is written is mirrored, not this. */
function trueFlights({ assembly, calibration }: OpenSetup): StartFlights {
  return startFlights({
    rig: calibration.rig,
    fletched: assembly.arrow,
    bare: bareShaft(assembly.arrow, 2.5),
    gripAhead: si(D * INCH),
  });
}
