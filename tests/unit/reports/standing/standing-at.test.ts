import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { markUncertainty } from '../../../../src/calibration/mark-uncertainty.ts';
import { PARAMETERS, type ParameterValues, withParameters } from '../../../../src/calibration/parameters.ts';
import { at } from '../../../../src/numerics/at.ts';
import { randomStream } from '../../../../src/numerics/random.ts';
import { si } from '../../../../src/quantities/quantity.ts';
import { sureMarks } from '../../../../src/reports/marks/findings.ts';
import { inUnits, type Place, type Session } from '../../../../src/reports/session.ts';
import { type PlaceWritten, placeAsked } from '../../../../src/reports/standing/place-asked.ts';
import { standingAt } from '../../../../src/reports/standing/standing-at.ts';
import { warnings } from '../../../../src/reports/warnings.ts';
import { openSetup } from '../../../../src/setup/open.ts';
import { marksFor } from '../../../../src/sight/marks.ts';
import { pinForHit } from '../../../../src/sight/zero.ts';
import { trial } from '../../calibration/invented-archers.ts';
import { yards } from '../../sight/invented-rig.ts';

const UNWRITTEN: PlaceWritten = {
  place: null,
  altitude: null,
  temperature: null,
  pressure: null,
  seaLevelPressure: null,
  humidity: null,
};
const CAMP = { ...UNWRITTEN, altitude: '3000 m', temperature: '-10 degC' };
/** As high, and as warm as home: what warmth does to the bow takes no part. */
const WARM_CAMP = { ...UNWRITTEN, altitude: '3000 m', temperature: '15 degC' };
const RANGES = [20, 40, 60, 80, 100].map(yards);

const hunt = readFileSync('examples/mountain-hunt/setup.yaml', 'utf8');
const open = (text: string, uncalibrated = false): Session =>
  inUnits(openSetup(text, 'hunt.yaml', { uncalibrated }), 'imperial');

function placeIn(session: Session, written: Partial<PlaceWritten>): Place {
  const place = placeAsked(session, { ...UNWRITTEN, ...written });
  if (place === null) throw new Error('a place was asked for');
  return place;
}
const inCamp = (session: Session): Session =>
  standingAt(session, { place: placeIn(session, CAMP), build: null });
const marksIn = ({ calibration: { rig } }: Session) => marksFor(rig, RANGES).marks;

describe('a bow that nothing was shot with, at another place', () => {
  it('has the marks of a file that is written for that air, gravity and spin with it', () => {
    const there = hunt.replace(/^air:.*$/m, 'air: { altitude: 3000 m, temperature: -10 degC }');
    expect(there).not.toBe(hunt);
    const written = marksIn(open(there, true));
    for (const [i, { travel, lateral }] of marksIn(inCamp(open(hunt, true))).entries()) {
      expect(Math.abs(travel - at(written, i).travel)).toBeLessThan(
        5e-6 /* m, as the tape is to hold: the file written for the camp carries its chronograph's reading back there */,
      );
      // The windage stays that of home, where spin drifts a hair less by the zero range: 0.1 mm at 100 yd, on the target.
      expect(Math.abs(lateral - at(written, i).lateral)).toBeLessThan(5e-4 /* m */);
    }
  });
});

