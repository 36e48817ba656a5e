import { accuracyTable } from './accuracy-table.ts';
import { allClaims } from './all-claims.ts';

/** `npm run accuracy` */
process.stdout.write(`${accuracyTable(await allClaims())}\n`);
