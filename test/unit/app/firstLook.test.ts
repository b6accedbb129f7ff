import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { FIRST_SAMPLE, reductionOf } from '../../../src/app/firstLook';
import { exampleReduction } from '../../fixtures/reduction';
import { exampleShot } from '../../fixtures/shot';

const read = () =>
  JSON.parse(readFileSync(`sample-clips/${FIRST_SAMPLE}/${FIRST_SAMPLE}.reduction.json`, 'utf8'));

it('what is written of the first sample is a reduction as the page holds one', () => {
  const reduction = reductionOf(read());
  const example = exampleReduction({ shot: exampleShot(), footageSha256: null });
  expect(Object.keys(reduction ?? {}).sort()).toEqual(Object.keys(example).sort());
  expect(reduction?.curve?.s).toBeInstanceOf(Float64Array);
  expect(Object.keys(reduction?.curve ?? {}).sort()).toEqual(
    Object.keys(example.curve ?? {}).sort(),
  );
  expect(Object.keys(reduction?.seal ?? {}).sort()).toEqual(['front', 'frontU', 'times']);
  expect(reduction?.seal?.times.length).toBeGreaterThan(10);
});

it('of another version it is not shown', () => {
  const written = read();
  expect(reductionOf({ ...written, result: { ...written.result, version: 99 } })).toBeNull();
});
