import type { DragTerm } from '../../arrow/drag/drag-term.ts';
import type { Piece } from '../../arrow/parts/pieces.ts';
import { bowDigits } from '../bow-length.ts';
import type { Field } from '../field.ts';

/** Each thing that weighs, and where. */
export const PIECE_FIELDS: readonly Field<Piece>[] = [
  { key: 'name', name: 'part', of: ({ name }) => name },
  { key: 'mass_kg', name: 'mass', unit: 'mass', digits: 1, of: ({ mass }) => mass },
  {
    key: 'from_nock_m',
    name: 'middle from nock',
    unit: 'bowLength',
    digits: (units) => bowDigits(units, 2),
    of: ({ place }) => place,
  },
];

/** The drag term by term. */
export const DRAG_FIELDS: readonly Field<DragTerm>[] = [
  { key: 'name', datum: ({ name }) => name, name: 'term', of: ({ name }) => name.replace('-', ' ') },
  { key: 'coefficient', name: 'coefficient', digits: 3, of: ({ coefficient }) => coefficient },
  { key: 'reynolds', name: 'Reynolds number', digits: 0, of: ({ reynolds }) => reynolds },
  { key: 'area', of: ({ area }) => area },
  { key: 'source', name: 'law', of: ({ source }) => source },
];
