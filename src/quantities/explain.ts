import { DIMENSIONS, type Dimension } from './dimension.ts';
import { leadingNumber } from './leading-number.ts';
import { QuantityError, type QuantityErrorCode } from './quantity-error.ts';
import { FEET_AND_INCHES, inInches, type PartOf, SLIPS, type Slip } from './slips.ts';
import { spelledOut, spokenNumber } from './spoken-number.ts';
import { inBothUnits, type Request } from './suggestion.ts';
import { isQuantity } from './written-quantity.ts';

/** Why mathjs could not read a finite number with a unit in the text. */
export function whyUnreadable(request: Request): QuantityError {
  const text = spelledOut(request.text);
  const { slip, part } = slipOf(text);
  return explain(request, slip.code, slip.reason(text, part), slip.meant?.(part, request));
}

/** The first slip that explains a text which cannot be read. */
export function slipOf(text: string): { readonly slip: Slip; readonly part: PartOf } {
  for (const slip of SLIPS) {
    const part = partsOf(slip, text);
    if (part !== undefined) return { slip, part };
  }
  throw new RangeError(`no slip explains "${text}"`);
}

/** What the groups of a slip's pattern found, or undefined when it is not this slip. */
function partsOf({ pattern, applies }: Pick<Slip, 'pattern' | 'applies'>, text: string): PartOf | undefined {
  const match = pattern.exec(text);
  if (match === null) return undefined;
  const part: PartOf = (group) => match.groups?.[group] ?? '';
  return applies === undefined || applies(part) ? part : undefined;
}

/** Why a quantity of one kind will not do for another, with the unit that was likely meant. */
export function whyWrongKind(request: Request, found: Dimension | undefined): QuantityError {
  const { dimension } = request;
  const text = request.text.trim();
  const feetAndInches = partsOf({ pattern: FEET_AND_INCHES }, text);
  if (feetAndInches !== undefined)
    return explain(request, 'unreadable', `"${text}" is feet and inches`, inInches(feetAndInches));
  const what = found === undefined ? 'another kind of quantity' : DIMENSIONS[found].name;
  const written = leadingNumber(text);
  const meant =
    written === undefined || found === undefined ? undefined : likelyMeant(written.rest, found, dimension);
  return explain(
    request,
    'wrong-dimension',
    `"${text}" is ${what}, not ${DIMENSIONS[dimension].name}`,
    written === undefined || meant === undefined ? undefined : `"${written.number} ${meant}"`,
  );
}

/** Slips between kinds that archers make: pounds of pull and of mass, feet for feet a second, grains for grains an inch. */
function likelyMeant(unit: string, found: Dimension, wanted: Dimension): string | undefined {
  if (found === 'mass' && wanted === 'force') return /^k/.test(unit) ? 'kgf' : 'lbf';
  if (found === 'force' && wanted === 'mass') return /^k/.test(unit) ? 'kg' : 'lb';
  if (found === 'length' && wanted === 'speed') return /^m/.test(unit) ? 'm/s' : 'fps';
  if (found === 'mass' && wanted === 'massPerLength') return unit === 'g' ? 'g/m' : 'gpi';
  if (found === 'massPerLength' && wanted === 'mass') return 'gr';
  return undefined;
}

function explain(
  { text, dimension, examples }: Request,
  code: QuantityErrorCode,
  reason: string,
  suggestion?: string,
): QuantityError {
  const number = spokenNumber(text)?.values[0];
  // A guess at the unit helps only when it is a unit of the kind that belongs here.
  const guess = suggestion === undefined ? undefined : /^"([^"]*)"/.exec(suggestion)?.[1];
  const shown = guess !== undefined && isQuantity(guess, dimension) ? suggestion : undefined;
  return new QuantityError({
    code,
    found: text,
    reason,
    expected: DIMENSIONS[dimension].name,
    suggestion:
      shown ??
      inBothUnits(
        number === undefined ? undefined : Number(number),
        examples ?? DIMENSIONS[dimension].examples,
      ),
  });
}
