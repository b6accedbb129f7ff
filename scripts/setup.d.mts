export function nodeProblem(version: string): string | null;

interface PackageList {
  readonly packages: Readonly<
    Record<string, { readonly version?: string; readonly optional?: boolean }>
  >;
}

export function installMatches(lock: PackageList, installed: PackageList): boolean;
