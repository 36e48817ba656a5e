import {
  type AxisError,
  leanMisses,
  secondAxisByPlumb,
  thirdAxisFromSlopes,
  thirdAxisOnBench,
} from '../../../advice/tuning/axis-shots.ts';
import { launchLineHeight } from '../../../flight/launch.ts';
import { fly } from '../../../flight/trajectory.ts';
import { at } from '../../../numerics/at.ts';
import { formatQuantity, fromSi } from '../../../quantities/format.ts';
import { type Metres, si } from '../../../quantities/quantity.ts';
import { settingsFor } from '../../../sight/marks.ts';
import { straightLaunch } from '../../../sight/shot.ts';
import { dataOf, exactRanges, type Field, tableOf } from '../../field.ts';
import { targetDigits } from '../../side-words.ts';
import { someRanges } from '../some-ranges.ts';
import { type Evening, type Logged, NO_MORE, needed, type StepAnswer } from '../step-answer.ts';

type LeanMiss = ReturnType<typeof leanMisses>[number];

const MISS_FIELDS: readonly Field<LeanMiss>[] = [
  { key: 'range_m', name: 'range', unit: 'range', digits: exactRanges, of: ({ range }) => range },
  {
    key: 'lateral_m',
    name: 'right',
    unit: 'smallLength',
    digits: targetDigits,
    of: ({ lateral }) => lateral,
  },
];

/** What shots on slopes, the bench and the plumb line say of the axes of the sight: the latest of each. */
export function levelAnswer(evening: Evening, logged: readonly Logged[]): StepAnswer {
  const { session } = evening;
  const { calibration, setup, units } = session;
  const third = thirdAxis(evening, logged);
  const plumb = logged.findLast(({ entry }) => entry.plumb_run !== undefined);
  const second =
    plumb === undefined
      ? null
      : secondAxisByPlumb(
          needed(plumb.entry.plumb_run, 'plumb_run'),
          needed(plumb.entry.plumb_aside, 'plumb_aside'),
        );
  const { rig } = calibration;
  const misses =
    second === null
      ? []
      : leanMisses(second.error, setup.sight.peep_to_pin, settingsFor(rig, someRanges(rig, units)));
  const found: readonly AxisError[] = [third, second].filter((axis) => axis !== null);
  const done = found.length > 0 && found.every((axis) => axis.done);
  return {
    ...NO_MORE,
    verdict: verdictOf(found, done),
    done,
    line: [third === null ? '' : thirdLine(third), second === null ? '' : secondLine(second)]
      .filter((each) => each !== '')
      .join(' '),
    tables:
      misses.length === 0 ? [] : [tableOf(MISS_FIELDS, misses, units, 'What the lean of the bar costs')],
    notes: [
      'A cant of a tenth of a degree and a plumb line to a hundredth of an inch are assumed for the errors.',
      'Shots alone cannot tell the second axis from cant or spin; quillpath cant says what they can. The lean that ' +
        'spin would ask ' +
        'for, 0.01 to 0.2°, is inside the error of any level.',
    ],
    data: {
      third_axis:
        third === null
          ? null
          : {
              error_rad: third.error,
              error_sd_rad: third.sd,
              cant_uphill_rad: third.cantUphill,
              arrows_to_show: third.arrowsToShow,
            },
      second_axis:
        second === null
          ? null
          : { lean_rad: second.error, lean_sd_rad: second.sd, misses: dataOf(MISS_FIELDS, misses) },
    },
  };
}

interface ThirdAxis extends AxisError {
  readonly cantUphill: number;
  readonly arrowsToShow: number | null;
  /** Shot on a slope, so many in all; null on the bench. */
  readonly shots: number | null;
}

function thirdAxis({ session, arrowSd }: Evening, logged: readonly Logged[]): ThirdAxis | null {
  const latest = logged.findLast(({ entry }) => entry.uphill !== undefined || entry.tipped !== undefined);
  if (latest === undefined) return null;
  const { entry } = latest;
  if (entry.tipped !== undefined)
    return { ...thirdAxisOnBench(entry.tipped, needed(entry.cant, 'cant')), shots: null };
  const range = needed(entry.range, 'range');
  const [uphill, downhill] = [needed(entry.uphill, 'uphill'), needed(entry.downhill, 'downhill')];
  const axis = thirdAxisFromSlopes({
    range,
    slope: needed(entry.slope, 'slope'),
    uphill,
    downhill,
    drop: dropAt(session, range),
    arrowSd,
  });
  return { ...axis, shots: uphill.length + downhill.length };
}

/** Of the path below the line of its launch. */
function dropAt({ calibration: { rig } }: Evening['session'], range: Metres): Metres {
  const launch = straightLaunch(rig, range);
  const { height } = at(fly(rig.conditions, launch, [range]), 0);
  return si(launchLineHeight(launch, range) - height);
}

const degrees = (angle: number): string => fromSi(Math.abs(angle), 'deg').toFixed(1);

function thirdLine({ error, sd, shown, done, shots, arrowsToShow }: ThirdAxis): string {
  const size = `${degrees(error)} ± ${formatQuantity(sd, 'deg', 1)}`;
  const where = `The right end of the level is ${size} ${error < 0 ? 'behind' : 'ahead'}`;
  if (done) return `${where}: good enough.`;
  const turn = error < 0 ? 'Turn it forward.' : 'Turn it back.';
  if (shown) return `${where}. ${turn}`;
  const more =
    arrowsToShow === null ? '' : ` ${arrowsToShow} arrows each way would be needed for half a degree.`;
  const seen = shots === null ? 'on the bench' : `${shots} shots`;
  return `${where}: not shown (${seen}). Hang a plumb line.${more}`;
}

function secondLine({ error, sd, done }: AxisError): string {
  const size = `${degrees(error)} ± ${formatQuantity(sd, 'deg', 1)}`;
  const lean = `The bar leans ${size} ${error < 0 ? 'anticlockwise' : 'clockwise'}`;
  return done ? `${lean}: good enough.` : `${lean}: turn it back by as much.`;
}

function verdictOf(found: readonly AxisError[], done: boolean): string {
  if (done) return 'true';
  return found.some((axis) => axis.shown) ? 'off' : 'not shown';
}
