import { calibrationMoved } from '../../calibration/moved-sight.ts';
import { formatQuantity } from '../../quantities/format.ts';
import { type Metres, si } from '../../quantities/quantity.ts';
import { fileQuantity } from '../asked/file-quantity.ts';
import { QuestionError } from '../asked/question-error.ts';
import type { Session } from '../session.ts';

/** What was written of a sight that was moved; null for what was not. */
export interface SightWritten {
  readonly peepToPin: string | null;
  readonly extension: string | null;
  readonly peepHeight: string | null;
}

/**
 * The session with the sight and the peep where they are now. Both are taken as off by what they were off by before: the
 * fitted peep height moves by the difference of what was measured.
 *
 * @throws QuestionError for a length that cannot be, or for an extension where the file has none to compare with
 */
export function withSightAsked(session: Session, { peepHeight, ...written }: SightWritten): Session {
  const { setup, calibration, title, units } = session;
  const { bow, sight } = setup;
  const peepToPin = pinAsked(session, written);
  const height = peepHeight === null ? null : fileQuantity('peepHeight', 'bow.peep_height', peepHeight);
  if (peepToPin === null && height === null) return session;
  const inUnits = (length: Metres): string => formatQuantity(length, units.bowLength, 2);
  return {
    ...session,
    title: [
      title,
      ...(peepToPin === null ? [] : [`peep to pin ${inUnits(peepToPin)}`]),
      ...(height === null ? [] : [`peep height ${inUnits(height)}`]),
    ].join(', '),
    setup: {
      ...setup,
      bow: { ...bow, peep_height: height ?? bow.peep_height },
      sight: { ...sight, peep_to_pin: peepToPin ?? sight.peep_to_pin },
    },
    calibration: calibrationMoved(calibration, {
      peepToPin: peepToPin ?? sight.peep_to_pin,
      peepHigher: si(height === null ? 0 : height - bow.peep_height),
    }),
  };
}

function pinAsked(
  { setup: { sight } }: Session,
  { peepToPin, extension }: Omit<SightWritten, 'peepHeight'>,
): Metres | null {
  if (extension === null)
    return peepToPin === null ? null : fileQuantity('peepToPin', 'sight.peep_to_pin', peepToPin);
  if (peepToPin !== null)
    throw new QuestionError('{extension} and {peepToPin} say the same thing', 'Write one of them.');
  if (sight.extension === undefined)
    throw new QuestionError(
      '{extension}: the file does not say where the pin stood when peep_to_pin was measured',
      'Write "extension: 5.75 in" under "sight:", or use {peepToPin}.',
    );
  const asked = fileQuantity('extension', 'sight.extension', extension);
  return si(sight.peep_to_pin + asked - sight.extension);
}
