import type { Difference } from '../../advice/builds/comparison.ts';
import { rangeWords } from '../../documents/table/range-digits.ts';
import { at } from '../../numerics/at.ts';
import { listed } from '../listed.ts';
import { rowWording, type Wording } from './fields.ts';
import type { CompareFindings } from './findings.ts';

/** What a build may be chosen for, in the order in which it is told. */
const PURPOSES = ['flattest', 'leastWind', 'mostMomentum', 'smallestGroup'] as const;
type Purpose = (typeof PURPOSES)[number];

/** What to choose for a purpose. */
interface Choice {
  readonly purpose: Purpose;
  /** Builds that beat the present one for certain, the best first, with those that cannot be told from it. */
  readonly best: readonly Beating[];
  /** Whether anything can be said: there was something to compare. */
  readonly isKnown: boolean;
}

interface Beating {
  readonly name: string;
  readonly difference: Difference;
}

/** What a choice rests on. */
type Judged = Pick<CompareFindings, 'comparison' | 'groups'>;
type Told = Judged & { readonly session: Pick<CompareFindings['session'], 'units'> };

/** A gain of less than this share of the number is not worth a purchase. @source common practice, no source */
const WORTH = 0.02;

/** For each purpose the builds that are really better at the farthest range, and by enough to matter. */
function choicesOf({ comparison, groups }: Judged): readonly Choice[] {
  const { base, others } = comparison;
  const last = at(base.rows, base.rows.length - 1);
  const basis: Readonly<Record<Purpose, number | null>> = {
    flattest: last.drop?.value ?? null,
    leastWind: last.windDrift?.value ?? null,
    mostMomentum: last.momentum?.value ?? null,
    smallestGroup: groups[0]?.at(-1)?.group ?? null,
  };
  return PURPOSES.map((purpose) => {
    const known = basis[purpose];
    const all = others.flatMap(({ readings, rows }, i): readonly Beating[] => {
      const row = rows.at(-1);
      const found: Readonly<Record<Purpose, Difference | null | undefined>> = {
        flattest: row?.drop,
        leastWind: row?.windDrift,
        mostMomentum: row?.momentum,
        smallestGroup: groups[i + 1]?.at(-1)?.difference,
      };
      const difference = found[purpose];
      return difference === null || difference === undefined
        ? []
        : [{ name: readings.build.name, difference }];
    });
    if (known === null) return { purpose, best: [], isKnown: false };
    const gain = ({ value }: Difference): number => (purpose === 'mostMomentum' ? value : -value);
    const better = all
      .filter(({ difference }) => difference.real && gain(difference) > WORTH * Math.abs(known))
      .toSorted((a, b) => gain(b.difference) - gain(a.difference));
    return {
      purpose,
      best: better.filter(({ difference }) => isAlike(difference, at(better, 0).difference)),
      isKnown: all.length > 0,
    };
  });
}

/** Whether two that beat the same build are too close to each other to be told apart: by one error of the better known. */
const isAlike = (one: Difference, other: Difference): boolean =>
  Math.abs(one.value - other.value) <= Math.min(one.sd, other.sd);

const FOR: Readonly<Record<Purpose, string>> = {
  flattest: 'to shoot flattest',
  leastWind: 'for the least drift by wind',
  mostMomentum: 'for the most momentum',
  smallestGroup: 'for the smallest group of unlike arrows',
};

/** What a build that is better for a purpose has more or less of. */
const GAIN: Readonly<Record<Purpose, string>> = {
  flattest: 'less drop',
  leastWind: 'less drift',
  mostMomentum: 'more',
  smallestGroup: 'smaller',
};

/** Which build to choose for what, in one sentence, or that none is worth the money. */
export function choiceWords(found: Told): string {
  const { comparison, session } = found;
  const { questions } = comparison;
  const range = rangeWords(at(questions.ranges, questions.ranges.length - 1), session.units);
  const known = choicesOf(found).filter(({ isKnown }) => isKnown);
  const won = known.filter(({ best }) => best.length > 0);
  const kept = known.filter(({ best }) => best.length === 0);
  if (won.length === 0)
    return (
      `Nothing here is worth the money: at ${range} no build is certainly better than the present arrow ` +
      `${listed(known.map(({ purpose }) => FOR[purpose]))}.`
    );
  const told = won.map(({ purpose, best }) => {
    const wording = wordingOf(purpose, found);
    const size = wording.shown(Math.abs(at(best, 0).difference.value)).toFixed(wording.digits);
    const names = best.map(({ name }) => name).join(' or ');
    return `${names} ${FOR[purpose]} (${size} ${wording.unit} ${GAIN[purpose]})`;
  });
  const rest =
    kept.length === 0
      ? ''
      : `; ${listed(kept.map(({ purpose }) => FOR[purpose]))} nothing certainly beats the present arrow`;
  return `What to choose at ${range}: ${told.join('; ')}${rest}.`;
}

const wordingOf = (purpose: Purpose, { session: { units } }: Told): Wording =>
  ({
    flattest: rowWording('drop', units),
    leastWind: rowWording('windDrift', units),
    mostMomentum: rowWording('momentum', units),
    smallestGroup: rowWording('drop', units),
  })[purpose];

const KEYS: Readonly<Record<Purpose, string>> = {
  flattest: 'flattest',
  leastWind: 'least_wind',
  mostMomentum: 'most_momentum',
  smallestGroup: 'smallest_group',
};

/** For programs: the builds to choose for each purpose, none where nothing beats the present one, null where it is not known. */
export const choiceData = (found: Judged): object =>
  Object.fromEntries(
    choicesOf(found).map(({ purpose, best, isKnown }) => [
      KEYS[purpose],
      isKnown ? best.map(({ name }) => name) : null,
    ]),
  );
