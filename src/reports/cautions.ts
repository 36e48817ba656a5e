import { CARRY_STEP, carryBound } from '../advice/range/carry-bound.ts';
import { massPerDraw, RATING_MASS_PER_DRAW } from '../bow/mass-per-draw.ts';
import { oncePer } from '../numerics/once.ts';
import { fromSi } from '../quantities/format.ts';
import { si } from '../quantities/quantity.ts';
import { type Block, type Caution, cautionText } from './report.ts';
import type { Session } from './session.ts';

const LABEL = 'Caution';

/** @param short the same on one line of a screen, where the text is longer */
export const caution = (text: string, { label = LABEL, short }: Partial<Caution> = {}): Caution => ({
  label,
  text,
  ...(short === undefined ? {} : { short }),
});

/** Mass per draw weight as the trade says it, gr/lb. */
export const grainsPerPound = (perDraw: number): number => fromSi(perDraw, 'gr') / fromSi(1, 'lbf');

/** Whether an arrow is lighter for its bow than the one bows are rated with. */
export const isLight = (perDraw: number): boolean => perDraw < RATING_MASS_PER_DRAW;

/** What a light arrow can do, for any heading. */
export const lightArrow = (): string =>
  `below about ${grainsPerPound(RATING_MASS_PER_DRAW).toFixed(0)} gr of arrow per pound of draw weight ` +
  "the bow can be damaged and the archer hurt. Keep to the bow maker's minimum, and ask a qualified " +
  'bow technician.';

/**
 * The backstop, and how far the arrow could go without one: a bound, 30 % less drag or a laminar shaft, rounded up, with the
 * faster start and the lesser drag of what was measured and what the marks make of it, so that marks that mislead do not
 * shorten it.
 */
export function carryCaution({ assembly, calibration, units }: Session): Caution {
  const [measured, { conditions, launchSpeed }] = [assembly.rig, calibration.rig];
  const dragScale = Math.min(conditions.arrow.dragScale, measured.conditions.arrow.dragScale);
  const distance = carryBound(
    assembly.arrow,
    { ...conditions, arrow: { ...conditions.arrow, dragScale } },
    si(Math.max(launchSpeed, measured.launchSpeed)),
  );
  const roundedUp = CARRY_STEP * Math.ceil(fromSi(distance, units.range) / CARRY_STEP);
  return caution(
    `this arrow could carry up to ${roundedUp} ${units.range}. Every shot needs a backstop and a clear way to ` +
      'it; never shoot over a crest.',
    { short: `this arrow carries up to ${roundedUp} ${units.range}: have a backstop behind every shot.` },
  );
}

/** A light arrow can wreck a bow; none when the draw weight is not known or the arrow is heavy enough. */
function lightArrowCaution({ setup, assembly }: Session): readonly Caution[] {
  const weight = setup.bow.peak_draw_weight;
  if (weight === undefined) return [];
  const perDraw = massPerDraw(assembly.arrow.flying.mass, weight);
  return isLight(perDraw)
    ? [
        caution(`${grainsPerPound(perDraw).toFixed(1)} gr/lb: ${lightArrow()}`, {
          short: `${grainsPerPound(perDraw).toFixed(1)} gr/lb is light: it can break the bow and hurt you.`,
        }),
      ]
    : [];
}

/** An arrow that does not right itself; none for one that does, or when the file names no parts. */
function stabilityCaution({ assembly }: Session): readonly Caution[] {
  const { staticMargin } = assembly.arrow;
  if (staticMargin === null || staticMargin > 0) return [];
  return [
    caution(
      'the centre of pressure of this arrow is not behind its balance point, so it does not fly point ' +
        'first by itself. The numbers here are for a point mass of its weight and drag; do not shoot it at ' +
        'any distance.',
      { short: 'this arrow does not fly point first by itself; do not shoot it.' },
    ),
  ];
}

/** Every caution that goes with a shot; the same on a screen and on paper. */
export const shotCautions = oncePer((session: Session): readonly Caution[] => [
  ...stabilityCaution(session),
  ...lightArrowCaution(session),
  carryCaution(session),
]);

/** Cautions as blocks of a report; those that go with a shot unless others are given. */
export const cautionBlocks = (
  session: Session,
  cautions: readonly Caution[] = shotCautions(session),
): readonly Block[] => cautions.map((told) => ({ kind: 'caution', ...told }));

/** A caution under a heading that says what it is, so that it needs no label: for paper. */
export const cautionOnPaper = (told: Caution): string =>
  told.label === LABEL ? `${told.text.charAt(0).toUpperCase()}${told.text.slice(1)}` : cautionText(told);
