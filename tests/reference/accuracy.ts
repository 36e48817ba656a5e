import { readFileSync, writeFileSync } from 'node:fs';
import { accuracyPage, withKinds } from './accuracy-page.ts';
import { allClaims } from './all-claims.ts';

/** `npm run accuracy`: writes the page of all claims and the README's table of their kinds. */
const claims = await allClaims();
writeFileSync('reference/ACCURACY.md', accuracyPage(claims));
writeFileSync('README.md', withKinds(readFileSync('README.md', 'utf8'), claims));
process.stdout.write('reference/ACCURACY.md and the table of README.md are written.\n');
