import { describe, expect, it } from 'vitest';
import { installMatches, nodeProblem } from '../../../scripts/setup.mjs';

describe('nodeProblem', () => {
  it.each(['20.19.0', '20.20.2', '22.12.0', '24.0.0'])('accepts %s', (version) => {
    expect(nodeProblem(version)).toBeNull();
  });

  it.each(['18.20.8', '20.18.3', '21.7.3', '22.11.0'])('refuses %s and names it', (version) => {
    expect(nodeProblem(version)).toContain(version);
  });
});

describe('installMatches', () => {
  const lock = {
    packages: {
      '': { version: '0.1.0' },
      'node_modules/a': { version: '1.0.0' },
      'node_modules/a-other-platform': { version: '1.0.0', optional: true },
    },
  };
  const installed = (packages: Record<string, { version: string }>) => ({ packages });

  it('accepts what the lock file lists, optional packages or not', () => {
    expect(installMatches(lock, installed({ 'node_modules/a': { version: '1.0.0' } }))).toBe(true);
  });

  it.each([
    ['a missing package', {}],
    ['another version', { 'node_modules/a': { version: '1.0.1' } }],
    [
      'a package that is no longer locked',
      { 'node_modules/a': { version: '1.0.0' }, 'node_modules/b': { version: '1.0.0' } },
    ],
  ])('refuses %s', (_what, packages) => {
    expect(installMatches(lock, installed(packages))).toBe(false);
  });
});
