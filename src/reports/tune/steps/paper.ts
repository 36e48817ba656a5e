import {
  BENDING_SD,
  endsOfTear,
  type LaunchEstimate,
  launchFrom,
  READING_SD,
  type Tear,
} from '../../../advice/tuning/launch-from-paper.ts';
import type { StartFlights } from '../../../advice/tuning/start-flights.ts';
import { CLEAN } from '../../../flight/rigid-launch.ts';
import { at } from '../../../numerics/at.ts';
import { INCH } from '../../../quantities/exact.ts';
import { formatQuantity } from '../../../quantities/format.ts';
import { type Metres, si } from '../../../quantities/quantity.ts';
import { dataOf, type Field, tableOf } from '../../field.ts';
import type { Session } from '../../session.ts';
import { targetDigits } from '../../side-words.ts';
import { type AtRest, flightsOf, launchData, offsetsOf, shotAt, tearsOf } from '../flown-starts.ts';
import { onTarget, toSide } from '../lengths.ts';
import { type Direction, moveWords, restAnswer, restData, restVerdict } from '../rest-answer.ts';
import { restPlot } from '../rest-plot.ts';
import { CANNOT_TELL, startWords } from '../start-words.ts';
import { type Evening, NO_MORE, type StepAnswer } from '../step-answer.ts';

/** Within this of clean a tear is clean; below the other it is small; common practice, no source. */
const CLEAN_WITHIN = INCH / 8;
const SMALL = INCH / 4;
/** Of the first bending of an arrow, Hz. @source measured on arrows, 80 to 90 Hz: a wave for each metre of flight */
const BENDING_FREQUENCY = 88;

interface ReadTear extends Tear {
  readonly restRight: Metres;
  readonly restUp: Metres;
  readonly cleanRight: Metres;
  readonly cleanHigh: Metres;
}

const miss = { unit: 'smallLength', digits: targetDigits } as const;
const TEAR_FIELDS: readonly Field<ReadTear>[] = [
  { key: 'paper_m', name: 'paper at', unit: 'height', digits: 1, of: ({ paper }) => paper },
  { key: 'nock_right_m', name: 'nock right', ...miss, of: ({ nockRight }) => nockRight },
  { key: 'nock_high_m', name: 'nock high', ...miss, of: ({ nockHigh }) => nockHigh },
  { key: 'rest_right_m', name: 'rest right', unit: 'mm', digits: 1, of: ({ restRight }) => restRight },
  { key: 'rest_up_m', name: 'rest up', unit: 'mm', digits: 1, of: ({ restUp }) => restUp },
  { key: 'clean_high_m', name: 'clean high', ...miss, of: ({ cleanHigh }) => cleanHigh },
];

/** What the tears say of how the arrow leaves, and where the rest goes. */
export function paperAnswer(evening: Evening): StepAnswer {
  const { session } = evening;
  const { units } = session;
  const flights = flightsOf(session);
  const all = tearsOf(evening);
  const tears = all.map((tear) => read(flights, tear));
  const last = at(tears, tears.length - 1);
  const { place } = at(all, all.length - 1);
  const [sideways, upright] = directionsOf(tears);
  const rest = restAnswer(sideways, upright);
  const launch = launchFrom(flights, shotAt(all, place), shotAt(offsetsOf(evening), place));
  const ends = endsOfTear(flights, last);
  const plot = restPlot(sideways, rest.sideways.outcome, units, 'nock right of clean');
  const spacing = si<'m'>(session.calibration.rig.launchSpeed / (2 * BENDING_FREQUENCY));
  return {
    ...NO_MORE,
    verdict: restVerdict(rest),
    done: rest.done,
    line: rest.done
      ? 'A clean start would look like this.'
      : `${tearWords(last, session)}: ${meaningWords(launch, ends, session)}. ${moveWords(rest)}`.trim(),
    tables: [tableOf(TEAR_FIELDS, tears, units, 'Tears, the hole of the nock from that of the point')],
    plots: plot === null ? [] : [plot],
    notes: [
      `The shaft bends as it flies, alike in every shot at one distance: two papers ${onTarget(spacing, units, 0)} ` +
        `apart average it ` +
        'out. Tears at 4 and at 12 ft tell a crooked start from a turning one; one tear cannot.',
      CANNOT_TELL,
    ],
    data: {
      tears: dataOf(TEAR_FIELDS, tears),
      launch: launchData(launch),
      if_angle_rad: ends.ifAngle,
      if_rate_radps: ends.ifRate,
      ...restData(rest),
      bend_spacing_m: spacing,
    },
  };
}

function read(flights: StartFlights, { shot, place }: AtRest<Tear>): ReadTear {
  const clean = flights.tear(CLEAN, shot.paper, shot.arrow);
  return {
    ...shot,
    restRight: place.right,
    restUp: place.up,
    cleanRight: si(clean.right),
    cleanHigh: si(clean.high),
  };
}

/** Tears through one paper by one kind of arrow, as they bend alike. */
function directionsOf(tears: readonly ReadTear[]): readonly [Direction, Direction] {
  const last = at(tears, tears.length - 1);
  const alike = tears.filter(({ paper, arrow }) => paper === last.paper && arrow === last.arrow);
  const common = { shared: BENDING_SD, expected: 'falls', small: SMALL, clean: CLEAN_WITHIN } as const;
  const sd = ({ count }: Tear): Metres => si(READING_SD / Math.sqrt(count));
  return [
    {
      ...common,
      readings: alike.map((tear) => ({
        position: tear.restRight,
        reading: si(tear.nockRight - tear.cleanRight),
        sd: sd(tear),
      })),
    },
    {
      ...common,
      readings: alike.map((tear) => ({
        position: tear.restUp,
        reading: si(tear.nockHigh - tear.cleanHigh),
        sd: sd(tear),
      })),
    },
  ];
}

function tearWords(tear: ReadTear, { units }: Session): string {
  const parts = [
    Math.abs(tear.nockRight - tear.cleanRight) > CLEAN_WITHIN
      ? `${toSide(tear.nockRight)} ${onTarget(Math.abs(tear.nockRight), units, 2)}`
      : '',
    Math.abs(tear.nockHigh - tear.cleanHigh) > CLEAN_WITHIN
      ? `${tear.nockHigh < 0 ? 'low' : 'high'} ${onTarget(Math.abs(tear.nockHigh), units, 2)}`
      : '',
  ].filter((part) => part !== '');
  return `Nock ${parts.join(', ')} at ${formatQuantity(tear.paper, units.height, units.height === 'ft' ? 0 : 1)}`;
}

/** What is known of the start, or the two ends of what one tear may mean. */
function meaningWords(
  launch: LaunchEstimate,
  { ifAngle, ifRate }: { readonly ifAngle: number; readonly ifRate: number },
  { assembly, units }: Session,
): string {
  const { balance } = assembly.arrow.flying;
  const told = startWords(launch, balance, units);
  if (told !== '') return told;
  return (
    `one tear cannot tell angle from rate; all angle: ${formatQuantity(Math.abs(ifAngle), 'deg', 1)}; all rate: ` +
    `${Math.abs(ifRate).toFixed(1)} rad/s, the nock crossing at ${formatQuantity(Math.abs(ifRate) * balance, units.speed, 1)}`
  );
}
