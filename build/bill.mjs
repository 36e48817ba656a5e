/**
 * The bill of materials, dist/sbom.json (CycloneDX): npm's own, of the lock file, less what is not in the bundles, since what only
 * makes and tests the program comes to nobody. Less its random serial number, its time and npm's version too, so that the same
 * program gives the same bytes.
 */
import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import process from 'node:process';
import { UNNAMED } from './notices.mjs';

/** What stands in the bill for a package that npm takes for a tool of ours, and whose licence it may not know. */
const shipped = ({ properties: _, ...component }) => ({
  ...component,
  scope: 'required',
  licenses: component.licenses ?? [{ license: { id: UNNAMED[component.name] } }],
});

/** The typeface, which no package brings. */
const TYPEFACE = {
  'bom-ref': 'typeface',
  type: 'file',
  name: 'DejaVu Sans Condensed, regular and bold, a part of it',
  version: '2.37',
  scope: 'required',
  licenses: [{ license: { name: 'Bitstream Vera and Arev fonts, see src/documents/fonts/LICENSE' } }],
};

/** Write the bill for a program with the packages of these folders in it. @throws an Error when npm knows one of them not */
export function writeBill(root, folders) {
  const argv = ['sbom', '--sbom-format', 'cyclonedx', '--package-lock-only', '--offline'];
  const said = execFileSync('npm', argv, {
    cwd: root,
    encoding: 'utf8',
    shell: process.platform === 'win32',
  });
  const { serialNumber: _, metadata, components, dependencies, ...head } = JSON.parse(said);
  const refs = [...new Set(folders)].map((folder) => {
    const { name, version } = JSON.parse(readFileSync(join(root, folder, 'package.json'), 'utf8'));
    return `${name}@${version}`;
  });
  const own = metadata.component['bom-ref'];
  const within = (ref) => refs.includes(ref);
  const missing = refs.filter((ref) => components.every((each) => each['bom-ref'] !== ref));
  if (missing.length > 0) throw new Error(`npm's bill of materials lacks ${missing.join(', ')}`);
  const { name, version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
  const bill = {
    ...head,
    metadata: {
      tools: [{ vendor: 'npm', name: 'cli' }],
      component: { ...shipped(metadata.component), name, version },
    },
    components: [...components.filter((each) => within(each['bom-ref'])).map(shipped), TYPEFACE],
    dependencies: dependencies
      .filter(({ ref }) => ref === own || within(ref))
      .map(({ ref, dependsOn }) => ({ ref, dependsOn: dependsOn.filter(within) })),
  };
  writeFileSync(join(root, 'dist/sbom.json'), `${JSON.stringify(bill, null, 2)}\n`);
  return true;
}
