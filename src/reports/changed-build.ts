import type { Arrow } from '../arrow/arrow.ts';
import { changedArrow } from '../arrow/changed-arrow.ts';
import type { ArrowParts } from '../arrow/parts/parts.ts';
import type { FlightConditions } from '../flight/conditions.ts';
import type { OpenSetup } from '../setup/open.ts';
import { QuestionError } from './asked/question-error.ts';

/** The parts of the setup's arrow. @throws QuestionError naming the command, when the file lists none */
export function partsOf({ assembly: { arrow } }: OpenSetup, command: string): ArrowParts {
  if (arrow.parts !== null) return arrow.parts;
  throw new QuestionError(
    `${command}: this needs the parts of the arrow, and the file does not list them`,
    'Write arrow.parts with at least shaft, point and vanes.',
  );
}

/**
 * The setup's arrow with other parts, weighed and flying as the setup's: what it weighs beyond its parts stays, and so does
 * its calibration.
 */
export function changedBuild({ setup, assembly }: OpenSetup, parts: ArrowParts): Arrow {
  const { arrow } = assembly;
  const { drag_coefficient: drag } = setup.arrow;
  return changedArrow({
    base: arrow,
    baseDrag:
      typeof drag === 'object' ? drag.map(({ reynolds, value }) => ({ reynolds, coefficient: value })) : drag,
    parts,
    choices: { boundaryLayer: arrow.boundaryLayer, sideForce: arrow.flying.sideForce },
  });
}

/** The calibrated conditions of the setup with another arrow in the bow. */
export const conditionsWith = ({ calibration }: OpenSetup, { flying }: Arrow): FlightConditions => {
  const { conditions } = calibration.rig;
  return { ...conditions, arrow: { ...flying, dragScale: conditions.arrow.dragScale } };
};
