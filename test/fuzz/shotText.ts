import { type Random, seededRandom } from '../../src/core/random';
import { below, mutate, oneOf } from './mutate';

type Json = null | boolean | number | string | Json[] | { [key: string]: Json };

interface Place {
  readonly holder: Json[] | { [key: string]: Json };
  readonly key: string;
  readonly path: string;
}

/** Every key and every element of lists. */
function placesIn(value: Json, path = ''): Place[] {
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, inner]) => [
    { holder: value, key, path: `${path}.${key}` },
    ...placesIn(inner, `${path}.${key}`),
  ]);
}

/** Written into the text as they stand: some are no JSON. */
const NUMBERS = [
  ...['NaN', 'Infinity', '-Infinity', '1e999', '-1e999', '1e308', '-1e308', '5e-324', '0', '-0'],
  ...['-1', '1.5', '4294967296', '9007199254740993', '1e21', '0x10', '01', '.5', '1e-300'],
];
const OTHERS = [
  ...['null', 'true', 'false', '""', '"text"', '"\\u0000"', '"1"', '[]', '{}', '[[]]', '[null]'],
  ...[
    '{"value":null}',
    '{"value":1,"u":-1}',
    '{"value":"1","u":0}',
    '[0,0,0,0]',
    '[1,2]',
    '"12 m"',
  ],
];
const KEYS = [
  '__proto__',
  'constructor',
  'prototype',
  'toString',
  'hasOwnProperty',
  'value',
  '',
  'u',
];
const MARK = 'the value goes here';

/** A shot file's text changed in its structure or its letters; `how` in words. The same for the same numbers. */
export function damagedShot(text: string, seed: number, number: number) {
  const random = seededRandom(seed, 1_000_000 + number);
  const way = below(random, 12);
  if (way < 2) return lettersChanged(text, random);
  if (way === 2) return wrapped(text, random);
  const shot: Json = JSON.parse(text);
  const { holder, key, path } = oneOf(random, placesIn(shot));
  const put = (value: string) => {
    (holder as { [key: string]: Json })[key] = MARK;
    return JSON.stringify(shot).replace(JSON.stringify(MARK), () => value);
  };
  if (way < 6) {
    const value = oneOf(random, NUMBERS);
    return { text: put(value), how: `${path} = ${value}` };
  }
  if (way < 8) {
    const value = oneOf(random, OTHERS);
    return { text: put(value), how: `${path} = ${value}` };
  }
  if (way === 8) {
    if (Array.isArray(holder)) holder.splice(Number(key), 1);
    else delete holder[key];
    return { text: JSON.stringify(shot), how: `${path} deleted` };
  }
  if (way === 9) {
    const depth = oneOf(random, [3, 100, 10_000]);
    const value = '[{"a":'.repeat(depth) + 1 + '}]'.repeat(depth);
    return { text: put(value), how: `${path} = lists ${depth} deep` };
  }
  const name = oneOf(random, KEYS);
  const inner = `{${JSON.stringify(name)}: ${oneOf(random, [...NUMBERS, ...OTHERS])}, `;
  const objects = [...text.matchAll(/\{/g)].map(({ index }) => index);
  const at = oneOf(random, objects);
  const isTwice = way === 11;
  const [first, second] = isTwice
    ? [twice(text), 'a key given twice']
    : [null, `key ${name} added`];
  return {
    text: first ?? `${text.slice(0, at)}${inner}${text.slice(at + 1)}`,
    how: second,
  };
}

/** The first measured number is given again, with another value: readers of JSON take the last one. */
const twice = (text: string) => text.replace(/"value"\s*:/, '"value": -7, "value":');

function lettersChanged(text: string, random: Random) {
  const { bytes, how } = mutate(new TextEncoder().encode(text), random);
  return { text: new TextDecoder().decode(bytes), how };
}

function wrapped(text: string, random: Random) {
  const ways = ['\uFEFF{}', ' {}', '{}x', '[{}]', '{}{}', '/* shot */ {}', '{}\u0000', '"{}"', ''];
  const way = oneOf(random, ways);
  return { text: way.replaceAll('{}', text), how: `written as ${JSON.stringify(way)}` };
}
