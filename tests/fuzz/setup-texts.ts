import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { starterSetup } from '../../src/setup/starter.ts';
import { EXAMPLE, SMALLEST } from '../unit/setup/example-text.ts';
import { type Pair, sectionOf, type Tree, treeOf } from './file-tree.ts';
import { anyEdit, edited, gentleEdit } from './setup-edits.ts';
import { PLAIN_STYLE, type Slip, slip, slipped, style, typed } from './typed-file.ts';

const examples = readdirSync('examples', { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map(({ name }) => readFileSync(`examples/${name}/setup.yaml`, 'utf8'));

const smallest = treeOf(SMALLEST);
const whole = [EXAMPLE, ...examples, starterSetup({ units: 'metric' })].map(treeOf);
const pairsOf = (tree: Tree): readonly Pair[] => (tree.kind === 'section' ? tree.pairs : []);
/** Sections of sound files, to be put together anew. */
const sections = whole.flatMap(pairsOf);

/** The smallest setup with sections of others in it, or in the place of its own: read sooner than a whole one. */
const pieced = fc.array(fc.constantFrom(...sections), { maxLength: 2 }).map((put) => {
  const names = put.map(([name]) => name);
  return sectionOf(...pairsOf(smallest).filter(([name]) => !names.includes(name)), ...put);
});

const base: fc.Arbitrary<Tree> = fc.oneof(
  { weight: 5, arbitrary: pieced },
  { weight: 1, arbitrary: fc.constantFrom(...whole) },
);

const slips: fc.Arbitrary<readonly Slip[]> = fc.oneof(
  { weight: 3, arbitrary: fc.constant([]) },
  { weight: 2, arbitrary: fc.array(slip, { maxLength: 4 }) },
);

/** A sound file with changes to its keys and values, typed in some way, with slips of the finger in its text. */
export const brokenText: fc.Arbitrary<string> = fc
  .record({
    base,
    edits: fc.array(anyEdit, { maxLength: 5 }),
    style,
    slips,
  })
  .map(({ base: sound, edits, style: form, slips: made }) =>
    made.reduce(slipped, typed(edits.reduce(edited, sound), form)),
  );

/** A sound file with values at and within their limits: much of it can be flown, though nobody shoots it. */
export const extremeText: fc.Arbitrary<string> = fc
  .record({ base, edits: fc.array(gentleEdit, { minLength: 1, maxLength: 5 }) })
  .map(({ base: sound, edits }) => typed(edits.reduce(edited, sound), PLAIN_STYLE));
