import { type BowUncertainty, type CloseStart, closeStart } from '../../../advice/tuning/close-start.ts';
import { YARD } from '../../../quantities/exact.ts';
import { formatQuantity } from '../../../quantities/format.ts';
import { type Metres, si } from '../../../quantities/quantity.ts';
import { dataOf, type Field, tableOf } from '../../field.ts';
import type { Session } from '../../session.ts';
import { targetDigits } from '../../side-words.ts';
import { atRange, onTarget } from '../lengths.ts';
import { type Evening, type Logged, NO_MORE, type StepAnswer } from '../step-answer.ts';

const PART_FIELDS: readonly Field<CloseStart['parts'][number]>[] = [
  { key: 'name', name: 'from', of: ({ name }) => name },
  {
    key: 'height_m',
    name: 'then off by',
    unit: 'smallLength',
    digits: targetDigits,
    of: ({ height }) => height,
  },
];

/** The first long shot when nobody has said how far. */
const USUAL_FAR: Metres = si(50 * YARD);

/** Where to centre the first arrows for a long shot; without a round, for the usual one. */
export function startAnswer({ session }: Evening, logged: Logged | undefined): StepAnswer {
  const { units, calibration } = session;
  const entry = logged === undefined ? undefined : logged.entry;
  const found = closeStart(
    calibration.rig,
    entry?.far ?? USUAL_FAR,
    entry?.centred_at ?? null,
    uncertaintyOf(session),
  );
  return {
    ...NO_MORE,
    verdict: entry === undefined ? 'not logged' : 'entered',
    done: entry !== undefined,
    line: line(found, session),
    tables: [
      tableOf(
        PART_FIELDS,
        found.parts,
        units,
        `What may be off at ${atRange(found.far, units)}, one standard deviation each`,
      ),
    ],
    notes: [
      'hole: a quarter inch read wrong; distance: an inch; the others as well as they are known. A hole read wrong ' +
        'counts by far ' +
        'over near.',
    ],
    data: {
      far_m: found.far,
      near_m: found.near,
      centred_at_m: found.centredAt,
      far_for_centred_m: found.farForCentred,
      ...(found.centredAt !== null && found.farForCentred === null
        ? { far_for_centred_reason: 'the arrow does not come back to the line of sight within 140 yd' }
        : {}),
      far_height_m: found.farHeight,
      far_height_sd_m: found.farHeightSd,
      parts: dataOf(PART_FIELDS, found.parts),
    },
  };
}

function uncertaintyOf({ calibration: { parameters } }: Session): BowUncertainty {
  const sd = (name: string): number =>
    parameters.find((each) => each.name === name)?.sd ?? Number.POSITIVE_INFINITY;
  return { peepHeight: sd('peep_height'), speed: sd('launch_speed'), drag: sd('drag_scale') };
}

function line(
  { far, near, centredAt, farForCentred, farHeight, farHeightSd }: CloseStart,
  { units }: Session,
): string {
  const range = (value: number): string => formatQuantity(value, units.range, 2);
  const long = atRange(far, units);
  if (near === null)
    return `An arrow of the ${long} mark is still rising there: a start close by does not help. Step out from short range.`;
  if (centredAt === null)
    return (
      `Centre at ${range(near)}; the first arrow at ${long} is then within ` +
      `${onTarget(2 * farHeightSd, units, 0)} (2 sd).`
    );
  const stands =
    farForCentred === null
      ? 'this arrow never comes back to the line of sight'
      : `this bow stands near its ${formatQuantity(farForCentred, units.range, 0)} mark`;
  const off = `${onTarget(Math.abs(farHeight), units, 0)} ${farHeight < 0 ? 'low' : 'high'}`;
  const inside = Math.abs(farHeight) <= 2 * farHeightSd;
  const advice = inside ? '' : ` Use ${range(near)}, or start at shorter range.`;
  return `Centred at ${atRange(centredAt, units)} ${stands}: ${long} hits ${off}.${advice}`;
}
