import { atTerminal } from './terminal.ts';

const SETUP = 'examples/mountain-hunt/setup.yaml';
/** A4, as both sheets are printed, and the grey between and around them, mm. */
const [WIDTH, HEIGHT, MARGIN] = [210, 297, 6];
const START = `width="${WIDTH}mm" height="${HEIGHT}mm"`;

/** The tape and the card of the bundled example beside each other, as one picture for the head of the README. */
export async function tapeAndCard(): Promise<string> {
  const sheets = [await sheetOf('tape'), await sheetOf('card')];
  const [width, height] = [2 * WIDTH + 3 * MARGIN, HEIGHT + 2 * MARGIN];
  const placed = sheets.map((sheet, i) =>
    sheet.replace(
      START,
      `x="${MARGIN + i * (WIDTH + MARGIN)}" y="${MARGIN}" width="${WIDTH}" height="${HEIGHT}"`,
    ),
  );
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}">
<title>A sight tape and a card, as quillpath draws them</title>
<rect width="${width}" height="${height}" fill="#d8dadc"/>
${placed.join('')}</svg>
`;
}

/** One sheet as the command writes it. @throws Error when it is not an A4 drawing */
async function sheetOf(command: 'tape' | 'card'): Promise<string> {
  const { files, err } = await atTerminal([
    command,
    SETUP,
    ...(command === 'tape' ? ['--copies', '3'] : []),
    '--out',
    'sheet.svg',
  ]);
  const sheet = files.get('sheet.svg');
  if (typeof sheet !== 'string' || !sheet.includes(START))
    throw new Error(`no A4 sheet of ${command}: ${err}`);
  return sheet;
}
