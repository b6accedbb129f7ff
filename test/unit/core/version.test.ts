import { expect, it } from 'vitest';
import { version } from '../../../package.json';
import { SOFTWARE_VERSION } from '../../../src/core/version';

it('results carry the version of the package', () => {
  expect(SOFTWARE_VERSION).toBe(version);
});
