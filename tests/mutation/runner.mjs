/**
 * The tester's own runner of vitest, with one thing put right: a fault that keeps a file of tests from loading is noticed, as
 * `npm test` notices it. The runner as it comes counts tests alone, and a file that does not load has none.
 */
import { INSTRUMENTER_CONSTANTS } from '@stryker-mutator/api/core';
import { commonTokens, declareFactoryPlugin, PluginKind, tokens } from '@stryker-mutator/api/plugin';
import { DryRunStatus, TestStatus } from '@stryker-mutator/api/test-runner';
import { VitestTestRunner } from './node_modules/@stryker-mutator/vitest-runner/dist/src/vitest-test-runner.js';

class LoadingTestRunner extends VitestTestRunner {
  async run(...wanted) {
    const result = await super.run(...wanted);
    if (result.status !== DryRunStatus.Complete) return result;
    const unloaded = this.ctx.state
      .getFiles()
      .filter(({ result: loaded, tasks }) => loaded?.state === 'fail' && tasks.length === 0);
    return {
      ...result,
      tests: [
        ...result.tests,
        ...unloaded.map(({ filepath, result: { errors } }) => ({
          id: `${filepath}#loading`,
          name: 'loading',
          status: TestStatus.Failed,
          timeSpentMs: 0,
          failureMessage: errors?.[0]?.message ?? 'does not load',
        })),
      ],
    };
  }
}

createRunner.inject = tokens(commonTokens.injector);
function createRunner(injector) {
  return injector
    .provideValue('globalNamespace', INSTRUMENTER_CONSTANTS.NAMESPACE)
    .injectClass(LoadingTestRunner);
}

export const strykerPlugins = [declareFactoryPlugin(PluginKind.TestRunner, 'vitest-loading', createRunner)];
