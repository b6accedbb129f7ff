/** `npm run mistakes`: renders usual mistakes, has the core reduce them, and writes their numbers and pictures. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { writeJson } from '../../sample-clips/render/writeJson';
import type { Mistake } from '../../src/app/mistakes';
import { cases, sized } from './cases';
import { greyPng, together } from './picture';

const folder = fileURLToPath(new URL('../../sample-clips/mistakes', import.meta.url));
mkdirSync(folder, { recursive: true });

const mistakes: Mistake[] = [];
for (const one of cases()) {
  const pictures = one.pictures.map(({ scene, frames, lines, shows }) => {
    const { width, height } = scene.stage.spec.image;
    const file = `${one.name}-${shows}.png`;
    writeFileSync(join(folder, file), greyPng(together(scene.frames, frames), width));
    return { file, shows, lines, width, height };
  });
  mistakes.push({ ...(await sized(one)), pictures });
  console.log(one.name);
}
writeJson(join(folder, 'mistakes.json'), {
  about:
    'Rendered, not filmed: one invented shot of the (fictional) Brinewick Teaching Laboratory, reduced right and with one mistake by the same core. SI units. Written by npm run mistakes.',
  mistakes,
});
