import { spreadFactor } from '../../calibration/group.ts';
import {
  type Hit,
  type HitGroup,
  middleOf,
  spreadOf,
  usualSpread,
  type WildArrow,
  wildArrows,
} from '../../calibration/hits.ts';
import { at } from '../../numerics/at.ts';
import { type Metres, si } from '../../quantities/quantity.ts';
import type { MarkEntry, SetupFile } from '../schema/schema.ts';
import { defaultOf } from './defaults.ts';

/** The parts of a file that say what was shot. */
export type HasShots = Pick<SetupFile, 'marks' | 'speeds' | 'drops' | 'days'>;

interface Shots {
  readonly marks: readonly MarkEntry[];
  readonly speeds: NonNullable<SetupFile['speeds']>;
  readonly drops: NonNullable<SetupFile['drops']>;
}

/**
 * Everything that was shot, on whatever day, in the order of the file. What stands under a day carries its date, so that it and
 * an entry at the top of the file that names the date are of one day. A group of which every arrow was measured has its count,
 * size and middle from those that belong to it.
 */
export function shotsIn(file: HasShots): Shots {
  const found = known.get(file) ?? toldBy(file);
  known.set(file, found);
  return found;
}

/** A file is asked for its shots in many places, and arrows measured one by one are looked through each time. */
const known = new WeakMap<HasShots, Shots>();

function toldBy(file: HasShots): Shots {
  const { marks, ...others } = entriesIn(file);
  if (marks.every(({ hits }) => hits === undefined)) return { marks, ...others };
  const wild = wildAmong(marks);
  return {
    ...others,
    marks: marks.map((entry, group) => {
      const hits = hitsOf(entry).filter(
        (_, arrow) => !wild.some((each) => each.group === group && each.arrow === arrow),
      );
      return hits.length === 0 ? entry : { ...entry, ...asGroup(hits) };
    }),
  };
}

/** An arrow that was left out of the middle of its group. */
export interface LeftOut {
  readonly range: Metres;
  readonly date: string | null;
  /** From 1, in the order of the list. */
  readonly arrow: number;
  readonly hit: Hit;
  /** As of `WildArrow`. */
  readonly chance: number;
}

/** The arrows that belong to no group, the wildest first. */
export function arrowsLeftOut(file: HasShots): readonly LeftOut[] {
  const { marks } = entriesIn(file);
  return wildAmong(marks).map(({ group, arrow, chance }) => {
    const entry = at(marks, group);
    return {
      range: entry.range,
      date: entry.date ?? null,
      arrow: arrow + 1,
      hit: at(hitsOf(entry), arrow),
      chance,
    };
  });
}

function entriesIn({ marks = [], speeds = [], drops = [], days = [] }: HasShots): Shots {
  return {
    marks: [
      ...marks,
      ...days.flatMap(({ date, marks: shot = [] }) => shot.map((each) => ({ ...each, date }))),
    ],
    speeds: [
      ...speeds,
      ...days.flatMap(({ date, speeds: shot = [] }) => shot.map((each) => ({ ...each, date }))),
    ],
    drops: [
      ...drops,
      ...days.flatMap(({ date, drops: shot = [] }) => shot.map((each) => ({ ...each, date }))),
    ],
  };
}

const hitsOf = ({ hits = [] }: MarkEntry): readonly Hit[] =>
  hits.map((pair) => ({ right: at(pair, 0), high: at(pair, 1) }));

function wildAmong(marks: readonly MarkEntry[]): readonly WildArrow[] {
  const groups = marks.map((entry): HitGroup => ({ range: entry.range, hits: hitsOf(entry) }));
  // What groups without single arrows say of the archer, as own-spread.ts counts it.
  const known = marks.reduce(
    (sum, { range, arrows = defaultOf('marks.arrows'), group }) => {
      if (group === undefined) return sum;
      const freedom = 2 * (arrows - 1);
      const perRange = group / spreadFactor(arrows) / range;
      return { freedom: sum.freedom + freedom, squares: sum.squares + freedom * perRange ** 2 };
    },
    usualSpread(defaultOf('marks.arrow_spread')),
  );
  return wildArrows(groups, known);
}

/** The group that has the same middle and spread as the hits: its size is what such groups have on average. */
function asGroup(hits: readonly Hit[]) {
  const { right, high } = middleOf(hits);
  return {
    arrows: si<'1'>(hits.length),
    ...(hits.length < 2 ? {} : { group: si<'m'>(spreadOf(hits) * spreadFactor(hits.length)) }),
    lateral: si<'m'>(right),
    vertical: si<'m'>(high),
  };
}
