import type { Arrow } from '../../arrow/arrow.ts';
import { dragAt } from '../../arrow/drag/drag-at.ts';
import { staticMarginSd } from '../../arrow/lift/static-margin.ts';
import { swing as closedSwing } from '../../arrow/lift/swing.ts';
import type { FlightConditions } from '../../flight/conditions.ts';
import { gravity, speedOf } from '../../flight/frame.ts';
import type { Launch } from '../../flight/launch.ts';
import type { RigidState } from '../../flight/rigid-frame.ts';
import { CLEAN, type Disturbance, rigidLaunch } from '../../flight/rigid-launch.ts';
import { flyRigid } from '../../flight/rigid-trajectory.ts';
import { DomainError } from '../../quantities/domain-error.ts';
import {
  type Joules,
  type Metres,
  type MetresPerSecond,
  type Radians,
  type Ratio,
  si,
} from '../../quantities/quantity.ts';
import { arrowEnds } from './arrow-ends.ts';
import { type BadStart, badStarts, type StartName } from './bad-starts.ts';
import { type PaperHole, paperHoles } from './paper-hole.ts';

interface SwingPoint {
  readonly range: Metres;
  readonly up: Radians;
  readonly right: Radians;
}

/** What one start does to the flight; all differences are from the clean flight of the same arrow. */
export interface StartEffect {
  readonly name: StartName;
  /** How far the nose stands up and right of where the clean shaft would, along the way. */
  readonly trace: readonly SwingPoint[];
  /** Largest angle between the shaft and where the clean shaft would stand against its flight. */
  readonly largest: Radians;
  /** Flown until the swing stays within a tenth of its largest; null when it does not by the last range. */
  readonly recovery: Metres | null;
  readonly misses: readonly { readonly range: Metres; readonly right: Metres; readonly high: Metres }[];
  /** Of motion and height together, lost to the swing by the last range, and the speed it would be there. */
  readonly energyLost: Joules;
  readonly speedLost: MetresPerSecond;
  readonly holes: readonly PaperHole[];
}

export interface SwingAdvice {
  readonly staticMargin: Metres;
  /** Standard uncertainty of it; null where only the sums of the lift are known. */
  readonly marginSd: Metres | null;
  /** Over the arrow's length, groove to the end of the shaft. */
  readonly marginShare: Ratio;
  /** The margin is too small to trust: see `LEAST_MARGIN`. */
  readonly tooSmall: boolean;
  /** Null for an arrow so damped that it does not swing through. */
  readonly swing: { readonly wavelength: Metres; readonly dampingLength: Metres } | null;
  readonly starts: readonly StartEffect[];
}

/**
 * Static margin below this share of the arrow's length is warned of. A field point gives 0.4 to 0.5; at 0.15 the same
 * crookedness or bad start moves the hit about three times as far. Common practice, no source. With blades in front the margin
 * itself is known to an inch at best, which is told beside it.
 */
export const LEAST_MARGIN = 0.15;

/** The swing counts as over when it stays within this share of its largest. */
const RECOVERED = 0.1;
/** Spacing at which the swing is looked at, m: some fortieth of the shortest swing. */
const STRIDE = 0.25;

export interface SwingQuestion extends BadStart {
  readonly arrow: Arrow;
  readonly conditions: FlightConditions;
  readonly launch: Launch;
  /** Of the misses, rising; the last one is where energy is compared. */
  readonly ranges: readonly Metres[];
  /** Of the sheets of paper, rising. */
  readonly papers: readonly Metres[];
}

/**
 * How the arrow recovers from bad starts, by the rigid model.
 *
 * @throws DomainError when the arrow's parts are not known, its centre of pressure is not behind its balance point, or
 *   there is no range
 */
