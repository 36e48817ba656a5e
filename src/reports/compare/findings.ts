import { type Comparison, compare } from '../../advice/builds/comparison.ts';
import type { ComparedQuestions, UncertainReadings } from '../../advice/builds/uncertain-readings.ts';
import type { FlightConditions } from '../../flight/conditions.ts';
import { type BowAndArrows, bowWithBuilds } from '../../setup/assemble/assemble-bow.ts';
import { QuestionError } from '../asked/question-error.ts';
import type { Occasion } from '../occasion.ts';
import type { Session, Sessions } from '../session.ts';
import { compareScatter, type Groups } from './groups.ts';

/** The files of a comparison and what came of it. */
export interface CompareFindings {
  readonly sessions: readonly Session[];
  /** Of the first file: the base. */
  readonly session: Session;
  readonly comparison: Comparison;
  readonly groups: Groups;
}

/** Side by side; each takes about a tenth of a second and a column. */
const MOST_BUILDS = 40;

/** @param arrows shot with each build for its group; 0 leaves groups out */
export async function compareFindings(
  sessions: Sessions,
  questions: ComparedQuestions,
  arrows: number,
  occasion: Occasion,
): Promise<CompareFindings> {
  const [session] = sessions;
  const bows = sessions.map(bowAt);
  const count = bows.reduce((sum, { candidates }) => sum + 1 + candidates.length, 0);
  if (count > MOST_BUILDS)
    throw new QuestionError(
      `${session.name}: ${count} builds side by side cannot be read`,
      `Compare at most ${MOST_BUILDS}: put a # in front of the others.`,
    );
  if (count < 2)
    throw new QuestionError(
      `${session.name}: there is nothing to compare it with`,
      'List builds under "builds:", or name a second file.',
    );
  const comparison = compare(withNamesApart(bows), questions);
  return { sessions, session, comparison, groups: await compareScatter(occasion, comparison, arrows) };
}

/** The bow with the builds of its file, all where the session stands. */
function bowAt(session: Session): BowAndArrows {
  const bow = bowWithBuilds(session);
  const { place, calibration } = session;
  if (place === null) return bow;
  const { elsewhere, rig } = calibration;
  const before = elsewhere === null ? null : elsewhere.home.rig.scale;
  const shift = rig.scale === null || before === null ? 0 : rig.scale.atZero - before.atZero;
  return {
    ...bow,
    candidates: bow.candidates.map((candidate) => {
      const { rig: own } = candidate;
      const { scale } = own;
      return {
        ...candidate,
        rig: {
          ...own,
          conditions: { ...own.conditions, ...place.conditions },
          scale: scale === null ? null : { ...scale, atZero: scale.atZero + shift },
        },
      };
    }),
  };
}

/** Two files of one title are told apart by a number. */
function withNamesApart(bows: readonly ReturnType<typeof bowWithBuilds>[]): typeof bows {
  return bows.map((bow, i) => {
    const before = bows.slice(0, i).filter(({ name }) => name === bow.name).length;
    return before === 0 ? bow : { ...bow, name: `${bow.name} (${before + 1})` };
  });
}

/** The base, then the others. */
export const buildsOf = ({ base, others }: Comparison): readonly UncertainReadings[] => [
  base,
  ...others.map(({ readings }) => readings),
];

/** Whether the files are about different air, wind or slope, so that part of what differs is the day's. */
export function differentDays({ sessions }: CompareFindings): boolean {
  const [first, ...others] = sessions.map(({ calibration }) => dayOf(calibration.rig.conditions));
  return others.some((day) => day.some((value, i) => value !== first?.[i]));
}

const dayOf = ({ air, wind, slope }: FlightConditions): readonly number[] => [
  air.density,
  air.viscosity,
  wind.tail,
  wind.across,
  wind.shear,
  slope,
];
