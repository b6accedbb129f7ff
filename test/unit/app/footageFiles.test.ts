import { describe, expect, it } from 'vitest';
import { sortFiles } from '../../../src/app/footageFiles';

const file = (name: string) => new File(['x'], name);
const sorted = (...names: string[]) => {
  const outcome = sortFiles(names.map(file));
  return outcome.ok
    ? {
        footage: outcome.value.footage.map((one) => one.name),
        shot: outcome.value.shotFile?.name ?? null,
      }
    : outcome.reason.code;
};

describe('dropped files', () => {
  it('puts images in the order of their numbers', () => {
    expect(sorted('f10.png', 'f9.png', 'f1.png', 'Thumbs.db')).toEqual({
      footage: ['f1.png', 'f9.png', 'f10.png'],
      shot: null,
    });
  });

  it('tells a shot file from its footage', () => {
    expect(sorted('clip.mp4', 'c.shot.json')).toEqual({
      footage: ['clip.mp4'],
      shot: 'c.shot.json',
    });
    expect(sorted('c.shot.json')).toEqual({ footage: [], shot: 'c.shot.json' });
  });

  it('hands any other file to the decoders, which say what is wrong with it', () => {
    expect(sorted('notes.bin')).toEqual({ footage: ['notes.bin'], shot: null });
  });

  it.each([
    [['a.mp4', 'b.mp4'], 'severalClips'],
    [['a.mp4', 'b.png'], 'severalClips'],
    [['a.shot.json', 'b.shot.json'], 'severalShots'],
    [['.hidden', 'truth.json.txt'], 'nothingChosen'],
    [[], 'nothingChosen'],
  ])('refuses %j', (names, code) => {
    expect(sorted(...names)).toBe(code);
  });
});