export function swingAdvice(question: SwingQuestion): SwingAdvice {
  const { arrow, conditions, launch, angle, rate } = question;
  const attitude = conditions.arrow.attitude;
  if (attitude === null || arrow.length === null)
    throw new DomainError('swing', Number.NaN, 'an arrow with `arrow.parts` in the setup file');
  const margin = -attitude.firstMoment / attitude.normalSlope;
  if (!(margin > 0))
    throw new DomainError(
      'static margin (m)',
      margin,
      'above 0; with a negative margin an arrow tumbles instead of swinging',
    );
  const { air } = conditions;
  const speed = Math.sqrt(launch.velocity.reduce((sum, v) => sum + v * v, 0));
  const dragCoefficient = dragAt(conditions.arrow, air, speed);
  const clean = flown(question, CLEAN);
  return {
    staticMargin: si(margin),
    marginSd: staticMarginSd(conditions.arrow),
    marginShare: si(margin / arrow.length),
    tooSmall: margin / arrow.length < LEAST_MARGIN,
    swing: closedSwing(conditions.arrow, air.density, dragCoefficient),
    starts: badStarts({ angle, rate }).map(([name, disturbance]) =>
      effect(question, name, disturbance, clean),
    ),
  };
}

interface Flown {
  readonly swinging: readonly RigidState[];
  readonly atRanges: readonly RigidState[];
}

function flown({ conditions, launch, ranges }: SwingQuestion, disturbance: Disturbance): Flown {
  const start = launch.position[0];
  const end = ranges.at(-1);
  if (end === undefined) throw new DomainError('number of ranges', 0, 'at least one');
  const rigid = rigidLaunch(launch, disturbance);
  const stations = Array.from(
    { length: Math.max(1, Math.floor((end - start) / STRIDE)) },
    (_, i) => start + (i + 1) * STRIDE,
  );
  return {
    swinging: flyRigid(conditions, rigid, stations),
    atRanges: flyRigid(conditions, rigid, ranges),
  };
}

function effect(
  question: SwingQuestion,
  name: StartName,
  disturbance: Disturbance,
  clean: Flown,
): StartEffect {
  const { conditions, launch, arrow, papers } = question;
  const own = name === 'clean' ? clean : flown(question, disturbance);
  const trace = own.swinging.map((state, i) => swungFrom(state, clean.swinging[i] ?? state));
  const angles = trace.map(({ up, right }) => Math.sqrt(up * up + right * right));
  const atStart = Math.sqrt(disturbance.tailLeft ** 2 + disturbance.tailUp ** 2);
  const largest = Math.max(atStart, ...angles);
  const [last, cleanLast] = [own.atRanges.at(-1), clean.atRanges.at(-1)];
  if (last === undefined || cleanLast === undefined)
    throw new DomainError('number of ranges', 0, 'at least one');
  const { mass } = conditions.arrow;
  const energyLost = energy(cleanLast, conditions) - energy(last, conditions);
  return {
    name,
    trace,
    largest: si(largest),
    recovery: recovery(angles, largest),
    misses: own.atRanges.map((state, i) => {
      const aim = clean.atRanges[i] ?? state;
      return {
        range: state.range,
        right: si(state.lateral - aim.lateral),
        high: si(state.height - aim.height),
      };
    }),
    energyLost: si(energyLost),
    speedLost: si(energyLost / (mass * speedOf(cleanLast))),
    holes: paperHoles(conditions, rigidLaunch(launch, disturbance), arrowEnds(arrow), papers),
  };
}

/** Of motion and height; both flights are looked at at one range, so the part of the height along the line of sight cancels. */
const energy = (state: RigidState, { arrow, slope, freeFall }: FlightConditions): number =>
  arrow.mass * (speedOf(state) ** 2 / 2 - gravity({ slope, freeFall })[1] * state.height);

/** Angle of the shaft to its path, less what it would be had the start been clean. */
function swungFrom(state: RigidState, clean: RigidState): SwingPoint {
  const off = ({ axis, velocity }: RigidState, k: 1 | 2): number =>
    axis[k] / axis[0] - velocity[k] / velocity[0];
  return {
    range: state.range,
    up: si(off(state, 1) - off(clean, 1)),
    right: si(off(state, 2) - off(clean, 2)),
  };
}

function recovery(angles: readonly number[], largest: number): Metres | null {
  const last = angles.findLastIndex((angle) => angle > RECOVERED * largest);
  // An arrow still swinging through at the last station may well swing on.
  if (largest > 0 && last === angles.length - 1) return null;
  return si(largest === 0 ? 0 : (last + 2) * STRIDE);
}
