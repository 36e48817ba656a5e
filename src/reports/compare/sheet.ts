import { buildCurves } from '../../advice/builds/comparison.ts';
import type { Drawing, PaperName } from '../../documents/page/drawing.ts';
import { DomainError } from '../../quantities/domain-error.ts';
import { cautionOnPaper } from '../cautions.ts';
import { airLine, arrowLine } from '../head.ts';
import { warnings } from '../warnings.ts';
import { bowLines } from './bow-words.ts';
import { buildChanges } from './build-changes.ts';
import { compareCautions } from './cautions.ts';
import { choiceWords } from './choice.ts';
import { buildsOf, type CompareFindings } from './findings.ts';
import { layOutComparison } from './sheet-layout.ts';
import { renamed, type ShortName, shortNames } from './short-names.ts';
import { surroundingsLine } from './words.ts';

/** The page to take to the shop, and whether names of builds had to be cut short on it. */
export interface CompareSheet {
  readonly drawing: Drawing;
  readonly isCut: boolean;
}

interface SheetAsked {
  readonly page: PaperName;
  readonly day: string;
}

/** Names are as long as they are, or cut to as many characters as there is room for. */
const NAME_LENGTHS = [40, 30, 22, 16, 10];

/** @throws DomainError when there are more builds than the page has room for */
export function compareSheet(compared: CompareFindings, asked: SheetAsked): CompareSheet {
  const names = buildsOf(compared.comparison).map(({ build }) => build.name);
  const longest = Math.max(...names.map(({ length }) => length));
  const whole: ShortName = (name) => name;
  const cut = NAME_LENGTHS.filter((most) => most < longest).map((most) => shortNames(names, most));
  let refusal: unknown;
  for (const shortName of [whole, ...cut])
    try {
      const isCut = shortName !== whole;
      return { drawing: sheetWith(renamed(compared, shortName), shortName, isCut, asked), isCut };
    } catch (error) {
      if (!(error instanceof DomainError)) throw error;
      refusal ??= error;
    }
  throw refusal;
}

const CUT = 'Names of builds are cut short to fit the page.';

function sheetWith(
  compared: CompareFindings,
  shortName: ShortName,
  isCut: boolean,
  { page, day }: SheetAsked,
): Drawing {
  const { session, comparison } = compared;
  return layOutComparison(
    {
      comparison,
      curves: buildCurves(comparison, smooth(comparison.questions.ranges)),
      units: session.units,
      title: `${session.title}: which build to buy`,
      subtitle: [
        `${day}. ${airLine(session)}`,
        `now: ${arrowLine(session)}`,
        ...changesOf(compared, shortName),
      ],
      choice: choiceWords(compared),
      notes: [
        surroundingsLine(compared),
        ...bowLines(session, comparison.base).split('\n'),
        isCut ? CUT : '',
      ].filter((line) => line !== ''),
      cautions: [...compared.sessions.flatMap(warnings), ...compareCautions(compared).map(cautionOnPaper)],
    },
    page,
  );
}

/** What each listed build changes; builds of other files are described there. */
const changesOf = ({ sessions }: CompareFindings, shortName: ShortName): readonly string[] =>
  sessions.flatMap(({ setup, units }) =>
    (setup.builds ?? []).map((build) => `${shortName(build.name)}: ${buildChanges(build, units)}`),
  );

/** Places for a curve from the nearest to the farthest range. */
function smooth(ranges: readonly number[]): readonly number[] {
  const [from = 0, to = from] = [ranges[0], ranges.at(-1)];
  return Array.from({ length: CURVE_POINTS }, (_, i) => from + ((to - from) * i) / (CURVE_POINTS - 1));
}
const CURVE_POINTS = 40;
