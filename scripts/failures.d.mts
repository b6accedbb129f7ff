export function failuresIn(text: string): [string, ...string[]];
