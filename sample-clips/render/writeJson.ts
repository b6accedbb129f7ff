import { writeFileSync } from 'node:fs';

export function writeJson(file: string, content: object): void {
  writeFileSync(file, `${JSON.stringify(content, null, 1)}\n`);
}
