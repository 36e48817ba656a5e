import { toSi } from '../../quantities/format.ts';
import { type Metres, si } from '../../quantities/quantity.ts';
import { type OldMark, type OldTape, oldMarks, oldTape } from '../../sight/old-tape.ts';
import { ENDLESS_SLIDER, tapeOf } from '../../sight/tape.ts';
import type { NamedText } from '../asked/option.ts';
import { positiveQuantity } from '../asked/quantity.ts';
import { QuestionError } from '../asked/question-error.ts';
import type { Session } from '../session.ts';
import type { TapeFindings } from './findings.ts';
import { oldTapeFrom } from './old-tape-text.ts';

/** Faster than any arrow. */
const FASTEST = '500 fps';
/** The tape of a speed is laid out to so many times the farthest range, since a slower arrow needs a longer number. */
const LONGER = 1.4;
const NEAREST = 5;

export interface AgainstAsked {
  /** The rows of an old tape; null when none is given. */
  readonly against: NamedText | null;
  /** The speed an old tape was made for; null when none is given. */
  readonly againstSpeed: string | null;
}

/** What the tape that is on the sight is worth. */
export interface AgainstFindings {
  readonly name: string;
  readonly marks: readonly OldMark[];
}

/**
 * What an old tape is worth at the fives of the new one, or at all of its ranges when it has few; null when none was asked about.
 *
 * @throws QuestionError when both kinds are given, or what was given cannot be read
 */
export function againstFindings(
  session: Session,
  asked: AgainstAsked,
  { ticks, form, last }: TapeFindings,
  unit: 'yd' | 'm',
): AgainstFindings | null {
  const old = oldAsked(session, asked, { last: last.label, unit, ratio: form.travelRatio });
  if (old === null) return null;
  const far = ticks.filter(({ branch }) => branch === 'far');
  const fives = far.filter(({ label }) => label % 5 === 0);
  const ranges = (fives.length > 1 ? fives : far).map(({ range }): Metres => range);
  return {
    name: asked.againstSpeed === null ? 'the old tape' : `the ${asked.againstSpeed} tape`,
    marks: oldMarks(session.calibration.rig, old, ranges, form.travelRatio),
  };
}

function oldAsked(
  { calibration: { rig } }: Session,
  { against, againstSpeed }: AgainstAsked,
  { last, unit, ratio }: { readonly last: number; readonly unit: 'yd' | 'm'; readonly ratio: number },
): OldTape | null {
  if (against !== null && againstSpeed !== null)
    throw new QuestionError('{against} and {againstSpeed} name two old tapes', 'Write one of them.');
  if (against !== null) return oldTapeFrom(against.text);
  if (againstSpeed === null) return null;
  const launchSpeed = positiveQuantity('againstSpeed', againstSpeed, 'speed', FASTEST);
  const most = Math.ceil(LONGER * last);
  const ranges = Array.from({ length: most - NEAREST + 1 }, (_, i) => ({
    range: si<'m'>(toSi(NEAREST + i, unit)),
    label: NEAREST + i,
  }));
  // The numbers of a tape do not end where this sight does.
  const free = { ...rig, launchSpeed, housingBelowPin: si<'m'>(-1) };
  return oldTape(tapeOf(free, ranges, ratio, ENDLESS_SLIDER).ticks);
}
