import { describe, expect, it } from 'vitest';
import { fromSi } from '../../../../src/quantities/format.ts';
import { assemble } from '../../../../src/setup/assemble/assemble.ts';
import { assembleBuild, assembleVariant } from '../../../../src/setup/assemble/assemble-variant.ts';
import { readSetup } from '../../../../src/setup/read.ts';
import { EXAMPLE, SMALLEST } from '../example-text.ts';

const buildOf = (entry: string, text = EXAMPLE) => {
  const setup = readSetup(`${text}builds:\n  - ${entry}\n`, 'setup.yaml');
  const [build] = setup.builds ?? [];
  return assembleBuild(setup, assemble(setup), build ?? expect.fail('no build'));
};
const base = assemble(readSetup(EXAMPLE, 'setup.yaml'));
const grains = (kilograms: number) => fromSi(kilograms, 'gr');

describe('a build', () => {
  it('that only changes the point keeps the rest of the weighed arrow: 452 + 50 gr', () => {
    const { arrow, speed, ownDragSd } = buildOf(
      '{ name: heavier, arrow: { parts: { point: { mass: 175 gr } } } }',
    );
    expect(Math.abs(grains(arrow.flying.mass) - 502)).toBeLessThan(1e-9 /* gr */);
    expect(speed).toBeNull();
    expect(ownDragSd).toBeNull();
  });
  it('weighs 4 gr more or less when nobody put it on a scale, and as the scale says when somebody did', () => {
    const massSdOf = (entry: string) => grains(buildOf(entry).massSd);
    const change = 'parts: { point: { mass: 175 gr } }';
    expect(Math.abs(massSdOf(`{ name: heavier, arrow: { ${change} } }`) - 4)).toBeLessThan(1e-9 /* gr */);
    expect(massSdOf(`{ name: weighed, arrow: { mass: 503 gr, ${change} } }`)).toBe(0);
    const weighed = massSdOf(`{ name: weighed, arrow: { mass: 503 gr, mass_sd: 1 gr, ${change} } }`);
    expect(Math.abs(weighed - 1)).toBeLessThan(1e-9 /* gr */);
    expect(massSdOf('{ name: same arrow, launch: { speed: 280 fps } }')).toBe(0);
  });
  it('balances where the added weight pulls it: (452 x 17.9 + 50 x 29.075)/502 in', () => {
    const { arrow } = buildOf('{ name: heavier, arrow: { parts: { point: { mass: 175 gr } } } }');
    expect(Math.abs(fromSi(arrow.flying.balance, 'in') - (452 * 17.9 + 50 * 29.075) / 502)).toBeLessThan(
      1e-9 /* in */,
    );
  });
  it('a bare shaft taped to the weight of a fletched arrow balances where the tape pulls it', () => {
    // Invented figures: the arrow of the example weighs 452 gr with three vanes of 7 gr, so 431 gr without them.
    const bare = EXAMPLE.replace(/ {4}vanes: [^}]*}\n/, '')
      .replace('mass: 452 gr', 'mass: 431 gr')
      .replace('balance: 17.9 in', 'balance: 18.6 in');
    const others =
      '{ name: wrap, mass: 8 gr, from_nock: 4 in }, { name: tape, mass: 21 gr, from_nock: 2 in }';
    const { arrow } = buildOf(`{ name: taped, arrow: { parts: { others: [${others}] } } }`, bare);
    expect(Math.abs(grains(arrow.flying.mass) - grains(base.arrow.flying.mass))).toBeLessThan(1e-9 /* gr */);
    const balance = (431 * 18.6 + 21 * 2) / 452;
    expect(Math.abs(fromSi(arrow.flying.balance, 'in') - balance)).toBeLessThan(1e-9 /* in */);
  });
  it('moves the start of free flight with its balance point', () => {
    const { arrow, rig } = buildOf('{ name: heavier, arrow: { parts: { point: { mass: 175 gr } } } }');
    const moved = rig.geometry.freeFlight - base.rig.geometry.freeFlight;
    expect(Math.abs(moved - (arrow.flying.balance - base.arrow.flying.balance))).toBeLessThan(1e-15 /* m */);
  });
  it('keeps the given drag coefficient when its shape does, and scales it when not', () => {
    const drag = (entry: string) => buildOf(entry).arrow.flying.drag.at(35_000);
    expect(Math.abs(drag('{ name: a, arrow: { parts: { point: { mass: 175 gr } } } }') - 2.4)).toBeLessThan(
      1e-12 /* of the coefficient, rounding */,
    );
    expect(drag('{ name: a, arrow: { parts: { vanes: { height: 0.6 in } } } }')).toBeGreaterThan(2.42);
    expect(drag('{ name: a, arrow: { drag_coefficient: 2.6 } }')).toBe(2.6);
  });
  it('with a total of its own, a speed of its own, a coefficient of its own takes them', () => {
    const { arrow, speed, ownDragSd } = buildOf(
      '{ name: own, arrow: { mass: 500 gr, drag_coefficient: 2.6, drag_coefficient_sd: 0.13 }, ' +
        'launch: { speed: 270 fps, speed_sd: 1 fps } }',
    );
    expect(Math.abs(grains(arrow.flying.mass) - 500)).toBeLessThan(1e-9 /* gr */);
    // Carried back from 3 ft ahead of the grip: some 8 ft at 0.03 ft/s a foot.
    expect(Math.abs(fromSi(speed?.value ?? 0, 'fps') - 270.25)).toBeLessThan(0.1 /* ft/s */);
    expect(Math.abs(fromSi(speed?.sd ?? 0, 'fps') - 1)).toBeLessThan(1e-12 /* ft/s */);
    expect(Math.abs((ownDragSd ?? 0) - 0.05)).toBeLessThan(1e-12 /* of the coefficient, rounding */);
  });
  it('with another head drops the blades of the old one', () => {
    const bladed = EXAMPLE.replace(
      'shape: field, length: 1.3 in',
      'shape: fixed_blade, length: 1.3 in, blades: { count: 3, length: 1.1 in, cutting_diameter: 1.1 in, thickness: 0.04 in }',
    );
    const { arrow } = buildOf('{ name: field, arrow: { parts: { point: { shape: field } } } }', bladed);
    expect(arrow.parts?.point.blades).toBeUndefined();
  });
  it('of an arrow known by its totals alone is another total', () => {
    const { arrow } = buildOf('{ name: heavier, arrow: { mass: 500 gr } }', SMALLEST);
    expect(Math.abs(grains(arrow.flying.mass) - 500)).toBeLessThan(1e-9 /* gr */);
  });
  it('keeps the scale that the marks gave the sight', () => {
    const unknown = EXAMPLE.replace('travel_per_unit: 1 mm', 'travel_per_unit: unknown');
    const { rig } = buildOf('{ name: heavier, arrow: { parts: { point: { mass: 175 gr } } } }', unknown);
    expect(rig.scale).toEqual(assemble(readSetup(unknown, 'setup.yaml')).rig.scale);
  });
  it('a shaft weighed only by the total keeps its weight per length', () => {
    const unweighed = EXAMPLE.replace(', mass_per_length: 9.5 gpi', '');
    const { arrow } = buildOf(
      '{ name: longer, arrow: { parts: { shaft: { length: 29.5 in } } } }',
      unweighed,
    );
    const perInch = fromSi(assemble(readSetup(unweighed, 's')).arrow.parts?.shaft.massPerLength ?? 0, 'gpi');
    expect(Math.abs(grains(arrow.flying.mass) - 452 - perInch)).toBeLessThan(1e-9 /* gr */);
  });
});

describe('a variant', () => {
  it('has its own bow, air and sight, and the base arrow', () => {
    const setup = readSetup(EXAMPLE, 'setup.yaml');
    const variant = readSetup(EXAMPLE, 'setup.yaml', [{ path: ['bow', 'peep_height'], value: '5 in' }]);
    const { rig, arrow } = assembleVariant(setup, base, variant, { name: '5 in', own: {} });
    expect(Math.abs(fromSi(rig.geometry.peepHeight, 'in') - 5)).toBeLessThan(1e-12 /* in */);
    expect(Math.abs(arrow.flying.mass - base.arrow.flying.mass)).toBeLessThan(1e-15 /* kg */);
    expect(Math.abs(arrow.flying.balance - base.arrow.flying.balance)).toBeLessThan(1e-15 /* m */);
  });
});
