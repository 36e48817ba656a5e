import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { atTerminal } from './terminal.ts';

const example = 'examples/which-build/setup.yaml';
const plain = 'examples/mountain-hunt/setup.yaml';
const json = async (...argv: string[]) => {
  const seen = await atTerminal([...argv, '--json']);
  expect(seen.err).toBe('');
  expect(seen.code).toBe(0);
  return JSON.parse(seen.out);
};
/** Groups take most of the time; what does not concern them is asked without. */
const NO_GROUPS = ['--arrows', '0'];

describe('compare --json', () => {
  it('has the keys of the contract for every build, the base first', async () => {
    const { builds } = await json('compare', example, ...NO_GROUPS);
    expect(builds.map(({ name }: { name: string }) => name)).toEqual([
      'Whitetail stand, 421 grain build',
      'heavy front',
      'slim shaft',
      'lighted nock',
    ]);
    for (const build of builds)
      expect(Object.keys(build)).toEqual(
        expect.arrayContaining([
          'mass_kg',
          'front_of_centre',
          'launch_speed_mps',
          'drag_coefficient',
          'spin_per_m',
          'static_margin_m',
          'swing_wavelength_m',
          'swing_damping_m',
          'rows',
        ]),
      );
    expect(builds[1].rows.map(({ range_m }: { range_m: number }) => range_m)).toHaveLength(4);
  });
  it('flies the base as fly does, and marks it as marks does', async () => {
    const [compared, flown, marked] = await Promise.all([
      json('compare', example, ...NO_GROUPS),
      json('fly', example, '--to', '80yd', '--every', '20yd'),
      json('marks', example, '--from', '20yd', '--to', '80yd', '--every', '20yd'),
    ]);
    for (const [i, row] of compared.builds[0].rows.entries()) {
      for (const key of [
        'range_m',
        'time_s',
        'speed_mps',
        'drop_m',
        'height_m',
        'drift_m',
        'energy_J',
        'momentum_kgmps',
      ])
        expect(Math.abs(row[key] - flown.rows[i][key])).toBeLessThan(
          1e-9 /* SI units of the key: the same flight solved for other stops */,
        );
      expect(Math.abs(row.travel_m - marked.rows[i].travel_m)).toBeLessThan(1e-7 /* m */);
      expect(Math.abs(row.reading - marked.rows[i].reading)).toBeLessThan(1e-4 /* scale units */);
      expect(Math.abs(row.highest_m - marked.rows[i].highest_m)).toBeLessThan(1e-5 /* m */);
    }
  });
  it('weighs a build by hand: 75 - 20 and 150 - 100 gr more', async () => {
    const { bow, builds, differences } = await json('compare', example, ...NO_GROUPS);
    expect(Math.abs((builds[1].mass_kg - builds[0].mass_kg) / 64.79891e-6 - 105)).toBeLessThan(1e-6 /* gr */);
    expect(differences[0].launch_speed_mps.real).toBe(true);
    // One energy for both: v = sqrt(2 E/(m + K)), so their speeds go as the roots of 1/(m + K).
    const [light, heavy] = [builds[0].mass_kg, builds[1].mass_kg];
    const first = builds[0].launch_speed_mps;
    const then = first * Math.sqrt((light + bow.virtual_mass_kg) / (heavy + bow.virtual_mass_kg));
    const off = (key: string, expected: number) => Math.abs(differences[0][key].difference - expected);
    const NEAR = 1e-3; // m/s: the base's own speed is calibrated, 0.03 m/s from the energy's
    expect(off('launch_speed_mps', then - first)).toBeLessThan(NEAR);
    expect(off('launch_momentum_kgmps', heavy * then - light * first)).toBeLessThan(NEAR * heavy);
    expect(off('launch_energy_J', (heavy * then ** 2 - light * first ** 2) / 2)).toBeLessThan(
      NEAR * heavy * then,
    );
  });
  it('predicts the borrowed heavy arrow within its error, though only its speed was told', async () => {
    // 560 gr at 232.5 ft/s is in the file; v = sqrt(2 E/(m + K)) with the fitted E and K must give it back.
    const { bow } = await json('compare', example, ...NO_GROUPS);
    const speed = Math.sqrt((2 * bow.energy_J) / (560 * 64.79891e-6 + bow.virtual_mass_kg));
    expect(Math.abs(speed / 0.3048 - 232.5)).toBeLessThan(1 /* ft/s: its stated error */);
  });
  it('shoots every build with the same dozens, and leaves groups out when told to', async () => {
    const [shot, left] = await Promise.all([
      json('compare', example, '--arrows', '24'),
      json('compare', example, ...NO_GROUPS),
    ]);
    for (const build of shot.builds) expect(build.rows[3].group_m).toBeGreaterThan(build.rows[0].group_m);
    const [base, other] = shot.builds;
    expect(
      Math.abs(
        shot.differences[0].rows[3].group_m.difference - (other.rows[3].group_m - base.rows[3].group_m),
      ),
    ).toBeLessThan(1e-12 /* m */);
    expect(left.builds[0].rows[0].group_m).toBeNull();
    expect(left.differences[0].rows[0].group_m).toBeNull();
  });
  it('two files of one bow are compared as its builds are', async () => {
    const { builds, differences } = await json('compare', plain, example, ...NO_GROUPS);
    expect(builds).toHaveLength(5);
    expect(differences[0].against).toBe('High camp, 463 grain build');
  });
  it('one file twice differs in nothing for certain, and says how little that means', async () => {
    const { builds, differences } = await json('compare', plain, plain, ...NO_GROUPS);
    expect(builds[1].name).toBe('High camp, 463 grain build (2)');
    for (const row of differences[0].rows) {
      expect(row.drop_m.real).toBe(false);
      expect(row.drop_m.difference).toBe(0);
      expect(row.drop_m.sd).toBeGreaterThan(0);
    }
  });
});