describe('marks that were shot at home, asked for at another place', () => {
  const home = open(hunt.replace(/^air:.*$/m, 'air: { altitude: 300 m, temperature: 20 degC }'));
  const camp = inCamp(home);

  it('rest on the fit at home: speed, drag and peep height stay, and so do residuals', () => {
    expect(camp.calibration.values).toEqual(home.calibration.values);
    expect(camp.calibration.residuals).toBe(home.calibration.residuals);
    expect(camp.calibration.rig.launchSpeed).toBe(home.calibration.rig.launchSpeed);
  });

  it('are not those of the file with its own air changed, which fits the marks as if they had been shot there', () => {
    const refitted = marksIn(
      open(hunt.replace(/^air:.*$/m, 'air: { altitude: 3000 m, temperature: -10 degC }')),
    );
    const apart = at(refitted, 4).travel - at(marksIn(camp), 4).travel;
    expect(Math.abs(apart)).toBeGreaterThan(5e-5 /* m: a twentieth of a millimetre on the tape */);
  });

  it('read on the sight as it was zeroed at home, windage untouched', () => {
    const rig = { home: home.calibration.rig, camp: camp.calibration.rig };
    const { windage } = marksFor(rig.home, RANGES).zero;
    const pins = RANGES.map((range) => pinForHit(rig.camp, range, windage).down);
    const zero = pinForHit(rig.home, yards(20), null).down;
    const scale = rig.home.scale;
    if (scale === null) throw new Error('the sight has a scale');
    const table = marksFor(rig.camp, RANGES);
    expect(table.zero.windage).toBe(windage);
    expect(at(table.marks, 0).travel).toBeCloseTo(0, 8);
    for (const [i, { reading }] of table.marks.entries()) {
      const byHand = scale.atZero + (at(pins, i) - zero) / scale.travelPerUnit;
      expect(Math.abs((reading ?? Number.NaN) - byHand)).toBeLessThan(
        1e-5 /* units of 1 mm: the shared flights' own error */,
      );
    }
    expect(at(table.marks, 0).reading).not.toBe(scale.atZero);
  });

  it('have the standard error of the reading that differences of whole sights give, the zero staying at home', () => {
    const { calibration } = home;
    const readings = (values: ParameterValues): readonly number[] => {
      const zeroed = withParameters(calibration.problem.rig, values);
      const place = placeIn(home, WARM_CAMP).conditions;
      const there = { ...zeroed, conditions: { ...zeroed.conditions, ...place } };
      const zero = pinForHit(zeroed, yards(20), null);
      return RANGES.map((range) => {
        const { scale } = zeroed;
        if (scale === null) throw new Error('a scale');
        return scale.atZero + (pinForHit(there, range, zero.windage).down - zero.down) / scale.travelPerUnit;
      });
    };
    const steps = PARAMETERS.map((_, i) => 0.05 * Math.sqrt(at(at(calibration.covariance, i), i)));
    const slopes = PARAMETERS.map((name, i) => {
      const step = at(steps, i);
      const moved = (by: number) =>
        readings({ ...calibration.values, [name]: calibration.values[name] + by });
      const [high, low] = [moved(step), moved(-step)];
      return high.map((value, k) => (value - at(low, k)) / (2 * step));
    });
    const there = standingAt(home, { place: placeIn(home, WARM_CAMP), build: null }).calibration;
    const table = marksFor(there.rig, RANGES);
    for (const [k, { readingSd }] of markUncertainty(there, table).entries()) {
      const variance = PARAMETERS.reduce(
        (sum, _, i) =>
          sum +
          PARAMETERS.reduce(
            (row, __, j) =>
              row + at(at(slopes, i), k) * at(at(slopes, j), k) * at(at(calibration.covariance, i), j),
            0,
          ),
        0,
      );
      // Of itself: forward differences over a fiftieth of a standard error, and three shared flights.
      expect(Math.abs(readingSd / Math.sqrt(variance) - 1)).toBeLessThan(0.01 /* of itself */);
    }
  });
});

describe('what is written of a place', () => {
  const withPlaces = `${hunt}places:
  - { name: High Camp, altitude: 9800 ft, pressure: 705 hPa }
  - { name: frost, temperature: 0 degF }
`;
  const session = open(withPlaces, true);
  const own = session.calibration.rig.conditions.air;
  const airOf = (written: Partial<PlaceWritten>) => placeIn(session, written).conditions.air;

  it("the file's own air stands for what is not written without an altitude", () => {
    const frost = placeIn(session, { place: ' FROST' });
    expect(frost.name).toBe('frost');
    expect(frost.conditions.air.temperature).toBeCloseTo(255.372, 3 /* 0 degF is 255.372 K */);
    expect([frost.conditions.air.pressure, frost.conditions.air.humidity]).toEqual([
      own.pressure,
      own.humidity,
    ]);
    expect(frost.conditions.freeFall).toBe(session.calibration.rig.conditions.freeFall);
  });

  it("another altitude takes the place's pressure away, another temperature does not", () => {
    expect(airOf({ place: 'High Camp', temperature: '10 degF' }).pressure).toBeCloseTo(70500, 6);
    // U.S. Standard Atmosphere 1976 at 1000 m: 898.76 hPa.
    expect(airOf({ place: 'High Camp', altitude: '1000 m' }).pressure / 100).toBeCloseTo(898.76, 1);
  });

  it.each([
    [
      { place: 'hihg camp' },
      '{place}: the file has no place "hihg camp"; it has "High Camp", "frost". Write {place} "High Camp".',
    ],
    [
      { temperature: '-90 degF' },
      '{temperature}: "-90 degF" is below the limit. The formula for air holds between these temperatures.',
    ],
    [{ altitude: '9800 feets high' }, '{altitude}: '],
    [{ altitude: '980' }, '{altitude}: "980" has no unit, and more than one would fit'],
    [
      { altitude: '3000 m', pressure: '1013 hPa' },
      '{pressure}: pressure is what a barometer on the spot reads, and at 3000 m',
    ],
    [{ pressure: '1013 hPa', seaLevelPressure: '1013 hPa' }, 'without an altitude'],
  ])('%j is refused', (written, message) => {
    const refused = () => placeAsked(session, { ...UNWRITTEN, ...written });
    expect(refused).toThrow(message.replace(/\{(\w+)\}/g, '$1'));
  });
});

