import type { Arrow } from '../arrow/arrow.ts';
import { changedArrow } from '../arrow/changed-arrow.ts';
import { staysUpright } from '../arrow/lift/stays-upright.ts';
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

/** @throws QuestionError naming the command, for an arrow that the air turns round: no flight of it as a whole can be told */
export function requirePointFirst(arrow: Arrow, command: string): void {
  if (staysUpright(arrow.flying)) return;
  const bladed = arrow.parts?.point.shape === 'fixed_blade';
  throw new QuestionError(
    `${command}: ${bladed ? 'with such blades in front' : 'with these parts'} the arrow would not fly point first, as the air ` +
      'takes hold of it ahead of its balance point: do not shoot it',
    `Use ${bladed ? 'smaller blades, ' : ''}larger vanes, or more weight up front.`,
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
