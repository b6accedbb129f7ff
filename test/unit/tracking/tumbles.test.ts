import { describe, expect, test } from 'vitest';
import { glimpses, tumbles } from '../../../src/tracking/tumbles';

const framesOf = (found: string) => [...found].map((c, i) => ({ frame: 10 + i, found: c === 'o' }));

describe('a thing that is round only now and then', () => {
  test.each([
    ['ooo.........ooo........ooo.........ooo', true],
    ['.....oo....oo....oo....oo....', true],
    // Before the first and after the last it may be in the barrel or out of the frame.
    ['..........oooooooooo..........', false],
    // Hidden once, by a post.
    ['oooo............ooo', false],
    // A fragment passes, the ball is seen in most frames.
    ['oooooo....ooooo....oooooooo', false],
    // A lamp that leaves every other frame dark.
    ['o.o.o.o.o.o.o.o..o..o', false],
    ['', false],
    ['o', false],
  ])('%s: %s', (found, expected) => {
    expect(tumbles(framesOf(found))).toBe(expected);
  });
});

describe('what shows for a moment far from the rest', () => {
  test.each([
    // A piece of the broken ball turns round once.
    ['oooooooooo..................o.o', [38, 40]],
    ['o...........ooooooooo', [10]],
    // A post hides the ball; it is seen again for long enough.
    ['oooooo..........oooo', []],
    // A fragment hides it for a moment, at the end of the film.
    ['oooooooooo.....o', []],
    ['', []],
  ])('%s: %j', (found, expected) => {
    expect([...glimpses(framesOf(found))]).toEqual(expected);
  });
});
