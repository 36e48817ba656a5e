import * as z from 'zod/mini';
import { choice, flag, freeText } from './leaf.ts';
import { quantityAt, uncertaintyAt } from './quantity-leaf.ts';
import { optional, required } from './section.ts';

const shaft = z.strictObject({
  ...required('arrow.parts.shaft', ['length']),
  ...optional('arrow.parts.shaft', ['inner_diameter', 'mass_per_length', 'deflection']),
});

const insert = z.strictObject({
  ...required('arrow.parts.insert', ['mass']),
  ...optional('arrow.parts.insert', ['length']),
});

const collar = z.strictObject({
  ...required('arrow.parts.collar', ['mass']),
  ...optional('arrow.parts.collar', ['length', 'diameter']),
});

const blades = z.strictObject(
  required('arrow.parts.point.blades', ['count', 'length', 'cutting_diameter', 'thickness']),
);

const point = z.strictObject({
  ...required('arrow.parts.point', ['mass']),
  ...optional('arrow.parts.point', ['length']),
  shape: z.exactOptional(choice(['field', 'bullet', 'blunt', 'mechanical', 'fixed_blade'])),
  blades: z.exactOptional(blades),
});

const nock = z.strictObject({
  ...optional('arrow.parts.nock', ['mass', 'length']),
  lighted: z.exactOptional(flag),
});

const vanes = z.strictObject({
  ...required('arrow.parts.vanes', ['mass', 'root_chord', 'tip_chord', 'height']),
  ...optional('arrow.parts.vanes', ['count', 'thickness', 'from_nock', 'angle', 'sweep']),
  turn: z.exactOptional(choice(['right', 'left', 'none'])),
  leading_edge: z.exactOptional(choice(['square', 'round'])),
  trailing_edge: z.exactOptional(choice(['square', 'round', 'tapered'])),
});

const other = z.strictObject({
  name: freeText,
  ...required('arrow.parts.others', ['mass', 'from_nock']),
});

const parts = z.strictObject({
  shaft: z.exactOptional(shaft),
  insert: z.exactOptional(insert),
  collar: z.exactOptional(collar),
  point: z.exactOptional(point),
  nock: z.exactOptional(nock),
  vanes: z.exactOptional(vanes),
  others: z.exactOptional(z.array(other)),
});

const dragTable = z.array(
  z.strictObject({
    reynolds: quantityAt('arrow.drag_coefficient.reynolds'),
    value: quantityAt('arrow.drag_coefficient'),
  }),
);

export const arrowSchema = z.strictObject({
  ...required('arrow', ['diameter']),
  ...optional('arrow', ['mass', 'balance', 'length', 'side_force']),
  drag_coefficient: z.exactOptional(z.union([dragTable, quantityAt('arrow.drag_coefficient')])),
  drag_coefficient_sd: z.exactOptional(uncertaintyAt('arrow.drag_coefficient')),
  boundary_layer: z.exactOptional(choice(['turbulent', 'laminar', 'transition'])),
  parts: z.exactOptional(parts),
});

/** A build names only what differs, down to single keys of single parts. */
export const buildArrowSchema = z.extend(z.partial(arrowSchema), {
  parts: z.exactOptional(
    z.strictObject({
      shaft: z.exactOptional(z.partial(shaft)),
      insert: z.exactOptional(z.partial(insert)),
      collar: z.exactOptional(z.partial(collar)),
      point: z.exactOptional(z.extend(z.partial(point), { blades: z.exactOptional(z.partial(blades)) })),
      nock: z.exactOptional(nock),
      vanes: z.exactOptional(z.partial(vanes)),
      others: z.exactOptional(z.array(other)),
    }),
  ),
});
