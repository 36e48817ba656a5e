import {
  type BareOffset,
  type LaunchEstimate,
  launchFrom,
} from '../../../advice/tuning/launch-from-paper.ts';
import { type Tape, tapeFor } from '../../../advice/tuning/tape.ts';
import { CLEAN } from '../../../flight/rigid-launch.ts';
import { at } from '../../../numerics/at.ts';
import { formatQuantity } from '../../../quantities/format.ts';
import { type Metres, si } from '../../../quantities/quantity.ts';
import { dataOf, exactRanges, type Field, tableOf } from '../../field.ts';
import type { Session } from '../../session.ts';
import { targetDigits } from '../../side-words.ts';
import { flightsOf, launchData, offsetsOf, shotAt, tearsOf } from '../flown-starts.ts';
import { atRange, onTarget, toHeight, toSide } from '../lengths.ts';
import {
  type Direction,
  moveWords,
  type RestAnswer,
  restAnswer,
  restData,
  restVerdict,
} from '../rest-answer.ts';
import { restPlot } from '../rest-plot.ts';
import { CANNOT_TELL, startWords } from '../start-words.ts';
import { type Evening, type Logged, NO_MORE, type StepAnswer } from '../step-answer.ts';

interface SeenOffset extends BareOffset {
  readonly restRight: Metres;
  readonly restUp: Metres;
  readonly cleanRight: Metres;
  readonly cleanHigh: Metres;
}

const miss = { unit: 'smallLength', digits: targetDigits } as const;
const OFFSET_FIELDS: readonly Field<SeenOffset>[] = [
  { key: 'range_m', name: 'range', unit: 'range', digits: exactRanges, of: ({ range }) => range },
  { key: 'right_m', name: 'bare right', ...miss, of: ({ right }) => right },
  { key: 'high_m', name: 'bare high', ...miss, of: ({ high }) => high },
  { key: 'sd_m', name: '±', ...miss, of: ({ sd }) => sd },
  { key: 'clean_high_m', name: 'clean high', ...miss, of: ({ cleanHigh }) => cleanHigh },
  { key: 'rest_right_m', name: 'rest right', unit: 'mm', digits: 1, of: ({ restRight }) => restRight },
  { key: 'rest_up_m', name: 'rest up', unit: 'mm', digits: 1, of: ({ restUp }) => restUp },
];

/** What bare shafts say of how the arrow leaves, where the rest goes, and the tape that makes them equal. */
export function bareAnswer(evening: Evening, logged: readonly Logged[]): StepAnswer {
  const tape = tapeOf(evening, logged);
  const all = offsetsOf(evening);
  if (all.length === 0) return tapeAlone(tape, evening.session);
  const { session, arrowSd } = evening;
  const { units } = session;
  const flights = flightsOf(session);
  const offsets = all.map(({ shot, place }): SeenOffset => {
    const clean = flights.offset(CLEAN, shot.range);
    return {
      ...shot,
      restRight: place.right,
      restUp: place.up,
      cleanRight: si(clean.right),
      cleanHigh: si(clean.high),
    };
  });
  const last = at(offsets, offsets.length - 1);
  const { place } = at(all, all.length - 1);
  const [sideways, upright] = directionsOf(offsets, arrowSd);
  const rest = restAnswer(sideways, upright);
  const launch = launchFrom(flights, shotAt(tearsOf(evening), place), shotAt(all, place));
  const plot = restPlot(sideways, rest.sideways.outcome, units, 'bare right of clean');
  return {
    ...NO_MORE,
    verdict: restVerdict(rest),
    done: rest.done,
    line: rest.done ? cleanWords(last, session) : offsetWords(last, launch, rest, session),
    paragraphs: tape === null ? [] : [tapeWords(tape, session)],
    tables: [tableOf(OFFSET_FIELDS, offsets, units, 'Bare shafts beside fletched arrows')],
    plots: plot === null ? [] : [plot],
    notes: [
      'A bare shaft from a clean start hits high, by "clean high": so much is no fault. The air on bare shafts is ' +
        'known to some 15 %.',
      CANNOT_TELL,
    ],
    data: {
      tape: tape === null ? null : tapeData(tape),
      offsets: dataOf(OFFSET_FIELDS, offsets),
      launch: launchData(launch),
      ...restData(rest),
    },
  };
}

/** Offsets at the range of the last one. */
function directionsOf(offsets: readonly SeenOffset[], arrowSd: number): readonly [Direction, Direction] {
  const last = at(offsets, offsets.length - 1);
  const alike = offsets.filter(({ range }) => range === last.range);
  const one = arrowSd * last.range;
  const common = { shared: 0, expected: 'rises', small: 2 * one, clean: one } as const;
  return [
    {
      ...common,
      readings: alike.map(({ restRight, right, cleanRight, sd }) => ({
        position: restRight,
        reading: si(right - cleanRight),
        sd,
      })),
    },
    {
      ...common,
      readings: alike.map(({ restUp, high, cleanHigh, sd }) => ({
        position: restUp,
        reading: si(high - cleanHigh),
        sd,
      })),
    },
  ];
}

const cleanWords = (last: SeenOffset, { units }: Session): string =>
  `A clean start would look like this: bare shafts within one arrow's scatter at ${atRange(last.range, units)}.`;

function offsetWords(
  last: SeenOffset,
  launch: LaunchEstimate,
  rest: RestAnswer,
  { assembly, units }: Session,
): string {
  const { sideways, upright } = rest;
  const size = (value: number): string =>
    `${onTarget(Math.abs(value), units).replace(/ \S+$/, '')} ± ${onTarget(last.sd, units)}`;
  const sides = [
    sideways.clean ? '' : `${size(last.right)} ${toSide(last.right)}`,
    upright.clean ? '' : `${size(last.high)} ${toHeight(last.high)}`,
  ].filter((part) => part !== '');
  const told = startWords(launch, assembly.arrow.flying.balance, units);
  const why = told === '' ? '' : `: ${told}`;
  return `Bare shafts ${sides.join(' and ')} at ${atRange(last.range, units)}${why}. ${moveWords(rest)}`.trim();
}

function tapeOf({ session }: Evening, logged: readonly Logged[]): Tape | null {
  const entry = logged.findLast((each) => each.entry.bare_mass !== undefined)?.entry;
  if (entry?.bare_mass === undefined || entry.bare_balance === undefined) return null;
  const { mass, balance } = session.assembly.arrow.flying;
  return tapeFor(
    { mass: entry.fletched_mass ?? mass, balance: entry.fletched_balance ?? balance },
    { mass: entry.bare_mass, balance: entry.bare_balance },
  );
}

const tapeData = ({ mass, massSd, fromNock, fromNockSd }: Tape): object => ({
  mass_kg: mass,
  mass_sd_kg: massSd,
  from_nock_m: fromNock,
  from_nock_sd_m: fromNockSd,
});

const tapeWords = ({ mass, fromNock, fromNockSd }: Tape, { units }: Session): string =>
  `${formatQuantity(mass, units.mass, 1)} of tape, its middle ${onTarget(fromNock, units, 2)} from the groove (± ` +
  `${onTarget(fromNockSd, units, 2)}): put it where the vanes were. Tape elsewhere moves the bare shaft by tenths of an inch.`;

const tapeAlone = (tape: Tape | null, session: Session): StepAnswer => ({
  ...NO_MORE,
  verdict: 'tape',
  done: false,
  line: tape === null ? '' : tapeWords(tape, session),
  data: { tape: tape === null ? null : tapeData(tape), offsets: [], launch: null, move: null, null: null },
});