describe('compare', () => {
  it('at another place for a file whose days say what the warmth does to the bow', async () => {
    const home = 'examples/home-and-away/setup.yaml';
    const { code, err, out } = await atTerminal(['compare', home, ...NO_GROUPS, '--altitude', '3000 ft']);
    expect([code, err]).toEqual([0, '']);
    // The heavier arrow is slower by its weight, whatever the air.
    expect(out).toMatch(/heavy front .*-2\d\.\d ± \d\.\d/);
  });
  it('says first what really differs and what cannot be told apart', async () => {
    const seen = await atTerminal(['compare', example, '--all']);
    const out = seen.out.replace(/\s+/g, ' ');
    expect(out).toMatch(/^heavy front: really different in launch speed -\d+\.\d ± \d\.\d ft\/s; /);
    expect(out).toMatch(/With the present marks it hits \d+\.\d in low at 80 yd/);
    expect(out).toContain("choose that by the shaft maker's chart");
    expect(out).toContain('local hunting code');
  });
  it('warns of an arrow too light for the bow', async () => {
    const { out } = await atTerminal(['compare', 'light.yaml'], {
      'light.yaml': `bow: { peep_height: 4.6 in, peak_draw_weight: 70 lbf }
arrow: { diameter: 0.246 in, mass: 400 gr }
launch: { speed: 290 fps }
sight: { peep_to_pin: 33 in }
builds: [{ name: feather, arrow: { mass: 330 gr } }]
`,
    });
    expect(out).toMatch(/Caution: feather \(4\.7 gr\/lb\): below about 5 gr/);
  });
  it('knows a speed that is the rating of the bow, and files of different days', async () => {
    const rated = `bow: { peep_height: 4.6 in, peak_draw_weight: 70 lbf, rating: { speed: 335 fps } }
arrow: { diameter: 0.246 in, mass: 430 gr }
launch: { speed: rated }
sight: { peep_to_pin: 33 in }
builds: [{ name: heavier, arrow: { mass: 500 gr } }]
`;
    const given = { 'a.yaml': rated, 'b.yaml': `${rated.split('builds')[0]}air: { temperature: 20 degF }\n` };
    const { out } = await atTerminal(['compare', 'a.yaml', 'b.yaml', '--all'], given);
    expect(out).toContain('a.yaml: speed from the rating of the bow');
    expect(out).toContain('The speed comes from the rating');
    expect(out.replace(/\s+/g, ' ')).toContain('The files have different air, wind or slope');
  });
  it('warns of vanes that stand further off the shaft', async () => {
    const { out } = await atTerminal(['compare', 'v.yaml', ...NO_GROUPS], {
      'v.yaml':
        (await import('node:fs')).readFileSync(example, 'utf8') +
        '  - name: tall\n    arrow: { parts: { vanes: { height: 0.7 in } } }\n',
    });
    expect(out).toMatch(/Vane clearance: tall stands 0\.82 in off the axis/);
  });
  it('writes one page as PDF or SVG', async () => {
    const pdf = await atTerminal(['compare', example, '--out', 'x/shop.pdf', '--json', ...NO_GROUPS]);
    expect(JSON.parse(pdf.out).files).toEqual(['x/shop.pdf']);
    expect(
      Buffer.from(pdf.files.get('x/shop.pdf') ?? '')
        .subarray(0, 5)
        .toString(),
    ).toBe('%PDF-');
    const svg = await atTerminal(['compare', example, '--out', 'shop.svg', '--page', 'letter']);
    expect([...svg.files.keys()]).toEqual(['shop.svg']);
    expect(String(svg.files.get('shop.svg'))).toContain('width="215.9mm"');
  });
  it('gives a spreadsheet every build and range', async () => {
    const { out } = await atTerminal(['compare', example, '--csv']);
    const lines = out.trim().split('\r\n');
    expect(lines[0]).toMatch(/^build,range \(yd\),reading \(scale\),/);
    expect(lines).toHaveLength(1 + 4 * 4);
  });
  it('is refused when there is nothing to compare, with what to write', async () => {
    const { code, out, err } = await atTerminal(['compare', plain]);
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err).toMatch(/nothing to compare.*builds:/);
  });
  it('is refused for a build that leaves out what the arrow above cannot give', async () => {
    const { code, err } = await atTerminal(['compare', 'b.yaml'], {
      'b.yaml':
        (await import('node:fs')).readFileSync(plain, 'utf8') +
        'builds:\n  - { name: collar, arrow: { parts: { collar: { length: 0.5 in } } } }\n',
    });
    expect(code).toBe(2);
    expect(err).toMatch(/builds, entry 1: arrow\.parts\.collar\.mass is missing/);
  });
});

it('more builds than can be read side by side are refused at once, with how many may be compared', async () => {
  const file = readFileSync('examples/mountain-hunt/setup.yaml', 'utf8');
  const builds = Array.from(
    { length: 200 },
    (_, i) => `  - { name: b${i}, arrow: { mass: ${400 + i} gr } }\n`,
  );
  const { code, err, out } = await atTerminal(['compare', 'many.yaml', '--arrows', '0'], {
    'many.yaml': `${file}\nbuilds:\n${builds.join('')}`,
  });
  expect(err).toBe(
    'many.yaml: 201 builds side by side cannot be read. Compare at most 40: put a # in front of the others.\n',
  );
  expect([code, out]).toEqual([2, '']);
});