it('30 invented archers who shot at home hit the truth in thin cold air within the error that is told', () => {
  const archer = {
    shots: [20, 40, 60].map((range) => ({ range, arrows: 3 })),
    spread: 0.03,
  };
  const ranges = [60, 80].map((count) => si<'m'>(yards(count)));
  const scores = Array.from({ length: 30 }, (_, i) => {
    const { bow, open: opened } = trial(archer, 20261126, i);
    const session = inUnits(opened, 'imperial');
    const place = placeIn(session, CAMP);
    const there = standingAt(session, { place, build: null });
    // This bow changes with its temperature as bows may: 0 ± 0.15 fps/degF.
    const perDegree = 0.15 * randomStream(20261127, i).normal();
    const colder = (place.warmth.warmer * 9) / 5; // degF
    const real = marksFor(
      {
        ...bow,
        launchSpeed: si(bow.launchSpeed + perDegree * colder * 0.3048),
        conditions: { ...bow.conditions, ...place.conditions },
      },
      ranges,
    );
    const zeroMoved = real.zero.down - marksFor(bow, ranges).zero.down;
    return sureMarks(there, ranges).map(({ mark, uncertainty }, k) => {
      const { reading, travel } = at(real.marks, k);
      const truth = (reading ?? Number.NaN) + zeroMoved / (bow.scale?.travelPerUnit ?? Number.NaN);
      expect(travel).toBeGreaterThan(0);
      return ((mark.reading ?? Number.NaN) - truth) / uncertainty.readingSd;
    });
  });
  for (const k of ranges.keys()) {
    const square = scores.reduce((sum, score) => sum + at(score, k) ** 2, 0) / scores.length;
    // Of 30 honest scores the root mean square lies within 0.6 and 1.5 in all but one case in 1000.
    expect(Math.sqrt(square)).toBeGreaterThan(0.6);
    expect(Math.sqrt(square)).toBeLessThan(1.5);
  }
});

describe('a place much colder than the air of the marks', () => {
  const home = open(hunt.replace(/^air:.*$/m, 'air: { altitude: 300 m, temperature: 68 degF }'));
  const at = (temperature: string): Session =>
    standingAt(home, { place: placeIn(home, { altitude: '2000 m', temperature }), build: null });
  const speedVariance = ({ calibration }: Session): number =>
    (calibration.parameters[0]?.sd ?? Number.NaN) ** 2;

  it('adds 0.15 fps for each degF to the error of the speed, by hand 6.6 fps for 44 degF, and says so', () => {
    const added = Math.sqrt(speedVariance(at('24 degF')) - speedVariance(home));
    expect(Math.abs(added / 0.3048 - 6.6)).toBeLessThan(1e-9 /* fps: rounding */);
    expect(warnings(at('24 degF')).at(-1)).toBe(
      'It is 44 °F colder there than where the bow was measured. Nobody measured what that does to its speed: ± 6.6 ft/s is ' +
        'assumed, and is in every ± here.',
    );
  });

  it('within 20 degF it is left out, as between evenings', () => {
    expect(speedVariance(at('49 degF'))).toBeCloseTo(speedVariance(home), 12);
    expect(warnings(at('49 degF'))).toEqual(warnings(home));
  });
});
