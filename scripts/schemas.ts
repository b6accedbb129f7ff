/** `npm run schemas`: writes the JSON Schemas of shot file, result, notebook and setup from their definitions. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { toJsonSchema } from '@valibot/to-json-schema';
import type { GenericSchema } from 'valibot';
import { notebookSchema } from '../src/shot/notebook';
import { resultSchema } from '../src/shot/resultSchema';
import { shotSchema } from '../src/shot/schema';
import { setupSchema } from '../src/shot/setupFile';

const folder = new URL('../schemas/', import.meta.url);

function schemaText(title: string, schema: GenericSchema): string {
  // As written to the file: defaults may be left out. What JSON Schema cannot say (a direction needs
  // a length) is left to the reader of the file.
  const json = toJsonSchema(schema, { typeMode: 'input', errorMode: 'ignore' });
  const draft = 'http://json-schema.org/draft-07/schema#';
  return `${JSON.stringify({ $schema: draft, title, ...json }, null, 2)}\n`;
}

/** Each committed file with the text it should have. */
export const schemaFiles = () => [
  {
    file: fileURLToPath(new URL('shot.schema.json', folder)),
    text: schemaText('exitframe shot file', shotSchema),
  },
  {
    file: fileURLToPath(new URL('result.schema.json', folder)),
    text: schemaText('exitframe result', resultSchema),
  },
  {
    file: fileURLToPath(new URL('notebook.schema.json', folder)),
    text: schemaText('exitframe notebook', notebookSchema),
  },
  {
    file: fileURLToPath(new URL('setup.schema.json', folder)),
    text: schemaText('exitframe setup', setupSchema),
  },
];

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  mkdirSync(folder, { recursive: true });
  for (const { file, text } of schemaFiles()) writeFileSync(file, text);
}
