import { crookedError, heightPerMass } from '../../../advice/tuning/arrow-errors.ts';
import { type ArrowSet, type MatchedSets, matchedSets } from '../../../advice/tuning/matched-sets.ts';
import type { DisplayUnits } from '../../../quantities/display-units.ts';
import { type Metres, si } from '../../../quantities/quantity.ts';
import { virtualMassPrior } from '../../../setup/assemble/assemble-launch.ts';
import { dataOf, type Field, tableOf } from '../../field.ts';
import { targetDigits } from '../../side-words.ts';
import { atRange, onTarget } from '../lengths.ts';
import { type Evening, type Logged, NO_MORE, needed, type StepAnswer } from '../step-answer.ts';

/** Arrows as they are numbered on the shaft, from 1. */
const numbers = (set: readonly number[]): readonly number[] => set.map((i) => i + 1);

const miss = { unit: 'smallLength', digits: targetDigits } as const;

const SET_FIELDS: readonly Field<ArrowSet>[] = [
  {
    key: 'arrows',
    datum: ({ arrows }) => numbers(arrows),
    name: 'arrows',
    of: ({ arrows }) => numbers(arrows).join(' '),
  },
  { key: 'mass_mean_kg', name: 'mean', unit: 'mass', digits: 1, of: ({ massMean }) => massMean },
  { key: 'mass_sd_kg', of: ({ massSd }) => massSd },
  { key: 'mass_range_kg', name: 'apart', unit: 'mass', digits: 1, of: ({ massRange }) => massRange },
  { key: 'height_sd_m', name: 'by mass ±', ...miss, of: ({ heightSd }) => heightSd },
  { key: 'own_rms_m', name: 'crooked ±', ...miss, of: ({ ownRms }) => ownRms },
];

/** Which arrows belong together, and whether sorting them gains anything. */
export function arrowsAnswer({ session, arrowSd }: Evening, { entry }: Logged): StepAnswer {
  const { calibration, assembly, setup, units } = session;
  const { rig } = calibration;
  const range = needed(entry.range, 'range');
  const measured = needed(entry.measured, 'measured');
  const known = assembly.arrow.parts !== null && rig.conditions.arrow.attitude !== null;
  const arrows = measured.map(({ mass, runout }) => ({
    mass,
    own: runout === undefined || !known ? si<'m'>(0) : crookedError(rig, assembly.arrow, runout, range),
  }));
  const spread = si<'m'>(arrowSd * range);
  const found = matchedSets({
    arrows,
    setSize: entry.set ?? arrows.length,
    heightPerMass: heightPerMass(rig, virtualMassPrior(setup.bow).value, range),
    arrowSd: spread,
  });
  const crooked = arrows.flatMap(({ own }, i) => (own > CROOKED * spread ? [i] : []));
  return {
    ...NO_MORE,
    verdict: verdictOf(found, crooked),
    done: true,
    line: line(found, { range, spread, crooked, worst: crooked.map((i) => arrows[i]?.own ?? spread) }, units),
    tables: [
      tableOf(
        SET_FIELDS,
        [...found.sets, found.all],
        units,
        `Sets at ${atRange(range, units)}, the last row all of them`,
      ),
    ],
    notes: [
      ...(found.leftOver.length === 0 ? [] : [`Left over: ${numbers(found.leftOver).join(', ')}.`]),
      'By mass: how far apart they hit high and low by their weights. Crooked: what the runout of each is worth, ' +
        'nocked any way round.',
      ...(known || measured.every(({ runout }) => runout === undefined)
        ? []
        : ['The runout needs the parts of the arrow in the setup; it is left out.']),
      'Spine and how a shaft is turned in its nock are kept and not used: nothing known turns them into hits.',
    ],
    data: {
      range_m: range,
      sets: dataOf(SET_FIELDS, found.sets),
      left_over: numbers(found.leftOver),
      all_height_sd_m: found.all.heightSd,
      group_growth: found.groupGrowth,
      own_m: arrows.map(({ own }) => own),
    },
  };
}

/** An arrow whose own error is larger than this share of an ordinary shot is left out. */
const CROOKED = 0.5;
/** A group that would shrink by less shows nothing. */
const WORTH_SORTING = 0.02;

function verdictOf({ groupGrowth }: MatchedSets, crooked: readonly number[]): string {
  if (crooked.length > 0) return 'leave out';
  return groupGrowth < WORTH_SORTING ? 'nothing to gain' : 'sorted';
}

interface Told {
  readonly range: Metres;
  readonly spread: Metres;
  readonly crooked: readonly number[];
  readonly worst: readonly Metres[];
}

function line(
  { all, groupGrowth }: MatchedSets,
  { range, spread, crooked, worst }: Told,
  units: DisplayUnits,
): string {
  const at = atRange(range, units);
  if (crooked.length > 0) {
    const largest = onTarget(Math.max(...worst), units);
    const which = `arrow${crooked.length === 1 ? '' : 's'} ${numbers(crooked).join(' and ')}`;
    return `Leave out ${which} (crooked: ${largest} of ${crooked.length === 1 ? 'its' : 'their'} own at ${at}).`;
  }
  const share = `${(100 * groupGrowth).toFixed(1)} %`;
  const by =
    `all of them scatter ${onTarget(Math.hypot(all.heightSd, all.ownRms), units, 2)} at ${at} by weight and crookedness, ` +
    `your own shots ${onTarget(spread, units)} (${share} of the group).`;
  return groupGrowth < WORTH_SORTING
    ? `Sorting gains nothing you could see: ${by}`
    : `Shoot them in sets: ${by}`;
}
