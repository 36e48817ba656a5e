import fc from 'fast-check';
import { type Asked, answer } from '../../src/page/answers/answer.ts';
import { EXAMPLE, SMALLEST } from '../unit/setup/example-text.ts';
import { notFinite } from './asked-or-refused.ts';
import { questions, typedValue } from './command-lines.ts';
import { Astray, GIVEN } from './read-or-refused.ts';

const withOptions = questions.filter(({ options }) => Object.keys(options).length > 0);

/** A few options of a question as the form of a page says them: words, and the names as they are in the program. */
export const optionsSaid: fc.Arbitrary<Asked> = fc.constantFrom(...withOptions).chain(({ name, options }) => {
  const every = Object.entries(options);
  const one = fc
    .constantFrom(...every)
    .chain(
      ([option, asked]): fc.Arbitrary<readonly [string, string | boolean]> =>
        asked.kind === 'flag'
          ? fc.constant([option, true])
          : typedValue(option, asked).map((value) => [option, value.trim()]),
    );
  return fc.record({
    question: fc.constant(name),
    setups: fc.constantFrom(SMALLEST, EXAMPLE).map((text) => [{ name: 'setup.yaml', text }] as const),
    given: fc
      .array(one, { maxLength: 2 })
      .map((said) => ({ ...brief(options), ...Object.fromEntries(said) })),
    units: fc.constantFrom('imperial' as const, 'metric' as const),
    uncalibrated: fc.boolean(),
    dated: fc.constant(null),
  });
});

/** What makes an answer short. */
const brief = (options: object): Readonly<Record<string, string>> => ({
  ...('every' in options ? { every: '30 yd' } : {}),
  ...('arrows' in options ? { arrows: '24' } : {}),
  ...('over' in options ? { over: 'arrow.mass=400gr,450gr' } : {}),
});

/** What programs say that have lost their way, and names in braces that nobody put words for. */
const ASTRAY = /\bundefined\b|\[object |\bNaN\b|\bInfinity\b|\{\w+\}|\d\.\d{7,}/;
const RAW = /\{\w+\}|\d\.\d{7,}/;

/** Asks as a page does. @throws Astray for an answer with numbers that are none, or a reason that is no reason */
export async function saidOrAstray(asked: Asked): Promise<void> {
  const outcome = await answer(asked);
  const given = JSON.stringify(asked.given);
  if ('report' in outcome) {
    const wrong = notFinite(outcome.report.data, 'data') ?? notFinite(outcome.report.blocks, 'blocks');
    if (wrong !== null) throw new Astray(`${asked.question} ${given}: ${wrong}`);
    return;
  }
  const { failure } = outcome;
  const isAstray = failure.trim() === '' || (ASTRAY.test(failure) && !GIVEN.test(given) && !RAW.test(given));
  if (isAstray) throw new Astray(`${asked.question} ${given}: ${failure.slice(0, 1500)}`);
}
