import * as z from 'zod/mini';
import { KEY_MEANINGS } from './key-meaning.ts';
import { choice, flag, freeText } from './leaf.ts';
import { optional, required } from './section.ts';
import { TURN_WORDS } from './turn-words.ts';

const shaft = z
  .strictObject({
    ...required('arrow.parts.shaft', ['length']),
    ...optional('arrow.parts.shaft', ['inner_diameter', 'mass_per_length', 'deflection']),
  })
  .register(KEY_MEANINGS, { what: 'the tube' });

const insert = z
  .strictObject({
    ...required('arrow.parts.insert', ['mass']),
    ...optional('arrow.parts.insert', ['length']),
  })
  .register(KEY_MEANINGS, { what: 'what is glued into the front of the shaft' });

const collar = z
  .strictObject({
    ...required('arrow.parts.collar', ['mass']),
    ...optional('arrow.parts.collar', ['length', 'diameter']),
  })
  .register(KEY_MEANINGS, { what: 'a ring or sleeve over the front of the shaft' });

const blades = z
  .strictObject(required('arrow.parts.point.blades', ['count', 'length', 'cutting_diameter', 'thickness']))
  .register(KEY_MEANINGS, { what: 'the blades of a fixed-blade broadhead' });

const point = z
  .strictObject({
    ...required('arrow.parts.point', ['mass']),
    ...optional('arrow.parts.point', ['length']),
    shape: z.exactOptional(
      choice(
        ['field', 'bullet', 'blunt', 'mechanical', 'fixed_blade'],
        { what: 'shape of the point, for its drag' },
        {
          field: ['field point', 'fieldpoint', 'field tip', 'field points'],
          bullet: ['bullet point', 'bullet tip'],
          blunt: ['blunt point', 'blunt tip'],
          mechanical: ['expandable', 'mechanical broadhead', 'expandable broadhead'],
          fixed_blade: ['fixed', 'fixed blades', 'fixedblade', 'fixed broadhead', 'fixed blade broadhead'],
        },
      ),
    ),
    blades: z.exactOptional(blades),
  })
  .register(KEY_MEANINGS, { what: 'the point or head' });

const nock = z
  .strictObject({
    ...optional('arrow.parts.nock', ['mass', 'length']),
    lighted: z.exactOptional(
      flag({ what: 'whether the nock has a light, for your own record; only its mass counts' }),
    ),
  })
  .register(KEY_MEANINGS, { what: 'the nock' });

const vanes = z
  .strictObject({
    ...required('arrow.parts.vanes', ['mass', 'root_chord', 'tip_chord', 'height']),
    ...optional('arrow.parts.vanes', ['count', 'thickness', 'from_nock', 'angle', 'sweep']),
    turn: z.exactOptional(
      choice(
        ['right', 'left', 'none'],
        { what: 'direction of spin: right is clockwise seen from behind' },
        TURN_WORDS,
      ),
    ),
    leading_edge: z.exactOptional(
      choice(['square', 'round'], { what: 'shape of the front edge, for its drag' }),
    ),
    trailing_edge: z.exactOptional(
      choice(['square', 'round', 'tapered'], { what: 'shape of the rear edge, for its drag' }),
    ),
  })
  .register(KEY_MEANINGS, { what: 'the vanes or feathers' });

const other = z.strictObject({
  name: freeText({ what: 'name of the part' }),
  ...required('arrow.parts.others', ['mass', 'from_nock']),
});
const others = z
  .array(other)
  .register(KEY_MEANINGS, { what: 'anything else on the arrow: wraps, lights, tape' });

export const partsSchema = z
  .strictObject({
    shaft: z.exactOptional(shaft),
    insert: z.exactOptional(insert),
    collar: z.exactOptional(collar),
    point: z.exactOptional(point),
    nock: z.exactOptional(nock),
    vanes: z.exactOptional(vanes),
    others: z.exactOptional(others),
  })
  .register(KEY_MEANINGS, {
    what: 'what the arrow is made of, for drag by shape, spin, drift and stability',
  });

/** The parts of a build, of which only what differs has to be there. */
export const buildPartsSchema = () =>
  z.strictObject({
    shaft: z.exactOptional(z.partial(shaft)),
    insert: z.exactOptional(z.partial(insert)),
    collar: z.exactOptional(z.partial(collar)),
    point: z.exactOptional(z.extend(z.partial(point), { blades: z.exactOptional(z.partial(blades)) })),
    nock: z.exactOptional(nock),
    vanes: z.exactOptional(z.partial(vanes)),
    others: z.exactOptional(z.array(other)),
  });
