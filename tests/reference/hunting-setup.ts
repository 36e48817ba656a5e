import { type Assembly, assemble } from '../../src/setup/assemble/assemble.ts';
import { assembleBuild, type Variant } from '../../src/setup/assemble/assemble-variant.ts';
import { readSetup } from '../../src/setup/read.ts';

export interface HuntingBow {
  /** gr, of the whole arrow. */
  readonly mass?: number;
  /** Peep height, in. */
  readonly peep?: number;
  /** ft/s at release. */
  readonly speed?: number;
  /** Null for an arrow without vanes. */
  readonly turn?: string | null;
  readonly sideForce?: number;
}

/** The file of a common hunting bow and arrow, ours; `more` is added at its end. */
export function huntingSetup(bow: HuntingBow, more = ''): string {
  const { mass = 450, peep = 4.6, speed = 280, turn = 'right', sideForce = 0 } = bow;
  const vanes =
    turn === null
      ? ''
      : [
          '    vanes: { count: 3, mass: 6 gr, root_chord: 2.1 in, tip_chord: 0.9 in, height: 0.5 in,',
          `             from_nock: 1 in, angle: 3 deg, turn: ${turn} }\n`,
        ].join('\n');
  return `bow: { draw_length: 29 in, brace_height: 6.5 in, peep_height: ${peep} in }
arrow:
  diameter: 0.245 in
  mass: ${mass} gr
  drag_coefficient: 2.5
  side_force: ${sideForce}
  parts:
    shaft: { length: 28.5 in, inner_diameter: 0.166 in, mass_per_length: 8.5 gpi }
    insert: { mass: 15 gr }
    point: { mass: 125 gr, shape: field }
    nock: { mass: 10 gr }
${vanes}launch: { speed: ${speed} fps }
sight: { peep_to_pin: 33 in }
${more}`;
}

export const assembled = (text: string): Assembly => assemble(readSetup(text, 'setup.yaml'));

/** The bow with its own arrow, and with the first of its builds. */
export function assembledBuild(text: string): { readonly base: Assembly; readonly build: Variant } {
  const setup = readSetup(text, 'setup.yaml');
  const [entry] = setup.builds ?? [];
  if (entry === undefined) throw new Error('the setup lists no build');
  const base = assemble(setup);
  return { base, build: assembleBuild(setup, base, entry) };
}
