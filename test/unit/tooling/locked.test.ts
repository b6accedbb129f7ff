import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

interface Project {
  readonly dependencies?: Readonly<Record<string, string>>;
  readonly devDependencies?: Readonly<Record<string, string>>;
}
interface Locked {
  readonly version?: string;
  readonly resolved?: string;
  readonly integrity?: string;
  readonly link?: boolean;
}

const project: Project = JSON.parse(readFileSync('package.json', 'utf8'));
const lock: { packages: Record<string, Locked & Project> } = JSON.parse(
  readFileSync('package-lock.json', 'utf8'),
);
const EXACT = /^\d+\.\d+\.\d+(-[\w.]+)?$/;
const REGISTRY = 'https://registry.npmjs.org/';
const dependencies = Object.entries({ ...project.dependencies, ...project.devDependencies });
const { '': own, ...locked } = lock.packages;

describe('what is installed', () => {
  it.each(dependencies)('%s is named by one version, %s, and locked to it', (name, version) => {
    expect(version).toMatch(EXACT);
    expect(locked[`node_modules/${name}`]?.version).toBe(version);
  });

  it('is locked as package.json has it', () => {
    expect(own?.dependencies).toEqual(project.dependencies);
    expect(own?.devDependencies).toEqual(project.devDependencies);
  });

  it('comes from the registry, byte for byte as it was', () => {
    expect(Object.keys(locked).length).toBeGreaterThan(dependencies.length);
    // Where the lock names no address the registry is asked for name and version; the digest counts either way.
    const loose = Object.entries(locked).filter(
      ([, { version, integrity, resolved, link }]) =>
        link === true ||
        !EXACT.test(version ?? '') ||
        !/^sha512-[A-Za-z0-9+/]{86}==$/.test(integrity ?? '') ||
        !(resolved ?? REGISTRY).startsWith(REGISTRY),
    );
    expect(loose.map(([path]) => path)).toEqual([]);
  });
});
