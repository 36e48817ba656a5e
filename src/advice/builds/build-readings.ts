import { dragAt } from '../../arrow/drag/drag-at.ts';
import { swing } from '../../arrow/lift/swing.ts';
import { arrowBeam, firstBending, pushLoad } from '../../arrow/parts/beam.ts';
import { referenceArea } from '../../arrow/reference-area.ts';
import type { FlightState } from '../../flight/frame.ts';
import { fly } from '../../flight/trajectory.ts';
import { at } from '../../numerics/at.ts';
import { minimumOf } from '../../numerics/root.ts';
import { si } from '../../quantities/quantity.ts';
import type { PinPaths } from '../../sight/pin-paths.ts';
import type { Rig } from '../../sight/rig.ts';
import { readingAt } from '../../sight/scale.ts';
import { shotRows, straightLaunch } from '../../sight/shot.ts';
import { sightIn } from '../../sight/sighted.ts';
import type { TunedBuild } from './tuned-build.ts';

/** What is asked of every build besides its ranges. */
export interface Questions {
  /** m along the line of sight, rising. */
  readonly ranges: readonly number[];
  /** A wind square to the line of sight, m/s, to tell the drift by. */
  readonly crosswind: number;
}

/** Numbers of a build that hold at every range, SI; null when the file does not tell what they need. */
export const FACTS = [
  'mass',
  'balance',
  'frontOfCentre',
  'massPerDraw',
  'bendingFrequency',
  'bendsPerPush',
  'pushLoad',
  'launchSpeed',
  'efficiency',
  'launchEnergy',
  'launchMomentum',
  'dragCoefficient',
  'dragArea',
  'spinPerMetre',
  'staticMargin',
  'swingWavelength',
  'swingDamping',
] as const;
export type Fact = (typeof FACTS)[number];

/** Numbers of a build by range, SI. */
export const ROW_VALUES = [
  'time',
  'speed',
  'energy',
  'momentum',
  'drop',
  'height',
  'pin',
  'travel',
  'reading',
  'heightPerTravel',
  'highest',
  'descent',
  'drift',
  'windDrift',
  'spin',
] as const;
export type RowValue = (typeof ROW_VALUES)[number];

export interface BuildReadings {
  readonly facts: Readonly<Record<Fact, number | null>>;
  /** In the order of the ranges. */
  readonly rows: readonly Readonly<Record<RowValue, number | null>>[];
}

/** Everything asked of one build, at the best values or beside them. */
export function buildReadings(build: TunedBuild, rig: Rig, questions: Questions): BuildReadings {
  return { facts: facts(build, rig), rows: rows(rig, questions) };
}

function facts(build: TunedBuild, { conditions, launchSpeed: v }: Rig): BuildReadings['facts'] {
  const { arrow, peakDraw, powerStroke, energy } = build;
  const { air, arrow: flying } = conditions;
  const { mass, diameter, attitude } = flying;
  const drag = dragAt(flying, air, v);
  const beam = arrowBeam(arrow);
  const bending = beam === null ? null : firstBending(beam).frequency;
  // Of an even push over the power stroke.
  const acceleration = v ** 2 / (2 * powerStroke);
  const swinging = swing(flying, air.density, drag);
  return {
    mass,
    balance: flying.balance,
    frontOfCentre: arrow.frontOfCentre,
    massPerDraw: peakDraw === null ? null : mass / peakDraw,
    bendingFrequency: bending,
    // The push over the power stroke at an even force takes 2 s/v.
    bendsPerPush: bending === null ? null : (bending * 2 * powerStroke) / v,
    pushLoad: beam === null ? null : pushLoad(beam, acceleration),
    launchSpeed: v,
    efficiency: mass / (mass + energy.virtualMass),
    launchEnergy: (mass * v * v) / 2,
    launchMomentum: mass * v,
    dragCoefficient: drag,
    dragArea: drag * referenceArea(diameter),
    spinPerMetre: attitude?.spinPerMetre ?? null,
    staticMargin: arrow.staticMargin,
    swingWavelength: swinging?.wavelength ?? null,
    swingDamping: swinging?.dampingLength ?? null,
  };
}

function rows(rig: Rig, { ranges, crosswind }: Questions): BuildReadings['rows'] {
  const { conditions, scale } = rig;
  const sighted = sightIn(rig, ranges);
  const launch = straightLaunch(rig, null, sighted.flight);
  const { wind } = conditions;
  const blown = fly(
    { ...conditions, wind: { ...wind, across: si(wind.across + crosswind) } },
    launch,
    ranges,
  );
  return shotRows(conditions, launch, ranges).map((row, i) => {
    const { down } = at(sighted.pins, i);
    const travel = down - sighted.zero.down;
    return {
      time: row.time,
      speed: row.speed,
      energy: row.energy,
      momentum: row.momentum,
      drop: row.drop,
      height: row.height,
      pin: down,
      travel,
      reading: scale === null ? null : readingAt(scale, travel),
      heightPerTravel: sighted.paths.heightPerTravel(down, row.range),
      highest: highest(sighted.paths, down, row.range),
      descent: descent(row),
      drift: row.lateral,
      windDrift: at(blown, i).lateral - row.lateral,
      spin: row.spin,
    };
  });
}

/** Radians below the line of sight at which it arrives. */
const descent = ({ velocity: [x, y] }: FlightState): number => Math.atan2(-y, x);

/** Where on the path the top lies need not be known better: its height is flat there. */
const TOP = 0.01; // m

/** Height of the path above the line of sight, with the mark of a range set, at its highest before that range. */
function highest({ height, start }: PinPaths, down: number, range: number): number {
  const top = minimumOf((x) => -height(down, x), start, range, { tolerance: TOP });
  return Math.max(height(down, top), height(down, start), 0);
}
